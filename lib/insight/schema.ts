import { z } from 'zod';
import { fieldRefusal } from '../problems';
import type { CalendarDate, Instant } from '../rules/facts';
import { endOfDay, localDate, parseCalendarDate, startOfDay } from '../rules/months';
import type { Stretch } from '../rules/insight/spans';

/** The periods offered; the first is shown unless asked otherwise. */
export const PERIODS = [90, 30, 365] as const;
/** A year and a month: further back one query would carry more than it should. */
export const MOST_DAYS = 400;

const date = z.iso.date('Enter a day as YYYY-MM-DD.');

/** Days at the base, both included. With `days` and without days: so many up to today. Empty text is nothing asked. */
export const insightInput = z.object({
  days: z.enum(['30', '90', '365'], 'Choose 30, 90 or 365 days.').nullish(),
  from: date.nullish(),
  until: date.nullish(),
  aircraftId: z.uuid('Choose one of the aircraft.').nullish(),
  baseId: z.uuid('Choose one of the bases.').nullish(),
});

/** The days looked at, both included, at each aircraft's own base. */
export interface Period {
  readonly from: CalendarDate;
  readonly until: CalendarDate;
  readonly days: number;
}

/** The period asked for; refuses at its field what cannot be looked at. @param zone of the base asked for, or the first */
export function periodOf(
  asked: Pick<z.output<typeof insightInput>, 'days' | 'from' | 'until'>,
  now: Instant,
  zone: string,
): Period {
  const today = localDate(now, zone);
  const until = asked.until ?? today;
  const days = Number(asked.days ?? PERIODS[0]);
  const from =
    asked.from ??
    parseCalendarDate(until)
      .subtract({ days: days - 1 })
      .toString();
  if (until > today) throw fieldRefusal('until', 'This day has not come yet.');
  if (from > until) throw fieldRefusal('from', 'The first day is after the last.');
  const span = parseCalendarDate(from).until(parseCalendarDate(until), { largestUnit: 'days' }).days + 1;
  if (span > MOST_DAYS)
    throw fieldRefusal('from', `At most ${MOST_DAYS} days at once. Choose a later first day.`);
  return { from, until, days: span };
}

/** The period as instants at one base; it never runs past now. */
export function stretchAt({ from, until }: Period, zone: string, now: Instant): Stretch {
  const end = endOfDay(until, zone);
  const begin = startOfDay(from, zone);
  const last = Date.parse(end) < Date.parse(now) ? end : now;
  // At a base further west today has perhaps not begun.
  return { from: begin, until: Date.parse(last) < Date.parse(begin) ? begin : last };
}
