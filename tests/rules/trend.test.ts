import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { levelOf, oilSpans, oilUse, timeInServiceAt, type MeasuredPoint } from '@/lib/rules/trend';

// Common practice, no source. The arithmetic is issue 4's "oil used an hour": (before + added − after) / hours.
const day = (count: number) => new Date(Date.UTC(2026, 9, 1 + count, 8)).toISOString();
const level = (on: number, value: number, ttisTenths: number | null): MeasuredPoint => ({
  at: day(on),
  value,
  ttisTenths,
});

describe('oil used in an hour', () => {
  test('6.0 qt to 5.5 qt in 4.0 h is 0.125 qt an hour', () => {
    expect(oilSpans([level(0, 60, 1000), level(3, 55, 1040)], [])).toMatchObject([
      { flownTenths: 40, usedTenths: 5, rateThousandths: 125, leftOut: null },
    ]);
  });

  test('a quart added between: 5.0 + 1.0 − 5.5 used in 5.0 h is 0.1 qt an hour', () => {
    const spans = oilSpans([level(0, 50, 1000), level(3, 55, 1050)], [{ at: day(1), tenths: 10 }]);
    expect(spans).toMatchObject([{ addedTenths: 10, usedTenths: 5, rateThousandths: 100 }]);
  });

  test.each([
    // The level just not risen, as high as before, just risen.
    { after: 59, leftOut: null },
    { after: 60, leftOut: null },
    { after: 61, leftOut: 'addition-not-recorded' },
  ])('from 6.0 to $after tenths without a recorded addition: $leftOut', ({ after, leftOut }) => {
    expect(oilSpans([level(0, 60, 1000), level(3, after, 1040)], [])[0]?.leftOut).toBe(leftOut);
  });

  test('an addition smaller than the rise is not all that was added', () => {
    const spans = oilSpans([level(0, 50, 1000), level(3, 61, 1050)], [{ at: day(1), tenths: 10 }]);
    expect(spans).toMatchObject([{ leftOut: 'addition-not-recorded', rateThousandths: null }]);
  });

  test('without a time in service at either end there is no rate', () => {
    const spans = oilSpans([level(0, 60, null), level(3, 55, 1040), level(5, 50, 1080)], []);
    expect(spans.map(({ leftOut }) => leftOut)).toEqual(['time-not-known', null]);
  });

  test('dipped, filled up and dipped again without a flight: the span starts from the last', () => {
    const spans = oilSpans(
      [level(0, 48, 1000), level(1, 58, 1000), level(4, 53, 1040)],
      [{ at: day(1), tenths: 10 }],
    );
    expect(spans).toMatchObject([{ from: day(1), addedTenths: 0, usedTenths: 5, rateThousandths: 125 }]);
  });

  test('the last five against the rest: all oil over all hours', () => {
    // Four spans of 0.5 qt in 5.0 h, then five of 0.5 qt in 2.5 h: 0.1 and 0.2 qt an hour.
    const levels = [level(0, 100, 0)];
    for (let span = 0; span < 9; span += 1) {
      const last = levels[span];
      const hours = span < 4 ? 50 : 25;
      levels.push(level(span + 1, (last?.value ?? 0) - 5, (last?.ttisTenths ?? 0) + hours));
    }
    expect(oilUse(oilSpans(levels, []))).toEqual({
      recent: 200,
      recentCount: 5,
      before: 100,
      beforeCount: 4,
    });
  });

  test.each([
    // Three before them are enough to compare with: under, on, over. Our choice.
    { spans: 7, before: null },
    { spans: 8, before: 100 },
    { spans: 9, before: 100 },
  ])('$spans spans: before is $before', ({ spans, before }) => {
    const levels = [...Array(spans + 1).keys()].map((index) => level(index, 100 - index * 5, index * 50));
    expect(oilUse(oilSpans(levels, []))?.before).toBe(before);
  });

  test('property: what was poured in and recorded never shows as used or gained', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 1, max: 80 }), (used, added) => {
        const spans = oilSpans(
          [level(0, 60, 0), level(2, 60 - used + added, 40)],
          [{ at: day(1), tenths: added }],
        );
        expect(spans[0]?.usedTenths).toBe(used);
      }),
    );
  });
});

test('the level of late is the rounded mean of the last five', () => {
  const points = [30, 30, 30, 28, 27, 26, 25, 24].map((value, index) => level(index, value, null));
  expect(levelOf(points)).toEqual({ recent: 26, recentCount: 5, before: 30, beforeCount: 3 });
  expect(levelOf([])).toBeNull();
});

describe('time in service at a moment', () => {
  const readings = [
    { at: '2026-11-01T10:00:00Z', ttisTenths: 100 },
    { at: '2026-11-03T10:00:00Z', ttisTenths: 100 },
    { at: '2026-11-05T10:00:00Z', ttisTenths: 130 },
  ];

  test.each([
    // Half an hour to a reading is the same moment: under, on, over. Our choice.
    { at: '2026-11-05T09:31:00Z', ttis: 130 },
    { at: '2026-11-05T09:30:00Z', ttis: 130 },
    { at: '2026-11-05T09:29:00Z', ttis: null },
    // The same figure before and after: nobody flew.
    { at: '2026-11-02T10:00:00Z', ttis: 100 },
    // Somewhere between two figures: before or after the flight is not known.
    { at: '2026-11-04T10:00:00Z', ttis: null },
    // The last reading stands.
    { at: '2026-11-09T10:00:00Z', ttis: 130 },
    // Before the first there is nothing.
    { at: '2026-10-09T10:00:00Z', ttis: null },
  ])('$at: $ttis', ({ at, ttis }) => {
    expect(timeInServiceAt(at, readings)).toBe(ttis);
  });
});

describe('spans in whatever order they are entered', () => {
  const [first, second, third] = [level(0, 60, 1000), level(3, 55, 1040), level(5, 50, 1060)];

  test('levels are put in order of time', () => {
    const spans = oilSpans([first, second, third], []);
    expect(spans.map(({ flownTenths }) => flownTenths)).toEqual([40, 20]);
    expect(oilSpans([third, first, second], [])).toEqual(spans);
    expect(oilSpans([second, third, first], [])).toEqual(spans);
  });

  test.each([
    // Between the levels of day 0 and day 3: at the first not any more, at the last still.
    { on: -1, addedTenths: 0 },
    { on: 0, addedTenths: 0 },
    { on: 1, addedTenths: 10 },
    { on: 3, addedTenths: 10 },
    { on: 4, addedTenths: 0 },
  ])('oil added on day $on: $addedTenths tenths are in the span', ({ on, addedTenths }) => {
    expect(oilSpans([first, second], [{ at: day(on), tenths: 10 }])[0]?.addedTenths).toBe(addedTenths);
  });

  test('without a time in service at the later end there are no hours either', () => {
    expect(oilSpans([first, level(3, 55, null)], [])).toMatchObject([
      { flownTenths: null, usedTenths: 5, rateThousandths: null, leftOut: 'time-not-known' },
    ]);
  });

  test('spans left out are in no mean', () => {
    const spans = oilSpans([first, second, level(5, 90, 1060), level(7, 85, 1100)], []);
    expect(spans.map(({ leftOut }) => leftOut)).toEqual([null, 'addition-not-recorded', null]);
    // 1.0 qt over 8.0 h.
    expect(oilUse(spans)).toMatchObject({ recent: 125, recentCount: 2 });
  });
});

test('of readings within half an hour the nearest counts, before or after, in whatever order', () => {
  const reading = (minute: number, ttisTenths: number) => ({
    at: new Date(Date.UTC(2026, 9, 1, 8, minute)).toISOString(),
    ttisTenths,
  });
  const asked = reading(30, 0).at;
  expect(timeInServiceAt(asked, [reading(5, 1), reading(28, 2), reading(45, 3)])).toBe(2);
  expect(timeInServiceAt(asked, [reading(2, 1), reading(15, 2), reading(33, 3)])).toBe(3);
  expect(timeInServiceAt(asked, [reading(29, 1), reading(35, 2)])).toBe(1);
});
