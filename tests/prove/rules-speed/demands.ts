/**
 * Required equipment as rules of the library: one row for each demand of 91.205(b) to (e), 91.207(a)(2), 91.209(a)(1), 91.215(b) and
 * 91.225. Written from the paragraphs as lib/rules quotes them; where the text is open, by the strict readings it names.
 *
 * A fact that nobody knows is null. A demand holds unless one of its conditions is known not to, and is unsure while one is null.
 */
import type { EquipmentFunction } from '@/lib/rules/aircraft';
import { all, any, eq, is, ne, type Condition } from './conditions';

export type Section = 'b' | 'c' | 'd' | '207' | '209' | '215' | '225';

export interface Demand {
  readonly id: string;
  readonly fn: EquipmentFunction;
  readonly cite: string;
  readonly section: Section;
  /** Not known to be untrue. */
  readonly possible: readonly Condition[];
  /** One of these: it is not known whether the demand applies. */
  readonly unsure: readonly Condition[];
  /** The fact that says how many are needed; null in it makes the demand unsure. */
  readonly need: string;
  readonly reliefs: readonly string[];
}

/** A fact that may be unknown: what keeps a demand possible, and what leaves it unsure. */
interface Perhaps {
  readonly possible: Condition;
  readonly unsure: Condition;
}
const perhaps = (path: string, operator: string, value: unknown): Perhaps => ({
  possible: any(eq(path, null), is(path, operator, value)),
  unsure: eq(path, null),
});
const so = (path: string): Perhaps => ({ possible: ne(path, false), unsure: eq(path, null) });

const demand = (
  cite: string,
  fn: EquipmentFunction,
  section: Section,
  more: {
    when?: readonly Condition[];
    perhaps?: readonly Perhaps[];
    need?: string;
    reliefs?: readonly string[];
    id?: string;
  } = {},
): Demand => ({
  id: more.id ?? `${cite} ${fn}`,
  fn,
  cite: `14cfr91.${cite}`,
  section,
  possible: [...(more.when ?? []), ...(more.perhaps ?? []).map(({ possible }) => possible)],
  unsure: (more.perhaps ?? []).map(({ unsure }) => unsure),
  need: more.need ?? 'need.one',
  reliefs: more.reliefs ?? [],
});

export const powered = any(
  is('engines', 'greaterThanInclusive', 1),
  is('category', 'notIn', ['glider', 'lighter-than-air']),
);
export const night = eq('light', 'night');
export const ifr = eq('rules', 'IFR');
export const airplane = eq('category', 'airplane');
const small = perhaps('weightLb', 'lessThanInclusive', 12_500);
const madeAfter = (day: string) => perhaps('manufacturedOn', 'greaterThan', day);

const b = (item: number, fn: EquipmentFunction, more: Parameters<typeof demand>[3] = {}) =>
  demand(`205(b)(${item})`, fn, 'b', { ...more, when: [powered, ...(more.when ?? [])] });
const c = (item: number, fn: EquipmentFunction, more: Parameters<typeof demand>[3] = {}) =>
  demand(`205(c)(${item})`, fn, 'c', { ...more, when: [powered, night, ...(more.when ?? [])] });
const d = (item: number, fn: EquipmentFunction, more: Parameters<typeof demand>[3] = {}) =>
  demand(`205(d)(${item})`, fn, 'd', { ...more, when: [powered, ifr, ...(more.when ?? [])] });

/** (b)(11): of the class by the date of the type, or by that of the airframe where the type is older. */
const NEW_BY_EITHER_DATE: Perhaps = {
  possible: any(
    eq('certificatedOn', null),
    is('certificatedOn', 'greaterThan', '1996-03-11'),
    eq('manufacturedOn', null),
    is('manufacturedOn', 'greaterThan', '1996-03-11'),
  ),
  unsure: any(
    eq('certificatedOn', null),
    all(is('certificatedOn', 'lessThanInclusive', '1996-03-11'), eq('manufacturedOn', null)),
  ),
};

export const DEMANDS: readonly Demand[] = [
  b(1, 'airspeed-indicator'),
  b(2, 'altimeter'),
  b(3, 'magnetic-direction-indicator'),
  b(4, 'tachometer', { need: 'need.tachometer' }),
  b(5, 'oil-pressure-gauge', { need: 'need.oil-pressure-gauge' }),
  b(6, 'coolant-temperature-gauge', {
    perhaps: [perhaps('cooling', 'equal', 'liquid')],
    need: 'need.coolant-temperature-gauge',
  }),
  b(7, 'oil-temperature-gauge', {
    perhaps: [perhaps('cooling', 'equal', 'air')],
    need: 'need.oil-temperature-gauge',
  }),
  b(8, 'manifold-pressure-gauge', { perhaps: [so('altitudeEngine')], need: 'need.manifold-pressure-gauge' }),
  b(9, 'fuel-quantity-gauge', { need: 'need.fuel-quantity-gauge' }),
  b(10, 'gear-position-indicator', { perhaps: [so('retractableGear')] }),
  b(11, 'anticollision-lights', {
    when: [airplane],
    perhaps: [small, so('part23'), NEW_BY_EITHER_DATE],
    need: 'whole.anticollision-lights',
    reliefs: ['205(b)(11)'],
  }),
  b(12, 'flotation-and-signal', {
    when: [eq('hire', true)],
    perhaps: [so('overWater')],
    need: 'need.flotation',
  }),
  b(13, 'seat-belts', { need: 'need.seat-belts' }),
  b(14, 'shoulder-harness', {
    id: 'front harness',
    when: [airplane],
    perhaps: [small, madeAfter('1978-07-18'), perhaps('manufacturedOn', 'lessThanInclusive', '1986-12-12')],
    need: 'need.front-harness',
  }),
  b(14, 'shoulder-harness', {
    when: [airplane],
    perhaps: [small, madeAfter('1986-12-12')],
    need: 'need.shoulder-harness',
  }),
  b(17, 'shoulder-harness', {
    when: [eq('category', 'rotorcraft')],
    perhaps: [madeAfter('1992-09-16')],
    need: 'need.shoulder-harness',
  }),
  c(2, 'position-lights', { need: 'whole.position-lights' }),
  c(3, 'anticollision-lights', { need: 'whole.anticollision-lights', reliefs: ['205(c)(3)'] }),
  c(4, 'landing-light', { when: [eq('hire', true)] }),
  c(5, 'electrical-source', {
    when: [any(is('installed.electrical-source', 'greaterThan', 0), eq('installed.generator', 0))],
    need: 'whole.electrical-source',
  }),
  c(5, 'generator', { when: [is('installed.generator', 'greaterThan', 0)], need: 'whole.generator' }),
  c(6, 'spare-fuses', { perhaps: [so('usesFuses')] }),
  d(2, 'two-way-radio'),
  d(2, 'vor-receiver', { perhaps: [so('usesVor')] }),
  d(2, 'gps-navigator', { perhaps: [perhaps('usesVor', 'equal', false)] }),
  d(3, 'rate-of-turn-indicator'),
  d(4, 'slip-skid-indicator'),
  d(5, 'altimeter'),
  d(6, 'clock'),
  d(7, 'generator', { need: 'whole.generator' }),
  d(8, 'attitude-indicator'),
  d(9, 'heading-gyro'),
  // (e): a navigator that works will do, and distance measuring equipment is asked for elsewhere.
  ...(['gps-navigator', 'dme'] as const).map((fn) =>
    demand('205(e)', fn, 'd', {
      when: [
        powered,
        ifr,
        fn === 'dme'
          ? any(eq('working.gps-navigator', null), eq('working.gps-navigator', 0))
          : is('working.gps-navigator', 'greaterThan', 0),
      ],
      perhaps: [perhaps('highestFt', 'greaterThanInclusive', 24_000), so('usesVor')],
    }),
  ),
  demand('207(a)(2)', 'elt', '207', {
    when: [airplane, ne('seats', 1)],
    reliefs: ['207(f)(10)', '207(f)(3)', '207(e)(2)'],
  }),
  demand('209(a)(1)', 'position-lights', '209', {
    when: [eq('between', true)],
    need: 'whole.position-lights',
  }),
  demand('215(b)', 'transponder', '215', {
    perhaps: [so('transponderAirspace')],
    reliefs: ['215(d)(2)', '215(d)(3)'],
  }),
  demand('215(b)', 'altitude-reporting', '215', {
    perhaps: [so('transponderAirspace')],
    reliefs: ['215(d)(1)', '215(d)(2)', '215(d)(3)'],
  }),
  demand('225', 'adsb-out', '225', { perhaps: [so('adsbAirspace')], reliefs: ['225(g)(1)', '225(g)(2)'] }),
];
