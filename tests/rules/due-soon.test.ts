/** What a visit offers besides write-ups. Source: issue 4, "what is due in the next 30 days / 25 hours"; when it is due: 91.409, 91.207. */
import { describe, expect, test } from 'vitest';
import { dueSoon } from '@/lib/rules/due-soon';
import { known, unknown } from '@/lib/rules/facts';
import { trainer } from '../fixtures/aircraft';

const TODAY = '2026-11-25';
const requirement = trainer().requirements.find(({ kind }) => kind === 'annual')!;
const interval = {
  ...requirement,
  id: 'interval',
  kind: 'maker-interval' as const,
  intervalMonths: null,
  intervalDays: null,
  intervalTenths: 500,
  fixedExpiry: null,
};
const done = (ttisTenths: number) =>
  known({ on: '2026-01-10', ttisTenths, wasDueTenths: null, approvedByAuthorised: known(true) });
const withOnly = (one: object) =>
  dueSoon({ ...trainer(), ttisTenths: known(10_000), requirements: [{ ...interval, ...one }] }, TODAY);

describe('within 30 days', () => {
  test.each([
    ['2026-12-24', 29, true],
    ['2026-12-25', 30, true],
    ['2026-12-26', 31, false],
    ['2026-11-24', -1, true],
  ])('good through %s', (fixedExpiry, days, soon) => {
    const due = withOnly({ kind: 'elt-battery', intervalTenths: null, fixedExpiry, lastDone: done(9000) });
    expect(due.map(({ remainingDays }) => remainingDays)).toEqual(soon ? [days] : []);
  });
});

describe('within 25 hours', () => {
  test.each([
    [9749, 249, true],
    [9750, 250, true],
    [9751, 251, false],
    [9499, -1, true],
  ])('done at %i tenths', (at, left, soon) => {
    const due = withOnly({ lastDone: done(at) });
    expect(due.map(({ remainingTenths }) => remainingTenths)).toEqual(soon ? [left] : []);
  });
});

test('what is not known is offered, and named', () => {
  expect(withOnly({ lastDone: unknown('when it was last done') })[0]?.missing).toBe('when it was last done');
  const [due] = dueSoon(
    {
      ...trainer(),
      ttisTenths: unknown('the total time in service'),
      requirements: [{ ...interval, lastDone: done(100) }],
    },
    TODAY,
  );
  expect(due?.missing).toBe('the total time in service');
});
