import { describe, expect, test } from 'vitest';
import type { AircraftFacts, DiscrepancyFacts, EquipmentFunction } from '../../lib/rules/aircraft';
import { known, unknown } from '../../lib/rules/facts';
import { judgeDiscrepancy } from '../../lib/rules/judge-discrepancy';
import type { UseOfAircraft } from '../../lib/rules/operations';
import { judgeInoperative } from '../../lib/rules/part-91/91-213-inoperative-equipment';
import { joinLines } from '../../lib/rules/verdict';
import { deferralOf, olderTrainer, trainer, useOf, withBroken, withRow } from '../fixtures/aircraft';

/*
 * Outside source: 14 CFR 91.213(d)(2) as read in stored copies (faraim.org page 50 for (ii) to (iv), a course quoting
 * the text for (i)), and 25 worked decisions derived from the paragraphs each row names. None is an FAA example; the
 * derived decisions carry the status of the paragraphs beside them.
 */
const broken = (
  aircraft: AircraftFacts,
  fn: EquipmentFunction,
  overrides: Partial<DiscrepancyFacts> = {},
): { aircraft: AircraftFacts; d: DiscrepancyFacts } => {
  const out = withBroken(aircraft, fn, overrides);
  const d = out.discrepancies.at(-1);
  if (d === undefined) throw new Error('nothing was broken');
  return { aircraft: out, d };
};

const deferred = (
  aircraft: AircraftFacts,
  fn: EquipmentFunction,
  deferral: Parameters<typeof deferralOf>[0] = {},
  use: Partial<UseOfAircraft> = {},
) => {
  const { aircraft: out, d } = broken(aircraft, fn, { deferral: deferralOf(deferral) });
  return joinLines(judgeDiscrepancy(out, d, useOf(use)));
};

const barsOf = (lines: readonly { effect: string; cite: string }[]) =>
  lines.filter((line) => line.effect === 'bars').map((line) => line.cite);

describe('the four tests of 91.213(d)(2), each alone', () => {
  const none = { dayVfr: 0, nightVfr: 0, dayIfr: 0, nightIfr: 0 };

  test('clear of all four: the cabin heat may be out', () => {
    const { aircraft, d } = broken(trainer(), 'cabin-heat');
    const lines = judgeInoperative(aircraft, d, useOf());
    expect(barsOf(lines)).toEqual([]);
    expect(lines.filter((line) => line.effect === 'supports').map((line) => line.cite)).toEqual([
      '14cfr91.213(a)(1)',
      '14cfr91.213(d)(1)',
      '14cfr91.213(d)(2)(i)',
      '14cfr91.213(d)(2)(ii)',
      '14cfr91.213(d)(2)(iii)',
      '14cfr91.213(d)(2)(iv)',
    ]);
  });

  // (d)(2)(i), checked in a course quoting the text.
  test('(i) part of the VFR-day type certification equipment', () => {
    const plane = withRow(trainer(), 'cabin-heat', { vfrDayTypeDesign: known(true) });
    const { aircraft, d } = broken(plane, 'cabin-heat');
    expect(barsOf(judgeInoperative(aircraft, d, useOf()))).toEqual(['14cfr91.213(d)(2)(i)']);
  });

  // (d)(2)(ii), checked: faraim.org page 50. "For the kind of flight": the same list answers night and day apart.
  test('(ii) required on the equipment list for the kind of flight', () => {
    const plane = withRow(trainer(), 'cabin-heat', { requiredByList: known({ ...none, nightVfr: 1 }) });
    const { aircraft, d } = broken(plane, 'cabin-heat');
    expect(barsOf(judgeInoperative(aircraft, d, useOf({ light: 'night' })))).toEqual([
      '14cfr91.213(d)(2)(ii)',
    ]);
    expect(barsOf(judgeInoperative(aircraft, d, useOf()))).toEqual([]);
  });

  // (d)(2)(iii), checked: faraim.org page 50; 91.205(d)(6), checked: faraim.org CFR of 2014, page 743.
  test('(iii) required by 91.205 for the kind of flight', () => {
    const { aircraft, d } = broken(trainer(), 'clock');
    const ifr = useOf({ rules: 'IFR', usesVor: known(true) });
    expect(barsOf(judgeInoperative(aircraft, d, ifr))).toEqual(['14cfr91.205(d)(6)']);
    expect(barsOf(judgeInoperative(aircraft, d, useOf()))).toEqual([]);
  });

  // (d)(2)(iv), checked: faraim.org page 50.
  test('(iv) required operational by an airworthiness directive', () => {
    const directive = {
      id: 'ad-1',
      number: '0000-00-01',
      title: 'Cabin heat valve',
      equipmentId: 'cabin-heat',
      requiresOperable: true,
    };
    const { aircraft, d } = broken(trainer({ directives: known([directive]) }), 'cabin-heat');
    expect(barsOf(judgeInoperative(aircraft, d, useOf()))).toEqual(['14cfr91.213(d)(2)(iv)']);
    const other = { ...directive, equipmentId: 'flaps' };
    const harmless = broken(
      trainer({ directives: known([other, { ...directive, requiresOperable: false }]) }),
      'cabin-heat',
    );
    expect(barsOf(judgeInoperative(harmless.aircraft, harmless.d, useOf()))).toEqual([]);
  });

  test('all four together: each says its own', () => {
    const plane = withRow(
      trainer({
        directives: known([
          { id: 'ad-1', number: '0000-00-01', title: 'Clock', equipmentId: 'clock', requiresOperable: true },
        ]),
      }),
      'clock',
      { vfrDayTypeDesign: known(true), requiredByList: known({ ...none, dayIfr: 1 }) },
    );
    const { aircraft, d } = broken(plane, 'clock');
    expect(barsOf(judgeInoperative(aircraft, d, useOf({ rules: 'IFR', usesVor: known(true) })))).toEqual([
      '14cfr91.213(d)(2)(i)',
      '14cfr91.213(d)(2)(ii)',
      '14cfr91.205(d)(6)',
      '14cfr91.213(d)(2)(iv)',
    ]);
  });
});

describe('worked decisions (derived)', () => {
  // 91.213(d); IFR barred by 91.205(d)(6).
  test('1: panel clock dead, day VFR dual: deferred, not under IFR', () => {
    const use: Partial<UseOfAircraft> = { purpose: 'instruction-for-hire' };
    const answer = deferred(trainer(), 'clock', {}, use);
    expect(answer.outcome).toBe('go-with-limits');
    expect(answer.lines.map((line) => line.because)).toContain(
      'Deferred: Panel clock, deactivated, placarded. Not under IFR.',
    );
    expect(deferred(trainer(), 'clock', {}, { light: 'night' }).outcome).toBe('go-with-limits');
    const ifr = deferred(trainer(), 'clock', {}, { rules: 'IFR', usesVor: known(true) });
    expect(barsOf(ifr.lines)).toEqual(['14cfr91.205(d)(6)']);
  });

  // 91.205(b)(9), 91.213(d)(2)(iii).
  test('2: left fuel gauge dead, tank dipped full: no go', () => {
    const { aircraft, d } = broken(trainer(), 'fuel-quantity-gauge');
    const answer = joinLines(judgeDiscrepancy(aircraft, d, useOf()));
    expect(answer.outcome).toBe('no-go');
    expect(barsOf(answer.lines)).toContain('14cfr91.205(b)(9)');
    // Nor would taking the steps of a deferral help.
    expect(barsOf(deferred(trainer(), 'fuel-quantity-gauge').lines)).toContain('14cfr91.205(b)(9)');
  });

  // 91.205(c)(4).
  test('3: landing light out: not for night dual by the school, night private yes', () => {
    const dual = deferred(
      trainer(),
      'landing-light',
      {},
      { light: 'night', purpose: 'instruction-for-hire' },
    );
    expect(barsOf(dual.lines)).toEqual(['14cfr91.205(c)(4)']);
    const rental = deferred(trainer(), 'landing-light', {}, { light: 'night' });
    expect(rental.outcome).toBe('go-with-limits');
    expect(rental.lines.map((line) => line.because)).toContain(
      'Deferred: Landing light, deactivated, placarded. Not at night for hire.',
    );
  });

  // 91.209(a)(1), 91.205(c)(2).
  test('4: one position light out, by day: on the ground by sunset', () => {
    const day = deferred(trainer(), 'position-lights');
    expect(day.outcome).toBe('go-with-limits');
    const sunset = day.lines.find((line) => line.cite === '14cfr91.209(a)(1)');
    expect(sunset).toMatchObject({ effect: 'limits', because: 'On the ground by sunset, 16:32 at 0WC.' });
    // After sunset and before night already.
    const dusk = deferred(
      trainer(),
      'position-lights',
      {},
      { betweenSunsetAndSunrise: true, sunsetAt: null },
    );
    expect(barsOf(dusk.lines)).toEqual(['14cfr91.209(a)(1)']);
    expect(barsOf(deferred(trainer(), 'position-lights', {}, { light: 'night' }).lines)).toContain(
      '14cfr91.205(c)(2)',
    );
  });

  // 91.213(d), 91.205(c)(3); the 91.209(b) part is answered with the required equipment.
  test('8: beacon of an airplane of 1976 dead: deferred, day only', () => {
    expect(deferred(olderTrainer(), 'anticollision-lights').outcome).toBe('go-with-limits');
    const night = deferred(olderTrainer(), 'anticollision-lights', {}, { light: 'night' });
    expect(barsOf(night.lines)).toContain('14cfr91.205(c)(3)');
  });

  // 91.225(d), 91.213(d).
  test('12: ADS-B Out dead, flight outside its airspace: deferred, the airspace is the limit', () => {
    const outside = deferred(trainer(), 'adsb-out');
    expect(outside.outcome).toBe('go-with-limits');
    expect(outside.lines).toContainEqual(
      expect.objectContaining({
        effect: 'limits',
        cite: '14cfr91.225',
        because: 'Stay out of airspace that requires ADS-B Out.',
      }),
    );
    const inside = deferred(trainer(), 'adsb-out', {}, { adsbAirspace: known(true) });
    expect(barsOf(inside.lines)).toEqual(['14cfr91.225']);
    const nobodySaid = deferred(trainer(), 'adsb-out', {}, { adsbAirspace: unknown('the airspace') });
    expect(nobodySaid.lines).toContainEqual(
      expect.objectContaining({ effect: 'bars', missing: 'the airspace' }),
    );
  });

  // 91.213(d)(3), (d)(4), 91.205(d)(8).
  test('24: attitude indicator dead, a student pilot signed (d)(4): a rated person must, and the work be recorded', () => {
    const by = {
      name: 'L. Ashdown',
      pilotGrade: 'student',
      pilotRatedForAircraft: false,
      mechanicRatings: [],
      repairStation: false,
    } as const;
    const student = deferred(trainer(), 'attitude-indicator', {
      deactivationIsMaintenance: true,
      determination: known({ by, on: '2026-11-24' }),
    });
    expect(barsOf(student.lines)).toEqual(['14cfr91.213(d)(3)(ii)', '14cfr91.213(d)(4)']);

    const proper = { deactivationIsMaintenance: true, maintenanceRecordSigned: true };
    expect(deferred(trainer(), 'attitude-indicator', proper).outcome).toBe('go-with-limits');
    const ifr = deferred(trainer(), 'attitude-indicator', proper, { rules: 'IFR', usesVor: known(true) });
    expect(barsOf(ifr.lines)).toContain('14cfr91.205(d)(8)');
  });

  // 91.405(c), (d), 43.11(b).
  test('25: deferred radio, 100-hour done since without a word on it: no go', () => {
    const silent = { name: '100-hour inspection', on: '2026-11-24', disposition: null } as const;
    expect(barsOf(deferred(trainer(), 'two-way-radio', { inspectionsSince: [silent] }).lines)).toEqual([
      '14cfr91.405(c)',
    ]);
    const looked = { ...silent, disposition: 'inspected' } as const;
    expect(deferred(trainer(), 'two-way-radio', { inspectionsSince: [looked] }).outcome).toBe(
      'go-with-limits',
    );
  });
});
