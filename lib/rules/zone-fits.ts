/**
 * Whether the clocks of a zone can be those of a longitude: a base typed with east for west would have its night at noon, and
 * every answer after it. No source for the limit of four hours, it is ours: the clocks farthest from the sun anywhere (western
 * China on Beijing's time) are a little over three hours off it.
 */
import type { Temporal } from 'temporal-polyfill';
import type { Instant } from './facts';
import { parseInstant } from './months';

/** Hours by which clocks may differ from the mean sun. */
export const MOST_HOURS_OFF_THE_SUN = 4;

/**
 * Hours by which the clocks of `zone` are ahead of the mean sun at `longitudeDeg` at that instant, from -12 to 12: where the date
 * line bends, a zone a day ahead is still right. Refuses (RangeError) an unknown zone or a malformed instant.
 */
export function hoursAheadOfSun(zone: string, longitudeDeg: number, at: Instant): number {
  const offset: Temporal.ZonedDateTime = parseInstant(at).toZonedDateTimeISO(zone);
  const ahead = offset.offsetNanoseconds / 3.6e12 - longitudeDeg / 15;
  return ahead - 24 * Math.round(ahead / 24);
}

/** Refuses as `hoursAheadOfSun` does. */
export const zoneFits = (zone: string, longitudeDeg: number, at: Instant): boolean =>
  Math.abs(hoursAheadOfSun(zone, longitudeDeg, at)) <= MOST_HOURS_OFF_THE_SUN;
