/**
 * Percentiles by nearest rank, held against d3-array, which interpolates (method 7 of Hyndman and Fan, 1996). The two agree
 * wherever d3 has nothing to interpolate, and lie within one value of each other everywhere; and the definition itself is
 * checked with d3's own counting: at least so many per cent are not larger than the value, and fewer would not do.
 */
import { bisectRight, median, quantile, sort } from 'd3-array';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nearestRank } from '@/lib/rules/insight/quantile';

const values = fc.array(fc.integer({ min: 0, max: 500_000 }), { minLength: 1, maxLength: 60 });

describe('against d3-array', () => {
  test('the median of an odd number of values is d3’s median', () => {
    fc.assert(
      fc.property(values, (some) => {
        const odd = some.length % 2 === 1 ? some : [...some, some[0]!];
        expect(nearestRank(odd, 50)).toBe(median(odd));
      }),
    );
  });

  test('of 11, 21, 31 … values the 90th percentile is d3’s', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5 }),
        fc.infiniteStream(fc.integer({ min: 0, max: 9999 })),
        (tens, stream) => {
          const some = [...stream.take(tens * 10 + 1)];
          expect(nearestRank(some, 90)).toBe(quantile(some, 0.9));
        },
      ),
    );
  });

  test('everywhere it lies within one value of d3’s', () => {
    fc.assert(
      fc.property(values, fc.integer({ min: 1, max: 100 }), (some, percent) => {
        const inOrder = sort(some, (a, b) => a - b);
        const ours = nearestRank(some, percent);
        const theirs = quantile(inOrder, percent / 100) ?? NaN;
        const below = inOrder[Math.max(0, inOrder.indexOf(ours) - 1)]!;
        const above = inOrder[Math.min(inOrder.length - 1, inOrder.lastIndexOf(ours) + 1)]!;
        expect(theirs).toBeGreaterThanOrEqual(below);
        expect(theirs).toBeLessThanOrEqual(above);
      }),
    );
  });

  test('the definition: enough values are not larger, and of any smaller value too few', () => {
    fc.assert(
      fc.property(values, fc.integer({ min: 1, max: 100 }), (some, percent) => {
        const inOrder = sort(some, (a, b) => a - b);
        const ours = nearestRank(some, percent);
        const notLarger = (value: number) => bisectRight(inOrder, value);
        expect(notLarger(ours) * 100).toBeGreaterThanOrEqual(percent * some.length);
        const smaller = inOrder.filter((one) => one < ours).at(-1);
        if (smaller !== undefined) expect(notLarger(smaller) * 100).toBeLessThan(percent * some.length);
      }),
    );
  });
});
