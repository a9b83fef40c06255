/**
 * When something that is limited by hours will probably fall due, from how the aircraft has been flown. Information for
 * planning a shop visit, never an answer: what is due is judged by hours and dates alone (see `due.ts`).
 *
 * The model. Time in service grows as a sum of many independent flights, so that the hours of n weeks are roughly normal
 * with mean n·μ and variance n·σ² (the normal approximation of a renewal reward sum: W. Feller, An Introduction to
 * Probability Theory and Its Applications, vol. II, chapter XI; named from memory, the page was not looked up). μ and σ
 * are taken from spans between meter readings, weighted by their length, and are themselves uncertain, which adds
 * n²·σ²/T over T weeks looked at: the prediction interval of any textbook of applied statistics. The band is where
 * R = n·μ ± t·σ·√(n + n²/T) has R hours left, with Student's t for the few spans there are.
 *
 * Its limits. It knows no season, weather, course that ends or aircraft that is sold; weeks that resemble each other
 * (a run of bad weather) make the true band wider; few and long flights are less normal than many short ones; and
 * readings far apart hide how uneven the weeks were. That is why the band is called "about", and why nothing is said
 * from less than four weeks of readings.
 */
import type { CalendarDate, Fact, HoursTenths, Instant } from './facts';
import { known, unknown } from './facts';
import { parseCalendarDate, parseInstant } from './months';

/** Weeks looked back. Our choice: long enough for a dozen weeks to show their spread, short enough to follow the season. */
export const WEEKS_LOOKED_AT = 12;
/** Weeks that the readings must cover, and how old the newest may be, before anything is said. */
export const LEAST_WEEKS = 4;
/** The band holds the true date in about so many of a hundred cases. */
export const BAND_PER_CENT = 80;
/** No date is said beyond this: five years. */
export const MOST_WEEKS = 260;

const WEEK_MS = 7 * 24 * 60 * 60 * 1000;
const LEAST_SPANS = 3;
/** Readings a little under a week apart still make a span: a weekly reader does not come to the minute. */
const LEAST_SPAN_WEEKS = 6.5 / 7;

/** Student's t, two-sided 80 per cent, for 1 to 12 degrees of freedom (any table of the t distribution), then normal. */
const T_80 = [3.078, 1.886, 1.638, 1.533, 1.476, 1.44, 1.415, 1.397, 1.383, 1.372, 1.363, 1.356] as const;
const Z_80 = 1.282;

/** Total time in service at one moment. */
export interface TimeReading {
  readonly at: Instant;
  readonly ttisTenths: HoursTenths;
}

/** How much an aircraft flies. Estimates, not times in service: they may have any number of decimals. */
export interface Pace {
  /** Mean tenths of an hour a week. */
  readonly tenthsAWeek: number;
  /** Spread of one week about the mean, tenths. */
  readonly spreadTenths: number;
  readonly weeks: number;
  readonly spans: number;
}

/**
 * The flying pace over the last `WEEKS_LOOKED_AT` weeks before `now`. Unknown when the readings cover less than
 * `LEAST_WEEKS`, are fewer than four, or the newest is older than that: an aircraft nobody reads is not the same as a
 * parked one. Readings that run back are left out.
 */
export function flyingPace(readings: readonly TimeReading[], now: Instant): Fact<Pace> {
  const spans = spansOf(readings, parseInstant(now).epochMilliseconds);
  if (spans === null)
    return unknown('how much it flies: the meters have not been read in the last four weeks');
  const weeks = sum(spans.map((span) => span.weeks));
  if (weeks < LEAST_WEEKS || spans.length < LEAST_SPANS) {
    return unknown('how much it flies: less than four full weeks of meter readings');
  }
  const mean = sum(spans.map((span) => span.tenths)) / weeks;
  const squares = spans.map((span) => (span.tenths - mean * span.weeks) ** 2 / span.weeks);
  return known({
    tenthsAWeek: mean,
    spreadTenths: Math.sqrt(sum(squares) / (spans.length - 1)),
    weeks,
    spans: spans.length,
  });
}

interface Span {
  readonly weeks: number;
  readonly tenths: number;
}

/** Spans of about a week or more between readings, the newest first; null when the newest reading is too old. */
function spansOf(readings: readonly TimeReading[], now: number): Span[] | null {
  const before = readings
    .map(({ at, ttisTenths }) => ({ at: parseInstant(at).epochMilliseconds, ttisTenths }))
    .filter(({ at }) => at <= now)
    .sort((a, b) => b.at - a.at || b.ttisTenths - a.ttisTenths);
  let end = before[0];
  if (!end || now - end.at > LEAST_WEEKS * WEEK_MS) return null;
  const spans: Span[] = [];
  for (const reading of before) {
    if (now - end.at >= WEEKS_LOOKED_AT * WEEK_MS) break;
    const weeks = (end.at - reading.at) / WEEK_MS;
    if (weeks < LEAST_SPAN_WEEKS || reading.ttisTenths > end.ttisTenths) continue;
    // A span that reaches back beyond twice the time looked at says nothing of now.
    if (now - reading.at > 2 * WEEKS_LOOKED_AT * WEEK_MS) break;
    spans.push({ weeks, tenths: end.ttisTenths - reading.ttisTenths });
    end = reading;
  }
  return spans;
}

/** When hours run out: the date at the mean pace, and the band. */
export interface HoursForecast {
  readonly on: CalendarDate;
  readonly earliest: CalendarDate;
  /** Null: it may last longer than can be said. */
  readonly latest: CalendarDate | null;
}

/**
 * The date on which `tenthsLeft` are used up at this pace. Unknown, with words for the reader, when the aircraft has not
 * flown, when the date lies more than five years out, or when nothing is left to forecast.
 * @param today date at the base
 */
export function hoursForecast(
  tenthsLeft: HoursTenths,
  pace: Fact<Pace>,
  today: CalendarDate,
): Fact<HoursForecast> {
  if (tenthsLeft < 0) return unknown('no forecast: it is over already');
  if (!pace.known) return pace;
  const { tenthsAWeek, weeks, spans } = pace.value;
  if (tenthsAWeek <= 0) return unknown(`no date: it has not flown in ${Math.round(weeks)} weeks`);
  const mean = tenthsLeft / tenthsAWeek;
  if (mean > MOST_WEEKS) return unknown('no date: more than five years away at this pace');
  const deviation = tOf(spans - 1) * pace.value.spreadTenths;
  const { earliest, latest } = bandOf(tenthsLeft, tenthsAWeek, deviation ** 2, weeks);
  return known({
    on: dayAfterWeeks(today, mean, Math.floor),
    earliest: dayAfterWeeks(today, Math.min(earliest, mean), Math.floor),
    latest:
      latest === null || latest > MOST_WEEKS ? null : dayAfterWeeks(today, Math.max(latest, mean), Math.ceil),
  });
}

/** Solves (R − n·μ)² = v·(n + n²/T) for n: its smaller root is the earliest, its larger the latest number of weeks. */
function bandOf(left: number, mean: number, variance: number, weeks: number) {
  const a = mean ** 2 - variance / weeks;
  const b = 2 * left * mean + variance;
  const root = Math.sqrt(Math.max(0, b ** 2 - 4 * a * left ** 2));
  return {
    earliest: left === 0 ? 0 : (2 * left ** 2) / (b + root),
    // Where the mean itself may be nothing, there is no latest.
    latest: a > 0 ? (b + root) / (2 * a) : null,
  };
}

const tOf = (degrees: number): number => T_80[degrees - 1] ?? Z_80;

const dayAfterWeeks = (today: CalendarDate, weeks: number, round: (days: number) => number): CalendarDate =>
  parseCalendarDate(today)
    .add({ days: round(weeks * 7) })
    .toString();

/** Which limit comes first, and when. */
export interface FirstLimit {
  readonly by: 'calendar' | 'hours';
  readonly on: CalendarDate;
  readonly earliest: CalendarDate;
  /** Null: later than can be said. */
  readonly latest: CalendarDate | null;
}

/**
 * Whichever comes first of a calendar limit and forecast hours. A fixed day caps the band: it cannot be later. Null when
 * there is no date of either kind. Both on one day count as the calendar's, which is certain.
 */
export function whicheverFirst(
  on: CalendarDate | null,
  hours: Fact<HoursForecast> | null,
): FirstLimit | null {
  const flown = hours?.known ? hours.value : null;
  if (on === null) return flown && { by: 'hours', ...flown };
  if (flown === null) return { by: 'calendar', on, earliest: on, latest: on };
  return {
    by: flown.on < on ? 'hours' : 'calendar',
    on: earlier(flown.on, on),
    earliest: earlier(flown.earliest, on),
    latest: flown.latest === null ? on : earlier(flown.latest, on),
  };
}

const earlier = (one: CalendarDate, other: CalendarDate): CalendarDate => (one < other ? one : other);

const sum = (numbers: readonly number[]): number => numbers.reduce((total, one) => total + one, 0);
