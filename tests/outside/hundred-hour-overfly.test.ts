import { describe, expect, it } from 'vitest';
import { known } from '@/lib/rules/facts';
import type { Purpose } from '@/lib/rules/operations';
import { checkHundredHour, nextHundredHourDue } from '@/lib/rules/part-91/91-409-inspections';
import { requirementRow, trainer, useOf } from '../fixtures/aircraft';

/** Hours as people write them, in tenths. Only for this table: the numbers below are exact in one decimal. */
const h = (hours: string): number => Number(hours.replace('.', ''));

/**
 * Sources: 14 CFR 91.409(b), full text as quoted by askacfi; worked examples from the law column of Jan/Feb 2015 on the
 * Chief Counsel letter (YUDU), scenarios left standing by the Greenwood letter of 2015.
 */
describe('when the next 100-hour falls due', () => {
  it.each([
    ['on time', '1100.0', '1100.0', '1200.0'],
    ['a tenth early', '1099.9', '1100.0', '1199.9'],
    ['a tenth late: 99.9 h to the next', '1100.1', '1100.0', '1200.0'],
    ['early at 1090.0', '1090.0', '1100.0', '1190.0'],
    ['late at 1104.0 on the way to the inspection: 96.0 h to the next', '1104.0', '1100.0', '1200.0'],
    ['late at the very end of the ten hours', '1110.0', '1100.0', '1200.0'],
    ['15 h late after solo rentals outside 141: 85.0 h to the next', '1115.0', '1100.0', '1200.0'],
  ])('%s', (_words, doneAt, wasDue, next) => {
    expect(nextHundredHourDue({ doneAt: h(doneAt), wasDue: h(wasDue) })).toBe(h(next));
  });

  it('the first one is due 100 hours after it was done', () => {
    expect(nextHundredHourDue({ doneAt: h('1000.0'), wasDue: null })).toBe(h('1100.0'));
  });
});

/** Last inspected at 1000.0, so due at 1100.0, and at 1110.0 even en route to the place of inspection. */
const effectOf = (ttis: string, planned: string, purpose: Purpose): string | undefined => {
  const aircraft = trainer({
    ttisTenths: known(h(ttis)),
    requirements: [requirementRow('hundred-hour', '100-hour inspection', '2026-10-20', h('1000.0'))],
  });
  const lines = checkHundredHour(aircraft, useOf({ purpose, plannedTenths: h(planned) }));
  expect(lines).toHaveLength(1);
  expect(lines[0]?.cite).toBe('14cfr91.409(b)');
  return lines[0]?.effect;
};

describe('a lesson must end within the 100 hours', () => {
  it.each([
    ['1098.7', '1.2', 'supports'],
    ['1098.8', '1.2', 'supports'],
    ['1098.9', '1.2', 'bars'],
    // Decision 16 of the worked table: 99.6 h since, local lesson of 1.2 h.
    ['1099.6', '1.2', 'bars'],
  ])('at %s h, %s h planned: %s', (ttis, planned, effect) => {
    expect(effectOf(ttis, planned, 'instruction-for-hire')).toBe(effect);
  });
});

describe('only the flight to the inspection may use the ten hours', () => {
  it.each([
    // Within the 100 hours it needs no relief.
    ['1099.0', '1.0', 'supports'],
    ['1099.1', '1.0', 'limits'],
    // Just under, exactly on, just over 10.0 h.
    ['1108.9', '1.0', 'limits'],
    ['1109.0', '1.0', 'limits'],
    ['1109.1', '1.0', 'bars'],
    ['1120.0', '1.0', 'bars'],
  ])('at %s h, %s h to the shop: %s', (ttis, planned, effect) => {
    expect(effectOf(ttis, planned, 'to-inspection')).toBe(effect);
  });

  it.each(['instruction-for-hire', 'carriage-for-hire'] as const)('%s may not', (purpose) => {
    expect(effectOf('1100.0', '0.1', purpose)).toBe('bars');
  });
});

describe('who is not held to it', () => {
  it('part 61 solo rental at any excess: a note', () => {
    expect(effectOf('1115.0', '1.0', 'private')).toBe('notes');
    expect(effectOf('1101.0', '1.0', 'student-solo')).toBe('notes');
  });
});
