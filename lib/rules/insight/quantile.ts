/**
 * Medians and percentiles by nearest rank: the smallest value such that at least so many per cent of all values are not
 * larger. It is always a value that occurred, and needs no arithmetic between two. Method as named in statistics books (from
 * memory); tests/outside holds it against d3-array.
 */

/** With fewer values than this no percentile is said: one write-up more would move it anywhere. Our own choice. */
export const LEAST_FOR_PERCENTILES = 5;

/**
 * The value of nearest rank.
 * @param values whole numbers in any order, at least one
 * @param percent whole, 1 to 100
 */
export function nearestRank(values: readonly number[], percent: number): number {
  if (values.length === 0) throw new RangeError('No values, no percentile.');
  if (!Number.isInteger(percent) || percent < 1 || percent > 100) {
    throw new RangeError(`Not a whole percentage from 1 to 100: ${percent}`);
  }
  // ceil(percent * n / 100) in whole numbers.
  const rank = Math.floor((percent * values.length + 99) / 100);
  return values.toSorted((a, b) => a - b)[rank - 1] ?? 0;
}

/** How values spread. Percentiles are null where there are too few. */
export interface Spread {
  readonly count: number;
  readonly median: number | null;
  readonly ninetieth: number | null;
  readonly least: number | null;
  readonly most: number | null;
}

export function spreadOf(values: readonly number[]): Spread {
  const enough = values.length >= LEAST_FOR_PERCENTILES;
  return {
    count: values.length,
    median: enough ? nearestRank(values, 50) : null,
    ninetieth: enough ? nearestRank(values, 90) : null,
    least: values.length === 0 ? null : Math.min(...values),
    most: values.length === 0 ? null : Math.max(...values),
  };
}
