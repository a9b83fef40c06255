/** How long records are kept: 14 CFR 91.417(b), read in the eCFR copy that lib/rules/law names. */
import { describe, expect, test } from 'vitest';
import { known, unknown } from '@/lib/rules/facts';
import {
  aYearAfter,
  kindOfCompliance,
  kindOfWorkRecord,
  retentionOf,
  type RecordKind,
  type RecordToKeep,
} from '@/lib/rules/part-91/91-417-records';

const record = (over: Partial<RecordToKeep> = {}): RecordToKeep => ({
  kind: 'work',
  doneOn: known('2025-11-25'),
  supersededOn: null,
  repairedOn: null,
  ...over,
});

describe('work, (b)(1): one year after it was done', () => {
  test.each([
    ['2026-11-24', true],
    ['2026-11-25', true],
    ['2026-11-26', false],
  ])('asked for on %s: %s', (on, asked) => {
    expect(retentionOf(record(), on)).toMatchObject({
      keepThrough: '2026-11-25',
      cite: '14cfr91.417(b)(1)',
      asked,
    });
  });

  test('repeated within the year it is kept for the year all the same, and the line says that this is the strict reading', () => {
    const kept = retentionOf(record({ supersededOn: '2026-01-10' }), '2026-06-01');
    expect(kept).toMatchObject({ keepThrough: '2026-11-25', asked: true });
    expect(kept.strictReading).toMatch(/91\.417\(b\)\(1\)/);
  });

  test.each([
    ['2027-01-09', true],
    ['2027-01-10', true],
    ['2027-01-11', false],
  ])('repeated after the year, on 10 January 2027: asked for on %s: %s', (on, asked) => {
    expect(retentionOf(record({ supersededOn: '2027-01-10' }), on)).toMatchObject({
      keepThrough: '2027-01-10',
      asked,
    });
  });

  test('a year from 29 February is over with 1 March (no source: strict)', () => {
    expect(aYearAfter('2024-02-29')).toBe('2025-03-01');
    expect(aYearAfter('2024-02-28')).toBe('2025-02-28');
    expect(aYearAfter('2023-03-01')).toBe('2024-03-01');
  });

  test('without a day it is kept, and the line names what is missing', () => {
    const kept = retentionOf(record({ doneOn: unknown('when it was completed') }), '2040-01-01');
    expect(kept).toMatchObject({ asked: true, keepThrough: 'until-the-next' });
    expect(kept.because).toContain('when it was completed');
  });
});

describe('a required inspection shows the inspection status of (a)(2)(iv) until the next one', () => {
  const annual = (supersededOn: string | null) => record({ kind: 'inspection', supersededOn });
  test('the last one is kept, also more than a year later', () => {
    expect(retentionOf(annual(null), '2030-01-01')).toMatchObject({
      keepThrough: 'until-the-next',
      asked: true,
    });
  });
  test.each([
    ['2026-12-01', true],
    ['2026-12-02', true],
    ['2026-12-03', false],
  ])('superseded on 2 December 2026: asked for on %s: %s', (on, asked) => {
    expect(retentionOf(annual('2026-12-02'), on).asked).toBe(asked);
  });
});

describe('status, (b)(2): kept and handed over with the aircraft', () => {
  test.each<[RecordKind, string]>([
    ['total-time', '14cfr91.417(a)(2)(i)'],
    ['life-limit', '14cfr91.417(a)(2)(ii)'],
    ['overhaul', '14cfr91.417(a)(2)(iii)'],
    ['directive', '14cfr91.417(a)(2)(v)'],
    ['major', '14cfr91.417(a)(2)(vi)'],
  ])('%s by %s', (kind, cite) => {
    expect(retentionOf(record({ kind, supersededOn: '2025-12-01' }), '2060-01-01')).toMatchObject({
      keepThrough: 'with-the-aircraft',
      cite,
      asked: true,
    });
  });
});

describe('the list of 43.11, (b)(3): until repaired and approved', () => {
  test('open it is kept, however old', () => {
    expect(retentionOf(record({ kind: 'list' }), '2060-01-01')).toMatchObject({
      keepThrough: 'until-repaired',
      cite: '14cfr91.417(b)(3)',
      asked: true,
    });
  });
  test.each([
    ['2026-02-27', true],
    ['2026-02-28', true],
    ['2026-03-01', false],
  ])('its last item repaired on 28 February 2026: asked for on %s: %s', (on, asked) => {
    expect(retentionOf(record({ kind: 'list', repairedOn: '2026-02-28' }), on).asked).toBe(asked);
  });
});

test('91.417(a) leaves tests of 91.411 and 91.413 out; the last one is kept until the next', () => {
  const test411 = (supersededOn: string | null) =>
    retentionOf(record({ kind: 'altimeter-transponder-test', supersededOn }), '2026-11-25');
  expect(test411(null)).toMatchObject({ keepThrough: 'until-the-next', cite: '14cfr91.417(a)', asked: true });
  expect(test411('2026-11-24').asked).toBe(false);
  expect(test411('2026-11-25').asked).toBe(true);
});

test('a determination is named by no paragraph of 91.417', () => {
  expect(retentionOf(record({ kind: 'judgement' }), '2026-11-25').keepThrough).toBe('not-named');
});

test('which kind of record work is follows from what it answers, then from its own kind', () => {
  expect(kindOfWorkRecord('minor', 'directive')).toBe('directive');
  expect(kindOfWorkRecord('minor', 'life-limit')).toBe('life-limit');
  expect(kindOfWorkRecord('annual', null)).toBe('inspection');
  expect(kindOfWorkRecord('hundred-hour', null)).toBe('inspection');
  expect(kindOfWorkRecord('static-test', null)).toBe('altimeter-transponder-test');
  expect(kindOfWorkRecord('major', null)).toBe('major');
  expect(kindOfWorkRecord('preventive', null)).toBe('work');
  expect(kindOfCompliance('vor-check')).toBe('work');
  expect(kindOfCompliance('transponder')).toBe('altimeter-transponder-test');
});
