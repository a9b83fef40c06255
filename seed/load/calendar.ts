import { Temporal } from 'temporal-polyfill';

/** Days and times of the demo, counted back and ahead from the moment of loading, at a base's zone. */

const atBase = (now: Date, zone: string) =>
  Temporal.Instant.fromEpochMilliseconds(now.getTime()).toZonedDateTimeISO(zone);

/** The local date of an instant. */
export const dayOf = (at: Date, zone: string): string => atBase(at, zone).toPlainDate().toString();

/** The instant of a local time some days ago. */
export function instantAt(now: Date, zone: string, daysAgo: number, time: string): Date {
  const day = atBase(now, zone).toPlainDate().subtract({ days: daysAgo });
  const instant = day.toZonedDateTime({ timeZone: zone, plainTime: Temporal.PlainTime.from(time) });
  return new Date(instant.epochMilliseconds);
}

/** The local date some days ago. */
export const daysBefore = (now: Date, zone: string, days: number): string =>
  atBase(now, zone).toPlainDate().subtract({ days }).toString();

/** The same day of the month some months ago, or its last day where that month is shorter. */
export const monthsBefore = (now: Date, zone: string, months: number): string =>
  atBase(now, zone).toPlainDate().subtract({ months }).toString();

/** The last day of the month some months ahead (negative: ago). */
export function endOfMonth(now: Date, zone: string, monthsAhead: number): string {
  const day = atBase(now, zone).toPlainDate().add({ months: monthsAhead });
  return day.with({ day: day.daysInMonth }).toString();
}

/** Days gone since the last day of last month. */
export const daysIntoMonth = (now: Date, zone: string): number => atBase(now, zone).day;

/** Whole days from a local date to today. */
export const daysSince = (now: Date, zone: string, date: string): number =>
  Temporal.PlainDate.from(date).until(atBase(now, zone).toPlainDate(), { largestUnit: 'days' }).days;

/** 31 March of an odd year (65.92(a)): the next one, or the last one that is over. */
export function oddMarch(now: Date, zone: string, which: 'next-odd-march' | 'last-odd-march'): string {
  const today = atBase(now, zone).toPlainDate();
  const odd = today.year % 2 === 1 ? today.year : today.year + 1;
  const thisOne = Temporal.PlainDate.from({ year: odd, month: 3, day: 31 });
  const next = Temporal.PlainDate.compare(today, thisOne) <= 0 ? thisOne : thisOne.add({ years: 2 });
  return (which === 'next-odd-march' ? next : next.subtract({ years: 2 })).toString();
}

/** A wall-clock time as the desk types it, "2026-11-25T14:00". */
export const wallClock = (at: Date, zone: string): string =>
  atBase(at, zone).toPlainDateTime().toString({ smallestUnit: 'minute' });

export const minutesLater = (at: Date, minutes: number): Date => new Date(at.getTime() + minutes * 60_000);
