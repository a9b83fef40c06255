/** The board's columns and words. Common practice, no source: how a desk reads a fleet. */
import { expect, test } from 'vitest';
import { cellsOfRow, dueInWords, isFlyableNow } from '@/lib/fleet/board-columns';
import type { BoardCell } from '@/lib/fleet/read-board';
import { OPERATION_KINDS, operationId, operationName, type OperationId } from '@/lib/rules/operations';
import type { Outcome } from '@/lib/rules/verdict';
import { inEnglish } from '@/lib/words/translate';

const row = (forHire: boolean, outcomes: Partial<Record<OperationId, Outcome>>) => ({
  forHire,
  cells: OPERATION_KINDS.map((kind): BoardCell => {
    const id = operationId(kind);
    return { id, name: operationName(kind), outcome: outcomes[id] ?? 'no-go', headline: null };
  }),
});

test('a column shows the usual use, and the other use only where it differs', () => {
  const outcomes = { 'day-vfr-hire': 'go', 'day-vfr-private': 'go', 'night-vfr-private': 'go' } as const;
  const hire = cellsOfRow(row(true, outcomes));
  expect(hire.map((cell) => cell.usual.id)).toEqual([
    'day-vfr-hire',
    'night-vfr-hire',
    'day-ifr-hire',
    'night-ifr-hire',
  ]);
  expect(hire.map((cell) => cell.other && [cell.other.use, cell.other.outcome])).toEqual([
    null,
    ['private', 'go'],
    null,
    null,
  ]);
  expect(cellsOfRow(row(false, outcomes))[1]).toMatchObject({
    usual: { id: 'night-vfr-private', outcome: 'go' },
    other: { use: 'for hire', outcome: 'no-go' },
  });
});

test('flyable now looks at the light now and the usual use; a go with limits counts', () => {
  const byDay = row(true, { 'day-vfr-hire': 'go-with-limits' });
  expect(isFlyableNow(byDay, 'day')).toBe(true);
  expect(isFlyableNow(byDay, 'night')).toBe(false);
  expect(isFlyableNow(row(true, { 'day-vfr-private': 'go' }), 'day')).toBe(false);
  expect(isFlyableNow(row(false, { 'night-ifr-private': 'go' }), 'night')).toBe(true);
});

test.each([
  [null, 14, 'in 1.4 h'],
  [null, 0, 'in 0.0 h'],
  [null, -1, 'over by 0.1 h'],
  [12, null, 'in 12 days'],
  [1, null, 'in 1 day'],
  [0, null, 'today is the last day'],
  [-1, null, 'over by 1 day'],
  [12, 14, 'in 1.4 h, in 12 days'],
  [-3, 14, 'over by 3 days'],
  [-3, -14, 'over by 1.4 h and 3 days'],
  [null, null, 'not known when'],
])('%s days and %s tenths left: %s', (remainingDays, remainingTenths, words) => {
  expect(dueInWords(inEnglish, { remainingDays, remainingTenths })).toBe(words);
});
