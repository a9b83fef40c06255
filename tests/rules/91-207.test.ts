/**
 * 14 CFR 91.207, when a transmitter must be there. Source of every row: the eCFR of 24 August 2026, section 91.207, in
 * the stored copy github.com/Lyutenant/FAR-AIM. The solo reading is disputed; ours is the strict one.
 */
import { describe, expect, it } from 'vitest';
import type { DeferralFacts } from '../../lib/rules/aircraft';
import { nauticalMilesBetween } from '../../lib/rules/distance';
import { known, unknown } from '../../lib/rules/facts';
import type { UseOfAircraft } from '../../lib/rules/operations';
import { demandsOf91207 } from '../../lib/rules/part-91/91-207-emergency-locator-transmitter';
import { AWAY, BASE, deferralOf, trainer, trainerType, useOf, withBroken } from '../fixtures/aircraft';

const broken = withBroken(trainer(), 'elt');
const relief = (use: Partial<UseOfAircraft>, aircraft = broken) =>
  demandsOf91207(aircraft, useOf(use))[0]?.relief?.cite ?? null;

describe('(a)(2) and (f)(9) who needs one', () => {
  it('an airplane', () => {
    expect(demandsOf91207(trainer(), useOf())).toMatchObject([
      { function: 'elt', count: 1, cite: '14cfr91.207(a)(2)', applies: { known: true }, relief: null },
    ]);
  });
  it.each(['rotorcraft', 'glider', 'lighter-than-air'] as const)('not a %s', (category) => {
    expect(demandsOf91207(trainer({ type: trainerType({ category }) }), useOf())).toEqual([]);
  });
  it.each([
    [known(1), 0],
    [known(2), 1],
    [unknown('the seats'), 1],
  ])('seats %o: %i', (seats, demands) => {
    expect(demandsOf91207(trainer({ type: trainerType({ seats }) }), useOf())).toHaveLength(demands);
  });
});

describe('(f)(3) training within 50 nautical miles', () => {
  const near = known(true);
  it('is given for instruction', () => {
    expect(relief({ purpose: 'instruction-for-hire', trainingWithin50Nm: near })).toBe('14cfr91.207(f)(3)');
  });
  it.each(['private', 'carriage-for-hire', 'check-flight', 'student-solo'] as const)('not %s', (purpose) => {
    expect(relief({ purpose, trainingWithin50Nm: near })).toBeNull();
  });
  it('says that a solo is read strictly', () => {
    const [demand] = demandsOf91207(broken, useOf({ purpose: 'student-solo', trainingWithin50Nm: near }));
    expect(demand?.strictReading).toContain('solo');
  });
  it('and says nothing of it where no solo was said to be near, or where it is no solo', () => {
    const strict = (use: Partial<UseOfAircraft>) => demandsOf91207(broken, useOf(use))[0]?.strictReading;
    expect(strict({ purpose: 'student-solo', trainingWithin50Nm: known(false) })).toBeUndefined();
    expect(strict({ purpose: 'student-solo', trainingWithin50Nm: unknown('how far') })).toBeUndefined();
    expect(strict({ purpose: 'private', trainingWithin50Nm: near })).toBeUndefined();
    const farOff = { ...AWAY, latitudeDeg: BASE.latitudeDeg + 3 };
    expect(strict({ purpose: 'private', trainingWithin50Nm: known(false), to: farOff })).toBeUndefined();
    expect(
      strict({ purpose: 'private', trainingWithin50Nm: unknown('how far'), to: farOff }),
    ).toBeUndefined();
  });
  it.each([known(false), unknown('how far the lesson goes')])('not beyond, nor unknown: %o', (within) => {
    expect(relief({ purpose: 'instruction-for-hire', trainingWithin50Nm: within })).toBeNull();
  });
  // A minute of latitude is 1.0007 nautical miles on the mean sphere, so 49.9 minutes are just under and 50 just over.
  it.each([
    [49.9, '14cfr91.207(f)(3)'],
    [50.0, null],
    [50.1, null],
    [190, null],
  ])('to a place %d minutes of latitude away, whatever was answered: %s', (minutes, cite) => {
    const to = { ...AWAY, ident: '0WF', latitudeDeg: BASE.latitudeDeg + minutes / 60, longitudeDeg: -91.8 };
    const use = { purpose: 'instruction-for-hire', trainingWithin50Nm: near, to } as const;
    expect(relief(use)).toBe(cite);
    if (cite === null) expect(demandsOf91207(broken, useOf(use))[0]?.strictReading).toContain('0WF');
  });
});

// Sources: the definition of the nautical mile (a minute of arc, near enough); Greenwich to the antipode is half a turn.
describe('nauticalMilesBetween', () => {
  const at = (latitudeDeg: number, longitudeDeg: number) => ({ latitudeDeg, longitudeDeg });
  it.each([
    [at(43.3, -91.8), at(43.3, -91.8), 0],
    [at(0, 0), at(0, 1), 60],
    [at(43, -91), at(44, -91), 60],
    // At 60 degrees north a degree of longitude is half as long as at the equator.
    [at(60, 10), at(60, 11), 30],
    [at(0, 179.5), at(0, -179.5), 60],
    [at(0, 0), at(0, 180), 10800],
  ])('%o to %o: %d', (a, b, miles) => {
    expect(Math.abs(nauticalMilesBetween(a, b) - miles)).toBeLessThanOrEqual(miles * 0.001);
  });
});

describe('(e)(2) ferry to repair', () => {
  const ferry: Partial<UseOfAircraft> = { from: AWAY, to: BASE, crewOnly: known(true) };
  it('from a place without repair to one with it, required crew only', () => {
    expect(relief(ferry)).toBe('14cfr91.207(e)(2)');
  });
  it.each(['private', 'check-flight', 'to-inspection'] as const)('as %s', (purpose) => {
    expect(relief({ ...ferry, purpose })).toBe('14cfr91.207(e)(2)');
  });
  it.each<[string, Partial<UseOfAircraft>]>([
    ['with a passenger', { crewOnly: known(false) }],
    ['not knowing who is aboard', { crewOnly: unknown('who is aboard') }],
    ['as a lesson', { purpose: 'instruction-for-hire' }],
    ['as a solo', { purpose: 'student-solo' }],
    ['carrying a customer', { purpose: 'carriage-for-hire' }],
    ['from a place with repair', { from: BASE }],
    ['from an unknown place', { from: { ...AWAY, repairAvailable: unknown('repair at 0WA') } }],
    ['to a place without repair', { to: AWAY }],
    ['to an unknown place', { to: { ...BASE, repairAvailable: unknown('repair at 0WC') } }],
  ])('not %s', (_why, over) => {
    expect(relief({ ...ferry, ...over })).toBeNull();
  });
});

describe('(f)(10) temporarily removed', () => {
  const out = (firstRemovedOn: string, over: Partial<DeferralFacts> = {}, recordComplete = true) =>
    withBroken(trainer(), 'elt', {
      deferral: deferralOf({
        method: 'removed',
        maintenanceRecordSigned: true,
        eltRemoval: { firstRemovedOn, recordComplete },
        ...over,
      }),
    });
  const onDay = (date: string) => ({ departOn: date, arriveOn: date });

  // Removed 1 January 2026: day 90 is 1 April; in the leap year 2028, 31 March.
  it.each([
    ['2026-01-01', '2026-03-31', true],
    ['2026-01-01', '2026-04-01', true],
    ['2026-01-01', '2026-04-02', false],
    ['2028-01-01', '2028-03-30', true],
    ['2028-01-01', '2028-03-31', true],
    ['2028-01-01', '2028-04-01', false],
  ])('removed %s, flight on %s: %s', (removed, date, good) => {
    expect(relief(onDay(date), out(removed))).toBe(good ? '14cfr91.207(f)(10)' : null);
  });
  it('names the last day', () => {
    const [demand] = demandsOf91207(out('2026-01-01'), useOf(onDay('2026-02-01')));
    expect(demand?.relief?.limit).toContain('1 Apr 2026');
  });
  it('must be down by the last day: an arrival after midnight is day 91', () => {
    expect(relief({ departOn: '2026-04-01', arriveOn: '2026-04-02' }, out('2026-01-01'))).toBeNull();
  });
  it('and whichever of the two dates is the later', () => {
    expect(relief({ departOn: '2026-04-02', arriveOn: '2026-04-01' }, out('2026-01-01'))).toBeNull();
    expect(relief({ departOn: '2026-04-01', arriveOn: '2026-03-31' }, out('2026-01-01'))).not.toBeNull();
  });
  it.each([
    ['2025-12-31', false],
    ['2026-01-01', true],
    ['2026-01-02', true],
  ])('removed 1 January 2026, flight on %s: %s', (date, good) => {
    expect(relief(onDay(date), out('2026-01-01'))).toBe(good ? '14cfr91.207(f)(10)' : null);
  });
  it('needs no reading of (f)(3) beside it', () => {
    const solo = {
      ...onDay('2026-01-02'),
      purpose: 'student-solo',
      trainingWithin50Nm: known(true),
    } as const;
    const [demand] = demandsOf91207(out('2026-01-01'), useOf(solo));
    expect(demand?.relief?.cite).toBe('14cfr91.207(f)(10)');
    expect(demand?.strictReading).toBeUndefined();
  });
  it.each<[string, ReturnType<typeof out>]>([
    ['an incomplete record', out('2026-11-01', {}, false)],
    ['no placard', out('2026-11-01', { placardPlaced: false })],
    ['deactivated, not removed', out('2026-11-01', { method: 'deactivated' })],
    ['no removal record', out('2026-11-01', { eltRemoval: null })],
    ['no deferral', broken],
  ])('not with %s', (_why, aircraft) => {
    expect(relief({}, aircraft)).toBeNull();
  });
  it('does not start anew when it is taken out again', () => {
    const again = withBroken(out('2026-08-01'), 'elt', {
      id: 'second',
      deferral: deferralOf({
        method: 'removed',
        eltRemoval: { firstRemovedOn: '2026-11-20', recordComplete: true },
      }),
    });
    expect(relief({}, again)).toBeNull();
  });
  // Removed on 1 September 2026: day 90 is 30 November. In whichever order the write-ups stand.
  it.each([
    ['2026-09-01', '2026-11-20', '2026-11-30', true],
    ['2026-11-20', '2026-09-01', '2026-11-30', true],
    ['2026-09-01', '2026-11-20', '2026-12-01', false],
    ['2026-11-20', '2026-09-01', '2026-12-01', false],
  ])('removed on %s and %s, flight on %s: %s', (first, second, date, good) => {
    const deferral = deferralOf({
      method: 'removed',
      eltRemoval: { firstRemovedOn: second, recordComplete: true },
    });
    const twice = withBroken(out(first), 'elt', { id: 'second', deferral });
    expect(relief(onDay(date), twice)).toBe(good ? '14cfr91.207(f)(10)' : null);
  });
  it('not while another write-up on it is no removal', () => {
    expect(relief(onDay('2026-01-02'), withBroken(out('2026-01-01'), 'elt', { id: 'second' }))).toBeNull();
  });
  it('past day 90 instruction nearby is still possible', () => {
    expect(
      relief({ purpose: 'instruction-for-hire', trainingWithin50Nm: known(true) }, out('2026-01-01')),
    ).toBe('14cfr91.207(f)(3)');
  });
});
