/** The times of a series (RRULE, RDATE, EXDATE; RFC 5545, 3.8.5) that depart within the coming days. */
import ICAL from 'ical.js';
import type { Instant } from '../../rules/facts';
import { later, type ReadEvent } from './event';
import { clockOf, datesIn, hasDates, keyOf, localTexts } from './event-time';
import type { WrittenTime } from './parsed';
import { freshPatience, occurrences, type Patience } from './recurrence';
import { ruleOf } from './rule-of';

export interface SeriesTime {
  readonly key: string;
  readonly depart: WrittenTime;
  readonly arrive: WrittenTime;
}

const A_DAY = 86_400_000;
const TOO_MUCH = 'The repeats of the file are too many to be counted. Split it, or send it without its past.';

/**
 * One a time, in order; what is over already is left out. Dates are looked at a day wider than asked, because a floating time
 * is on another date in another zone.
 */
export function seriesTimes(
  event: ReadEvent,
  now: Instant,
  days: number,
  patience: Patience = freshPatience(),
): readonly SeriesTime[] | { readonly say: string } {
  try {
    return within(event, Date.parse(now), days, patience);
  } catch {
    return { say: 'Its repeats cannot be read.' };
  }
}

function within(
  event: ReadEvent,
  now: number,
  days: number,
  patience: Patience,
): readonly SeriesTime[] | { readonly say: string } {
  const clock = event.startClock;
  if (clock === null) return { say: 'Its repeats cannot be read.' };
  const dateAt = (ms: number) => new Date(ms).toISOString().slice(0, 10);
  const [first, last] = [dateAt(now - 2 * A_DAY), dateAt(now + (days + 1) * A_DAY)];
  const starts = new Map<string, { readonly local: string; readonly time: WrittenTime }>();
  const add = (local: string, time: WrittenTime) => starts.set(keyOf(time), { local, time });
  const out = new Set(timesOf(event, 'exdate').map(({ time }) => keyOf(time)));
  const outDates = datesOf(event, 'exdate');
  const isOut = (key: string, local: string) => out.has(key) || outDates.has(local.slice(0, 10));
  add(event.startLocal, event.depart);
  for (const property of event.component.getAllProperties('rrule')) {
    const recur: unknown = property.getFirstValue();
    if (!(recur instanceof ICAL.Recur)) return { say: 'Its repeat rule cannot be read.' };
    const rule = ruleOf(recur);
    if ('say' in rule) return rule;
    const startDate = event.startLocal.slice(0, 10);
    if (patience.left < 0) return { say: TOO_MUCH };
    const fits = occurrences(rule, event.startLocal, startDate, startDate, patience)?.includes(
      event.startLocal,
    );
    if (!fits && !isOut(keyOf(event.depart), event.startLocal)) {
      return {
        say: 'Its first time does not fit its own repeat rule; RFC 5545 leaves open what that means.',
      };
    }
    const found = occurrences(rule, event.startLocal, first, last, patience);
    if (patience.left < 0) return { say: TOO_MUCH };
    if (found === null)
      return { say: 'Its repeats go back too far to be counted. Send it without its past.' };
    for (const local of found) {
      const time = clock.toTime(local);
      if (isThrough(recur, local, time)) add(local, time);
    }
  }
  for (const extra of timesOf(event, 'rdate')) add(extra.local, extra.time);
  return [...starts.entries()]
    .filter(([key, { local }]) => !isOut(key, local))
    .map(([key, { time }]) => ({ key, depart: time, arrive: later(time, event.lastsMinutes) }))
    .filter(({ depart }) => roughly(depart) > now - 2 * A_DAY && roughly(depart) <= now + days * A_DAY)
    .filter(({ arrive }) => arrive.kind !== 'instant' || Date.parse(arrive.at) > now)
    .sort((a, b) => roughly(a.depart) - roughly(b.depart));
}

/** UNTIL holds its own last moment: in UTC for times with a zone, else on the clock; or a date. */
function isThrough(recur: ICAL.Recur, local: string, time: WrittenTime): boolean {
  const { until } = recur;
  if (!until) return true;
  if (until.isDate) return local.slice(0, 10) <= until.toString().slice(0, 10);
  const limit = until.toString().slice(0, 16);
  if (until.zone?.tzid === 'UTC' && time.kind === 'instant') {
    return Date.parse(time.at) <= Date.parse(`${limit}:00Z`);
  }
  return local <= limit;
}

function timesOf(event: ReadEvent, name: 'rdate' | 'exdate') {
  return event.component.getAllProperties(name).flatMap((property) => {
    if (hasDates(property)) {
      if (name === 'rdate') throw new Error('A date without a time is no flight.');
      return [];
    }
    const clock = clockOf(property, event.calendar);
    if ('say' in clock) throw new Error(clock.say);
    return localTexts(property).map((local) => {
      // Periods, too: their length could differ, and nobody has to guess.
      if (local === null) throw new Error('No date with a time.');
      return { local, time: clock.toTime(local) };
    });
  });
}

const datesOf = (event: ReadEvent, name: 'exdate'): ReadonlySet<string> =>
  new Set(event.component.getAllProperties(name).flatMap(datesIn));

/** A floating time as if it were UTC: right to a day, which is what it is used for. */
const roughly = (time: WrittenTime): number =>
  time.kind === 'instant'
    ? Date.parse(time.at)
    : time.kind === 'local'
      ? Date.parse(`${time.text}:00Z`)
      : Number.NaN;
