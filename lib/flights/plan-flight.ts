import { command, type Context } from '../access/service';
import { placeOfIdent } from '../fleet/place-of';
import { requireAircraft } from '../fleet/require-aircraft';
import { instantOfLocalTime } from '../fleet/zone';
import { readSigner, signerFacts } from '../people/signer';
import { fieldRefusal } from '../problems';
import { parseTenths } from '../rules/hours';
import { isOver, planProblem } from './plan-limits';
import { planFlightInput } from './schema';
import { filled, said } from '../words/said';

const FIELDS = { depart: 'departLocal', arrive: 'arriveLocal', hours: 'plannedHours' } as const;

/**
 * Writes down that somebody means to fly an aircraft, so that the bench knows how soon it is wanted. It releases nothing
 * and asks no rule: a grounded aircraft may be planned, because that is what the mechanic has to know. Refuses a flight
 * that is over, one longer than 24 hours, a place that is neither a base nor an airport of the file, and a pilot without
 * a pilot certificate on file.
 */
export const planFlight = command({
  verb: 'flight.plan',
  input: planFlightInput,
  async run(context, input) {
    const { tx, operatorId, actor, now, requestId } = context;
    const aircraft = await requireAircraft(tx, operatorId, input.aircraftId);
    const zoneOf = async (ident: string | undefined, field: string): Promise<string> =>
      ident === undefined ? aircraft.base.zone : zoneAt(context, ident, field);
    const fromZone = await zoneOf(input.fromIdent, 'fromIdent');
    const toZone = await zoneOf(input.toIdent, 'toIdent');
    const departAt = instantOfLocalTime(input.departLocal, fromZone, 'departLocal');
    const arriveAt = instantOfLocalTime(input.arriveLocal, toZone, 'arriveLocal');
    const plannedTenths = input.plannedHours === '' ? null : parseTenths(input.plannedHours);
    const problem = planProblem({ departAt, arriveAt, plannedTenths });
    if (problem) throw fieldRefusal(FIELDS[problem.of], problem.say);
    if (isOver(arriveAt, now.toISOString())) {
      throw fieldRefusal('arriveLocal', said('This flight would be over already.'));
    }
    if (input.pilotId) await requirePilot(context, input.pilotId);
    await tx.plannedFlight.create({
      data: {
        id: requestId,
        operatorId,
        aircraftId: aircraft.id,
        pilotId: input.pilotId,
        departAt: new Date(departAt),
        arriveAt: new Date(arriveAt),
        plannedTenths,
        words: input.words,
        fromIdent: input.fromIdent ?? null,
        toIdent: input.toIdent ?? null,
        rules: input.rules ?? null,
        purpose: input.purpose ?? null,
        plannedById: actor.personId,
        plannedAt: now,
      },
    });
    return {
      value: { plannedFlightId: requestId },
      audit: {
        subjectKind: 'planned-flight',
        subjectId: requestId,
        detail: {
          aircraft: aircraft.registration,
          departAt: new Date(departAt).toISOString(),
          arriveAt: new Date(arriveAt).toISOString(),
        },
      },
    };
  },
});

async function zoneAt({ tx, operatorId }: Context, ident: string, field: string): Promise<string> {
  const place = await placeOfIdent(tx, operatorId, ident);
  if (!place)
    throw fieldRefusal(
      field,
      filled(said('{ident} is neither a base here nor in the airport file.'), { ident }),
    );
  return place.zone;
}

async function requirePilot({ tx, operatorId }: Context, pilotId: string): Promise<void> {
  const { name, pilot, leftOn } = signerFacts(await readSigner(tx, operatorId, pilotId));
  if (pilot === null)
    throw fieldRefusal('pilotId', filled(said('No pilot certificate of {name} is on file.'), { name }));
  if (leftOn !== null) throw fieldRefusal('pilotId', filled(said('{name} has left.'), { name }));
}
