/** How long the law asks for the records somebody signed: 91.417(b), read in the eCFR copy that lib/rules/law names. */
import { readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { known } from '@/lib/rules/facts';
import { LAW } from '@/lib/rules/law';
import { retentionOf, type RecordKind, type RecordToKeep } from '@/lib/rules/part-91/91-417-records';
import { KEPT_FOR, namesKept } from '@/lib/rules/part-91/91-417-retention';

const record = (kind: RecordKind, over: Partial<RecordToKeep> = {}): RecordToKeep => ({
  kind,
  doneOn: known('2025-11-25'),
  supersededOn: null,
  repairedOn: null,
  ...over,
});

// (b)(1): 1 year after the work was done.
test.each([
  ['2026-11-24', 1],
  ['2026-11-25', 1],
  ['2026-11-26', 0],
])('work of 25 November 2025, on %s: asked for %s', (on, asked) => {
  const kept = namesKept([record('work')], on);
  expect(kept).toMatchObject({
    records: 1,
    asked,
    longest: { keepThrough: '2026-11-25', cite: '14cfr91.417(b)(1)' },
  });
});

// (b)(3): until repaired.
test.each([
  [null, '2036-01-01', 1],
  ['2026-11-25', '2026-11-24', 1],
  ['2026-11-25', '2026-11-25', 1],
  ['2026-11-25', '2026-11-26', 0],
])('a list repaired on %s, on %s: asked for %s', (repairedOn, on, asked) => {
  expect(namesKept([record('list', { repairedOn })], on).asked).toBe(asked);
});

// (b)(2): kept, and goes with the aircraft.
test.each(['directive', 'life-limit', 'major'] as const)(
  '%s: with the aircraft, whenever it is asked',
  (kind) => {
    expect(namesKept([record(kind)], '2056-01-01')).toMatchObject({
      asked: 1,
      longest: { keepThrough: 'with-the-aircraft' },
    });
  },
);

test('of several the longest end is told: the aircraft, then a repair, then the next one, then the later day', () => {
  const longest = (...records: RecordToKeep[]) => namesKept(records, '2026-01-01').longest?.keepThrough;
  const [work, later] = [record('work'), record('work', { doneOn: known('2025-12-01') })];
  expect(longest(work, later)).toBe('2026-12-01');
  expect(longest(later, work)).toBe('2026-12-01');
  expect(longest(work, record('inspection'))).toBe('until-the-next');
  expect(longest(record('inspection'), record('list'))).toBe('until-repaired');
  expect(longest(record('list'), record('directive'), work)).toBe('with-the-aircraft');
  expect(longest(record('judgement'), work)).toBe('2026-11-25');
  expect(namesKept([], '2026-01-01')).toEqual({ records: 0, asked: 0, longest: null });
});

test('the table names every kind with the paragraph its record is kept by', () => {
  for (const [kind, { cite }] of Object.entries(KEPT_FOR) as [RecordKind, (typeof KEPT_FOR)[RecordKind]][]) {
    expect(LAW[cite].label).toBeTruthy();
    const { cite: asked } = retentionOf(record(kind), '2026-01-01');
    // Status records are asked for by (a)(2) and their time is in (b)(2).
    expect(asked === cite || (asked.startsWith('14cfr91.417(a)(2)') && cite === '14cfr91.417(b)(2)')).toBe(
      true,
    );
  }
});

test('docs/personal-data.md says the same, kind by kind', async () => {
  const text = await readFile('docs/personal-data.md', 'utf8');
  for (const [kind, { words, cite }] of Object.entries(KEPT_FOR)) {
    const row = text.split('\n').find((line) => line.startsWith(`| ${kind} `));
    expect(row, kind).toContain(words);
    expect(row, kind).toContain(LAW[cite].label.replace('14 CFR ', ''));
  }
});
