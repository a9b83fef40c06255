import { describe, expect, it } from 'vitest';
import type { AircraftFacts, RequirementFacts } from '@/lib/rules/aircraft';
import { checkRequirements } from '@/lib/rules/check-requirements';
import { dueOf } from '@/lib/rules/due';
import { known, unknown } from '@/lib/rules/facts';
import { checkDirectives } from '@/lib/rules/part-39/39-airworthiness-directives';
import { checkEltBattery, checkEltInspection } from '@/lib/rules/part-91/91-207-elt-inspection';
import { checkLifeLimits, checkMakerIntervals } from '@/lib/rules/part-91/91-403-airworthiness-limitations';
import { checkAnnual } from '@/lib/rules/part-91/91-409-inspections';
import {
  BASE,
  deferralOf,
  requirementRow,
  trainer,
  trainerRequirements,
  useOf,
  withBroken,
} from '../fixtures/aircraft';
import { effectsOf, missingOf } from '../fixtures/lines';
import { done, withoutRequirement, withRequirement } from '../fixtures/recurring';

const plus = (...rows: RequirementFacts[]): AircraftFacts =>
  trainer({ requirements: [...trainerRequirements(), ...rows] });

const onDay = (day: string, more = {}) => useOf({ departOn: day, arriveOn: day, ...more });

describe('annual (14 CFR 91.409(a))', () => {
  it.each([
    // Twelve calendar months: through the last day of the month.
    ['2026-06-29', ['supports']],
    ['2026-06-30', ['supports']],
    ['2026-07-01', ['bars']],
  ])('signed 14 Jun 2025, flight on %s', (day, expected) => {
    const aircraft = withRequirement('annual', { lastDone: done('2025-06-14', 43820) });
    const lines = checkAnnual(aircraft, onDay(day));
    expect(effectsOf(lines)).toEqual(expected);
    expect(lines[0]?.cite).toBe('14cfr91.409(a)');
  });

  it('bars a flight that leaves on the last day and lands on the next', () => {
    const aircraft = withRequirement('annual', { lastDone: done('2025-06-14', 43820) });
    const lines = checkAnnual(aircraft, useOf({ departOn: '2026-06-30', arriveOn: '2026-07-01' }));
    expect(effectsOf(lines)).toEqual(['bars']);
  });

  it('bars when none is recorded, and when the record names no date', () => {
    expect(missingOf(checkAnnual(withoutRequirement('annual'), useOf()))).toEqual([
      'when the last annual inspection was done',
    ]);
    const aircraft = withRequirement('annual', { lastDone: unknown('the date of the annual') });
    expect(missingOf(checkAnnual(aircraft, useOf()))).toEqual(['the date of the annual']);
  });

  it('does not count when the person who approved it could not (65.95(a)(2))', () => {
    const aircraft = withRequirement('annual', { lastDone: done('2026-03-10', 43820, known(false)) });
    const lines = checkAnnual(aircraft, useOf());
    expect(effectsOf(lines)).toEqual(['bars']);
    expect(missingOf(lines)).toEqual([]);
  });

  it('bars when nobody knows whether that person could', () => {
    const lastDone = known({
      on: '2026-03-10',
      ttisTenths: 43820,
      wasDueTenths: null,
      approvedByAuthorised: unknown('whether the authorization was in force'),
    });
    expect(missingOf(checkAnnual(withRequirement('annual', { lastDone }), useOf()))).toEqual([
      'whether the authorization was in force',
    ]);
  });

  it.each([
    ['2026-11-24', 'supports'],
    ['2026-11-25', 'supports'],
    ['2026-11-26', 'bars'],
  ])('an annual dated %s, flight on 25 Nov 2026: only what is preceding counts', (day, effect) => {
    const lines = checkAnnual(withRequirement('annual', { lastDone: done(day, 45000) }), useOf());
    expect(effectsOf(lines)).toEqual([effect]);
  });

  it.each([
    [45122, 'supports'],
    [45123, 'supports'],
    [45124, 'bars'],
  ])('done at %i tenths on an aircraft with 45123: a record from the future does not fit', (at, effect) => {
    const lines = checkAnnual(withRequirement('annual', { lastDone: done('2026-11-20', at) }), useOf());
    expect(effectsOf(lines)).toEqual([effect]);
  });
});

describe('airworthiness directives (14 CFR 39.7)', () => {
  const directive = (change: Partial<RequirementFacts> = {}) =>
    requirementRow('directive', 'Directive 2020-01-05', '2026-10-01', 44640, {
      intervalTenths: 500,
      ...change,
    });

  it.each([
    // Due at 4514.0, aircraft at 4512.3.
    [16, 'supports'],
    [17, 'supports'],
    [18, 'bars'],
  ])('a flight of %i tenths with 1.7 h left', (plannedTenths, effect) => {
    expect(checkDirectives(plus(directive()), useOf({ plannedTenths }))).toMatchObject([
      { effect, cite: '14cfr39.7' },
    ]);
  });

  it('gives no ten hours on the way to the place of the work (a reading, from memory)', () => {
    const use = useOf({ purpose: 'to-inspection', plannedTenths: 18 });
    expect(effectsOf(checkDirectives(plus(directive()), use))).toEqual(['bars']);
  });

  it('bars by the calendar too, whichever comes first', () => {
    const row = directive({ intervalTenths: 5000, intervalDays: 54 });
    // Done 1 October; 24 November is day 54.
    expect(effectsOf(checkDirectives(plus(row), onDay('2026-11-24')))).toEqual(['supports', 'supports']);
    expect(effectsOf(checkDirectives(plus(row), onDay('2026-11-25')))).toEqual(['bars', 'supports']);
  });

  it('is met for good when it does not repeat', () => {
    expect(effectsOf(checkDirectives(plus(directive({ intervalTenths: null })), useOf()))).toEqual([
      'supports',
    ]);
  });

  it('bars when nobody has gone through the directives, or a compliance is not recorded', () => {
    const aircraft = trainer({ directives: unknown('which directives apply') });
    expect(missingOf(checkDirectives(aircraft, useOf()))).toEqual(['which directives apply']);
    const row = directive({ lastDone: unknown('when it was complied with') });
    expect(missingOf(checkDirectives(plus(row), useOf()))).toEqual(['when it was complied with']);
  });
});

describe('life limits and maker intervals (14 CFR 91.403)', () => {
  const life = requirementRow('life-limit', 'Wing bolt', '2010-01-01', 5123, { intervalTenths: 40000 });

  it.each([
    // Fitted at 512.3 h: a life of 4001.3 h ends at 4513.6 h, exactly with the flight.
    [40012, 'bars'],
    [40013, 'supports'],
    [40014, 'supports'],
  ])('a life of %i tenths from 512.3 h, flight ends at 4513.6 h', (intervalTenths, effect) => {
    const lines = checkLifeLimits(plus({ ...life, intervalTenths }), useOf({ plannedTenths: 13 }));
    expect(lines).toMatchObject([{ effect, cite: '14cfr91.403(c)' }]);
  });

  it('bars when the life itself is missing', () => {
    expect(missingOf(checkLifeLimits(plus({ ...life, intervalTenths: null }), useOf()))).toEqual([
      'the interval of Wing bolt',
    ]);
  });

  it('a recommendation over its time is a note; one the operator binds itself to bars', () => {
    const overhaul = requirementRow('maker-interval', 'Engine overhaul', '2014-01-01', 20000, {
      intervalTenths: 20000,
    });
    expect(effectsOf(checkMakerIntervals(plus({ ...overhaul, binding: false }), useOf()))).toEqual(['notes']);
    expect(effectsOf(checkMakerIntervals(plus({ ...overhaul, binding: true }), useOf()))).toEqual(['bars']);
  });
});

describe('emergency locator transmitter, inspection and battery (14 CFR 91.207(c), (d))', () => {
  const instruction = { purpose: 'instruction-for-hire', trainingWithin50Nm: known(true) } as const;
  const inspected = withRequirement('elt-inspection', { lastDone: done('2025-04-03', 43000) });

  it.each([
    ['2026-04-29', 'supports'],
    ['2026-04-30', 'supports'],
    ['2026-05-01', 'bars'],
  ])('inspected 3 Apr 2025, flight on %s', (day, effect) => {
    expect(effectsOf(checkEltInspection(inspected, onDay(day)))).toEqual([effect]);
  });

  it('limits to training within 50 nautical miles once lapsed (91.207(f)(3))', () => {
    expect(checkEltInspection(inspected, onDay('2026-05-01', instruction))).toMatchObject([
      { effect: 'limits', cite: '14cfr91.207(f)(3)' },
    ]);
  });

  it('bars on the way to a place farther off than 50 nautical miles, whatever was answered (91.207(f)(3))', () => {
    const to = { ...BASE, ident: '0WF', latitudeDeg: BASE.latitudeDeg + 2 };
    expect(effectsOf(checkEltInspection(inspected, onDay('2026-05-01', { ...instruction, to })))).toEqual([
      'bars',
    ]);
  });

  it('does not count a rental or a solo as training', () => {
    for (const purpose of ['private', 'student-solo'] as const) {
      const use = onDay('2026-05-01', { purpose, trainingWithin50Nm: known(true) });
      expect(effectsOf(checkEltInspection(inspected, use))).toEqual(['bars']);
    }
  });

  it('bars when nobody knows whether the training stays within 50 nautical miles', () => {
    const use = onDay('2026-05-01', { ...instruction, trainingWithin50Nm: unknown('how far it goes') });
    expect(missingOf(checkEltInspection(inspected, use))).toEqual(['how far it goes']);
  });

  it.each([
    ['2026-11-24', 'bars'],
    ['2026-11-25', 'supports'],
    ['2026-11-26', 'supports'],
  ])('battery marked %s, flight on 25 Nov 2026', (fixedExpiry, effect) => {
    const lines = checkEltBattery(withRequirement('elt-battery', { fixedExpiry }), useOf());
    expect(lines).toMatchObject([{ effect, cite: '14cfr91.207(c)(2)' }]);
  });

  it('bars without a row or a date', () => {
    expect(effectsOf(checkEltBattery(withoutRequirement('elt-battery'), useOf()))).toEqual(['bars']);
    expect(
      effectsOf(checkEltBattery(withRequirement('elt-battery', { fixedExpiry: null }), useOf())),
    ).toEqual(['bars']);
    expect(effectsOf(checkEltInspection(withoutRequirement('elt-inspection'), useOf()))).toEqual(['bars']);
  });

  it('asks nothing of a transmitter that is removed under a deferral', () => {
    const deferral = deferralOf({
      method: 'removed',
      eltRemoval: { firstRemovedOn: '2026-10-16', recordComplete: true },
    });
    const aircraft = withBroken(inspected, 'elt', { deferral });
    expect(checkEltInspection(aircraft, onDay('2026-05-01'))).toEqual([]);
  });

  it('is about airplanes only', () => {
    const glider = { ...inspected, type: { ...inspected.type, category: 'glider' as const } };
    expect(checkEltInspection(glider, onDay('2026-05-01'))).toEqual([]);
  });
});

describe('all requirements together', () => {
  it('supports every kind of flight of the healthy trainer', () => {
    const uses = [
      useOf(),
      useOf({ purpose: 'instruction-for-hire' }),
      useOf({ rules: 'IFR', usesVor: known(true), light: 'night' }),
    ];
    for (const use of uses) {
      expect(checkRequirements(trainer(), use).filter((line) => line.effect !== 'supports')).toEqual([]);
    }
  });

  it('bars when the time in service is not known, though nothing else is asked by hours', () => {
    const aircraft = trainer({ ttisTenths: unknown('the total time in service') });
    expect(missingOf(checkRequirements(aircraft, useOf()))).toEqual(['the total time in service']);
  });
});

describe('when something is due', () => {
  it('reports days and hours left: 0 on the border, negative when over', () => {
    const row = requirementRow('maker-interval', 'Vacuum pump', '2026-11-01', 45000, {
      intervalDays: 30,
      intervalTenths: 200,
    });
    const due = dueOf(row, known(45123), []);
    expect(due).toMatchObject({ on: '2026-12-01', tenths: 45200, remainingTenths: 77, missing: null });
    expect(due.remainingDays('2026-11-30')).toBe(1);
    expect(due.remainingDays('2026-12-01')).toBe(0);
    expect(due.remainingDays('2026-12-02')).toBe(-1);
    expect(dueOf(row, known(45201), []).remainingTenths).toBe(-1);
  });

  it('goes by the regulation, whatever interval the row carries', () => {
    const annual = requirementRow('annual', 'Annual inspection', '2025-06-14', 43820, { intervalMonths: 36 });
    expect(dueOf(annual, known(45123), [])).toMatchObject({ on: '2026-06-30', tenths: null });
    const vor = requirementRow('vor-check', 'VOR check', '2026-03-01', 43820, { intervalDays: 90 });
    expect(dueOf(vor, known(45123), []).on).toBe('2026-03-31');
  });

  it('takes the date marked on a battery, and says what is missing otherwise', () => {
    const battery = requirementRow('elt-battery', 'Battery', '2024-05-02', 38050, {
      lastDone: unknown('when it was fitted'),
      fixedExpiry: '2028-05-31',
    });
    expect(dueOf(battery, known(45123), [])).toMatchObject({ on: '2028-05-31', missing: null });
    const annual = requirementRow('annual', 'Annual', '2024-05-02', 38050, {
      lastDone: unknown('when it was done'),
    });
    expect(dueOf(annual, unknown('the time'), []).missing).toBe('when it was done');
    expect(dueOf(annual, unknown('the time'), []).remainingTenths).toBeNull();
  });
});
