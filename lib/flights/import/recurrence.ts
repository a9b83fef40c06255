/**
 * The times of a recurrence rule (RFC 5545, 3.3.10 and 3.8.5.3), by going through days and asking each whether it fits. Written
 * here because a library's iterator does not come back from a rule that no day fits, and the files are anybody's: this one
 * ends by its construction. Read are DAILY, WEEKLY, MONTHLY and YEARLY with BYMONTH, BYMONTHDAY, BYYEARDAY, BYDAY, BYHOUR, BYMINUTE,
 * BYSETPOS, INTERVAL, COUNT and WKST; the rest is refused in words. UNTIL is for the caller, who knows the zone.
 *
 * Times are wall-clock times: a lesson at nine stays at nine when clocks change. Pure.
 */
const MS_A_DAY = 86_400_000;
/** Periods gone through at most: eleven years day by day. Anybody may send a file. */
const MOST_PERIODS = 4000;

/** Days and times of day that may still be looked at; of one file all series share one, since anybody may send many. */
export interface Patience {
  left: number;
}
const PATIENCE_OF_A_FILE = 300_000;
export const freshPatience = (): Patience => ({ left: PATIENCE_OF_A_FILE });

export const WEEKDAYS = ['SU', 'MO', 'TU', 'WE', 'TH', 'FR', 'SA'] as const;

export interface Rule {
  readonly freq: 'DAILY' | 'WEEKLY' | 'MONTHLY' | 'YEARLY';
  readonly interval: number;
  readonly count: number | null;
  /** 1 to 12. */
  readonly byMonth: readonly number[];
  /** 1 to 31, or from the end -1 to -31. */
  readonly byMonthDay: readonly number[];
  /** 1 to 366, or from the end. */
  readonly byYearDay: readonly number[];
  /** Weekday 0 (Sunday) to 6, and the how manieth of the month or year; 0 every one. */
  readonly byDay: readonly { readonly ordinal: number; readonly weekday: number }[];
  readonly byHour: readonly number[];
  readonly byMinute: readonly number[];
  readonly bySetPos: readonly number[];
  /** Weekday a week begins on, 0 to 6. */
  readonly weekStart: number;
}

/** A day as days since 1970, with its date taken apart. */
interface Day {
  readonly number: number;
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly weekday: number;
}

/**
 * Wall-clock times of the rule, `YYYY-MM-DDTHH:MM`, from `start` (which has to fit its own rule) through the date `lastDate`; those before
 * `firstDate` are counted and left out. Null where the rule would have to be followed for too long.
 */
export function occurrences(
  rule: Rule,
  start: string,
  firstDate: string,
  lastDate: string,
  patience: Patience = freshPatience(),
): readonly string[] | null {
  const first = dayOf(start.slice(0, 10));
  const until = dayOf(lastDate).number;
  const found: string[] = [];
  let counted = 0;
  const skipped = rule.count === null ? periodsBefore(rule, first, dayOf(firstDate)) : 0;
  for (let step = skipped; step <= skipped + MOST_PERIODS; step++) {
    const days = periodDays(rule, first, step);
    patience.left -= days.length;
    if (patience.left < 0) return null;
    if (days.length > 0 && (days[0]?.number ?? 0) > until) return found;
    for (const text of timesIn(rule, days, first, start.slice(11))) {
      patience.left -= 1;
      if (text < start) continue;
      counted += 1;
      if (rule.count !== null && counted > rule.count) return found;
      if (text.slice(0, 10) > lastDate) return found;
      if (text.slice(0, 10) >= firstDate) found.push(text);
    }
  }
  return null;
}

/** Days and weeks that need not be looked at; with a COUNT all of them have to be counted. */
function periodsBefore({ freq, interval }: Rule, first: Day, wanted: Day): number {
  const length = freq === 'DAILY' ? interval : freq === 'WEEKLY' ? 7 * interval : null;
  return length === null ? 0 : Math.max(0, Math.floor((wanted.number - first.number) / length) - 1);
}

/** All days of the `step`th period: the day, week, month or year. */
function periodDays(rule: Rule, first: Day, step: number): Day[] {
  const by = step * rule.interval;
  switch (rule.freq) {
    case 'DAILY':
      return [dayAt(first.number + by)];
    case 'WEEKLY': {
      const back = (first.weekday - rule.weekStart + 7) % 7;
      return range(first.number - back + 7 * by, 7);
    }
    case 'MONTHLY': {
      const month = first.year * 12 + (first.month - 1) + by;
      const begins = numberOf(Math.floor(month / 12), (month % 12) + 1, 1);
      return range(begins, numberOf(Math.floor((month + 1) / 12), ((month + 1) % 12) + 1, 1) - begins);
    }
    case 'YEARLY': {
      const begins = numberOf(first.year + by, 1, 1);
      return range(begins, numberOf(first.year + by + 1, 1, 1) - begins);
    }
  }
}

/** The times in one period that fit, in order, after BYSETPOS. */
function timesIn(rule: Rule, days: readonly Day[], first: Day, clock: string): string[] {
  const [hour = '00', minute = '00'] = clock.split(':');
  const hours = rule.byHour.length > 0 ? rule.byHour.map(two) : [hour];
  const minutes = rule.byMinute.length > 0 ? rule.byMinute.map(two) : [minute];
  const times = days
    .filter((day) => fits(rule, day, first))
    .flatMap((day) => hours.flatMap((h) => minutes.map((m) => `${dateText(day)}T${h}:${m}`)))
    .sort();
  if (rule.bySetPos.length === 0) return times;
  return times.filter(
    (_time, index) => rule.bySetPos.includes(index + 1) || rule.bySetPos.includes(index - times.length),
  );
}

function fits(rule: Rule, day: Day, first: Day): boolean {
  const { freq, byMonth, byMonthDay, byYearDay, byDay } = rule;
  if (byMonth.length > 0 && !byMonth.includes(day.month)) return false;
  if (byMonthDay.length > 0 && !fromEitherEnd(byMonthDay, day.day, monthLength(day))) return false;
  if (byYearDay.length > 0 && !fromEitherEnd(byYearDay, yearDay(day), yearLength(day))) return false;
  if (byDay.length > 0 && !byDay.some((one) => fitsWeekday(one, day, freq, byMonth.length > 0))) return false;
  // What the rule leaves open is as in the first time.
  if (freq === 'WEEKLY') return byDay.length > 0 || day.weekday === first.weekday;
  if (freq === 'DAILY' || byMonthDay.length > 0 || byYearDay.length > 0 || byDay.length > 0) return true;
  if (day.day !== first.day) return false;
  return freq === 'MONTHLY' || byMonth.length > 0 || day.month === first.month;
}

/** "-1SU" is the last Sunday: of the month, in a yearly rule without BYMONTH of the year. */
function fitsWeekday(
  { ordinal, weekday }: { readonly ordinal: number; readonly weekday: number },
  day: Day,
  freq: Rule['freq'],
  hasMonth: boolean,
): boolean {
  if (day.weekday !== weekday) return false;
  if (ordinal === 0) return true;
  const ofYear = freq === 'YEARLY' && !hasMonth;
  const [at, length] = ofYear ? [yearDay(day), yearLength(day)] : [day.day, monthLength(day)];
  return ordinal > 0 ? Math.ceil(at / 7) === ordinal : Math.ceil((length - at + 1) / 7) === -ordinal;
}

const fromEitherEnd = (wanted: readonly number[], at: number, length: number): boolean =>
  wanted.includes(at) || wanted.includes(at - length - 1);

const range = (begins: number, count: number): Day[] =>
  Array.from({ length: count }, (_none, index) => dayAt(begins + index));

function dayAt(number: number): Day {
  const date = new Date(number * MS_A_DAY);
  return {
    number,
    year: date.getUTCFullYear(),
    month: date.getUTCMonth() + 1,
    day: date.getUTCDate(),
    weekday: date.getUTCDay(),
  };
}

const numberOf = (year: number, month: number, day: number): number =>
  Date.UTC(year, month - 1, day) / MS_A_DAY;
const dayOf = (date: string): Day => dayAt(Date.parse(`${date}T00:00:00Z`) / MS_A_DAY);
const monthLength = ({ year, month }: Day): number => numberOf(year, month + 1, 1) - numberOf(year, month, 1);
const yearLength = ({ year }: Day): number => numberOf(year + 1, 1, 1) - numberOf(year, 1, 1);
const yearDay = ({ year, number }: Day): number => number - numberOf(year, 1, 1) + 1;
const two = (value: number): string => String(value).padStart(2, '0');
const dateText = ({ year, month, day }: Day): string =>
  `${String(year).padStart(4, '0')}-${two(month)}-${two(day)}`;
