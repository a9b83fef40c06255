/** Counting and judging required equipment; sources: 91.205(a), 91.213(d)(2)(ii), and worked decisions named per test. */
import { describe, expect, it } from 'vitest';
import type { AircraftFacts } from '../../lib/rules/aircraft';
import {
  checkRequiredEquipment,
  demandsOn,
  listDemand,
  operativeCount,
} from '../../lib/rules/equipment-check';
import { known, unknown } from '../../lib/rules/facts';
import type { UseOfAircraft } from '../../lib/rules/operations';
import { joinLines } from '../../lib/rules/verdict';
import {
  AWAY,
  BASE,
  deferralOf,
  discrepancyOf,
  equipmentRow,
  olderTrainer,
  trainer,
  trainerType,
  useOf,
  withBroken,
  withEquipment,
  withoutEquipment,
  withRow,
} from '../fixtures/aircraft';

const night: Partial<UseOfAircraft> = { light: 'night' };
const ifr: Partial<UseOfAircraft> = { rules: 'IFR' };
const outcome = (aircraft: AircraftFacts, use: Partial<UseOfAircraft> = {}) =>
  joinLines(checkRequiredEquipment(aircraft, useOf(use))).outcome;
const against = (aircraft: AircraftFacts, use: Partial<UseOfAircraft> = {}) =>
  checkRequiredEquipment(aircraft, useOf(use))
    .filter(({ effect }) => effect !== 'supports')
    .map(({ effect, cite }) => [effect, cite]);

describe('operativeCount', () => {
  it.each([
    [known(1), 1],
    [known(2), 0],
    [known(3), 0],
    [known(0), 0],
    [unknown('how many'), 0],
  ])('two gauges, %o inoperative: %i work', (inoperativeCount, operative) => {
    const aircraft = withBroken(trainer(), 'fuel-quantity-gauge', { inoperativeCount });
    expect(operativeCount(aircraft, 'fuel-quantity-gauge')).toMatchObject({
      installed: 2,
      operative: known(operative),
    });
  });
  it('adds up rows and write-ups, deferred ones too', () => {
    const two = withEquipment(trainer(), equipmentRow('landing-light', 'Second', '3340', { id: 'second' }));
    expect(operativeCount(two, 'landing-light')).toMatchObject({ installed: 2, operative: known(2) });
    const one = withBroken(two, 'landing-light', { deferral: deferralOf() });
    expect(operativeCount(one, 'landing-light').operative).toEqual(known(1));
  });
  it('leaves other kinds of finding to other rules', () => {
    const worn = withBroken(trainer(), 'seat-belts', { kind: 'wear' });
    expect(operativeCount(worn, 'seat-belts').operative).toEqual(known(4));
  });
  it('does not guess which item an unplaced write-up is about, within its code', () => {
    const aircraft = trainer({ discrepancies: [discrepancyOf({ equipmentId: null, jasc: '3340' })] });
    expect(operativeCount(aircraft, 'position-lights').operative).toMatchObject({ known: false });
    expect(operativeCount(aircraft, 'clock').operative).toEqual(known(1));
    expect(outcome(aircraft)).toBe('no-go');
  });
});

describe('the healthy trainer', () => {
  it.each<[string, Partial<UseOfAircraft>, number]>([
    ['day VFR', {}, 2],
    ['night VFR for hire', { ...night, purpose: 'instruction-for-hire' }, 4],
    ['day IFR', ifr, 3],
    ['night IFR by VOR', { ...night, ...ifr, usesVor: known(true) }, 5],
    ['in all airspace', { transponderAirspace: known(true), adsbAirspace: known(true) }, 4],
  ])('%s: go, one line a section', (_name, use, sections) => {
    const lines = checkRequiredEquipment(trainer(), useOf(use));
    expect(lines.map(({ effect }) => effect)).toEqual(Array(sections).fill('supports'));
  });
  it('asks for the transmitter once', () => {
    expect(demandsOn(trainer(), useOf()).filter((demand) => demand.function === 'elt')).toHaveLength(1);
  });
});

describe('every demand met by the trainer is missed when its equipment goes', () => {
  const widest = useOf({
    ...night,
    ...ifr,
    purpose: 'carriage-for-hire',
    transponderAirspace: known(true),
    adsbAirspace: known(true),
  });
  it.each(demandsOn(trainer(), widest).map((demand) => [demand.cite, demand] as const))(
    '%s',
    (cite, { function: fn, count }) => {
      const bars = (aircraft: AircraftFacts) =>
        checkRequiredEquipment(aircraft, widest).filter(
          (line) => line.effect === 'bars' && line.cite === cite,
        );
      expect(bars(trainer())).toEqual([]);
      // (c)(5) asks of the sources the list names, so one taken off it is not missed while the other is there.
      if (cite !== '14cfr91.205(c)(5)') {
        expect(bars(withoutEquipment(trainer(), fn))[0]?.because).toContain('The equipment list names no');
      }
      const installed = operativeCount(trainer(), fn).installed;
      const inoperativeCount = known(installed - count + 1);
      expect(bars(withBroken(trainer(), fn, { inoperativeCount }))).not.toEqual([]);
    },
  );
});

describe('worked decisions (numbers of the table drawn up for this project from the paragraphs)', () => {
  it('1: clock dead: day and night VFR yes, IFR no, 91.205(d)(6)', () => {
    const aircraft = withBroken(trainer(), 'clock');
    expect(outcome(aircraft)).toBe('go');
    expect(outcome(aircraft, night)).toBe('go');
    expect(against(aircraft, ifr)).toEqual([['bars', '14cfr91.205(d)(6)']]);
  });
  it('2: one fuel gauge dead, tank full: no, 91.205(b)(9)', () => {
    expect(against(withBroken(trainer(), 'fuel-quantity-gauge'))).toEqual([['bars', '14cfr91.205(b)(9)']]);
  });
  it('3: landing light out: night dual no, night private yes, 91.205(c)(4)', () => {
    const aircraft = withBroken(trainer(), 'landing-light');
    expect(against(aircraft, { ...night, purpose: 'instruction-for-hire' })).toEqual([
      ['bars', '14cfr91.205(c)(4)'],
    ]);
    expect(outcome(aircraft, night)).toBe('go');
  });
  it('4: one position light out: before sunset yes, after it no, 91.209(a)(1)', () => {
    const aircraft = withBroken(trainer(), 'position-lights');
    expect(outcome(aircraft)).toBe('go');
    expect(against(aircraft, { betweenSunsetAndSunrise: true })).toEqual([['bars', '14cfr91.209(a)(1)']]);
    expect(against(aircraft, night)).toEqual([
      ['bars', '14cfr91.205(c)(2)'],
      ['bars', '14cfr91.209(a)(1)'],
    ]);
  });
  it('6: anticollision light fails on the way: on to repair, once deactivated and placarded', () => {
    const aircraft = withBroken(trainer(), 'anticollision-lights', { deferral: deferralOf() });
    expect(against(aircraft, { continuingToRepair: true, from: AWAY, to: BASE })).toEqual([
      ['limits', '14cfr91.205(b)(11)'],
    ]);
  });
  it('7: the same at a base with a shop: no', () => {
    const aircraft = withBroken(trainer(), 'anticollision-lights', { deferral: deferralOf() });
    expect(against(aircraft, { continuingToRepair: true })).toEqual([['bars', '14cfr91.205(b)(11)']]);
  });
  it('8: 1976 type, beacon dead: by day once deferred, by night no, 91.205(c)(3)', () => {
    const aircraft = withBroken(olderTrainer(), 'anticollision-lights', { deferral: deferralOf() });
    expect(outcome(aircraft)).toBe('go');
    expect(against(aircraft, night)).toEqual([['bars', '14cfr91.205(c)(3)']]);
    expect(against(withBroken(olderTrainer(), 'anticollision-lights'))).toEqual([['bars', '14cfr91.209(b)']]);
  });
  it('11: transponder dead under class C: granted yes, otherwise no, 91.215(d)(2)', () => {
    const aircraft = withBroken(trainer(), 'transponder');
    const use = { transponderAirspace: known(true) };
    expect(against(aircraft, use)).toEqual([['bars', '14cfr91.215(b)']]);
    expect(against(aircraft, { ...use, atcTransponder: 'refused' })).toEqual([['bars', '14cfr91.215(b)']]);
    expect(against(aircraft, { ...use, atcTransponder: 'granted' })).toEqual([
      ['limits', '14cfr91.215(d)(2)'],
    ]);
  });
  it('12: ADS-B Out dead outside its airspace: yes', () => {
    expect(outcome(withBroken(trainer(), 'adsb-out'))).toBe('go');
  });
  it('alternator out at night: no, 91.205(c)(5)', () => {
    expect(against(withBroken(trainer(), 'generator'), night)).toEqual([['bars', '14cfr91.205(c)(5)']]);
  });
});

describe('what is not known', () => {
  it.each<[string, AircraftFacts, Partial<UseOfAircraft>]>([
    ['x', trainer({ type: trainerType({ certificatedOn: unknown('x') }) }), {}],
    ['x', trainer({ type: trainerType({ fuelTanks: unknown('x') }) }), {}],
    ['x', trainer({ manufacturedOn: unknown('x') }), {}],
    ['x', trainer({ standardCategory: unknown('x') }), {}],
    ['x', trainer(), { transponderAirspace: unknown('x') }],
    ['x', trainer(), { adsbAirspace: unknown('x') }],
    ['x', trainer(), { ...ifr, usesVor: unknown('x') }],
  ])('bars and names %s', (missing, aircraft, use) => {
    const bars = checkRequiredEquipment(aircraft, useOf(use)).filter(({ effect }) => effect === 'bars');
    expect(bars.length).toBeGreaterThan(0);
    expect(bars.every((line) => line.missing === missing)).toBe(true);
  });
  it('is named once a paragraph', () => {
    const lines = checkRequiredEquipment(trainer(), useOf({ ...ifr, usesVor: unknown('the route') }));
    expect(lines.filter((line) => line.missing === 'the route')).toHaveLength(1);
  });
  it('bars another airworthiness class', () => {
    expect(against(trainer({ standardCategory: known(false) }))).toEqual([['bars', '14cfr91.205(a)']]);
  });
});

describe('listDemand: the largest of the columns the kind of flight needs', () => {
  const row = (dayVfr: number, nightVfr: number, dayIfr: number, nightIfr: number) =>
    equipmentRow('other', 'Item', '3100', { requiredByList: known({ dayVfr, nightVfr, dayIfr, nightIfr }) });
  it.each<[Partial<UseOfAircraft>, number, number]>([
    [{}, 1, 4],
    [night, 2, 4],
    [ifr, 3, 4],
    [{ ...night, ...ifr }, 4, 4],
  ])('%o: %i rising, %i where day asks most', (use, rising, falling) => {
    expect(listDemand(row(1, 2, 3, 4), useOf(use))).toEqual(known(rising));
    expect(listDemand(row(4, 3, 2, 1), useOf(use))).toEqual(known(falling));
  });
  it('is unknown when the list is', () => {
    const item = { ...row(0, 0, 0, 0), requiredByList: unknown('the equipment list') };
    expect(listDemand(item, useOf())).toEqual(unknown('the equipment list'));
  });
});

it('a list with fewer than asked for says both numbers', () => {
  const [line] = checkRequiredEquipment(withRow(trainer(), 'seat-belts', { installed: 3 }), useOf());
  expect(line?.because).toBe('Each occupant needs a safety belt. Working: 3 of 3 installed; needed: 4.');
});
