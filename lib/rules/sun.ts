/**
 * Where the sun is, for the two different darknesses of the rules.
 *
 * - 14 CFR 1.1, "night": from the end of evening civil twilight to the beginning of morning civil twilight. Civil
 *   twilight ends with the centre of the sun 6 degrees below the horizon (96 degrees from the zenith).
 * - 14 CFR 91.209(a)(1), "from sunset to sunrise": the upper edge of the sun on the horizon with ordinary
 *   refraction, which is its centre 90 degrees 50 minutes from the zenith. The Alaska exception is not applied.
 *
 * Both angles are the US Naval Observatory's. The horizon is that of sea level at the place.
 *
 * The exact borders. Times are whole seconds: an evening event is the last second before the dark, a morning event
 * the first second after it. Both border seconds count with the dark (the strict reading). A flight holds its
 * instant of departure but not its instant of arrival, when it is over. So a flight that lands exactly at
 * sunset is not between sunset and sunrise, one that departs exactly at sunset or exactly at sunrise is.
 *
 * Pure computation (astronomy-engine): nothing is looked up and no clock is read.
 */
import { AstroTime, Body, Equator, Horizon, Observer, SearchAltitude } from 'astronomy-engine';
import { Temporal } from 'temporal-polyfill';
import type { CalendarDate, Instant } from './facts';
import { endOfDay, parseInstant, startOfDay } from './months';

/** A point on the Earth. North and east are positive. */
export interface Point {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}

/** What a flight meets: 1.1 night, and the hours of 91.209. */
export interface Light {
  readonly night: boolean;
  readonly betweenSunsetAndSunrise: boolean;
}

export type SunEvent = 'civilDawn' | 'sunrise' | 'sunset' | 'civilDusk';

/** The events of one local date. Null where the sun does not reach that height on that date. */
export type SunTimes = Readonly<Record<SunEvent, Instant | null>>;

/** Heights of the sun's centre above the horizon, in degrees, without refraction. */
const RISE_AND_SET_DEG = -50 / 60;
const CIVIL_TWILIGHT_DEG = -6;

const EVENTS: Readonly<Record<SunEvent, { readonly heightDeg: number; readonly morning: boolean }>> = {
  civilDawn: { heightDeg: CIVIL_TWILIGHT_DEG, morning: true },
  sunrise: { heightDeg: RISE_AND_SET_DEG, morning: true },
  sunset: { heightDeg: RISE_AND_SET_DEG, morning: false },
  civilDusk: { heightDeg: CIVIL_TWILIGHT_DEG, morning: false },
};

const SECONDS_IN_A_DAY = 86_400;
/** 2000-01-01T12:00:00Z in seconds since 1970: astronomy-engine counts days from it. */
const J2000_SECONDS = 946_728_000;

/**
 * What a flight from `from` to `to` meets at `place`. Works in polar day (never dark) and polar night (always dark).
 * Refuses (RangeError) a malformed instant, an interval that does not end after it begins, a point not on Earth.
 */
export function lightDuring(interval: { readonly from: Instant; readonly to: Instant }, place: Point): Light {
  const observer = observerAt(place);
  const from = Math.floor(epochSeconds(interval.from));
  const to = Math.ceil(epochSeconds(interval.to));
  if (to <= from) throw new RangeError(`Interval ends before it begins: ${interval.from} to ${interval.to}`);
  return {
    night: meetsDark(observer, CIVIL_TWILIGHT_DEG, from, to),
    betweenSunsetAndSunrise: meetsDark(observer, RISE_AND_SET_DEG, from, to),
  };
}

/**
 * The four events of `date` at `place`, each the first one from the local midnight that begins the date to the one
 * that ends it. Near the poles the sunset of a long day can come after midnight: it belongs to the date it falls on.
 * Refuses (RangeError) a malformed date or zone, or a point not on Earth.
 */
export function sunTimes(date: CalendarDate, place: Point & { readonly zone: string }): SunTimes {
  const start = startOfDay(date, place.zone);
  const days = (epochSeconds(endOfDay(date, place.zone)) - epochSeconds(start)) / SECONDS_IN_A_DAY;
  const first = (event: SunEvent) => nextSunEvent(event, place, start, days);
  return {
    civilDawn: first('civilDawn'),
    sunrise: first('sunrise'),
    sunset: first('sunset'),
    civilDusk: first('civilDusk'),
  };
}

/**
 * The first `event` at `place` after `after`, or null if there is none within `days` days (polar day or night).
 * Refuses (RangeError) a malformed instant or a point not on Earth.
 */
export function nextSunEvent(event: SunEvent, place: Point, after: Instant, days: number): Instant | null {
  const { heightDeg, morning } = EVENTS[event];
  const start = Math.ceil(epochSeconds(after));
  const second = morning
    ? nextRise(observerAt(place), heightDeg, start, days)
    : nextSet(observerAt(place), heightDeg, start, days);
  return second === null ? null : Temporal.Instant.fromEpochMilliseconds(second * 1000).toString();
}

/**
 * Whether the flight [from, to) meets the dark, borders included: whether the sun is down at any second from one
 * before `from` (departing at the border second of the morning) through `to` (the border second of the evening is
 * one before the first dark one, so a flight that is over at the border second stays clear of it).
 */
function meetsDark(observer: Observer, heightDeg: number, from: number, to: number): boolean {
  if (isDown(observer, heightDeg, from - 1) || isDown(observer, heightDeg, to)) return true;
  const set = nextSet(observer, heightDeg, from - 1, (to - from + 1) / SECONDS_IN_A_DAY);
  return set !== null && set < to;
}

/** The last second before the sun is down. */
function nextSet(observer: Observer, heightDeg: number, start: number, days: number): number | null {
  const root = crossing(observer, heightDeg, -1, start, days);
  if (root === null) return null;
  const isBorder = (second: number) =>
    !isDown(observer, heightDeg, second) && isDown(observer, heightDeg, second + 1);
  return settle(Math.floor(root), isBorder);
}

/** The first second at which the sun is up again. */
function nextRise(observer: Observer, heightDeg: number, start: number, days: number): number | null {
  const root = crossing(observer, heightDeg, +1, start, days);
  if (root === null) return null;
  const isBorder = (second: number) =>
    isDown(observer, heightDeg, second - 1) && !isDown(observer, heightDeg, second);
  return settle(Math.ceil(root), isBorder);
}

/** The search stops within a tenth of a second of the crossing, so the border second can be a neighbour. */
function settle(second: number, isBorder: (second: number) => boolean): number {
  return [second, second - 1, second + 1].find(isBorder) ?? second;
}

function crossing(
  observer: Observer,
  heightDeg: number,
  direction: 1 | -1,
  start: number,
  days: number,
): number | null {
  const time = SearchAltitude(Body.Sun, observer, direction, daysFromJ2000(start), days, heightDeg);
  return time === null ? null : time.ut * SECONDS_IN_A_DAY + J2000_SECONDS;
}

function isDown(observer: Observer, heightDeg: number, second: number): boolean {
  const time = new AstroTime(daysFromJ2000(second));
  const sun = Equator(Body.Sun, time, observer, true, true);
  return Horizon(time, observer, sun.ra, sun.dec).altitude <= heightDeg;
}

const daysFromJ2000 = (second: number): number => (second - J2000_SECONDS) / SECONDS_IN_A_DAY;

const epochSeconds = (instant: Instant): number => parseInstant(instant).epochMilliseconds / 1000;

function observerAt({ latitudeDeg, longitudeDeg }: Point): Observer {
  // Written so that NaN is refused too.
  if (!(Math.abs(latitudeDeg) <= 90 && Math.abs(longitudeDeg) <= 180)) {
    throw new RangeError(`Not a point on Earth: latitude ${latitudeDeg}, longitude ${longitudeDeg}`);
  }
  return new Observer(latitudeDeg, longitudeDeg, 0);
}
