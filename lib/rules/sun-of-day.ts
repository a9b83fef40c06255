/**
 * The sun of one local date at a place, in order and in words: for people who have to know when it gets dark, also where it
 * does not, or where it never gets light. The angles and borders are those of sun.ts (night of 14 CFR 1.1, sunset and
 * sunrise of 91.209); this file only gathers and says them. Pure.
 */
import type { CalendarDate, Instant } from './facts';
import { endOfDay, startOfDay } from './months';
import { lightDuring, nextSunEvent, type Point, type SunEvent } from './sun';

export interface SunOfDay {
  readonly date: CalendarDate;
  /** Length of the date by the clocks of the zone: 1440, or otherwise on a day clocks change. */
  readonly minutes: number;
  /** Every event on the date, in order. Near the poles a kind can be missing or come twice. */
  readonly events: readonly { readonly event: SunEvent; readonly at: Instant }[];
  readonly sun: 'rises-and-sets' | 'only-rises' | 'only-sets' | 'up-all-day' | 'down-all-day';
  /** Night in the sense of 1.1: on part of the date, on none of it, on all of it. */
  readonly night: 'part' | 'none' | 'all-day';
  /** What is out of the ordinary on this date; empty on an ordinary one. */
  readonly say: readonly string[];
}

const EVENTS: readonly SunEvent[] = ['civilDawn', 'sunrise', 'sunset', 'civilDusk'];
const MS_A_DAY = 86_400_000;

/** Refuses (RangeError) a malformed date or zone, or a point not on Earth. */
export function sunOfDay(date: CalendarDate, place: Point & { readonly zone: string }): SunOfDay {
  const start = startOfDay(date, place.zone);
  const end = endOfDay(date, place.zone);
  const events = EVENTS.flatMap((event) => allOf(event, place, start, end)).sort(
    (a, b) => Date.parse(a.at) - Date.parse(b.at),
  );
  const has = (event: SunEvent) => events.some((one) => one.event === event);
  // Without a crossing the whole date is one or the other, so any moment of it tells which.
  const light = lightDuring({ from: start, to: end }, place);
  const sun =
    has('sunrise') && has('sunset')
      ? 'rises-and-sets'
      : has('sunrise')
        ? 'only-rises'
        : has('sunset')
          ? 'only-sets'
          : light.betweenSunsetAndSunrise
            ? 'down-all-day'
            : 'up-all-day';
  const night = has('civilDawn') || has('civilDusk') ? 'part' : light.night ? 'all-day' : 'none';
  const minutes = (Date.parse(end) - Date.parse(start)) / 60_000;
  return { date, minutes, events, sun, night, say: wordsFor(sun, night, minutes, events) };
}

function allOf(event: SunEvent, place: Point, start: Instant, end: Instant) {
  const found: { event: SunEvent; at: Instant }[] = [];
  for (let from = start; ;) {
    const days = (Date.parse(end) - Date.parse(from)) / MS_A_DAY;
    const at = days > 0 ? nextSunEvent(event, place, from, days) : null;
    if (at === null || at >= end) return found;
    found.push({ event, at });
    // An event is whole seconds; the search goes on two seconds later, past the crossing itself.
    from = new Date(Date.parse(at) + 2000).toISOString();
  }
}

function wordsFor(
  sun: SunOfDay['sun'],
  night: SunOfDay['night'],
  minutes: number,
  events: SunOfDay['events'],
): string[] {
  const say: string[] = [];
  if (minutes !== MS_A_DAY / 60_000) say.push(lengthInWords(minutes));
  if (sun === 'up-all-day') say.push('The sun does not set today.');
  if (sun === 'down-all-day') say.push('The sun does not rise today.');
  if (sun === 'only-rises') say.push('The sun rises and does not set before midnight.');
  if (sun === 'only-sets') say.push('The sun sets and does not rise again before midnight.');
  const first = events.find(({ event }) => event === 'sunrise' || event === 'sunset');
  if (sun === 'rises-and-sets' && first?.event === 'sunset') {
    say.push('The sun is up as the day begins: it sets, and rises again the same day.');
  }
  if (night === 'all-day') say.push('It is night all day (14 CFR 1.1): there is not even civil twilight.');
  if (night === 'none' && sun !== 'up-all-day') {
    say.push('It does not become night (14 CFR 1.1): civil twilight lasts while the sun is down.');
  }
  if (sun === 'down-all-day' && night === 'part') say.push('There is civil twilight only.');
  return say;
}

function lengthInWords(minutes: number): string {
  const length = `${Math.floor(minutes / 60)} h${minutes % 60 ? ` ${minutes % 60} min` : ''}`;
  return `Clocks go ${minutes < 1440 ? 'forward' : 'back'} today: the day has ${length}.`;
}
