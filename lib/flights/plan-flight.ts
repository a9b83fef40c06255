import { command, type Context } from '../access/service';
import { requireAircraft } from '../fleet/require-aircraft';
import { instantOfLocalTime } from '../fleet/zone';
import { readSigner, signerFacts } from '../people/signer';
import { fieldRefusal } from '../problems';
import { parseTenths } from '../rules/hours';
import { planFlightInput } from './schema';

const A_DAY = 86_400_000;
const MS_A_TENTH = 360_000;

/**
 * Writes down that somebody means to fly an aircraft, so that the bench knows how soon it is wanted. It releases nothing
 * and asks no rule: a grounded aircraft may be planned, because that is what the mechanic has to know. Refuses a flight
 * that is over, one longer than 24 hours, and a pilot without a pilot certificate on file.
 */
export const planFlight = command({
  verb: 'flight.plan',
  input: planFlightInput,
  async run(context, input) {
    const { tx, operatorId, actor, now, requestId } = context;
    const aircraft = await requireAircraft(tx, operatorId, input.aircraftId);
    const { zone } = aircraft.base;
    const depart = Date.parse(instantOfLocalTime(input.departLocal, zone, 'departLocal'));
    const arrive = Date.parse(instantOfLocalTime(input.arriveLocal, zone, 'arriveLocal'));
    const plannedTenths = input.plannedHours === '' ? null : parseTenths(input.plannedHours);
    if (arrive <= depart) throw fieldRefusal('arriveLocal', 'The arrival must be later than the departure.');
    if (arrive - depart > A_DAY) throw fieldRefusal('arriveLocal', 'One flight lasts 24 hours at most.');
    if (arrive <= now.getTime()) throw fieldRefusal('arriveLocal', 'This flight would be over already.');
    if (plannedTenths !== null && plannedTenths > Math.ceil((arrive - depart) / MS_A_TENTH)) {
      throw fieldRefusal('plannedHours', 'More hours than lie between departure and arrival.');
    }
    if (input.pilotId) await requirePilot(context, input.pilotId);
    await tx.plannedFlight.create({
      data: {
        id: requestId,
        operatorId,
        aircraftId: aircraft.id,
        pilotId: input.pilotId,
        departAt: new Date(depart),
        arriveAt: new Date(arrive),
        plannedTenths,
        words: input.words,
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
          departAt: new Date(depart).toISOString(),
          arriveAt: new Date(arrive).toISOString(),
        },
      },
    };
  },
});

async function requirePilot({ tx, operatorId }: Context, pilotId: string): Promise<void> {
  const { name, pilot, leftOn } = signerFacts(await readSigner(tx, operatorId, pilotId));
  if (pilot === null) throw fieldRefusal('pilotId', `No pilot certificate of ${name} is on file.`);
  if (leftOn !== null) throw fieldRefusal('pilotId', `${name} has left.`);
}
