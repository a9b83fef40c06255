import { describe, expect, it } from 'vitest';
import type { WorkFacts } from '@/lib/rules/aircraft';
import { known, unknown } from '@/lib/rules/facts';
import type { PilotGrade, UseOfAircraft } from '@/lib/rules/operations';
import { checkWork } from '@/lib/rules/part-91/91-407-after-maintenance';
import { withSpecialFlightPermit } from '@/lib/rules/special-flight-permit';
import type { Line } from '@/lib/rules/verdict';
import { permitOf, trainer, useOf } from '../fixtures/aircraft';

const work = (change: Partial<WorkFacts>) =>
  trainer({
    work: [
      {
        id: 'work-1',
        title: 'Aileron re-rigged',
        state: 'signed',
        checkFlight: known('owed'),
        testsOwed: [],
        ...change,
      },
    ],
  });
const checkFlight = (change: Partial<UseOfAircraft> = {}) =>
  useOf({
    purpose: 'check-flight',
    crewOnly: known(true),
    pilotInCommandGrade: known('private'),
    ...change,
  });

describe('return to service after work (14 CFR 91.407(a))', () => {
  it.each([
    ['started', '14cfr91.407(a)(2)'],
    ['entered', '14cfr91.407(a)(1)'],
  ] as const)('%s bars under %s, the check flight too', (state, cite) => {
    for (const use of [useOf(), checkFlight()]) {
      expect(checkWork(work({ state }), use)).toMatchObject([{ effect: 'bars', cite }]);
    }
  });

  it('signed, with no check flight needed or the check flight flown, supports', () => {
    expect(checkWork(work({ checkFlight: known('not-needed') }), useOf())).toMatchObject([
      { effect: 'supports', cite: '14cfr91.407(c)' },
    ]);
    expect(checkWork(work({ checkFlight: known('flown') }), useOf())).toMatchObject([
      { effect: 'supports', cite: '14cfr91.407(b)' },
    ]);
  });
});

describe('check flight owed (14 CFR 91.407(b))', () => {
  it.each(['private', 'instruction-for-hire', 'student-solo', 'to-inspection'] as const)(
    'bars a flight for %s, crew only or not',
    (purpose) => {
      const lines = checkWork(work({}), checkFlight({ purpose }));
      expect(lines).toMatchObject([{ effect: 'bars', cite: '14cfr91.407(b)' }]);
    },
  );

  it.each([
    ['student', 'bars'],
    ['sport', 'bars'],
    ['recreational', 'bars'],
    ['private', 'limits'],
    ['commercial', 'limits'],
    ['airline-transport', 'limits'],
  ] as [PilotGrade, string][])('the check flight itself with a %s pilot: %s', (grade, effect) => {
    const lines = checkWork(work({}), checkFlight({ pilotInCommandGrade: known(grade) }));
    expect(lines).toMatchObject([{ effect, cite: '14cfr91.407(b)' }]);
  });

  it('bars with somebody else aboard', () => {
    expect(checkWork(work({}), checkFlight({ crewOnly: known(false) }))).toMatchObject([{ effect: 'bars' }]);
  });

  it.each([
    [
      work({ checkFlight: unknown('whether a check flight is owed') }),
      checkFlight(),
      'whether a check flight is owed',
    ],
    [work({}), checkFlight({ crewOnly: unknown('who is aboard') }), 'who is aboard'],
    [work({}), checkFlight({ pilotInCommandGrade: unknown('the grade') }), 'the grade'],
  ])('bars for a missing fact and names it (%#)', (aircraft, use, missing) => {
    expect(checkWork(aircraft, use)).toMatchObject([{ effect: 'bars', missing }]);
  });
});

describe('special flight permit (14 CFR 21.197, 91.213(e), 91.409(c), 39.23)', () => {
  const permit = permitOf({ covers: ['named'], limits: ['Day VFR, direct to the base.'] });
  const ferry = useOf({
    purpose: 'to-inspection',
    crewOnly: known(true),
    specialFlightPermit: permit,
  });
  const bar = (cite: Line['cite'], missing?: string): Line => ({
    effect: 'bars',
    cite,
    because: 'Overdue.',
    missing,
    about: { kind: 'requirement', id: 'named', label: 'Named in the permit' },
  });
  const under = (lines: readonly Line[], use = ferry) => withSpecialFlightPermit(lines, use, trainer());
  const outcome = (line: Line, use = ferry) => under([line], use)[0];

  it.each([
    ['14cfr91.409(a)', '14cfr91.409(c)'],
    ['14cfr91.409(b)', '14cfr91.409(c)'],
    ['14cfr39.7', '14cfr39.23'],
    ['14cfr91.403(c)', '14cfr21.197(a)'],
    ['14cfr91.405(a)', '14cfr21.197(a)'],
    ['14cfr91.213(d)(2)(i)', '14cfr91.213(e)'],
    ['14cfr91.205(b)(4)', '14cfr91.213(e)'],
  ] as const)('lifts a bar of %s, by %s', (cite, by) => {
    expect(outcome(bar(cite))).toMatchObject({ effect: 'limits', cite: by });
  });

  // Readings, strict: see the head of special-flight-permit.ts.
  it.each([
    '14cfr91.203(a)(2)',
    '14cfr47.40(a)',
    '14cfr91.9(b)',
    '14cfr91.407(a)(1)',
    '14cfr91.407(b)',
    '14cfr91.205(c)(2)',
    '14cfr91.205(d)(8)',
    '14cfr91.209(a)(1)',
    '14cfr91.215(b)',
    '14cfr91.411(a)(1)',
    '14cfr91.413(a)',
  ] as const)('does not lift a bar of %s', (cite) => {
    expect(outcome(bar(cite))).toMatchObject({ effect: 'bars', cite });
  });

  it('does not stand in for a missing fact', () => {
    expect(outcome(bar('14cfr91.409(a)', 'when the annual was done'))).toMatchObject({ effect: 'bars' });
  });

  it('carries its limits in its own words', () => {
    expect(under([bar('14cfr91.409(a)')])).toContainEqual(
      expect.objectContaining({
        effect: 'limits',
        cite: '14cfr21.199',
        because: 'Special flight permit SFP 26-014: Day VFR, direct to the base.',
      }),
    );
  });

  it('bars when its limits are not recorded', () => {
    const use = { ...ferry, specialFlightPermit: { ...permit, limits: [] } };
    expect(under([bar('14cfr91.409(a)')], use).some((line) => line.missing)).toBe(true);
  });

  it.each([
    ['hire', { hire: true }],
    ['a student alone', { purpose: 'student-solo' as const }],
    ['passengers', { crewOnly: known(false) }],
    ['nobody knows whom', { crewOnly: unknown('who is aboard') }],
  ])('bars with %s aboard', (_words, change) => {
    const lines = under([bar('14cfr91.409(a)')], { ...ferry, ...change });
    expect(lines.some((line) => line.effect === 'bars')).toBe(true);
  });

  it('changes nothing without a permit', () => {
    const overdue = [bar('14cfr91.409(a)')];
    expect(under(overdue, useOf())).toEqual(overdue);
  });
});
