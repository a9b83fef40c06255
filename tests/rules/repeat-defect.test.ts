import { describe, expect, test } from 'vitest';
import { known, unknown, type Fact } from '@/lib/rules/facts';
import {
  flightsFlown,
  inRepeatWindow,
  sameSystemBefore,
  sameSystemBy,
  type EarlierWriteUp,
} from '@/lib/rules/repeat-defect';

// Source of the window: issue 4, "the same system within 30 days or 10 flights of a sign-off". What is the same system is
// our own choice.
const NOTHING = { findingKey: null, equipmentId: null, jasc: '' };
const MANY = known(100);

describe('the window', () => {
  test.each([
    { days: 29, within: true },
    { days: 30, within: true },
    { days: 31, within: false },
  ])('$days days and many flights: $within', ({ days, within }) => {
    expect(inRepeatWindow(days, MANY)).toBe(within);
  });

  test.each([
    { flights: 9, within: true },
    { flights: 10, within: true },
    { flights: 11, within: false },
  ])('$flights flights and many days: $within', ({ flights, within }) => {
    expect(inRepeatWindow(200, known(flights))).toBe(within);
  });

  test('flights not known: the days alone decide', () => {
    expect(inRepeatWindow(30, unknown('flights'))).toBe(true);
    expect(inRepeatWindow(31, unknown('flights'))).toBe(false);
  });
});

describe('the same system', () => {
  test.each([
    ['the same finding', { findingKey: 'oil-low' }, { findingKey: 'oil-low' }, 'finding'],
    ['the same equipment', { equipmentId: 'a' }, { equipmentId: 'a' }, 'equipment'],
    ['3340 and 3341: the first three digits', { jasc: '3340' }, { jasc: '3341' }, 'system'],
    ['3340 and 3350: not', { jasc: '3340' }, { jasc: '3350' }, null],
    [
      'another finding, the same code',
      { findingKey: 'a', jasc: '3340' },
      { findingKey: 'b', jasc: '3340' },
      'system',
    ],
    ['nothing named on either side', {}, {}, null],
    ['a code of less than four digits says nothing', { jasc: '33' }, { jasc: '33' }, null],
  ] as const)('%s', (_, one, other, by) => {
    expect(sameSystemBy({ ...NOTHING, ...one }, { ...NOTHING, ...other })).toBe(by);
  });
});

describe('earlier write-ups', () => {
  const earlier = (
    id: string,
    closedAt: string,
    days: number,
    flights: Fact<number> = MANY,
  ): EarlierWriteUp => ({ ...NOTHING, id, jasc: '3211', closedAt, how: 'repaired', days, flights });

  test('the one closed last comes first; those out of the window are the history', () => {
    const found = sameSystemBefore({ ...NOTHING, jasc: '3210' }, [
      earlier('old', '2026-01-01T00:00:00Z', 300),
      earlier('newest', '2026-11-20T00:00:00Z', 5),
      earlier('middle', '2026-11-01T00:00:00Z', 24),
      { ...earlier('other', '2026-11-21T00:00:00Z', 4), jasc: '7900' },
    ]);
    expect(found.map(({ earlier: one, inWindow }) => [one.id, inWindow])).toEqual([
      ['newest', true],
      ['middle', true],
      ['old', false],
    ]);
  });
});

describe('flights flown', () => {
  const two = [{ tenths: 12 }, { tenths: 15 }];

  test.each([
    // 2.7 h flown on record; one hour beyond that is still taken for taxiing: under, on, over. Our choice.
    { gained: 36, flights: known(2) },
    { gained: 37, flights: known(2) },
    { gained: 38, flights: null },
  ])('$gained tenths gained', ({ gained, flights }) => {
    const counted = flightsFlown(two, known(gained));
    if (flights) expect(counted).toEqual(flights);
    else expect(counted.known).toBe(false);
  });

  test('without meter readings nobody knows, unless there are more than ten on record', () => {
    expect(flightsFlown(two, unknown('meters')).known).toBe(false);
    expect(flightsFlown(Array<{ tenths: number }>(11).fill({ tenths: 1 }), unknown('meters'))).toEqual(
      known(11),
    );
  });
});
