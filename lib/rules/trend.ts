/**
 * Trends of what is measured again and again on one aircraft. No regulation: common practice. A trend is never a verdict;
 * what is outside a limit is written up by the walkaround itself.
 *
 * Oil used in an hour is (level before + oil added − level after) / hours flown between, and only between two levels read at
 * a known time in service. Where the level rose more than what was recorded as added, somebody added oil and did not
 * record it: that span is left out, and the reader is told, because filling it in with a guess would hide a worn engine.
 * Levels read twice without a flight between (dipped, filled up, dipped again) start anew from the last.
 */
import type { HoursTenths, Instant } from './facts';
import { parseInstant } from './months';

/** How many of the newest are compared with everything before them. Our choice: about a fortnight of a busy trainer. */
export const RECENT = 5;
/** Fewer than this before them is nothing to compare with. */
export const LEAST_BEFORE = 3;

/** One measured value; whole number of the measurement's smallest unit. */
export interface MeasuredPoint {
  readonly at: Instant;
  readonly value: number;
  /** Total time in service then; null when the meters do not say. */
  readonly ttisTenths: HoursTenths | null;
}

/** Oil poured in, recorded. Tenths of a quart. */
export interface OilAdded {
  readonly at: Instant;
  readonly tenths: number;
}

/** Between two levels. */
export interface OilSpan {
  readonly from: Instant;
  readonly to: Instant;
  readonly flownTenths: HoursTenths | null;
  readonly addedTenths: number;
  /** Tenths of a quart; negative where an addition was not recorded. */
  readonly usedTenths: number;
  /** Thousandths of a quart an hour; null where the span is left out. */
  readonly rateThousandths: number | null;
  readonly leftOut: 'addition-not-recorded' | 'time-not-known' | null;
}

/** All spans between levels, oldest first. Levels and additions in any order. */
export function oilSpans(levels: readonly MeasuredPoint[], added: readonly OilAdded[]): OilSpan[] {
  const inOrder = levels.toSorted((a, b) => instantOf(a.at) - instantOf(b.at));
  return inOrder.flatMap((after, index) => {
    const before = inOrder[index - 1];
    return before ? spanBetween(before, after, added) : [];
  });
}

function spanBetween(before: MeasuredPoint, after: MeasuredPoint, added: readonly OilAdded[]): OilSpan[] {
  const flownTenths =
    before.ttisTenths === null || after.ttisTenths === null ? null : after.ttisTenths - before.ttisTenths;
  if (flownTenths !== null && flownTenths <= 0) return [];
  const addedTenths = added
    .filter(({ at }) => instantOf(at) > instantOf(before.at) && instantOf(at) <= instantOf(after.at))
    .reduce((sum, { tenths }) => sum + tenths, 0);
  const usedTenths = before.value + addedTenths - after.value;
  const leftOut = usedTenths < 0 ? 'addition-not-recorded' : flownTenths === null ? 'time-not-known' : null;
  return [
    {
      from: before.at,
      to: after.at,
      flownTenths,
      addedTenths,
      usedTenths,
      rateThousandths:
        leftOut === null && flownTenths !== null ? Math.round((usedTenths * 1000) / flownTenths) : null,
      leftOut,
    },
  ];
}

/** The newest against what was before; `before` null when there is too little to compare with. */
export interface RecentAgainstBefore {
  readonly recent: number;
  readonly recentCount: number;
  readonly before: number | null;
  readonly beforeCount: number;
}

/** Oil used an hour, thousandths of a quart: all oil over all hours of the last five spans, and of those before. */
export function oilUse(spans: readonly OilSpan[]): RecentAgainstBefore | null {
  const counted = spans.filter(({ leftOut }) => leftOut === null);
  return compare(counted, (some) => {
    const used = total(some.map(({ usedTenths }) => usedTenths));
    const flown = total(some.map(({ flownTenths }) => flownTenths ?? 0));
    return Math.round((used * 1000) / flown);
  });
}

/** The mean of the last five values and of those before, rounded to the smallest unit. Points oldest first. */
export const levelOf = (points: readonly MeasuredPoint[]): RecentAgainstBefore | null =>
  compare(points, (some) => Math.round(total(some.map(({ value }) => value)) / some.length));

function compare<One>(
  all: readonly One[],
  mean: (some: readonly One[]) => number,
): RecentAgainstBefore | null {
  const recent = all.slice(-RECENT);
  if (recent.length === 0) return null;
  const before = all.slice(0, -RECENT);
  return {
    recent: mean(recent),
    recentCount: recent.length,
    before: before.length < LEAST_BEFORE ? null : mean(before),
    beforeCount: before.length,
  };
}

/** A meter reading, for the time in service at the moment of a measurement. */
export interface TimeAt {
  readonly at: Instant;
  readonly ttisTenths: HoursTenths;
}

/** A reading so close before or after counts as of the same moment: nobody flies between. */
const SAME_MOMENT_MS = 30 * 60_000;

/**
 * Total time in service at a moment: the reading of that moment, or the figure that stood before it and still stands after
 * it. The last reading stands until there is a later one. Null when the aircraft flew somewhere between the readings
 * around it, so that nobody knows on which side of the flight the moment lies.
 * @param readings oldest first
 */
export function timeInServiceAt(at: Instant, readings: readonly TimeAt[]): HoursTenths | null {
  const moment = instantOf(at);
  const close = readings
    .filter((one) => Math.abs(instantOf(one.at) - moment) <= SAME_MOMENT_MS)
    .toSorted((a, b) => Math.abs(instantOf(a.at) - moment) - Math.abs(instantOf(b.at) - moment))[0];
  if (close) return close.ttisTenths;
  const before = readings.findLast((one) => instantOf(one.at) <= moment);
  if (!before) return null;
  const after = readings.find((one) => instantOf(one.at) > moment);
  return !after || after.ttisTenths === before.ttisTenths ? before.ttisTenths : null;
}

const instantOf = (at: Instant): number => parseInstant(at).epochMilliseconds;
const total = (numbers: readonly number[]): number => numbers.reduce((sum, one) => sum + one, 0);
