/**
 * Hours as whole tenths (12.3 h is 123), read and written without floating point: times in service are added up
 * over years and compared with limits to the tenth (14 CFR 91.409(b), 91.417(a)(2)(i)), and 0.1 + 0.2 must be 0.3.
 */
import type { HoursTenths } from './facts';

/** Six digits before the point are more than any airframe flies, and keep every sum exact. */
const HOURS_TEXT = /^([0-9]{1,6})(?:\.([0-9]))?$/;

/** Whether `value` can be a time in tenths of an hour: a whole number, not negative. */
export function isTenths(value: number): value is HoursTenths {
  return Number.isSafeInteger(value) && value >= 0;
}

/**
 * Writes tenths as hours with one decimal: 123 gives "12.3". A negative number is a time overrun: -5 gives "-0.5".
 * Refuses (RangeError) anything that is not a whole number.
 */
export function formatTenths(tenths: HoursTenths): string {
  if (!Number.isSafeInteger(tenths)) throw new RangeError(`Not whole tenths of an hour: ${tenths}`);
  const digits = Math.abs(tenths).toString().padStart(2, '0');
  return `${tenths < 0 ? '-' : ''}${digits.slice(0, -1)}.${digits.slice(-1)}`;
}

/**
 * Reads hours as a meter shows them: "12", "12.3", "0012.3". Gives null for everything else, also for a second
 * decimal: which way to round a meter reading is for the person who reads it.
 */
export function parseTenths(text: string): HoursTenths | null {
  const match = HOURS_TEXT.exec(text);
  if (match === null) return null;
  // Tenths are the same digits without the point.
  return Number.parseInt(`${match[1] ?? ''}${match[2] ?? '0'}`, 10);
}

/**
 * Whole minutes as tenths of an hour, rounded up: 60 minutes is 10, 61 minutes is 11. Up, because planned time is
 * held against a limit ("not more than 100 hours"), and rounding down could hide the minutes that overrun it.
 * Refuses (RangeError) minutes that are negative or not whole.
 */
export function tenthsFromMinutes(minutes: number): HoursTenths {
  if (!Number.isSafeInteger(minutes) || minutes < 0) {
    throw new RangeError(`Not whole minutes of at least 0: ${minutes}`);
  }
  const over = minutes % MINUTES_IN_A_TENTH;
  return (minutes - over) / MINUTES_IN_A_TENTH + (over > 0 ? 1 : 0);
}

const MINUTES_IN_A_TENTH = 6;
