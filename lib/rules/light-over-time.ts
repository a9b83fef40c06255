/**
 * How the light changes at a place over a stretch of time, for an aircraft that is in the air at each instant of it.
 *
 * The borders are those of `sun.ts`, said for instants instead of flights: the second of sunset or dusk is the first of
 * the dark, the second of sunrise or dawn the last of it, so that the light begins one second later. At every border the
 * light is asked of `lightDuring` anew; nothing is toggled, so one missed grazing of the horizon cannot turn day and night
 * round for all that follows. Polar day and polar night have no borders.
 */
import { Temporal } from 'temporal-polyfill';
import type { Instant } from './facts';
import { parseInstant } from './months';
import { lightDuring, nextSunEvent, type Point, type SunEvent } from './sun';

/** What the sun does at an instant. */
export interface LightEvent {
  readonly what: 'sunset' | 'night-begins' | 'night-ends' | 'sunrise';
  /** The second of the event itself, as an almanac has it. */
  readonly at: Instant;
}

/** The light from `fromMs` on, until the next step. */
export interface LightStep {
  readonly fromMs: number;
  readonly light: 'day' | 'night';
  readonly betweenSunsetAndSunrise: boolean;
  /** As `useOfFlight` gives it: the next sunset within two days; null between sunset and sunrise, or when none comes. */
  readonly sunsetAt: Instant | null;
  /** What happens here; none on the first step. */
  readonly events: readonly LightEvent[];
}

export interface TimeWindow {
  readonly from: Instant;
  readonly until: Instant;
}

const WHAT: Readonly<Record<SunEvent, LightEvent['what']>> = {
  sunset: 'sunset',
  civilDusk: 'night-begins',
  civilDawn: 'night-ends',
  sunrise: 'sunrise',
};
const EVENTS = Object.keys(WHAT) as SunEvent[];
const MORNING: readonly SunEvent[] = ['civilDawn', 'sunrise'];

const SECOND_MS = 1000;
const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;
/** As in `use-of-flight.ts`: from one sunset to the next can be a little more than a day in spring. */
const SUNSET_SEARCH_DAYS = 2;

/** An instant in milliseconds since 1970. Refuses (RangeError) what is malformed. */
export const msOf = (instant: Instant): number => parseInstant(instant).epochMilliseconds;

/** The instant, written without needless decimals. */
export const instantOfMs = (ms: number): Instant => Temporal.Instant.fromEpochMilliseconds(ms).toString();

/**
 * The light at `place` from `stretch.from`, step by step, in order; the first step begins at `stretch.from`.
 * Refuses (RangeError) a malformed instant, a window that does not end after it begins, a point not on Earth.
 */
export function lightOverTime(place: Point, stretch: TimeWindow): readonly LightStep[] {
  const fromMs = msOf(stretch.from);
  const untilMs = msOf(stretch.until);
  if (untilMs <= fromMs) throw new RangeError(`Window ends before it begins: ${stretch.from}`);
  const eventsAt = new Map<number, LightEvent[]>([[fromMs, []]]);
  for (const event of EVENTS) {
    for (const second of secondsOf(event, place, fromMs, untilMs)) {
      const borderMs = MORNING.includes(event) ? second + SECOND_MS : second;
      if (borderMs <= fromMs || borderMs >= untilMs) continue;
      const here = eventsAt.get(borderMs) ?? [];
      eventsAt.set(borderMs, [...here, { what: WHAT[event], at: instantOfMs(second) }]);
    }
  }
  return [...eventsAt].sort(([a], [b]) => a - b).map(([ms, events]) => stepAt(place, ms, events));
}

/** The light in which an aircraft is that is in the air at this instant. */
function stepAt(place: Point, ms: number, events: readonly LightEvent[]): LightStep {
  const from = instantOfMs(ms);
  const { night, betweenSunsetAndSunrise } = lightDuring({ from, to: instantOfMs(ms + 1) }, place);
  const sunsetAt = betweenSunsetAndSunrise ? null : nextSunEvent('sunset', place, from, SUNSET_SEARCH_DAYS);
  return { fromMs: ms, light: night ? 'night' : 'day', betweenSunsetAndSunrise, sunsetAt, events };
}

/** Every second at which `event` happens, from a little before `fromMs` (the light of its border may begin inside) on. */
function secondsOf(event: SunEvent, place: Point, fromMs: number, untilMs: number): number[] {
  const found: number[] = [];
  let searchMs = fromMs - 2 * SECOND_MS;
  for (;;) {
    const next = nextSunEvent(event, place, instantOfMs(searchMs), (untilMs - searchMs) / DAY_MS);
    if (next === null) return found;
    const second = msOf(next);
    found.push(second);
    // The search may stop just short of the crossing and would find the same one again from the second after it.
    searchMs = Math.max(second, searchMs) + MINUTE_MS;
    if (searchMs >= untilMs) return found;
  }
}
