/**
 * The 100-hour inspection: to whom it applies, what satisfies it, and its borders. Source: 14 CFR 91.409(b), 141.39(a)(3), as read in
 * 91-409-inspections.ts; worked examples from outside stand in tests/outside/hundred-hour-overfly.test.ts.
 */
import { describe, expect, it } from 'vitest';
import type { RequirementFacts } from '@/lib/rules/aircraft';
import { dueOf } from '@/lib/rules/due';
import { known, unknown } from '@/lib/rules/facts';
import type { Purpose } from '@/lib/rules/operations';
import { checkHundredHour, hundredHourDue } from '@/lib/rules/part-91/91-409-inspections';
import { requirementRow, trainer, useOf } from '../fixtures/aircraft';
import { effectsOf, missingOf } from '../fixtures/lines';
import { done, withoutRequirement, withRequirement } from '../fixtures/recurring';

describe('to whom the 100-hour applies (14 CFR 91.409(b), 141.39(a)(3))', () => {
  // Last at 4400.0, due at 4500.0; the aircraft stands at 4512.3.
  const over = withRequirement('hundred-hour', { lastDone: done('2026-05-01', 44000) });

  it.each([
    ['instruction-for-hire', ['bars']],
    ['carriage-for-hire', ['bars']],
    ['private', ['notes']],
    ['student-solo', ['notes']],
    ['check-flight', ['notes']],
  ] as const)('%s outside a part 141 school, inspection over: %s', (purpose, expected) => {
    expect(effectsOf(checkHundredHour(over, useOf({ purpose })))).toEqual(expected);
  });

  it.each([
    // The flight takes 1.3 h and ends at 4513.6 h: the excess counts from the tenth after the limit.
    [45135, ['notes']],
    [45136, []],
    [45137, []],
  ])('due at %i tenths, a private flight that ends at 45136: %s', (due, expected) => {
    const aircraft = withRequirement('hundred-hour', { lastDone: done('2026-05-01', due - 1000) });
    const lines = checkHundredHour(aircraft, useOf({ plannedTenths: 13 }));
    expect(effectsOf(lines)).toEqual(expected);
    for (const { cite, about } of lines) {
      expect(cite).toBe('14cfr91.409(b)');
      expect(about?.kind).toBe('requirement');
    }
  });

  it('a private flight is told nothing where the hours or the last inspection are not known', () => {
    expect(checkHundredHour({ ...over, ttisTenths: unknown('the total time') }, useOf())).toEqual([]);
    const never = withRequirement('hundred-hour', { lastDone: unknown('when it was done') });
    expect(checkHundredHour(never, useOf())).toEqual([]);
  });

  it('a flight to the inspection needs it where the aircraft is kept on it, and not elsewhere', () => {
    const use = useOf({ purpose: 'to-inspection', plannedTenths: 13 });
    expect(checkHundredHour(withoutRequirement('hundred-hour'), use)).toEqual([]);
    // Just under, on, just over ten hours: ends at 4513.6 h, due 10.0 h before.
    for (const [due, effect] of [
      [45037, 'limits'],
      [45036, 'limits'],
      [45035, 'bars'],
    ] as const) {
      const aircraft = withRequirement('hundred-hour', { lastDone: done('2026-05-01', due - 1000) });
      expect(checkHundredHour(aircraft, use)).toMatchObject([{ effect, cite: '14cfr91.409(b)' }]);
    }
  });

  // 91.409(b): for whom the ten hours are is a reading, and it is said where they would decide.
  it('says how the ten hours are read, for hire as on the way', () => {
    const strict = (purpose: Purpose, aircraft = over) =>
      checkHundredHour(aircraft, useOf({ purpose })).map(({ strictReading }) => strictReading !== undefined);
    const near = withRequirement('hundred-hour', { lastDone: done('2026-05-01', 44100) });
    expect(strict('instruction-for-hire', near)).toEqual([true]);
    expect(strict('to-inspection', near)).toEqual([true]);
    expect(strict('instruction-for-hire', trainer())).toEqual([false]);
  });

  it('a solo of a part 141 school needs it', () => {
    const lines = checkHundredHour({ ...over, part141: known(true) }, useOf({ purpose: 'student-solo' }));
    expect(lines).toMatchObject([{ effect: 'bars', cite: '14cfr141.39(a)(3)' }]);
  });

  it('a solo where nobody knows whether the school is part 141 is no go', () => {
    const aircraft = trainer({ part141: unknown('whether it flies for a part 141 school') });
    expect(missingOf(checkHundredHour(aircraft, useOf({ purpose: 'student-solo' })))).toEqual([
      'whether it flies for a part 141 school',
    ]);
  });

  it('must exist when it applies, and need not when it does not', () => {
    const aircraft = withoutRequirement('hundred-hour');
    expect(missingOf(checkHundredHour(aircraft, useOf({ purpose: 'instruction-for-hire' })))).toEqual([
      'when the last 100-hour inspection was done',
    ]);
    expect(checkHundredHour(aircraft, useOf())).toEqual([]);
  });

  it('an annual satisfies it: due 100 hours after the annual', () => {
    const aircraft = trainer({
      requirements: [
        requirementRow('annual', 'Annual inspection', '2026-10-01', 44500),
        requirementRow('hundred-hour', '100-hour inspection', '2026-05-01', 44000),
      ],
    });
    const lines = checkHundredHour(aircraft, useOf({ purpose: 'instruction-for-hire' }));
    expect(lines).toMatchObject([{ effect: 'supports' }]);
    expect(lines[0]?.because).toContain('4550.0');
  });

  it('an annual done late pays back like a 100-hour', () => {
    const rows = [
      requirementRow('annual', 'Annual inspection', '2026-10-01', 44540),
      requirementRow('hundred-hour', '100-hour inspection', '2026-05-01', 43500),
    ];
    // Due at 4450.0, annual at 4454.0, so next at 4550.0.
    expect(dueOf(rows[1] as RequirementFacts, known(45000), rows).tenths).toBe(45500);
  });

  // Of an annual and a 100-hour the later one counts, of one and the same time the 100-hour with what it pays back; of annuals the latest.
  it.each([
    ['annual a tenth sooner', [43999], 44900],
    ['annual at the same time', [44000], 44900],
    ['annual a tenth later', [44001], 45001],
    ['two annuals, the latest first', [44300, 44200], 45300],
    ['two annuals, the latest last', [44200, 44300], 45300],
  ])('100-hour at 4400.0 when due at 4390.0, %s: due at %i', (_why, annuals, due) => {
    const hundred = requirementRow('hundred-hour', '100-hour inspection', '2026-05-01', 44000, {
      lastDone: known({
        on: '2026-05-01',
        ttisTenths: 44000,
        wasDueTenths: 43900,
        approvedByAuthorised: known(true),
      }),
    });
    const rows = annuals.map((at) => requirementRow('annual', 'Annual inspection', '2026-05-01', at));
    expect(hundredHourDue(hundred, [...rows, hundred])).toBe(due);
  });

  it('an annual that nobody knows to be one does not satisfy it', () => {
    const lastDone = known({
      on: '2026-10-01',
      ttisTenths: 44500,
      wasDueTenths: null,
      approvedByAuthorised: unknown('whether the authorization was in force'),
    });
    const annual = requirementRow('annual', 'Annual inspection', '2026-10-01', 44500, { lastDone });
    const hundred = requirementRow('hundred-hour', '100-hour inspection', '2026-05-01', 44000);
    expect(hundredHourDue(hundred, [annual, hundred])).toBe(45000);
    expect(hundredHourDue({ ...hundred, lastDone: unknown('when it was done') }, [annual])).toBeNull();
  });

  it('an annual that does not count as one does not satisfy it', () => {
    const aircraft = trainer({
      requirements: [
        requirementRow('annual', 'Annual inspection', '2026-10-01', 44500, {
          lastDone: done('2026-10-01', 44500, known(false)),
        }),
        requirementRow('hundred-hour', '100-hour inspection', '2026-05-01', 44000),
      ],
    });
    expect(effectsOf(checkHundredHour(aircraft, useOf({ purpose: 'instruction-for-hire' })))).toEqual([
      'bars',
    ]);
  });

  it.each([
    // Strict: how a whole interval of excess is paid back is not in the text; a person decides.
    [999, false],
    [1000, true],
    [1001, true],
  ])('an excess of %i tenths last time asks for a person: %s', (excess, asks) => {
    const lastDone = known({
      on: '2026-11-20',
      ttisTenths: 45100,
      wasDueTenths: 45100 - excess,
      approvedByAuthorised: known(true),
    });
    const lines = checkHundredHour(
      withRequirement('hundred-hour', { lastDone }),
      useOf({ purpose: 'instruction-for-hire' }),
    );
    expect(lines.some((line) => line.because.includes('A person must work out'))).toBe(asks);
  });

  it('bars when the time in service is not known', () => {
    const aircraft = trainer({ ttisTenths: unknown('the total time in service') });
    const lines = checkHundredHour(aircraft, useOf({ purpose: 'instruction-for-hire' }));
    expect(missingOf(lines)).toEqual(['the total time in service']);
  });
});
