/**
 * Hours that flights already booked will have spent: time in service is only read when an aircraft comes back, so the
 * facts of now are too good for a flight that leaves after another one. Common practice of a dispatcher's desk, no source;
 * the limits that the hours are held against have theirs (91.409(b), directives, life limits).
 *
 * Strict: a booked flight has spent all of its hours from its departure on, though it spends them little by little.
 */
import type { AircraftFacts, RequirementFacts } from './aircraft';
import { known, unknown, type HoursTenths, type Instant } from './facts';
import { formatTenths } from './hours';
import { parseInstant } from './months';

/** A flight that will spend hours of an aircraft: planned, released, or out now. */
export interface BookedFlight {
  readonly id: string;
  /** Who and what, for a person ("R. Fernhollow, lesson"). */
  readonly label: string;
  readonly departAt: Instant;
  readonly arriveAt: Instant;
  readonly plannedTenths: HoursTenths;
  readonly state: 'planned' | 'released' | 'out';
  /** It landed or was closed, and its meters are not read: its hours are spent and not on record. */
  readonly hasEnded?: true;
}

/** Released or out: its hours are as good as spent. A plan may still change, so it only warns. */
export const isCommitted = ({ state }: BookedFlight): boolean => state !== 'planned';

export interface AfterFlights {
  readonly facts: AircraftFacts;
  readonly spentTenths: HoursTenths;
  readonly counted: readonly BookedFlight[];
}

/**
 * The facts as they will be when every booked flight that departs before `before` has spent its hours. A flight that
 * departs at `before` itself is not counted. Time in service that is not known stays not known.
 *
 * Flying never mends a record: one that says more hours than the aircraft has now is in doubt, and stays so.
 * Refuses (RangeError) a malformed instant.
 */
export function afterFlights(
  aircraft: AircraftFacts,
  booked: readonly BookedFlight[],
  before: Instant,
): AfterFlights {
  const limit = parseInstant(before).epochNanoseconds;
  const counted = booked.filter(({ departAt }) => parseInstant(departAt).epochNanoseconds < limit);
  return { ...withSpent(aircraft, sumTenths(counted)), counted };
}

/** Planned time of flights in all, in tenths. */
export const sumTenths = (flights: readonly BookedFlight[]): HoursTenths =>
  flights.reduce((sum, { plannedTenths }) => sum + plannedTenths, 0);

/** The facts with `spentTenths` more time in service. */
export function withSpent(
  aircraft: AircraftFacts,
  spentTenths: HoursTenths,
): { readonly facts: AircraftFacts; readonly spentTenths: HoursTenths } {
  const { ttisTenths } = aircraft;
  if (spentTenths === 0 || !ttisTenths.known) return { facts: aircraft, spentTenths };
  const now = ttisTenths.value;
  const requirements = aircraft.requirements.map((row) => stillInDoubt(row, now, now + spentTenths));
  return { facts: { ...aircraft, ttisTenths: known(now + spentTenths), requirements }, spentTenths };
}

/** A record of more hours than the aircraft has now would come to fit by flying; it is then not known instead. */
function stillInDoubt(row: RequirementFacts, now: HoursTenths, then: HoursTenths): RequirementFacts {
  if (!row.lastDone.known) return row;
  const { ttisTenths } = row.lastDone.value;
  if (ttisTenths <= now || ttisTenths > then) return row;
  const says = `its record says ${formatTenths(ttisTenths)} h, the aircraft has ${formatTenths(now)} h`;
  return { ...row, lastDone: unknown(`when ${row.name} was done: ${says}`) };
}
