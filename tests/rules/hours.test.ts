import { expect, test } from 'vitest';
import { formatTenths, isTenths, parseTenths, tenthsFromMinutes } from '../../lib/rules/hours';

// Source of this file: plain arithmetic; hours in tenths are common practice, no source.

test.each([
  [0, '0.0'],
  [1, '0.1'],
  [9, '0.9'],
  [10, '1.0'],
  [123, '12.3'],
  [999_999, '99999.9'],
  [9_999_999, '999999.9'],
  [-5, '-0.5'],
  [-123, '-12.3'],
])('%i tenths are written %s', (tenths, text) => {
  expect(formatTenths(tenths)).toBe(text);
});

test.each([1.5, Number.NaN, Number.POSITIVE_INFINITY, 2 ** 53])('%d cannot be written', (tenths) => {
  expect(() => formatTenths(tenths)).toThrow(RangeError);
});

test.each([
  ['12', 120],
  ['12.3', 123],
  ['0', 0],
  ['0.1', 1],
  ['0012.3', 123],
  ['999999.9', 9_999_999],
])('%j is read as %i tenths', (text, tenths) => {
  expect(parseTenths(text)).toBe(tenths);
});

test.each([
  ...[
    '12.34',
    '-1',
    '',
    '1e3',
    '12.',
    '.5',
    '12,3',
    ' 12',
    '12 ',
    '12\n',
    '+1',
    '0x10',
    'NaN',
    '1_0',
    '1000000',
  ],
  '１２',
])('%j is not read', (text) => {
  expect(parseTenths(text)).toBeNull();
});

test('reading gives back what was written, for every tenth up to 3,000 hours', () => {
  const all = Array.from({ length: 30_001 }, (_, tenths) => tenths);
  expect(all.filter((tenths) => parseTenths(formatTenths(tenths)) !== tenths)).toEqual([]);
});

test.each([
  [0, 0],
  [1, 1],
  [5, 1],
  [6, 1],
  [7, 2],
  [59, 10],
  [60, 10],
  [61, 11],
])('%i minutes are %i tenths, rounded up', (minutes, tenths) => {
  expect(tenthsFromMinutes(minutes)).toBe(tenths);
});

test.each([-1, 0.5, Number.NaN, Number.POSITIVE_INFINITY])('%d minutes are refused', (minutes) => {
  expect(() => tenthsFromMinutes(minutes)).toThrow(RangeError);
});

test.each([
  [0, true],
  [1, true],
  [-1, false],
  [0.1, false],
  [Number.NaN, false],
  [2 ** 53, false],
])('%d is a time in tenths: %s', (value, answer) => {
  expect(isTenths(value)).toBe(answer);
});
