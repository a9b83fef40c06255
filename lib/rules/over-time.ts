/**
 * The answer over time: for one aircraft at its base, the spans of time over which an answer holds, and what happens at
 * each border between them.
 *
 * The answer at an instant is that for an aircraft in the air at that instant: the light then, the local date then, the
 * hours that booked flights have spent by then (`spent-hours.ts`). While a booked flight is in the air its own hours are
 * held against the limits, so the span says whether it fits; afterwards, whether another tenth of an hour fits.
 *
 * Exact, not sampled. Of the time of a flight the law's rules read nothing but `light`, `betweenSunsetAndSunrise`, `sunsetAt`,
 * `departOn`, `arriveOn` and `plannedTenths` (looked through on 26 Nov 2026: no file of `lib/rules` that answers a
 * flight reads `departAt` or `arriveAt` beyond making those), and of the aircraft only its time in service moves by
 * itself. Two rules of the house read the departure as well (`house/readings.ts`: how old an oil reading or a walkaround
 * is); an instant at which no booked flight is in the air counts as a departure then, any other belongs to the flight that
 * departed first. So an answer can change only at sunset, dusk, dawn, sunrise, local midnight, where a booked flight departs
 * or ends, and where such an age ends; it is asked at each of these and nowhere else. `tests/properties/over-time.test.ts` asks at other instants too
 * and turns red when a rule comes to read more of the time.
 *
 * The light is that of 1.1 and 91.209(a)(1) at the base: `light-over-time.ts`. Days of 23 and 25 hours: `months.ts`.
 */
import type { AircraftFacts } from './aircraft';
import { answerForUse } from './answer';
import type { Instant } from './facts';
import { agesEndAt, agesEnded } from './house/readings';
import { instantOfMs, lightOverTime, msOf, type LightStep, type TimeWindow } from './light-over-time';
import { momentsOf, type BorderEvent, type Moment } from './moments-over-time';
import { operationId, type OperationKind } from './operations';
import { withSpent, type BookedFlight } from './spent-hours';
import { momentUse, type ReferenceBase } from './use-of-flight';
import type { Answer, Line } from './verdict';

export type { BorderEvent } from './moments-over-time';

/** What stays the same while the light changes. */
export interface Lane {
  readonly rules: 'VFR' | 'IFR';
  readonly hire: boolean;
}

/** All four, in the order in which screens show them. */
export const LANES: readonly Lane[] = (['VFR', 'IFR'] as const).flatMap((rules) =>
  [false, true].map((hire) => ({ rules, hire })),
);

/** A stretch of time with one answer: from `from`, up to but without `until`. */
export interface AnswerSpan {
  readonly from: Instant;
  readonly until: Instant;
  /** The kind in force: its light is that of the span. */
  readonly kind: OperationKind;
  readonly betweenSunsetAndSunrise: boolean;
  /**
   * Its outcome, bars and limits hold all through. Notes and supporting lines are those of the beginning: they may name
   * hours or a date that move on inside the span.
   */
  readonly answer: Answer;
  /** Booked flights in the air during it. */
  readonly booked: readonly BookedFlight[];
}

/** Where one span ends and the next begins. Without `comes` and `goes` only the light changes. */
export interface Border {
  readonly at: Instant;
  readonly events: readonly BorderEvent[];
  /** Bars and limits that begin there. */
  readonly comes: readonly Line[];
  /** Bars and limits that end there. */
  readonly goes: readonly Line[];
}

/** One lane: its spans tile the window, and `borders[i]` lies between `spans[i]` and `spans[i + 1]`. */
export interface LaneOverTime {
  readonly lane: Lane;
  readonly spans: readonly AnswerSpan[];
  readonly borders: readonly Border[];
}

/**
 * The answers of one aircraft over `stretch`, lane by lane.
 * Refuses (RangeError) a malformed instant, a window that does not end after it begins, a malformed zone or position.
 * @param light the light at the base over the same window; for a fleet it need be worked out only once a base
 */
export function answersOverTime(
  aircraft: AircraftFacts,
  base: ReferenceBase,
  stretch: TimeWindow,
  booked: readonly BookedFlight[],
  lanes: readonly Lane[] = LANES,
  light: readonly LightStep[] = lightOverTime(base, stretch),
): readonly LaneOverTime[] {
  const moments = momentsOf(base.zone, stretch, booked, light, agesEndAt(aircraft));
  const untilMs = msOf(stretch.until);
  return lanes.map((lane) => laneOverTime(lane, moments, untilMs, askOnce(aircraft, base, lane)));
}

/**
 * First border after `now` at which the outcome or the deciding lines of the lane change, or null in the window. A line
 * that only comes to be worded anew ("overdue by 0.5 h", then "by 1.5 h") does not count.
 */
export function nextChange(
  over: LaneOverTime,
  now: Instant,
): {
  readonly at: Instant;
  readonly from: AnswerSpan;
  readonly to: AnswerSpan;
  readonly border: Border;
} | null {
  const nowMs = msOf(now);
  for (const [at, border] of over.borders.entries()) {
    const from = over.spans[at];
    const to = over.spans[at + 1];
    if (from === undefined || to === undefined || msOf(border.at) <= nowMs) continue;
    if (from.answer.outcome !== to.answer.outcome || !isOnlyReworded(border)) {
      return { at: border.at, from, to, border };
    }
  }
  return null;
}

/** The span that holds `at`, or null outside the window. */
export function spanAt(over: LaneOverTime, at: Instant): AnswerSpan | null {
  const ms = msOf(at);
  return over.spans.find(({ from, until }) => msOf(from) <= ms && ms < msOf(until)) ?? null;
}

type Ask = (moment: Moment) => Answer;

/** Asks the rules once for all moments that cannot differ. */
function askOnce(aircraft: AircraftFacts, base: ReferenceBase, lane: Lane): Ask {
  const answers = new Map<string, Answer>();
  const ends = agesEndAt(aircraft);
  return ({ ms, departMs, step, on, spentTenths, plannedTenths }) => {
    const kind = { ...lane, light: step.light };
    const { betweenSunsetAndSunrise, sunsetAt } = step;
    const key = [
      operationId(kind),
      betweenSunsetAndSunrise,
      sunsetAt,
      on,
      spentTenths,
      plannedTenths,
      agesEnded(ends, departMs),
    ].join();
    const before = answers.get(key);
    if (before !== undefined) return before;
    const use = momentUse(kind, base, {
      at: instantOfMs(ms),
      departedAt: instantOfMs(departMs),
      on,
      betweenSunsetAndSunrise,
      sunsetAt,
      plannedTenths,
    });
    const answer = answerForUse(withSpent(aircraft, spentTenths).facts, use);
    answers.set(key, answer);
    return answer;
  };
}

/** A span while it is being put together. */
interface Part {
  readonly moment: Moment;
  readonly answer: Answer;
  readonly booked: readonly BookedFlight[];
}

function laneOverTime(lane: Lane, moments: readonly Moment[], untilMs: number, ask: Ask): LaneOverTime {
  const parts: Part[] = [];
  for (const moment of moments) {
    const answer = ask(moment);
    const last = parts.at(-1);
    if (last !== undefined && isSame(last, moment, answer)) {
      const more = moment.inTheAir.filter((flight) => !last.booked.includes(flight));
      parts[parts.length - 1] = { ...last, booked: [...last.booked, ...more] };
    } else {
      parts.push({ moment, answer, booked: moment.inTheAir });
    }
  }
  return {
    lane,
    spans: parts.map(({ moment, answer, booked }, at) => ({
      from: instantOfMs(moment.ms),
      until: instantOfMs(parts[at + 1]?.moment.ms ?? untilMs),
      kind: { ...lane, light: moment.step.light },
      betweenSunsetAndSunrise: moment.step.betweenSunsetAndSunrise,
      answer,
      booked,
    })),
    borders: parts.slice(1).map((part, at) => borderBetween(parts[at], part)),
  };
}

function isSame(last: Part, { step }: Moment, answer: Answer): boolean {
  return (
    last.moment.step.light === step.light &&
    last.moment.step.betweenSunsetAndSunrise === step.betweenSunsetAndSunrise &&
    last.answer.outcome === answer.outcome &&
    deciding(last.answer).map(inFull).join() === deciding(answer).map(inFull).join()
  );
}

function borderBetween(before: Part | undefined, after: Part): Border {
  const then = before === undefined ? [] : deciding(before.answer);
  const now = deciding(after.answer);
  return {
    at: instantOfMs(after.moment.ms),
    events: after.moment.events,
    comes: without(now, then),
    goes: without(then, now),
  };
}

/** The lines that decide: bars and limits. */
export const deciding = ({ lines }: Answer): readonly Line[] =>
  lines.filter(({ effect }) => effect === 'bars' || effect === 'limits');

const inFull = ({ effect, cite, because, about }: Line): string =>
  JSON.stringify([effect, cite, because, about?.kind, about?.id]);

const butForWords = ({ effect, cite, about }: Line): string =>
  JSON.stringify([effect, cite, about?.kind, about?.id]);

const without = (lines: readonly Line[], others: readonly Line[]): Line[] => {
  const said = new Set(others.map(inFull));
  return lines.filter((line) => !said.has(inFull(line)));
};

/** What comes is what goes, in other words. */
function isOnlyReworded({ comes, goes }: Border): boolean {
  return comes.map(butForWords).sort().join() === goes.map(butForWords).sort().join();
}
