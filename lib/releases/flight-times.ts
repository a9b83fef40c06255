/**
 * Times the flight form offers to fill in. Offers only: what is not certain (a time that does not exist or exists twice
 * on the day clocks change) is not offered, and the service reads the typed times itself.
 */
import { Temporal } from 'temporal-polyfill';
import { instantOfLocalTime } from '../fleet/zone';
import { Refusal } from '../problems';
import type { HoursTenths, Instant } from '../rules/facts';
import { tenthsFromMinutes } from '../rules/hours';

const STEP_MINUTES = 5;
const MS_A_MINUTE = 60_000;

/** Wall-clock time in `zone`, `minutes` after `now`, up to the next five minutes: `2026-11-25T14:05`. */
export function localTimeIn(now: Instant, minutes: number, zone: string): string {
  const step = STEP_MINUTES * MS_A_MINUTE;
  const ms = Math.ceil((Date.parse(now) + minutes * MS_A_MINUTE) / step) * step;
  return wallClock(Temporal.Instant.fromEpochMilliseconds(ms), zone);
}

/** An instant as the clock in `zone` shows it, to the minute: `2026-11-25T14:05`. */
export const localTimeOf = (at: Instant, zone: string): string => wallClock(Temporal.Instant.from(at), zone);

/** Wall-clock arrival in `to`'s zone `minutes` after a wall-clock departure in `from`'s; null when that is no one time. */
export function arrivalAfter(departLocal: string, from: string, minutes: number, to: string): string | null {
  const depart = instantOrNull(departLocal, from);
  return depart === null ? null : wallClock(Temporal.Instant.from(depart).add({ minutes }), to);
}

/** Whole tenths from departure to arrival, rounded up; null when they are no times or not in this order. */
export function tenthsBetween(
  departLocal: string,
  from: string,
  arriveLocal: string,
  to: string,
): HoursTenths | null {
  const depart = instantOrNull(departLocal, from);
  const arrive = instantOrNull(arriveLocal, to);
  if (depart === null || arrive === null) return null;
  const minutes = Math.ceil((Date.parse(arrive) - Date.parse(depart)) / MS_A_MINUTE);
  return minutes > 0 ? tenthsFromMinutes(minutes) : null;
}

const wallClock = (at: Temporal.Instant, zone: string): string =>
  at.toZonedDateTimeISO(zone).toPlainDateTime().toString({ smallestUnit: 'minute' });

function instantOrNull(local: string, zone: string): Instant | null {
  try {
    return instantOfLocalTime(local, zone, '');
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}
