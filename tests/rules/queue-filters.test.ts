/** Filters of the queue. Source: issue 4 names base, aircraft, JASC chapter, age, due date of deferral; the limits are ours, no source. */
import { describe, expect, test } from 'vitest';
import { filterChoices, filterFrom, isShown, NO_FILTER } from '@/lib/work/queue-filters';

const row = (some: Partial<Parameters<typeof isShown>[0]> = {}) => ({
  baseIdent: 'ZZQB',
  registration: 'N041QB',
  chapter: { code: '33', title: 'Lights' },
  ageDays: 3,
  deferralEnds: null,
  ...some,
});
const ends = (inDays: number) => row({ deferralEnds: { on: '2026-12-01', inDays } });

describe('limits', () => {
  test.each([
    ['today', -1, true],
    ['today', 0, true],
    ['today', 1, false],
    ['over-7', 6, false],
    ['over-7', 7, false],
    ['over-7', 8, true],
    ['over-30', 29, false],
    ['over-30', 30, false],
    ['over-30', 31, true],
  ])('written up %s: %i days old', (age, ageDays, shown) => {
    expect(isShown(row({ ageDays }), { ...NO_FILTER, age })).toBe(shown);
  });

  test.each([
    ['in-7', 6, true],
    ['in-7', 7, true],
    ['in-7', 8, false],
    ['in-30', 29, true],
    ['in-30', 30, true],
    ['in-30', 31, false],
    ['in-7', -1, false],
    ['in-7', 0, true],
    ['in-30', -1, false],
    ['in-30', 0, true],
    ['passed', -1, true],
    ['passed', 0, false],
    ['passed', 1, false],
    ['none', 1, false],
  ])('deferral ends %s: in %i days', (due, inDays, shown) => {
    expect(isShown(ends(inDays), { ...NO_FILTER, due })).toBe(shown);
  });

  test('without a date only "no date" shows it', () => {
    const shown = ['in-7', 'in-30', 'passed', 'none'].filter((due) => isShown(row(), { ...NO_FILTER, due }));
    expect(shown).toEqual(['none']);
  });
});

test('base, aircraft and chapter have to fit, all together', () => {
  const filter = { ...NO_FILTER, base: 'ZZQB', aircraft: 'N041QB', chapter: '33' };
  expect(isShown(row(), filter)).toBe(true);
  expect(isShown(row({ baseIdent: 'ZZTM' }), filter)).toBe(false);
  expect(isShown(row({ registration: 'N042QB' }), filter)).toBe(false);
  expect(isShown(row({ chapter: null }), filter)).toBe(false);
});

test('choices come once and in order; an address that fits nothing is no filter', () => {
  const rows = [
    row({ registration: 'N052TM' }),
    row(),
    row({ chapter: { code: '27', title: 'Flight controls' } }),
  ];
  const choices = filterChoices(rows);
  expect(choices.aircraft.map(({ value }) => value)).toEqual(['N041QB', 'N052TM']);
  expect(choices.chapter.map(({ label }) => label)).toEqual(['27 Flight controls', '33 Lights']);
  const address = new URLSearchParams('aircraft=N052TM&base=ZZXX&age=over-7&due=never');
  expect(filterFrom((name) => address.get(name), rows)).toEqual({
    ...NO_FILTER,
    aircraft: 'N052TM',
    age: 'over-7',
  });
});
