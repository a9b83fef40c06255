/** An RRULE as ical.js reads it, as a rule `occurrences` can follow; or why not. */
import type ICAL from 'ical.js';
import { WEEKDAYS, type Rule } from './recurrence';

const FREQUENCIES = ['DAILY', 'WEEKLY', 'MONTHLY', 'YEARLY'] as const;
const READ = new Set(['BYMONTH', 'BYMONTHDAY', 'BYYEARDAY', 'BYDAY', 'BYHOUR', 'BYMINUTE', 'BYSETPOS']);
/** Times on one day at most: a lesson every quarter of an hour is no plan of flights. */
const MOST_A_DAY = 12;
const BY_DAY = /^([+-]?\d{1,2})?(SU|MO|TU|WE|TH|FR|SA)$/;

export function ruleOf(recur: ICAL.Recur): Rule | { readonly say: string } {
  const freq = FREQUENCIES.find((one) => one === recur.freq);
  if (!freq) return { say: `A flight that repeats ${recur.freq} is not read, only by days and longer.` };
  const parts = recur.parts as Readonly<Record<string, readonly (string | number)[] | undefined>>;
  const foreign = Object.keys(parts).filter(
    (part) => !READ.has(part) && !(part === 'BYSECOND' && isZero(parts[part])),
  );
  if (foreign.length > 0) return { say: `The repeat rule has ${foreign.join(' and ')}, which is not read.` };
  const numbers = (part: string) => (parts[part] ?? []).map(Number);
  const byDay = (parts['BYDAY'] ?? []).map((text) => BY_DAY.exec(String(text)));
  const [byHour, byMinute] = [numbers('BYHOUR'), numbers('BYMINUTE')];
  const all = [...Object.keys(parts)].filter((part) => part !== 'BYDAY').flatMap(numbers);
  const interval = recur.interval ?? 1;
  const ordinals = byDay.some((match) => match?.[1] !== undefined);
  if (
    byDay.some((match) => match === null) ||
    all.some((value) => !Number.isInteger(value)) ||
    !(Number.isInteger(interval) && interval >= 1) ||
    (ordinals && (freq === 'DAILY' || freq === 'WEEKLY')) ||
    !within(byHour, 23) ||
    !within(byMinute, 59)
  ) {
    return { say: 'The repeat rule cannot be read.' };
  }
  if (Math.max(1, byHour.length) * Math.max(1, byMinute.length) > MOST_A_DAY) {
    return { say: `The repeat rule gives more than ${MOST_A_DAY} times a day.` };
  }
  return {
    freq,
    interval,
    count: recur.count ?? null,
    byMonth: numbers('BYMONTH'),
    byMonthDay: numbers('BYMONTHDAY'),
    byYearDay: numbers('BYYEARDAY'),
    byDay: byDay.map((match) => ({
      ordinal: Number(match?.[1] ?? 0),
      weekday: WEEKDAYS.findIndex((day) => day === match?.[2]),
    })),
    byHour,
    byMinute,
    bySetPos: numbers('BYSETPOS'),
    // ical.js counts weekdays from Sunday as 1.
    weekStart: (recur.wkst ?? 2) - 1,
  };
}

const isZero = (values: readonly (string | number)[] | undefined): boolean =>
  (values ?? []).every((value) => Number(value) === 0);
const within = (values: readonly number[], most: number): boolean =>
  values.every((value) => value >= 0 && value <= most);
