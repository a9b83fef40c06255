import { describe, expect, it } from 'vitest';
import { known, unknown } from '@/lib/rules/facts';
import { checkVorCheck } from '@/lib/rules/part-91/91-171-vor-check';
import {
  checkStaticAndAltimeter,
  checkTransponderTest,
} from '@/lib/rules/part-91/91-411-413-altimeter-transponder';
import type { Line } from '@/lib/rules/verdict';
import { deferralOf, trainer, useOf, withBroken, withoutEquipment } from '../fixtures/aircraft';
import { missingOf } from '../fixtures/lines';
import { withoutRequirement, withRequirement } from '../fixtures/recurring';

const doneOn = (on: string, approved = known(true)) =>
  known({ on, ttisTenths: 41200, wasDueTenths: null, approvedByAuthorised: approved });
const onDay = (day: string, more = {}) => useOf({ departOn: day, arriveOn: day, ...more });
const barred = (lines: readonly Line[]) => lines.filter((line) => line.effect === 'bars');

describe('static system and altimeter for IFR in controlled airspace (14 CFR 91.411)', () => {
  const ifr = { rules: 'IFR' as const };
  const tested = withRequirement('static-and-altimeter', { lastDone: doneOn('2024-11-10') });

  it.each([
    // (a)(1), 24 calendar months.
    ['2026-11-29', 0],
    ['2026-11-30', 0],
    ['2026-12-01', 1],
  ])('tested 10 Nov 2024, IFR on %s', (day, bars) => {
    const lines = barred(checkStaticAndAltimeter(tested, onDay(day, ifr)));
    expect(lines).toHaveLength(bars);
    for (const line of lines) expect(line.cite).toBe('14cfr91.411(a)(1)');
  });

  it('does not limit VFR, nor IFR outside controlled airspace', () => {
    expect(checkStaticAndAltimeter(tested, onDay('2026-12-01'))).toEqual([]);
    const outside = onDay('2026-12-01', { ...ifr, controlledAirspace: known(false) });
    expect(checkStaticAndAltimeter(tested, outside)).toEqual([]);
  });

  it('bars when it is not known whether the airspace is controlled, or when tested', () => {
    const use = useOf({ ...ifr, controlledAirspace: unknown('whether the airspace is controlled') });
    expect(missingOf(checkStaticAndAltimeter(trainer(), use))).toEqual([
      'whether the airspace is controlled',
    ]);
    expect(
      barred(checkStaticAndAltimeter(withoutRequirement('static-and-altimeter'), useOf(ifr))),
    ).toHaveLength(1);
    const undated = withRequirement('static-and-altimeter', { lastDone: unknown('the date of the test') });
    expect(missingOf(checkStaticAndAltimeter(undated, useOf(ifr)))).toEqual(['the date of the test']);
  });

  it.each([
    // (d): not above the tested altitude.
    [9999, 0],
    [10000, 0],
    [10001, 1],
  ])('tested to 10000 ft, flight to %i ft', (altitude, bars) => {
    const aircraft = withRequirement('static-and-altimeter', { testedToFt: known(10000) });
    const use = useOf({ ...ifr, highestAltitudeFtMsl: known(altitude) });
    const lines = barred(checkStaticAndAltimeter(aircraft, use));
    expect(lines).toHaveLength(bars);
    for (const line of lines) expect(line.cite).toBe('14cfr91.411(d)');
  });

  it('bars when either altitude is not known', () => {
    const flight = useOf({ ...ifr, highestAltitudeFtMsl: unknown('how high the flight goes') });
    expect(missingOf(checkStaticAndAltimeter(trainer(), flight))).toEqual(['how high the flight goes']);
    for (const testedToFt of [null, unknown('the altitude to which the altimeter was tested')]) {
      const aircraft = withRequirement('static-and-altimeter', { testedToFt });
      expect(missingOf(checkStaticAndAltimeter(aircraft, useOf(ifr)))).toEqual([
        'the altitude to which the altimeter was tested',
      ]);
    }
  });

  it('does not count a test by somebody who may not (91.411(b))', () => {
    const aircraft = withRequirement('static-and-altimeter', {
      lastDone: doneOn('2025-05-12', known(false)),
    });
    expect(barred(checkStaticAndAltimeter(aircraft, useOf(ifr)))).toHaveLength(1);
  });
});

describe('transponder test, VFR too (14 CFR 91.413(a))', () => {
  const tested = withRequirement('transponder', { lastDone: doneOn('2024-11-10') });
  const inAirspace = { transponderAirspace: known(true) };

  it.each([
    ['2026-11-29', 'supports'],
    ['2026-11-30', 'supports'],
    ['2026-12-01', 'bars'],
  ])('tested 10 Nov 2024, VFR where a transponder is needed, on %s', (day, effect) => {
    expect(checkTransponderTest(tested, onDay(day, inAirspace))).toMatchObject([
      { effect, cite: '14cfr91.413(a)' },
    ]);
  });

  it('outside that airspace a lapsed one is left off and placarded', () => {
    const [line] = checkTransponderTest(tested, onDay('2026-12-01'));
    expect(line).toMatchObject({ effect: 'limits', cite: '14cfr91.413(a)' });
    expect(line?.because).toContain('Leave the transponder off and placard it');
  });

  it('bars a lapsed one when the airspace is not known', () => {
    const use = onDay('2026-12-01', { transponderAirspace: unknown('whether a transponder is needed') });
    expect(missingOf(checkTransponderTest(tested, use))).toEqual(['whether a transponder is needed']);
  });

  it('bars when no test is on record, even outside the airspace', () => {
    expect(barred(checkTransponderTest(withoutRequirement('transponder'), useOf()))).toHaveLength(1);
    const undated = withRequirement('transponder', { lastDone: unknown('the date of the test') });
    expect(missingOf(checkTransponderTest(undated, useOf()))).toEqual(['the date of the test']);
  });

  it('asks nothing where there is no transponder, or it is out of use under a deferral', () => {
    const use = onDay('2026-12-01', inAirspace);
    expect(checkTransponderTest(withoutEquipment(tested, 'transponder'), use)).toEqual([]);
    const deferred = withBroken(tested, 'transponder', { deferral: deferralOf() });
    expect(checkTransponderTest(deferred, use)).toEqual([]);
    // Written up is not yet out of use: somebody has to take it out of use first.
    expect(barred(checkTransponderTest(withBroken(tested, 'transponder'), use))).toHaveLength(1);
    // Damage cannot be deferred, whatever is entered with it.
    const damaged = withBroken(tested, 'transponder', { kind: 'damage', deferral: deferralOf() });
    expect(barred(checkTransponderTest(damaged, use))).toHaveLength(1);
  });
});

describe('VOR check for IFR by VOR (14 CFR 91.171(a)(2))', () => {
  const checked = withRequirement('vor-check', { lastDone: doneOn('2026-03-01') });
  const byVor = { rules: 'IFR' as const, usesVor: known(true) };

  it.each([
    // Thirty days one by one: 31 March is day 30.
    ['2026-03-30', 'supports'],
    ['2026-03-31', 'supports'],
    ['2026-04-01', 'bars'],
  ])('checked 1 Mar 2026, flight on %s', (day, effect) => {
    expect(checkVorCheck(checked, onDay(day, byVor))).toMatchObject([{ effect, cite: '14cfr91.171(a)(2)' }]);
  });

  it('asks nothing of VFR, or of a route that does not use VOR', () => {
    expect(checkVorCheck(checked, onDay('2026-04-01', { ...byVor, rules: 'VFR' }))).toEqual([]);
    expect(checkVorCheck(checked, onDay('2026-04-01', { ...byVor, usesVor: known(false) }))).toEqual([]);
  });

  it('bars when it is not known whether VOR is used, or when it was checked', () => {
    const use = useOf({ ...byVor, usesVor: unknown('whether the route uses VOR') });
    expect(missingOf(checkVorCheck(trainer(), use))).toEqual(['whether the route uses VOR']);
    expect(missingOf(checkVorCheck(withoutRequirement('vor-check'), useOf(byVor)))).toEqual([
      'when the VOR was last checked',
    ]);
    const undated = withRequirement('vor-check', { lastDone: unknown('the date of the check') });
    expect(missingOf(checkVorCheck(undated, useOf(byVor)))).toEqual(['the date of the check']);
  });
});
