/**
 * 14 CFR 91.205 paragraph by paragraph: asked for under its conditions, not asked for without them, and three rows
 * at every border. Source of every row: the eCFR of 24 August 2026, section 91.205, in the stored copy
 * github.com/Lyutenant/FAR-AIM; "small" by 14 CFR 1.1. Rows marked as a strict reading are ours.
 */
import { describe, expect, it } from 'vitest';
import type { AircraftFacts, AircraftTypeFacts } from '../../lib/rules/aircraft';
import type { Demand } from '../../lib/rules/demand';
import { known, unknown } from '../../lib/rules/facts';
import type { CiteId } from '../../lib/rules/law';
import type { UseOfAircraft } from '../../lib/rules/operations';
import {
  demandsOf91205,
  isPowered,
  standardCategoryOnly,
} from '../../lib/rules/part-91/91-205-required-instruments';
import {
  AWAY,
  BASE,
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

const dayVfr = useOf();
const nightVfr = useOf({ light: 'night' });
const dayIfr = useOf({ rules: 'IFR' });
const nightIfr = useOf({ rules: 'IFR', light: 'night' });

const ofType = (type: Partial<AircraftTypeFacts>, rest: Partial<AircraftFacts> = {}) =>
  trainer({ type: trainerType(type), ...rest });
const asked = (cite: CiteId, aircraft: AircraftFacts, use: UseOfAircraft): Demand[] =>
  demandsOf91205(aircraft, use).filter((demand) => demand.cite === cite);
const counts = (cite: CiteId, aircraft: AircraftFacts, use: UseOfAircraft) =>
  asked(cite, aircraft, use).map((demand) => demand.count);
const missing = (cite: CiteId, aircraft: AircraftFacts, use: UseOfAircraft) =>
  asked(cite, aircraft, use).map(({ applies }) => (applies.known ? null : applies.missing));

describe('(a) powered, standard category', () => {
  it('says nothing against a standard certificate', () => {
    expect(standardCategoryOnly(trainer())).toEqual([]);
  });
  it('bars another airworthiness class', () => {
    const [line] = standardCategoryOnly(trainer({ standardCategory: known(false) }));
    expect(line).toMatchObject({ effect: 'bars', cite: '14cfr91.205(a)' });
    expect(line?.because).toContain('not judged here');
  });
  it('bars and names an unknown class', () => {
    const [line] = standardCategoryOnly(trainer({ standardCategory: unknown('the airworthiness class') }));
    expect(line).toMatchObject({ effect: 'bars', missing: 'the airworthiness class' });
  });
  it('does not reach a glider without an engine, but an airplane said to have none', () => {
    expect(demandsOf91205(ofType({ category: 'glider', engines: 0 }), dayVfr)).toEqual([]);
    expect(isPowered(ofType({ category: 'glider', engines: 1 }))).toBe(true);
    expect(counts('14cfr91.205(b)(4)', ofType({ engines: 0 }), dayVfr)).toEqual([1]);
  });
});

describe('(b) asked for on every kind of flight', () => {
  const everyFlight: [CiteId, string, number][] = [
    ['14cfr91.205(b)(1)', 'airspeed-indicator', 1],
    ['14cfr91.205(b)(2)', 'altimeter', 1],
    ['14cfr91.205(b)(3)', 'magnetic-direction-indicator', 1],
    ['14cfr91.205(b)(4)', 'tachometer', 1],
    ['14cfr91.205(b)(5)', 'oil-pressure-gauge', 1],
    ['14cfr91.205(b)(7)', 'oil-temperature-gauge', 1],
    ['14cfr91.205(b)(9)', 'fuel-quantity-gauge', 2],
    ['14cfr91.205(b)(11)', 'anticollision-lights', 1],
    ['14cfr91.205(b)(13)', 'seat-belts', 4],
    ['14cfr91.205(b)(14)', 'shoulder-harness', 4],
    ['14cfr91.205(b)(15)', 'elt', 1],
  ];
  // (c)(1) and (d)(1) bring (b) to night and IFR flights.
  for (const [name, use] of Object.entries({ dayVfr, nightVfr, dayIfr, nightIfr })) {
    it.each(everyFlight)(`${name}: %s %s x %i`, (cite, fn, count) => {
      expect(asked(cite, trainer(), use)).toMatchObject([
        { function: fn, count, applies: { known: true }, relief: null },
      ]);
    });
  }
  it.each<[CiteId]>([
    ['14cfr91.205(b)(6)'],
    ['14cfr91.205(b)(8)'],
    ['14cfr91.205(b)(10)'],
    ['14cfr91.205(b)(12)'],
    ['14cfr91.205(b)(17)'],
  ])('not %s of an air-cooled, fixed-gear airplane over land', (cite) => {
    expect(asked(cite, trainer(), nightIfr)).toEqual([]);
  });
});

describe('(b)(4) to (b)(8) each engine', () => {
  const twin = ofType({ engines: 2 });
  it.each<[CiteId]>([['14cfr91.205(b)(4)'], ['14cfr91.205(b)(5)'], ['14cfr91.205(b)(7)']])(
    '%s twice on a twin',
    (cite) => expect(counts(cite, twin, dayVfr)).toEqual([2]),
  );
  it('a third tachometer on a twin does not stand in for one of the two', () => {
    expect(counts('14cfr91.205(b)(4)', withRow(twin, 'tachometer', { installed: 3 }), dayVfr)).toEqual([3]);
  });
  it('a second tachometer on a single does stand in', () => {
    expect(counts('14cfr91.205(b)(4)', withRow(trainer(), 'tachometer', { installed: 2 }), dayVfr)).toEqual([
      1,
    ]);
  });
  it('(b)(6) when liquid-cooled, (b)(7) when air-cooled, both unknown when that is unknown', () => {
    const liquid = ofType({ cooling: known('liquid'), engines: 2 });
    expect(counts('14cfr91.205(b)(6)', liquid, dayVfr)).toEqual([2]);
    expect(asked('14cfr91.205(b)(7)', liquid, dayVfr)).toEqual([]);
    const open = ofType({ cooling: unknown('how the engine is cooled') });
    expect(missing('14cfr91.205(b)(6)', open, dayVfr)).toEqual(['how the engine is cooled']);
    expect(missing('14cfr91.205(b)(7)', open, dayVfr)).toEqual(['how the engine is cooled']);
  });
  it('(b)(8) for an altitude engine only', () => {
    expect(asked('14cfr91.205(b)(8)', ofType({ altitudeEngine: known(true) }), dayVfr)).toMatchObject([
      { function: 'manifold-pressure-gauge', count: 1 },
    ]);
    expect(
      missing('14cfr91.205(b)(8)', ofType({ altitudeEngine: unknown('turbocharged or not') }), dayVfr),
    ).toEqual(['turbocharged or not']);
  });
});

describe('(b)(9) each tank', () => {
  it.each([
    [1, 1, 1],
    [2, 2, 2],
    [3, 2, 3],
    [2, 3, 3],
  ])('%i tanks, %i gauges installed: %i must work', (tanks, installed, count) => {
    const aircraft = withRow(ofType({ fuelTanks: known(tanks) }), 'fuel-quantity-gauge', { installed });
    expect(counts('14cfr91.205(b)(9)', aircraft, dayVfr)).toEqual([count]);
  });
  it.each([[unknown('the number of fuel tanks')], [known(1.5)]])(
    'nothing satisfies a number nobody knows',
    (fuelTanks) => {
      const [demand] = asked('14cfr91.205(b)(9)', ofType({ fuelTanks }), dayVfr);
      expect(demand).toMatchObject({ count: Number.POSITIVE_INFINITY, applies: { known: false } });
    },
  );
});

describe('(b)(10) retractable gear', () => {
  it('asks for the position indicator', () => {
    expect(asked('14cfr91.205(b)(10)', ofType({ retractableGear: known(true) }), dayVfr)).toMatchObject([
      { function: 'gear-position-indicator', count: 1 },
    ]);
  });
  it('is unknown when the gear is', () => {
    expect(
      missing(
        '14cfr91.205(b)(10)',
        ofType({ retractableGear: unknown('whether the gear retracts') }),
        dayVfr,
      ),
    ).toEqual(['whether the gear retracts']);
  });
});

describe('(b)(11) anticollision lights by day', () => {
  const cite = '14cfr91.205(b)(11)';
  const built = { manufacturedOn: known('1996-01-15') };
  it.each([
    ['1996-03-10', 0],
    ['1996-03-11', 0],
    ['1996-03-12', 1],
  ])('certificated on %s: %i', (date, demands) => {
    expect(asked(cite, ofType({ certificatedOn: known(date) }, built), dayVfr)).toHaveLength(demands);
  });
  // Strict reading for an older type: the airframe's own date.
  it.each([
    ['1996-03-10', 0],
    ['1996-03-11', 0],
    ['1996-03-12', 1],
  ])('older type, airframe of %s: %i', (date, demands) => {
    const aircraft = ofType({ certificatedOn: known('1980-05-05') }, { manufacturedOn: known(date) });
    const found = asked(cite, aircraft, dayVfr);
    expect(found).toHaveLength(demands);
    if (demands) expect(found[0]?.strictReading).toContain('older');
  });
  // 14 CFR 1.1: small is 12,500 lb or less.
  it.each([
    [12_499, 1],
    [12_500, 1],
    [12_501, 0],
  ])('%i lb: %i', (pounds, demands) => {
    expect(asked(cite, ofType({ maxTakeoffWeightLb: known(pounds) }), dayVfr)).toHaveLength(demands);
  });
  it('not for rotorcraft, nor outside part 23', () => {
    expect(asked(cite, ofType({ category: 'rotorcraft' }), dayVfr)).toEqual([]);
    expect(asked(cite, ofType({ certificatedUnderPart23: known(false) }), dayVfr)).toEqual([]);
  });
  it('names each fact that decides', () => {
    expect(missing(cite, ofType({ certificatedOn: unknown('the certification date') }), dayVfr)).toEqual([
      'the certification date',
    ]);
    expect(missing(cite, ofType({ certificatedUnderPart23: unknown('part 23 or not') }), dayVfr)).toEqual([
      'part 23 or not',
    ]);
    expect(missing(cite, ofType({ maxTakeoffWeightLb: unknown('the weight') }), dayVfr)).toEqual([
      'the weight',
    ]);
    expect(missing(cite, olderTrainer({ manufacturedOn: unknown('the build date') }), dayVfr)).toEqual([
      'the build date',
    ]);
  });
  it('asks for every light of the system', () => {
    expect(counts(cite, withRow(trainer(), 'anticollision-lights', { installed: 3 }), dayVfr)).toEqual([3]);
  });
});

describe.each<[CiteId, UseOfAircraft['light']]>([
  ['14cfr91.205(b)(11)', 'day'],
  ['14cfr91.205(c)(3)', 'night'],
])('%s: continuing after a light failed under way', (cite, light) => {
  const reliefOf = (over: Partial<UseOfAircraft>, aircraft = trainer()) =>
    asked(cite, aircraft, useOf({ light, continuingToRepair: true, from: AWAY, to: BASE, ...over }))[0];
  it('goes on from a place without repair to one with it', () => {
    expect(reliefOf({})?.relief).toMatchObject({ cite });
  });
  it.each<[string, Partial<UseOfAircraft>]>([
    ['repair is to be had here', { from: BASE }],
    ['nobody knows whether it is', { from: { ...AWAY, repairAvailable: unknown('repair at 0WA') } }],
    ['the destination has none', { to: AWAY }],
  ])('not when %s (strict reading)', (_why, over) => {
    expect(reliefOf(over)?.relief).toBeNull();
    expect(reliefOf(over)?.strictReading).toContain('where repair is to be had');
  });
  it('not for a flight that begins here, nor for a system that was never there', () => {
    expect(reliefOf({ continuingToRepair: false })?.relief).toBeNull();
    expect(reliefOf({}, withoutEquipment(trainer(), 'anticollision-lights'))?.relief).toBeNull();
  });
});

describe('(b)(12) over water for hire', () => {
  const cite = '14cfr91.205(b)(12)';
  const over = known(true);
  it.each<[Partial<UseOfAircraft>, number[]]>([
    [{ purpose: 'carriage-for-hire', overWaterBeyondGlide: over }, [4]],
    [{ purpose: 'carriage-for-hire', overWaterBeyondGlide: known(false) }, []],
    [{ purpose: 'private', overWaterBeyondGlide: over }, []],
  ])('%o: %o', (use, expected) => expect(counts(cite, trainer(), useOf(use))).toEqual(expected));
  it('is unknown when the water is, unless nobody pays', () => {
    const overWaterBeyondGlide = unknown('whether the route leaves gliding distance');
    expect(missing(cite, trainer(), useOf({ purpose: 'carriage-for-hire', overWaterBeyondGlide }))).toEqual([
      'whether the route leaves gliding distance',
    ]);
    expect(asked(cite, trainer(), useOf({ overWaterBeyondGlide }))).toEqual([]);
  });
});

describe('(b)(13) to (17) belts and harnesses', () => {
  const madeOn = (date: string, type: Partial<AircraftTypeFacts> = {}) =>
    withoutEquipment(ofType(type, { manufacturedOn: known(date) }), 'shoulder-harness');
  it('a belt for each seat, unknown without the number of seats', () => {
    expect(counts('14cfr91.205(b)(13)', ofType({ seats: known(6) }), dayVfr)).toEqual([6]);
    expect(missing('14cfr91.205(b)(13)', ofType({ seats: unknown('the seats') }), dayVfr)).toEqual([
      'the seats',
    ]);
  });
  it.each([
    ['1978-07-17', []],
    ['1978-07-18', []],
    ['1978-07-19', [2]],
    ['1986-12-11', [2]],
    ['1986-12-12', [2]],
    ['1986-12-13', [4]],
  ])('(14) two front seats or all four, manufactured %s: %o', (date, expected) => {
    expect(counts('14cfr91.205(b)(14)', madeOn(date), dayVfr)).toEqual(expected);
  });
  it.each([
    ['1992-09-15', []],
    ['1992-09-16', []],
    ['1992-09-17', [4]],
  ])('(17) rotorcraft manufactured %s: %o, and not (14)', (date, expected) => {
    const rotorcraft = madeOn(date, { category: 'rotorcraft' });
    expect(counts('14cfr91.205(b)(17)', rotorcraft, dayVfr)).toEqual(expected);
    expect(asked('14cfr91.205(b)(14)', rotorcraft, dayVfr)).toEqual([]);
  });
  it.each(['1980-01-01', '2001-04-09'])('(14) only small airplanes, manufactured %s', (date) => {
    const cite = '14cfr91.205(b)(14)';
    expect(asked(cite, madeOn(date, { maxTakeoffWeightLb: known(12_499) }), dayVfr)).toHaveLength(1);
    expect(asked(cite, madeOn(date, { maxTakeoffWeightLb: known(12_500) }), dayVfr)).toHaveLength(1);
    expect(asked(cite, madeOn(date, { maxTakeoffWeightLb: known(12_501) }), dayVfr)).toEqual([]);
  });
  it('(14) unknown without the build date', () => {
    const names = missing(
      '14cfr91.205(b)(14)',
      trainer({ manufacturedOn: unknown('the build date') }),
      dayVfr,
    );
    expect(new Set(names)).toEqual(new Set(['the build date']));
  });
  it('(16) is reserved and asks for nothing', () => {
    expect(asked('14cfr91.205(b)(16)', trainer(), nightIfr)).toEqual([]);
  });
  it('(14) four harnesses on a 1980 airplane: all four, since nobody says which seat is which', () => {
    expect(counts('14cfr91.205(b)(14)', trainer({ manufacturedOn: known('1980-01-01') }), dayVfr)).toEqual([
      4,
    ]);
  });
});

describe('(c) night', () => {
  it.each<[CiteId, string, number]>([
    ['14cfr91.205(c)(2)', 'position-lights', 3],
    ['14cfr91.205(c)(3)', 'anticollision-lights', 1],
    ['14cfr91.205(c)(6)', 'spare-fuses', 1],
  ])('%s %s x %i by night, VFR and IFR, not by day', (cite, fn, count) => {
    expect(asked(cite, trainer(), nightVfr)).toMatchObject([{ function: fn, count }]);
    expect(asked(cite, trainer(), nightIfr)).toMatchObject([{ function: fn, count }]);
    expect(asked(cite, trainer(), dayVfr)).toEqual([]);
    expect(asked(cite, trainer(), dayIfr)).toEqual([]);
  });
  it('(3) on every aircraft, however old', () => {
    expect(asked('14cfr91.205(c)(3)', olderTrainer(), nightVfr)).toHaveLength(1);
    expect(asked('14cfr91.205(b)(11)', olderTrainer(), nightVfr)).toEqual([]);
  });
  it('(2), (3) ask for one at least, even where none is listed', () => {
    expect(counts('14cfr91.205(c)(2)', withoutEquipment(trainer(), 'position-lights'), nightVfr)).toEqual([
      1,
    ]);
  });
  it.each<[Partial<UseOfAircraft>, number]>([
    [{ light: 'night', purpose: 'instruction-for-hire' }, 1],
    [{ light: 'night', purpose: 'carriage-for-hire' }, 1],
    [{ light: 'night', purpose: 'student-solo' }, 0],
    [{ light: 'night', purpose: 'private' }, 0],
    [{ light: 'day', purpose: 'carriage-for-hire' }, 0],
  ])('(4) landing light, %o: %i', (use, demands) => {
    expect(asked('14cfr91.205(c)(4)', trainer(), useOf(use))).toHaveLength(demands);
  });
  it('(5) every source the list names, and one where it names none', () => {
    const functions = (aircraft: AircraftFacts) =>
      asked('14cfr91.205(c)(5)', aircraft, nightVfr).map((demand) => demand.function);
    expect(functions(trainer())).toEqual(['electrical-source', 'generator']);
    expect(functions(withoutEquipment(trainer(), 'generator'))).toEqual(['electrical-source']);
    const none = withoutEquipment(withoutEquipment(trainer(), 'generator'), 'electrical-source');
    expect(functions(none)).toEqual(['electrical-source']);
    expect(asked('14cfr91.205(c)(5)', trainer(), dayVfr)).toEqual([]);
  });
  it('(6) not with breakers only, unknown when that is unknown', () => {
    expect(asked('14cfr91.205(c)(6)', ofType({ usesFuses: known(false) }), nightVfr)).toEqual([]);
    expect(
      missing('14cfr91.205(c)(6)', ofType({ usesFuses: unknown('fuses or breakers') }), nightVfr),
    ).toEqual(['fuses or breakers']);
  });
});

describe('(d) IFR', () => {
  it.each<[CiteId, string]>([
    ['14cfr91.205(d)(3)', 'rate-of-turn-indicator'],
    ['14cfr91.205(d)(4)', 'slip-skid-indicator'],
    ['14cfr91.205(d)(5)', 'altimeter'],
    ['14cfr91.205(d)(6)', 'clock'],
    ['14cfr91.205(d)(7)', 'generator'],
    ['14cfr91.205(d)(8)', 'attitude-indicator'],
    ['14cfr91.205(d)(9)', 'heading-gyro'],
  ])('%s %s under IFR by day and night, not VFR', (cite, fn) => {
    expect(asked(cite, trainer(), dayIfr)).toMatchObject([{ function: fn, count: 1 }]);
    expect(asked(cite, trainer(), nightIfr)).toMatchObject([{ function: fn, count: 1 }]);
    expect(asked(cite, trainer(), dayVfr)).toEqual([]);
    expect(asked(cite, trainer(), nightVfr)).toEqual([]);
  });
  it('(2) radio, and what the route is flown by', () => {
    const functions = (usesVor: UseOfAircraft['usesVor'], rules: 'VFR' | 'IFR' = 'IFR') =>
      asked('14cfr91.205(d)(2)', trainer(), useOf({ rules, usesVor })).map((demand) => demand.function);
    expect(functions(known(true))).toEqual(['two-way-radio', 'vor-receiver']);
    expect(functions(known(false))).toEqual(['two-way-radio', 'gps-navigator']);
    expect(functions(known(true), 'VFR')).toEqual([]);
    expect(functions(unknown('how the route is flown'))).toEqual([
      'two-way-radio',
      'vor-receiver',
      'gps-navigator',
    ]);
    expect(
      missing('14cfr91.205(d)(2)', trainer(), useOf({ rules: 'IFR', usesVor: unknown('how it is flown') })),
    ).toEqual([null, 'how it is flown', 'how it is flown']);
  });
  it('(7) both alternators of an airplane that has two', () => {
    expect(counts('14cfr91.205(d)(7)', withRow(trainer(), 'generator', { installed: 2 }), dayIfr)).toEqual([
      2,
    ]);
  });
});

describe('(e) at and above 24,000 ft', () => {
  const cite = '14cfr91.205(e)';
  const high = (feet: number, usesVor = true) =>
    useOf({ rules: 'IFR', usesVor: known(usesVor), highestAltitudeFtMsl: known(feet) });
  it.each([
    [23_999, 0],
    [24_000, 1],
    [24_001, 1],
  ])('%i ft: %i', (feet, demands) => expect(asked(cite, trainer(), high(feet))).toHaveLength(demands));
  it('only where VOR is what (d)(2) means, and only IFR', () => {
    expect(asked(cite, trainer(), high(25_000, false))).toEqual([]);
    expect(asked(cite, trainer(), { ...high(25_000), rules: 'VFR' })).toEqual([]);
  });
  it('the navigator where one works, otherwise distance measuring equipment', () => {
    expect(asked(cite, trainer(), high(25_000))[0]?.function).toBe('gps-navigator');
    const broken = withBroken(withEquipment(trainer(), equipmentRow('dme', 'DME', '3451')), 'gps-navigator');
    expect(asked(cite, broken, high(25_000))[0]?.function).toBe('dme');
  });
  it('is unknown without the altitude', () => {
    const use = useOf({
      rules: 'IFR',
      usesVor: known(true),
      highestAltitudeFtMsl: unknown('the highest altitude'),
    });
    expect(missing(cite, trainer(), use)).toEqual(['the highest altitude']);
  });
});
