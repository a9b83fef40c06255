/**
 * An annual that was not approved, as people in the trade work it out: one tyre worn to the cord, all else excellent; signed as
 * not airworthy, the tyre on the list; changed by the owner eleven and a half months later; "two weeks" are left until the next
 * annual. Source: a thread on supercub.org quoting the Inspection Authorization Information Guide FAA-G-8082-19, page 18,
 * "Aircraft With Discrepancies or Unairworthy Conditions" (read in a stored copy of the thread; the guide itself was not).
 * The statement of 43.11(a)(5): as quoted by the law column at shackelford.law on discrepancy entries after an annual.
 */
import { expect, it } from 'vitest';
import { known } from '@/lib/rules/facts';
import { checkFindings4311, inspectionStatement } from '@/lib/rules/part-43/43-11-inspection-entry';
import { checkAnnual } from '@/lib/rules/part-91/91-409-inspections';
import { discrepancyOf, requirementRow, trainer, useOf } from '../fixtures/aircraft';

const tyre = discrepancyOf({
  title: 'Tyre worn through the cord',
  kind: 'wear',
  severity: known('grounding'),
});

it('one worn tyre: not certified airworthy; listed, it is signed as not approved', () => {
  const listed = [{ discrepancyId: tyre.id, standing: 'unairworthy' as const }];
  expect(checkFindings4311([tyre], null, true).map(({ cite }) => cite)).toEqual(['14cfr43.11(a)(4)']);
  expect(checkFindings4311([tyre], listed, false)).toEqual([]);
});

it('the entry says so in these words', () => {
  const blank = (text: string) => text.replace('15 Jan 2026', '____');
  expect(blank(inspectionStatement('annual', { airworthy: false, listDated: '2026-01-15' }))).toBe(
    'I certify that this aircraft has been inspected in accordance with an annual inspection and a list of discrepancies and unairworthy items dated ____ has been provided for the aircraft owner or operator.',
  );
});

it.each([
  // Inspected 15 January 2026; the tyre changed on 15 January 2027 less two weeks, and so good to the end of the month.
  ['the day the tyre is changed', '2027-01-01', 'supports'],
  ['the last day of the twelfth month', '2027-01-31', 'supports'],
  ['the day after', '2027-02-01', 'bars'],
])('the annual counts from its own day, not from the repair: %s', (_words, day, effect) => {
  const aircraft = trainer({
    requirements: [requirementRow('annual', 'Annual inspection', '2026-01-15', 45_000)],
  });
  const lines = checkAnnual(aircraft, useOf({ departOn: day, arriveOn: day }));
  expect(lines.map((line) => line.effect)).toEqual([effect]);
});
