import { Temporal } from 'temporal-polyfill';
import { headline } from '../rules/answer';
import type { CalendarDate, HoursTenths, Instant } from '../rules/facts';
import { dayInWords } from '../rules/in-words';
import { msOf, type LightStep, type TimeWindow } from '../rules/light-over-time';
import type { BorderEvent, Lane, LaneOverTime } from '../rules/over-time';
import type { BookedFlight } from '../rules/spent-hours';
import type { Line, Outcome } from '../rules/verdict';

/** A stretch with one answer for the same reasons, as it is drawn; the light may change inside it. */
export interface DaySpan {
  readonly from: Instant;
  readonly until: Instant;
  readonly outcome: Outcome;
  /** The one thing that decides, in a few words; null when all is in order. */
  readonly headline: string | null;
}

export interface DayLane {
  /** "vfr-hire". */
  readonly id: string;
  /** "VFR, for hire". */
  readonly name: string;
  readonly spans: readonly DaySpan[];
}

/** What one border changes for the lanes that it changes alike. */
export interface DayChange {
  readonly lanes: readonly string[];
  readonly before: Outcome;
  readonly after: Outcome;
  readonly comes: readonly Line[];
  readonly goes: readonly Line[];
}

/** An instant of the day at which something happens. */
export interface DayBorder {
  readonly at: Instant;
  /** "A", "B": marks it in the drawing; null where the answers stay as they are. */
  readonly letter: string | null;
  /** What happens, in words. */
  readonly events: readonly string[];
  /** Empty: the answers stay as they are. */
  readonly changes: readonly DayChange[];
}

/** What the light is over a stretch. */
export interface DayLight {
  readonly from: Instant;
  readonly until: Instant;
  readonly light: 'day' | 'twilight' | 'night';
}

/** A mark of the clock on the wall at the base; the days clocks change have one more or one less. */
export interface HourMark {
  readonly at: Instant;
  /** "06". */
  readonly label: string;
}

export interface DayFlight {
  readonly id: string;
  readonly label: string;
  readonly departAt: Instant;
  readonly arriveAt: Instant;
  readonly plannedTenths: HoursTenths;
  readonly state: BookedFlight['state'];
}

export const laneId = ({ rules, hire }: Lane): string =>
  `${rules.toLowerCase()}-${hire ? 'hire' : 'private'}`;
export const laneName = ({ rules, hire }: Lane): string => `${rules}, ${hire ? 'for hire' : 'private'}`;

/** A lane for drawing: what only the light parts is one stretch. */
export function dayLane({ lane, spans, borders }: LaneOverTime): DayLane {
  const drawn: DaySpan[] = [];
  for (const [index, { from, until, answer }] of spans.entries()) {
    const border = borders[index - 1];
    const last = drawn.at(-1);
    if (last !== undefined && border !== undefined && border.comes.length + border.goes.length === 0) {
      drawn[drawn.length - 1] = { ...last, until };
    } else {
      const said = answer.outcome === 'go' ? null : headline(answer);
      drawn.push({ from, until, outcome: answer.outcome, headline: said });
    }
  }
  return { id: laneId(lane), name: laneName(lane), spans: drawn };
}

/** Every border of every lane in order of time, each instant once; lanes that change alike are said together. */
export function dayBorders(lanes: readonly LaneOverTime[]): DayBorder[] {
  const found = new Map<Instant, { events: string[]; changes: DayChange[] }>();
  for (const { lane, spans, borders } of lanes) {
    for (const [index, { at, events, comes, goes }] of borders.entries()) {
      const here = found.get(at) ?? { events: events.map(eventInWords), changes: [] };
      found.set(at, here);
      const before = spans[index]?.answer.outcome;
      const after = spans[index + 1]?.answer.outcome;
      if (before === undefined || after === undefined || comes.length + goes.length === 0) continue;
      const change = { lanes: [laneName(lane)], before, after, comes, goes };
      const same = here.changes.findIndex((other) => sameChange(other, change));
      const other = here.changes[same];
      if (other === undefined) here.changes.push(change);
      else here.changes[same] = { ...other, lanes: [...other.lanes, laneName(lane)] };
    }
  }
  let marked = 0;
  return [...found]
    .sort(([a], [b]) => msOf(a) - msOf(b))
    .map(([at, { events, changes }]) => {
      const letter = changes.length === 0 ? null : letterOf(marked++);
      return { at, letter, events, changes };
    });
}

/** A to Z, then AA: more than that is no day of a light aircraft. */
const letterOf = (index: number): string =>
  `${index >= 26 ? letterOf(Math.floor(index / 26) - 1) : ''}${String.fromCharCode(65 + (index % 26))}`;

function sameChange(a: DayChange, b: DayChange): boolean {
  const said = ({ before, after, comes, goes }: DayChange) => JSON.stringify([before, after, comes, goes]);
  return said(a) === said(b);
}

function eventInWords(event: BorderEvent): string {
  switch (event.what) {
    case 'sunset':
      return 'Sunset';
    case 'sunrise':
      return 'Sunrise';
    case 'night-begins':
      return 'Night begins: evening civil twilight ends';
    case 'night-ends':
      return 'Night ends: morning civil twilight begins';
    case 'reading-too-old':
      return 'The last oil reading or walkaround becomes too old for a rule of the house';
    case 'date-ends':
      return `${dayInWords(event.date)} is over`;
    case 'flight-departs':
      return `Departs: ${event.flight.label}`;
    case 'flight-ends':
      return `Ends: ${event.flight.label}`;
  }
}

/** The light of the window as stretches. Twilight: between sunset and sunrise, and not night. */
export const dayLight = (steps: readonly LightStep[], { from, until }: TimeWindow): DayLight[] =>
  steps.map((step, index) => ({
    from: index === 0 ? from : Temporal.Instant.fromEpochMilliseconds(step.fromMs).toString(),
    until: untilOf(steps[index + 1], until),
    light: step.light === 'night' ? 'night' : step.betweenSunsetAndSunrise ? 'twilight' : 'day',
  }));

const untilOf = (next: LightStep | undefined, until: Instant): Instant =>
  next === undefined ? until : Temporal.Instant.fromEpochMilliseconds(next.fromMs).toString();

const MARK_EVERY_HOURS = 3;

/** A mark every three hours of the clock on the wall in `zone`, without the two ends of the window. */
export function hourMarks({ from, until }: TimeWindow, zone: string): HourMark[] {
  const marks: HourMark[] = [];
  const end = Temporal.Instant.from(until).toZonedDateTimeISO(zone);
  let at = Temporal.Instant.from(from)
    .toZonedDateTimeISO(zone)
    .round({ smallestUnit: 'hour', roundingMode: 'ceil' });
  for (; Temporal.ZonedDateTime.compare(at, end) < 0; at = at.add({ hours: 1 })) {
    if (at.hour % MARK_EVERY_HOURS !== 0 || at.minute !== 0) continue;
    if (at.toInstant().equals(Temporal.Instant.from(from))) continue;
    marks.push({ at: at.toInstant().toString(), label: String(at.hour).padStart(2, '0') });
  }
  return marks;
}

/** The date `days` after `date`. */
export const daysAfter = (date: CalendarDate, days: number): CalendarDate =>
  Temporal.PlainDate.from(date).add({ days }).toString();
