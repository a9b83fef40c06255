import type { Context } from '../access/service';
import { bookedFlights } from '../fleet/booked-flights';
import { aircraftFacts, basePlace, readAircraft, type AircraftRow } from '../fleet/facts';
import { placeOfIdent, type KnownPlace } from '../fleet/place-of';
import { instantOfLocalTime } from '../fleet/zone';
import { readSigner, signerFacts } from '../people/signer';
import { changedSince, permitFacts, readPermitRow } from '../permits/permit-facts';
import { fieldRefusal, Refusal } from '../problems';
import { answerForFlight, RULES_VERSION } from '../rules/answer';
import type { AircraftFacts } from '../rules/aircraft';
import { factOf, known, unknown, type Fact } from '../rules/facts';
import { parseTenths } from '../rules/hours';
import type { PilotGrade, ProposedFlight, SpecialFlightPermit, UseOfAircraft } from '../rules/operations';
import { plannedHoursProblem } from '../rules/planned-hours';
import type { BookedFlight } from '../rules/spent-hours';
import type { Answer } from '../rules/verdict';
import { inSpan } from '../telemetry/spans';
import { withHoursAhead, type SpentAhead } from './hours-ahead';
import type { ComposedFlight } from './schema';
import { filled, said } from '../words/said';

/** A composed flight with the facts, the answer, and the version of the facts it stands on. */
export interface JudgedFlight {
  readonly row: AircraftRow;
  /** The facts it was judged on: as recorded, with the hours that flights released before it spend by its departure. */
  readonly facts: AircraftFacts;
  readonly recorded: AircraftFacts;
  readonly spentAhead: SpentAhead | null;
  /** Every flight booked on the aircraft, plans too, without this one. */
  readonly booked: readonly BookedFlight[];
  readonly flight: ProposedFlight;
  readonly use: UseOfAircraft | null;
  readonly answer: Answer;
  readonly factsVersion: number;
  readonly rulesVersion: string;
}

/** Reads the facts as they are now and asks the rules about this flight. Refuses what cannot be a flight. */
export async function judgeFlight(
  { tx, operatorId, now }: Pick<Context, 'tx' | 'operatorId' | 'now'>,
  input: ComposedFlight,
): Promise<JudgedFlight> {
  const row = await readAircraft(tx, operatorId, input.aircraftId);
  if (!row || row.retiredOn) throw new Refusal('not_found', { say: said('There is no such aircraft here.') });
  const from = await requirePlace(tx, operatorId, input.fromBaseId, input.fromIdent, 'from');
  const to = await requirePlace(tx, operatorId, input.toBaseId, input.toIdent, 'to');
  const flight: ProposedFlight = {
    departAt: instantOfLocalTime(input.departLocal, from.zone, 'departLocal'),
    arriveAt: instantOfLocalTime(input.arriveLocal, to.zone, 'arriveLocal'),
    from,
    to,
    rules: input.rules,
    purpose: input.purpose,
    plannedTenths: parseTenths(input.plannedHours.trim()) ?? 0,
    overWaterBeyondGlide: factSaid(
      input.overWaterBeyondGlide,
      'whether the flight goes over water beyond gliding distance',
    ),
    transponderAirspace: factSaid(
      input.transponderAirspace,
      'whether the flight enters airspace that needs a transponder',
    ),
    adsbAirspace: factSaid(input.adsbAirspace, 'whether the flight enters airspace that needs ADS-B Out'),
    controlledAirspace: factSaid(input.controlledAirspace, 'whether the flight is in controlled airspace'),
    usesVor: factSaid(input.usesVor, 'whether the flight navigates by VOR'),
    trainingWithin50Nm: factSaid(
      input.trainingWithin50Nm,
      'whether it is training wholly within 50 nautical miles',
    ),
    crewOnly: factSaid(input.crewOnly, 'whether only required crew is aboard'),
    highestAltitudeFtMsl: factOf(input.highestAltitudeFtMsl, 'the highest altitude of the flight'),
    pilotInCommandGrade: await pilotGrade(tx, operatorId, input, row.type.rating),
    atcTransponder: input.atcTransponder,
    atcAdsb: input.atcAdsb,
    continuingToRepair: input.continuingToRepair,
    specialFlightPermit: await permitOf(tx, operatorId, input),
  };
  refuseImpossible(flight, now);
  refuseContradiction(input, [from, to]);
  const recorded = aircraftFacts(row);
  const all = (await bookedFlights(tx, operatorId, now, [row.id])).get(row.id) ?? [];
  const booked = all.filter(({ id }) => id !== input.plannedFlightId);
  const { facts, spentAhead } = withHoursAhead(recorded, booked, flight.departAt);
  const { answer, use } = inSpan('rules', {}, () => answerForFlight(facts, flight));
  return {
    row,
    facts,
    recorded,
    spentAhead,
    booked,
    flight,
    use,
    answer,
    factsVersion: row.factsVersion,
    rulesVersion: RULES_VERSION,
  };
}

/** One end of the flight: a base of the operator, or an airport by its letters. The schema saw to it that one is named. */
async function requirePlace(
  tx: Context['tx'],
  operatorId: string,
  baseId: string,
  ident: string | undefined,
  end: 'from' | 'to',
): Promise<KnownPlace> {
  if (ident !== undefined) {
    const place = await placeOfIdent(tx, operatorId, ident);
    if (!place)
      throw fieldRefusal(
        `${end}Ident`,
        filled(said('No base and no airport here is called {ident}.'), { ident }),
      );
    return place;
  }
  const base = await tx.base.findUnique({ where: { operatorId_id: { operatorId, id: baseId } } });
  if (!base) throw fieldRefusal(`${end}BaseId`, said('There is no such base here.'));
  return basePlace(base);
}

/** The permit chosen, as the rules take it; it must be this aircraft's. */
async function permitOf(
  tx: Context['tx'],
  operatorId: string,
  { permitId, aircraftId }: ComposedFlight,
): Promise<SpecialFlightPermit | null> {
  if (permitId === undefined) return null;
  const row = await readPermitRow(tx, operatorId, permitId);
  if (!row || row.aircraftId !== aircraftId) {
    throw fieldRefusal('permitId', said('There is no such permit for this aircraft.'));
  }
  return permitFacts(row, await changedSince(tx, operatorId, row));
}

async function pilotGrade(
  tx: Context['tx'],
  operatorId: string,
  { pilotId, purpose }: ComposedFlight,
  rating: string,
): Promise<Fact<PilotGrade>> {
  if (!pilotId) return unknown('who is pilot in command');
  const { pilot, name } = signerFacts(await readSigner(tx, operatorId, pilotId));
  // 91.407(b): "appropriately rated". A student's solo is lawful without a rating, so it is asked for nothing else.
  if (pilot && purpose === 'check-flight' && !pilot.ratings.includes(rating)) {
    return unknown(`that ${name} is rated for ${rating.replaceAll('-', ' ')}`);
  }
  return pilot ? known(pilot.grade) : unknown(`the pilot certificate of ${name}`);
}

const factSaid = (answer: 'yes' | 'no' | 'not-said', missing: string): Fact<boolean> =>
  answer === 'not-said' ? unknown(missing) : known(answer === 'yes');

const A_DAY = 24 * 60 * 60 * 1000;

function refuseImpossible(flight: ProposedFlight, now: Date): void {
  const depart = Date.parse(flight.departAt);
  const arrive = Date.parse(flight.arriveAt);
  if (arrive <= depart)
    throw fieldRefusal('arriveLocal', said('The arrival must be later than the departure.'));
  if (arrive - depart > A_DAY) throw fieldRefusal('arriveLocal', said('One flight lasts 24 hours at most.'));
  if (depart < now.getTime() - A_DAY)
    throw fieldRefusal('departLocal', said('This departure is more than a day in the past.'));
  const hours = plannedHoursProblem(flight);
  if (hours === 'too-many') {
    throw fieldRefusal('plannedHours', said('More hours than lie between departure and arrival.'));
  }
  if (hours === 'too-few') {
    throw fieldRefusal(
      'plannedHours',
      said(
        'Less than half of the time between departure and arrival. Compose each leg as a flight of its own.',
      ),
    );
  }
}

/** A flight from or to a base meets the airspace the base lies in (91.215(b), 91.225), whatever was answered in a hurry. */
function refuseContradiction(input: ComposedFlight, places: readonly KnownPlace[]): void {
  for (const [question, needs] of [
    ['transponderAirspace', 'a transponder'],
    ['adsbAirspace', 'ADS-B Out'],
  ] as const) {
    const inside = places.find(({ [question]: lies }) => lies.known && lies.value);
    if (inside && input[question] === 'no') {
      throw fieldRefusal(
        question,
        filled(said('{ident} itself lies in airspace that needs {needs}.'), { ident: inside.ident, needs }),
      );
    }
  }
}
