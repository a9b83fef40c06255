/**
 * 14 CFR 91.171(b) and (c): bearing errors. Source of every row: the eCFR of 3 September 2026, section 91.171, in the
 * stored copy github.com/Lyutenant/FAR-AIM; reading a needle to half degrees is common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import {
  bearingsApart,
  checkBearingErrors,
  parseDegrees,
  VOR_METHODS,
  type VorMethod,
} from '../../lib/rules/part-91/91-171-bearing-errors';

/** Limit in tenths of a degree and paragraph of each way. */
const LIMITS: readonly (readonly [VorMethod, number, string])[] = [
  ['test-signal', 40, '14cfr91.171(b)(1)'],
  ['surface-point', 40, '14cfr91.171(b)(2)'],
  ['airborne-point', 60, '14cfr91.171(b)(3)'],
  ['airway', 60, '14cfr91.171(b)(4)'],
  ['dual', 40, '14cfr91.171(c)'],
];

it('has a row for every way', () => {
  expect(LIMITS.map(([method]) => method)).toEqual(VOR_METHODS);
});

describe.each(LIMITS)('%s: %i tenths', (method, limit, cite) => {
  it.each([
    ['half a degree under', limit - 5, 'supports'],
    ['on it', limit, 'supports'],
    ['half a degree over', limit + 5, 'bars'],
    ['under, the other way', 5 - limit, 'supports'],
    ['on it, the other way', -limit, 'supports'],
    ['over, the other way', -limit - 5, 'bars'],
    ['no error', 0, 'supports'],
  ])('%s', (_words, error, effect) => {
    expect(checkBearingErrors(method, [error])).toMatchObject([{ effect, cite }]);
  });
  it('each receiver is held to it', () => {
    expect(checkBearingErrors(method, [0, limit + 5]).map(({ effect }) => effect)).toEqual([
      'supports',
      'bars',
    ]);
  });
});

it('(d): without an error recorded there is no check', () => {
  expect(checkBearingErrors('test-signal', [])).toMatchObject([
    { effect: 'bars', cite: '14cfr91.171(d)', missing: 'the bearing error' },
  ]);
});

describe('degrees as typed', () => {
  it.each([
    ['2', 20],
    ['+2', 20],
    ['-1.5', -15],
    ['−1.5', -15],
    ['0.5', 5],
    ['-0', 0],
    [' 3 ', 30],
    ['360', 3600],
  ])('%s', (text, tenths) => {
    expect(parseDegrees(text)).toBe(tenths);
  });
  it.each(['', 'two', '1.2', '1.25', '1,5', '--1', '1e1', '1000', '.5'])('not "%s"', (text) => {
    expect(parseDegrees(text)).toBeNull();
  });
});

describe('(c): how far two bearings lie apart, the short way round', () => {
  it.each([
    [900, 940, 40],
    [940, 900, 40],
    [3590, 20, 30],
    [0, 3600, 0],
    [0, 1800, 1800],
    [10, 1815, 1795],
  ])('%i and %i', (one, other, apart) => {
    expect(bearingsApart(one, other)).toBe(apart);
  });
});
