import type { AircraftFacts } from '../rules/aircraft';
import type { HoursTenths, Instant } from '../rules/facts';
import { afterFlights, isCommitted, type BookedFlight } from '../rules/spent-hours';

/** What a release keeps of the hours other released flights will have spent by its departure. */
export interface SpentAhead {
  /** Time in service on record when it was judged; null when it was not known. */
  readonly recordedTenths: HoursTenths | null;
  readonly flights: readonly { readonly id: string; readonly label: string; readonly tenths: HoursTenths }[];
}

/**
 * The facts with the hours that flights released or out spend before `departAt`, and what to keep of them; null: none. A
 * plan may still change, so it only warns.
 */
export function withHoursAhead(
  facts: AircraftFacts,
  booked: readonly BookedFlight[],
  departAt: Instant,
): { readonly facts: AircraftFacts; readonly spentAhead: SpentAhead | null } {
  const { facts: then, counted } = afterFlights(facts, booked.filter(isCommitted), departAt);
  if (counted.length === 0) return { facts, spentAhead: null };
  return {
    facts: then,
    spentAhead: {
      recordedTenths: facts.ttisTenths.known ? facts.ttisTenths.value : null,
      flights: counted.map(({ id, label, plannedTenths }) => ({ id, label, tenths: plannedTenths })),
    },
  };
}
