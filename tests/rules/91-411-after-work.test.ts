/**
 * 14 CFR 91.411(a)(2), (a)(3) and 91.413(b): tests owed after work. Source of every row: the paragraph, eCFR of 3 September
 * 2026; where a system is asked is our own strict grouping, no source. Yes, no and unknown each have their row.
 */
import { describe, expect, it } from 'vitest';
import type { OwedTest } from '@/lib/rules/aircraft';
import { answerForUse } from '@/lib/rules/answer';
import { known, unknown } from '@/lib/rules/facts';
import {
  checkTestsOwed,
  testQuestionsFor,
  testQuestionsOpen,
  testsOwedBy,
} from '@/lib/rules/part-91/91-411-413-after-work';
import { deferralOf, discrepancyOf, trainer, useOf } from '../fixtures/aircraft';

const owing = (...testsOwed: OwedTest[]) =>
  trainer({
    work: [
      {
        id: 'work-1',
        title: 'Static line replaced',
        state: 'signed',
        checkFlight: known('not-needed'),
        testsOwed,
      },
    ],
  });
const effects = (...[aircraft, use]: Parameters<typeof checkTestsOwed>) =>
  checkTestsOwed(aircraft, use).map(({ effect, cite }) => [effect, cite]);

describe('which questions are asked', () => {
  it.each([
    ['instrument', '3416', 3],
    ['avionics', '3452', 3],
    ['avionics', '2210', 3],
    // Clearing a static line is airframe work on a system of chapter 34.
    ['airframe', '3411', 3],
    ['airframe', '5730', 0],
    ['powerplant', '7310', 0],
    ['propeller', '6111', 0],
  ] as const)('%s %s: %i', (part, jasc, count) => {
    expect(testQuestionsFor(part, jasc)).toHaveLength(count);
  });
  it('one without an answer is open; yes and no both answer it', () => {
    const asked = testQuestionsFor('instrument', '3416');
    const open = (answers: Parameters<typeof testQuestionsOpen>[1]) =>
      testQuestionsOpen(asked, answers).map(({ key }) => key);
    expect(open({})).toEqual(['staticOpened', 'altitudeError', 'transponderError']);
    expect(open({ staticOpened: true, altitudeError: false })).toEqual(['transponderError']);
    expect(open({ staticOpened: false, altitudeError: false, transponderError: false })).toEqual([]);
  });
  it('a yes owes its test and nothing else does', () => {
    expect(testsOwedBy({ staticOpened: true })).toEqual(['static-leak']);
    expect(testsOwedBy({ altitudeError: true, transponderError: true })).toEqual([
      'altimeter-error',
      'transponder-error',
    ]);
    expect(testsOwedBy({ staticOpened: false, altitudeError: false })).toEqual([]);
    expect(testsOwedBy({})).toEqual([]);
  });
});

describe.each([
  ['static-leak', '14cfr91.411(a)(2)'],
  ['altimeter-error', '14cfr91.411(a)(3)'],
] as const)('%s owed (%s)', (test, cite) => {
  it('bars IFR in controlled airspace', () => {
    const use = useOf({ rules: 'IFR', controlledAirspace: known(true) });
    expect(effects(owing(test), use)).toEqual([['bars', cite]]);
    expect(answerForUse(owing(test), use).outcome).toBe('no-go');
  });
  it('leaves IFR outside it, as a limit', () => {
    expect(effects(owing(test), useOf({ rules: 'IFR', controlledAirspace: known(false) }))).toEqual([
      ['limits', cite],
    ]);
  });
  it('bars IFR when nobody knows the airspace', () => {
    const use = useOf({ rules: 'IFR', controlledAirspace: unknown('the airspace') });
    expect(checkTestsOwed(owing(test), use)[0]).toMatchObject({ effect: 'bars', missing: 'the airspace' });
  });
  it('does not limit VFR', () => {
    expect(effects(owing(test), useOf({ rules: 'VFR' }))).toEqual([['notes', cite]]);
  });
});

describe('transponder-error owed (91.413(b))', () => {
  const cite = '14cfr91.413(b)';
  it('bars the airspace that needs it, VFR too', () => {
    for (const rules of ['VFR', 'IFR'] as const) {
      const use = useOf({ rules, transponderAirspace: known(true) });
      expect(effects(owing('transponder-error'), use)).toEqual([['bars', cite]]);
    }
  });
  it('outside it the transponder stays off', () => {
    expect(effects(owing('transponder-error'), useOf({ transponderAirspace: known(false) }))).toEqual([
      ['limits', cite],
    ]);
  });
  it('bars when nobody knows the airspace', () => {
    expect(effects(owing('transponder-error'), useOf({ transponderAirspace: unknown('airspace') }))).toEqual([
      ['bars', cite],
    ]);
  });
  it('says nothing of a transponder that is out of use under a deferral', () => {
    const aircraft = owing('transponder-error');
    const transponder = aircraft.equipment.find((item) => item.function === 'transponder');
    const out = discrepancyOf({
      kind: 'inoperative',
      equipmentId: transponder?.id ?? null,
      inoperativeCount: known(1),
      deferral: deferralOf(),
    });
    expect(transponder).toBeDefined();
    expect(
      effects({ ...aircraft, discrepancies: [out] }, useOf({ transponderAirspace: known(true) })),
    ).toEqual([]);
  });
});

it('nothing owed, nothing said', () => {
  expect(effects(owing(), useOf({ rules: 'IFR' }))).toEqual([]);
});
