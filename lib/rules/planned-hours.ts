/**
 * The hours that can be planned for a flight of a length. Time in service (14 CFR 1.1) is from leaving the ground to touching
 * it again, so it is never more than lies between departure and arrival. Our own caution, no source: never less than half
 * of that, because a slip of a digit would hide an overrun inspection.
 */
import type { HoursTenths } from './facts';
import { msOf } from './light-over-time';
import type { ProposedFlight } from './operations';

const MS_A_TENTH = 360_000;

/** The most tenths that fit into so many milliseconds; a begun tenth is one. */
export const mostTenths = (lastsMs: number): HoursTenths => Math.ceil(lastsMs / MS_A_TENTH);

/** The fewest that are taken for so many milliseconds: half of the most, rounded up. */
export const fewestTenths = (lastsMs: number): HoursTenths => Math.ceil(mostTenths(lastsMs) / 2);

/** What is wrong with the planned hours of a flight, or null. */
export function plannedHoursProblem({
  departAt,
  arriveAt,
  plannedTenths,
}: Pick<ProposedFlight, 'departAt' | 'arriveAt' | 'plannedTenths'>): 'too-many' | 'too-few' | null {
  const lastsMs = msOf(arriveAt) - msOf(departAt);
  if (plannedTenths > mostTenths(lastsMs)) return 'too-many';
  return plannedTenths < fewestTenths(lastsMs) ? 'too-few' : null;
}
