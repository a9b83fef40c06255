/**
 * Time as spans of whole minutes since 1970 in UTC, so that sums are exact and days of 23 or 25 hours need no care. A span
 * holds its first minute and not its last: what ends at 10:00 and what begins at 10:00 do not overlap. An instant counts as
 * the minute it lies in.
 */
import type { Instant } from '../facts';
import { parseInstant } from '../months';

/** From a minute until before another; `until` may be Infinity for what has not ended. */
export interface Span {
  readonly from: number;
  readonly until: number;
}

/** A span as a record tells it; null: not ended. */
export interface Stretch {
  readonly from: Instant;
  readonly until: Instant | null;
}

const MS_A_MINUTE = 60_000;

/** The minute an instant lies in. */
export const minuteOf = (at: Instant): number => Math.floor(parseInstant(at).epochMilliseconds / MS_A_MINUTE);

export const spanOf = ({ from, until }: Stretch): Span => ({
  from: minuteOf(from),
  until: until === null ? Infinity : minuteOf(until),
});

/** What of `span` lies in `time`; nothing of it is left out. */
export function clip(span: Span, time: Span): Span[] {
  const from = Math.max(span.from, time.from);
  const until = Math.min(span.until, time.until);
  return from < until ? [{ from, until }] : [];
}

/** The same time without overlaps, in order. */
export function union(spans: readonly Span[]): Span[] {
  const joined: Span[] = [];
  for (const span of spans.filter(({ from, until }) => from < until).toSorted((a, b) => a.from - b.from)) {
    const last = joined.at(-1);
    if (last && span.from <= last.until) {
      joined[joined.length - 1] = { from: last.from, until: Math.max(last.until, span.until) };
    } else joined.push(span);
  }
  return joined;
}

/** `span` without the time of `others`. */
export function without(span: Span, others: readonly Span[]): Span[] {
  const left: Span[] = [];
  let { from } = span;
  for (const other of union(others)) {
    left.push(...clip({ from, until: other.from }, span));
    from = Math.max(from, other.until);
  }
  return [...left, ...clip({ from, until: span.until }, span)];
}

/** Minutes in all, overlaps counted once. Only for spans that end. */
export const minutesIn = (spans: readonly Span[]): number =>
  union(spans).reduce((sum, { from, until }) => sum + until - from, 0);
