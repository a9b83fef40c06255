/**
 * Starting sets for a generic certificated single-engine airplane: what the paragraphs of part 91 name, so that nobody begins with an empty
 * list. No make and no model. Every line is a proposal: nothing is trusted before a person has held it against the aircraft's own
 * documents. What only those documents can tell is left "not known" on purpose. Plain data.
 */
import type { EquipmentFunction, RequiredCounts } from '../rules/aircraft';
import type { CiteId } from '../rules/law';
import { said } from '../words/said';
import type { Authority } from './line';

export const SET_NAMES = ['day-vfr', 'night-vfr', 'ifr'] as const;
export type SetName = (typeof SET_NAMES)[number];

export const SET_WORDS: Record<SetName, { readonly title: string; readonly hint: string }> = {
  'day-vfr': {
    title: said('Day VFR'),
    hint: said('91.205(b), transmitter of 91.207, transponder of 91.215, ADS-B Out of 91.225.'),
  },
  'night-vfr': {
    title: said('Night VFR'),
    hint: said('What 91.205(c) and 91.209 ask for beside it: lights, electrical sources, fuses.'),
  },
  ifr: {
    title: said('IFR'),
    hint: said(
      'What 91.205(d) asks for beside it: radio, navigation, gyros, clock; the static system of 91.411.',
    ),
  },
};

/** A number, or the fact of the type that says how many. */
export type SetCount = number | 'engines' | 'fuelTanks' | 'seats';

/** The fact of the type on which an item depends. Known not to hold: the item is left out. */
export type SetCondition = 'air-cooled' | 'liquid-cooled' | 'altitude-engine' | 'retractable-gear' | 'fuses';

export interface SetItem {
  readonly name: string;
  readonly function: EquipmentFunction;
  readonly jasc: string;
  readonly installed: SetCount;
  readonly when?: SetCondition;
  /** True where 91.205(b) itself lists it for day VFR; else not known: only the type's own documents say. */
  readonly vfrDayTypeDesign: true | null;
  /** In which kinds of operation all of them are asked for. */
  readonly required: Readonly<Record<keyof RequiredCounts, boolean>>;
  readonly authority: readonly Authority[];
  /** The paragraphs it is taken from; empty: common practice, no source. */
  readonly cites: readonly CiteId[];
}

const kinds = (...asked: readonly (keyof RequiredCounts)[]) => ({
  dayVfr: asked.includes('dayVfr'),
  nightVfr: asked.includes('nightVfr'),
  dayIfr: asked.includes('dayIfr'),
  nightIfr: asked.includes('nightIfr'),
});
const ALWAYS = kinds('dayVfr', 'nightVfr', 'dayIfr', 'nightIfr');
const AT_NIGHT = kinds('nightVfr', 'nightIfr');
const UNDER_IFR = kinds('dayIfr', 'nightIfr');
const NEVER = kinds();

const item = (
  name: string,
  fn: EquipmentFunction,
  jasc: string,
  cites: readonly CiteId[],
  more: Partial<SetItem> = {},
): SetItem => ({
  name,
  function: fn,
  jasc,
  installed: 1,
  vfrDayTypeDesign: null,
  required: NEVER,
  authority: cites.length > 0 ? ['91.205'] : [],
  cites,
  ...more,
});

/** Listed by 91.205(b): asked for on every flight, and taken as part of the VFR-day equipment. */
const dayItem = (
  name: string,
  fn: EquipmentFunction,
  jasc: string,
  cites: readonly CiteId[],
  more: Partial<SetItem> = {},
): SetItem =>
  item(name, fn, jasc, cites, {
    vfrDayTypeDesign: true,
    required: ALWAYS,
    authority: ['type-design', '91.205'],
    ...more,
  });

const PER_ENGINE = { installed: 'engines' } as const;

const DAY_VFR: readonly SetItem[] = [
  dayItem('Airspeed indicator', 'airspeed-indicator', '3414', ['14cfr91.205(b)(1)']),
  dayItem('Altimeter', 'altimeter', '3416', ['14cfr91.205(b)(2)', '14cfr91.205(d)(5)', '14cfr91.411(a)(1)']),
  dayItem('Magnetic compass', 'magnetic-direction-indicator', '3423', ['14cfr91.205(b)(3)']),
  dayItem('Tachometer', 'tachometer', '7714', ['14cfr91.205(b)(4)'], PER_ENGINE),
  dayItem('Oil pressure gauge', 'oil-pressure-gauge', '7931', ['14cfr91.205(b)(5)'], PER_ENGINE),
  dayItem('Coolant temperature gauge', 'coolant-temperature-gauge', '7720', ['14cfr91.205(b)(6)'], {
    ...PER_ENGINE,
    when: 'liquid-cooled',
  }),
  dayItem('Oil temperature gauge', 'oil-temperature-gauge', '7933', ['14cfr91.205(b)(7)'], {
    ...PER_ENGINE,
    when: 'air-cooled',
  }),
  dayItem('Manifold pressure gauge', 'manifold-pressure-gauge', '7713', ['14cfr91.205(b)(8)'], {
    ...PER_ENGINE,
    when: 'altitude-engine',
  }),
  dayItem('Fuel quantity gauges', 'fuel-quantity-gauge', '2841', ['14cfr91.205(b)(9)'], {
    installed: 'fuelTanks',
  }),
  dayItem('Landing gear position indicator', 'gear-position-indicator', '3200', ['14cfr91.205(b)(10)'], {
    when: 'retractable-gear',
  }),
  dayItem('Anticollision lights', 'anticollision-lights', '3340', [
    '14cfr91.205(b)(11)',
    '14cfr91.205(c)(3)',
    '14cfr91.209(b)',
  ]),
  dayItem('Safety belts', 'seat-belts', '2510', ['14cfr91.205(b)(13)'], { installed: 'seats' }),
  dayItem('Shoulder harnesses', 'shoulder-harness', '2510', ['14cfr91.205(b)(14)'], { installed: 'seats' }),
  item('Emergency locator transmitter', 'elt', '2562', ['14cfr91.205(b)(15)', '14cfr91.207(a)(2)']),
  item('Transponder', 'transponder', '3452', ['14cfr91.215(b)', '14cfr91.413(a)']),
  item('Altitude reporting', 'altitude-reporting', '3416', ['14cfr91.215(b)', '14cfr91.411(a)(1)']),
  item('ADS-B Out', 'adsb-out', '3452', ['14cfr91.225']),
  item('Stall warning', 'stall-warning', '3418', []),
];

const NIGHT_VFR: readonly SetItem[] = [
  item('Position lights', 'position-lights', '3340', ['14cfr91.205(c)(2)', '14cfr91.209(a)(1)'], {
    installed: 3,
    required: AT_NIGHT,
  }),
  item('Landing light', 'landing-light', '3340', ['14cfr91.205(c)(4)']),
  item('Battery', 'electrical-source', '2432', ['14cfr91.205(c)(5)'], { required: AT_NIGHT }),
  item('Alternator or generator', 'generator', '2434', ['14cfr91.205(c)(5)', '14cfr91.205(d)(7)'], {
    required: kinds('nightVfr', 'dayIfr', 'nightIfr'),
  }),
  item('Spare fuses', 'spare-fuses', '2460', ['14cfr91.205(c)(6)'], { required: AT_NIGHT, when: 'fuses' }),
  item('Instrument lights', 'instrument-lights', '3310', []),
];

const IFR: readonly SetItem[] = [
  item('Two-way radio', 'two-way-radio', '2312', ['14cfr91.205(d)(2)'], { required: UNDER_IFR }),
  item('VOR receiver', 'vor-receiver', '3454', ['14cfr91.205(d)(2)']),
  item('GPS navigator', 'gps-navigator', '3457', ['14cfr91.205(d)(2)']),
  item('Rate-of-turn indicator', 'rate-of-turn-indicator', '3424', ['14cfr91.205(d)(3)'], {
    required: UNDER_IFR,
  }),
  item('Slip-skid indicator', 'slip-skid-indicator', '3424', ['14cfr91.205(d)(4)'], { required: UNDER_IFR }),
  item('Clock', 'clock', '3120', ['14cfr91.205(d)(6)'], { required: UNDER_IFR }),
  item('Alternator or generator', 'generator', '2434', ['14cfr91.205(c)(5)', '14cfr91.205(d)(7)'], {
    required: kinds('nightVfr', 'dayIfr', 'nightIfr'),
  }),
  item('Attitude indicator', 'attitude-indicator', '3421', ['14cfr91.205(d)(8)'], { required: UNDER_IFR }),
  item('Directional gyro', 'heading-gyro', '3422', ['14cfr91.205(d)(9)'], { required: UNDER_IFR }),
  item('Static pressure system', 'other', '3411', ['14cfr91.411(a)(1)'], {
    vfrDayTypeDesign: null,
    authority: [],
  }),
  item('Pitot heat', 'pitot-heat', '3030', []),
  item('Vacuum pump', 'vacuum-pump', '3700', []),
  item('Vacuum gauge', 'vacuum-gauge', '3720', []),
];

export const STARTING_SETS: Record<SetName, readonly SetItem[]> = {
  'day-vfr': DAY_VFR,
  'night-vfr': NIGHT_VFR,
  ifr: IFR,
};

/** The item of a set that a line with this name and function came from; null when it came from none. */
export const setItemOf = (name: string, fn: string): SetItem | null =>
  Object.values(STARTING_SETS)
    .flat()
    .find((one) => one.function === fn && (fn !== 'other' || one.name === name)) ?? null;
