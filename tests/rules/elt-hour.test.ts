/**
 * 14 CFR 91.207(c)(1): batteries replaced after more than one cumulative hour of use. Source of every row unless said: the
 * eCFR of 24 August 2026, section 91.207, in the stored copy github.com/Lyutenant/FAR-AIM.
 */
import { describe, expect, it } from 'vitest';
import type { RequirementFacts } from '../../lib/rules/aircraft';
import { known } from '../../lib/rules/facts';
import { checkEltBattery } from '../../lib/rules/part-91/91-207-elt-inspection';
import { trainer, trainerRequirements, trainerType, useOf } from '../fixtures/aircraft';

const about = (minutes: number, change = {}) =>
  checkEltBattery(trainer({ eltUseMinutes: minutes, ...change }), useOf())
    .filter(({ cite }) => cite === '14cfr91.207(c)(1)')
    .map(({ effect }) => effect);

it.each([
  [0, []],
  [59, []],
  [60, []],
  [61, ['bars']],
])('%i minutes in all', (minutes, effects) => {
  expect(about(minutes)).toEqual(effects);
});

it('a battery in date does not make up for the hour', () => {
  const lines = checkEltBattery(trainer({ eltUseMinutes: 61 }), useOf());
  expect(lines.map(({ effect, cite }) => `${effect} ${cite}`)).toEqual([
    'supports 14cfr91.207(c)(2)',
    'bars 14cfr91.207(c)(1)',
  ]);
});

it('counts also where nobody has entered the battery', () => {
  const requirements = trainerRequirements().filter(({ kind }) => kind !== 'elt-battery');
  expect(about(61, { requirements })).toEqual(['bars']);
});

describe('where no transmitter is needed', () => {
  it('(f)(3): training nearby is limited, not barred', () => {
    const use = useOf({ purpose: 'instruction-for-hire', trainingWithin50Nm: known(true) });
    const lines = checkEltBattery(trainer({ eltUseMinutes: 61 }), use);
    expect(lines.map(({ effect, cite }) => `${effect} ${cite}`)).toEqual([
      'supports 14cfr91.207(c)(2)',
      'limits 14cfr91.207(f)(3)',
    ]);
  });
  it.each([
    ['no date on it', (rows: RequirementFacts[]) => rows.map((row) => ({ ...row, fixedExpiry: null }))],
    ['nobody entered', () => []],
  ])('(f)(3) lifts the hour of a battery with %s, and not the date that is not known', (_, of) => {
    const use = useOf({ purpose: 'instruction-for-hire', trainingWithin50Nm: known(true) });
    const requirements = of(trainerRequirements().filter(({ kind }) => kind === 'elt-battery'));
    const lines = checkEltBattery(trainer({ eltUseMinutes: 61, requirements }), use);
    expect(lines.map(({ effect, cite }) => `${effect} ${cite}`)).toEqual([
      'bars 14cfr91.207(c)(2)',
      'limits 14cfr91.207(f)(3)',
    ]);
  });
  it('(f)(9): one seat', () => {
    expect(about(61, { type: trainerType({ seats: known(1) }) })).toEqual([]);
  });
});
