/** Papers (91.203(a), 91.9(b), 47.40(a)) and work (91.407, 91.411(a)(2) and (a)(3), 91.413(b)) as rules of the library. */
import type { RuleProperties } from 'json-rules-engine';
import { any, all, eq, event, fact, is, ne, rule } from './conditions';

export const PAPER_CITES = {
  'airworthiness-certificate': { cite: '14cfr91.203(a)(1)', ends: '14cfr91.203(a)(1)' },
  registration: { cite: '14cfr91.203(a)(2)', ends: '14cfr47.40(a)' },
  'flight-manual': { cite: '14cfr91.9(b)', ends: '14cfr91.9(b)' },
  'weight-and-balance': { cite: '14cfr91.9(b)', ends: '14cfr91.9(b)' },
} as const;

/** A paper that may be without an end is in order without one; a registration always ends. */
const endsAlways = eq('kind', 'registration');
const good = any(
  all(eq('ends', null), ne('kind', 'registration')),
  is('lastDay', 'lessThanInclusive', fact('ends')),
);

/** Asked of each paper aboard or listed. */
export const PAPER_RULES: readonly RuleProperties[] = [
  rule('bars', '@paper', [ne('aboard', true)]),
  rule('bars', '@ends', [eq('aboard', true), eq('endKnown', false)]),
  rule('bars', '@ends', [eq('aboard', true), eq('endKnown', true), eq('ends', null), endsAlways]),
  rule('bars', '@ends', [eq('aboard', true), is('lastDay', 'greaterThan', fact('ends'))]),
  rule('supports', '@paper', [eq('aboard', true), eq('endKnown', true), good]),
];

/** Of the flight: a kind of paper that is not listed at all. */
export const NO_PAPER_RULES: readonly RuleProperties[] = Object.entries(PAPER_CITES).map(([kind, { cite }]) =>
  rule('bars', cite, [eq(`papers.${kind}`, 0)]),
);

const signed = eq('state', 'signed');
const owed = [signed, eq('checkFlight', 'owed')];
const PRIVATE_OR_HIGHER = ['private', 'commercial', 'airline-transport'];
const b407 = '14cfr91.407(b)';

const altitudeTest = (test: string, cite: string): RuleProperties[] => {
  const isOwed = is('testsOwed', 'contains', test);
  const ifr = eq('rules', 'IFR');
  return [
    rule('notes', cite, [isOwed, eq('rules', 'VFR')]),
    rule('bars', cite, [isOwed, ifr, ne('controlled', false)]),
    rule('limits', cite, [isOwed, ifr, eq('controlled', false)]),
  ];
};

const transponderTest = [
  is('testsOwed', 'contains', 'transponder-error'),
  any(eq('transponder.items', 0), is('transponder.inUse', 'greaterThan', 0)),
];

/** Asked of each piece of work not yet behind the aircraft. */
export const WORK_RULES: readonly RuleProperties[] = [
  rule('bars', '14cfr91.407(a)(2)', [eq('state', 'started')]),
  rule('bars', '14cfr91.407(a)(1)', [eq('state', 'entered')]),
  rule('bars', b407, [signed, eq('checkFlight', null)]),
  rule('supports', '14cfr91.407(c)', [signed, eq('checkFlight', 'not-needed')]),
  rule('supports', b407, [signed, eq('checkFlight', 'flown')]),
  rule('bars', b407, [
    ...owed,
    any(ne('purpose', 'check-flight'), ne('crewOnly', true), is('grade', 'notIn', PRIVATE_OR_HIGHER)),
  ]),
  rule('limits', b407, [
    ...owed,
    ...[eq('purpose', 'check-flight'), eq('crewOnly', true), is('grade', 'in', PRIVATE_OR_HIGHER)],
  ]),
  ...altitudeTest('static-leak', '14cfr91.411(a)(2)'),
  ...altitudeTest('altimeter-error', '14cfr91.411(a)(3)'),
  rule('bars', '14cfr91.413(b)', [...transponderTest, ne('transponderAirspace', false)]),
  rule('limits', '14cfr91.413(b)', [...transponderTest, eq('transponderAirspace', false)]),
];

/** 91.213(d)(1), asked once for the aircraft: whether paragraph (d) is open to its kind. */
const airplane = eq('category', 'airplane');
const small = is('weightLb', 'lessThanInclusive', 12_500);
const large = is('weightLb', 'greaterThan', 12_500);
const openWithout = any(ne('category', 'airplane'), eq('turbine', false));
const closedWithout = all(airplane, eq('turbine', true));
const openWith = any(
  is('category', 'in', ['glider', 'lighter-than-air']),
  all(eq('category', 'rotorcraft'), small),
  all(airplane, eq('turbine', false), small),
);
const closedWith = any(
  is('category', 'in', ['powered-parachute', 'weight-shift-control']),
  all(eq('category', 'rotorcraft'), large),
  all(airplane, any(eq('turbine', true), large)),
);
const either = all(openWithout, openWith);
const neither = all(closedWithout, closedWith);
const unsettled = { not: any(either, neither) };
const d1 = '14cfr91.213(d)(1)';
const kindEvent = (effect: string, cite: string, conditions: Parameters<typeof event>[2]): RuleProperties =>
  event('kind', { effect, cite }, conditions);

export const KIND_RULES: readonly RuleProperties[] = [
  kindEvent('supports', d1, [either]),
  kindEvent('bars', d1, [neither]),
  kindEvent('bars', d1, [unsettled, eq('mmelPublished', null)]),
  kindEvent('supports', `${d1}(ii)`, [unsettled, eq('mmelPublished', true), openWith]),
  kindEvent('bars', `${d1}(ii)`, [unsettled, eq('mmelPublished', true), { not: openWith }]),
  kindEvent('supports', `${d1}(i)`, [unsettled, eq('mmelPublished', false), openWithout]),
  kindEvent('bars', `${d1}(i)`, [unsettled, eq('mmelPublished', false), { not: openWithout }]),
];
