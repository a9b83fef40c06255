/**
 * Calendar months, days and local dates: how the time limits of the regulations are counted.
 *
 * In the order of this file:
 * - "within the preceding N calendar months" (91.207(d), 91.409(a), 91.411(a), 91.413(a)): a calendar month is
 *   a whole month by name. Something done on any day of a month holds through the last day of the Nth month
 *   after it, and is overdue as the first day of the next month begins.
 * - "within the preceding 30 days" (91.171(a)), "more than 90 days" (91.207(f)(10)): days one by one, no
 *   rounding to months.
 * - "N consecutive calendar days, excluding the day recorded" (repair categories of a minimum equipment list):
 *   from the midnight that ends the day of the entry.
 * - 47.40(a): seven years after the last day of the month of issue.
 *
 * The regulations name no time zone. Dates here are dates at the base or airfield concerned; instants are UTC.
 * All arithmetic is Temporal's. Malformed dates, instants, zones and counts are refused with a RangeError.
 */
import { Temporal } from 'temporal-polyfill';
import type { CalendarDate, Instant } from './facts';

const DATE_TEXT = /^\d{4}-\d{2}-\d{2}$/;
const INSTANT_TEXT = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d{1,9})?Z$/;

/** Reads `YYYY-MM-DD`. Refuses (RangeError) any other form and days that do not exist, such as 30 February. */
export function parseCalendarDate(text: CalendarDate): Temporal.PlainDate {
  // Temporal alone would also take `20260131`, a date with a time, and other forms that do not compare as text.
  if (!DATE_TEXT.test(text))
    throw new RangeError(`Not a date of the form YYYY-MM-DD: ${JSON.stringify(text)}`);
  return Temporal.PlainDate.from(text);
}

/** Reads an instant in UTC such as `2026-11-25T16:58:00Z`. Refuses (RangeError) other offsets and other forms. */
export function parseInstant(text: Instant): Temporal.Instant {
  if (!INSTANT_TEXT.test(text)) throw new RangeError(`Not an instant in UTC: ${JSON.stringify(text)}`);
  return Temporal.Instant.from(text);
}

/**
 * Last day on which a thing done on `done` still counts as done "within the preceding `months` calendar months":
 * the last day of the month that is `months` months after the month of `done` (14 CFR 91.409(a), 91.411(a)).
 * Done 15 June 2025, 12 months: through 30 June 2026. The day of the month does not matter, so a thing done
 * early sets a new month.
 * @param months whole months, at least 1
 */
export function lastDayOfCalendarMonthAfter(done: CalendarDate, months: number): CalendarDate {
  requireCount(months, 'months');
  // From the first of the month, so that 31 January plus one month is not cut short before it is rounded up.
  return dateText(lastDayOfMonth(parseCalendarDate(done).with({ day: 1 }).add({ months })));
}

/**
 * Last day that is not more than `days` days after `done`; day 1 is the day after `done`. Serves both "within the
 * preceding 30 days" (14 CFR 91.171(a): checked 1 March, good through 31 March) and "not more than 90 days"
 * (14 CFR 91.207(f)(10): removed 1 January 2026, last day 1 April 2026; 31 March in a leap year).
 * @param days whole days, at least 1
 */
export function lastDayWithinDays(done: CalendarDate, days: number): CalendarDate {
  requireCount(days, 'days');
  return dateText(parseCalendarDate(done).add({ days }));
}

/**
 * Last day of a repair interval of `days` consecutive calendar days that leaves out the day of the entry; the
 * interval ends at the midnight that ends this day (`endOfDay` gives the instant). Recorded 26 January, three
 * days: the interval runs from the midnight ending the 26th, and ends at the midnight ending the 29th.
 * The clock starts at the original write-up, not at the deferral. Source: FAA MMEL Policy Letter 25.
 * @param recordedOn local date of the write-up, in the time base the operator has fixed
 * @param days whole days, at least 1: 3 in category B, 10 in C, 120 in D
 */
export function midnightEndAfterDays(recordedOn: CalendarDate, days: number): CalendarDate {
  requireCount(days, 'days');
  return dateText(parseCalendarDate(recordedOn).add({ days }));
}

/**
 * `years` years after the last day of the month of `issuedOn` (14 CFR 47.40(a), seven years). Issued 10 February
 * 2024: through 28 February 2031. Issued in February 2025 the sum is 28 February 2032, although that February has
 * a 29th: the text counts from the last day of the month of issue, and the strict reading stops there.
 * @param years whole years, at least 1
 */
export function addYearsEndOfMonth(issuedOn: CalendarDate, years: number): CalendarDate {
  requireCount(years, 'years');
  return dateText(lastDayOfMonth(parseCalendarDate(issuedOn)).add({ years }));
}

/** The date on the wall at `instant` in `zone` (an IANA name). */
export function localDate(instant: Instant, zone: string): CalendarDate {
  return dateText(parseInstant(instant).toZonedDateTimeISO(zone).toPlainDate());
}

/** The instant at which `date` begins in `zone`. Not always 00:00 on the clock: some zones change time at midnight. */
export function startOfDay(date: CalendarDate, zone: string): Instant {
  return parseCalendarDate(date).toZonedDateTime(zone).toInstant().toString();
}

/**
 * The instant at which `date` is over in `zone`: the start of the next day, so that days of 23 or 25 hours come
 * out right. The first instant that no longer belongs to `date`.
 */
export function endOfDay(date: CalendarDate, zone: string): Instant {
  return parseCalendarDate(date).add({ days: 1 }).toZonedDateTime(zone).toInstant().toString();
}

function lastDayOfMonth(date: Temporal.PlainDate): Temporal.PlainDate {
  return date.with({ day: date.daysInMonth });
}

function requireCount(count: number, of: string): void {
  if (!Number.isSafeInteger(count) || count < 1) {
    throw new RangeError(`Not a whole number of ${of} of at least 1: ${count}`);
  }
}

/** Dates compare as text only while the year has four digits. */
function dateText(date: Temporal.PlainDate): CalendarDate {
  const text = date.toString();
  if (!DATE_TEXT.test(text)) throw new RangeError(`Date out of range: ${text}`);
  return text;
}
