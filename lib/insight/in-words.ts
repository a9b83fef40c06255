import type { Instant } from '../rules/facts';
import { formatTenths } from '../rules/hours';
import { clockInWords, dayInWords } from '../rules/in-words';
import { MINUTES_A_DAY } from '../rules/insight/days-lost';
import { localDate } from '../rules/months';

/** "40 min", "12 h 5 min", from two days on "4.1 days", rounded down to a tenth. */
export function lengthInWords(minutes: number): string {
  if (minutes < 60) return `${minutes} min`;
  if (minutes < 2 * MINUTES_A_DAY) {
    const rest = minutes % 60;
    return `${Math.floor(minutes / 60)} h${rest === 0 ? '' : ` ${rest} min`}`;
  }
  return daysInWords(Math.floor((minutes * 10) / MINUTES_A_DAY));
}

/** Tenths of days as "4.1 days"; a whole one as "4 days". */
export function daysInWords(tenths: number): string {
  const text = tenths % 10 === 0 ? String(tenths / 10) : formatTenths(tenths);
  return `${text} ${tenths === 10 ? 'day' : 'days'}`;
}

/** Days lost, where a little is not nothing. */
export const lostInWords = (tenths: number, minutes: number): string =>
  tenths === 0 && minutes > 0 ? 'less than 0.1 days' : daysInWords(tenths);

/** Tenths of a per cent as "92.8 %"; not known where there is nothing to count. */
export const shareInWords = (permille: number | null): string =>
  permille === null ? 'no record yet' : permille === 1000 ? '100 %' : `${formatTenths(permille)} %`;

/** "25 Nov 2026, 09:00" on the wall of the base. */
export const momentHere = (at: Instant, zone: string): string =>
  `${dayInWords(localDate(at, zone))}, ${clockInWords(at, zone)}`;
