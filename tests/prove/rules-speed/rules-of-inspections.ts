/**
 * What recurs, as rules of the library: 91.409, 91.411, 91.413, 91.207(c) and (d), 91.171, part 39, 91.403, 91.417(a)(2)(i). Each
 * kind that a regulation sets is one group of facts (`annual.there`, `annual.done`, ...); what has its own interval is asked row by row.
 */
import type { RuleProperties } from 'json-rules-engine';
import {
  PRIORITY,
  all,
  any,
  eq,
  fact,
  flagWhen,
  flagged,
  is,
  ne,
  rule,
  unflagged,
  type Condition,
} from './conditions';

/** The flight's last day is later than the last good one. */
const ranOut = (kind: string) => is('lastDay', 'greaterThan', fact(`${kind}.through`));
/** The record is there and cannot be relied on; `bars` even where a lapse would only limit: nobody knows. */
const unknownApproval = (kind: string): Condition => eq(`${kind}.approved`, null);
const doubtful = (kind: string): readonly Condition[] => [
  is(`${kind}.on`, 'greaterThan', fact('lastDay')),
  all(ne('ttis', null), is(`${kind}.at`, 'greaterThan', fact('ttis'))),
  eq(`${kind}.approved`, false),
];
const noRecord = (kind: string) => any(eq(`${kind}.there`, false), eq(`${kind}.done`, false));
const done = (kind: string) => eq(`${kind}.done`, true);

/** A requirement by the calendar alone: bars without a record, in doubt, or over; speaks for the flight otherwise. */
const byCalendar = (kind: string, cite: string, when: readonly Condition[]): RuleProperties[] => {
  const bad = any(unknownApproval(kind), ...doubtful(kind), ranOut(kind));
  return [
    rule('bars', cite, [...when, noRecord(kind)]),
    rule('bars', cite, [...when, done(kind), bad]),
    rule('supports', cite, [...when, done(kind), { not: bad }]),
  ];
};

const ifr = eq('rules', 'IFR');
const inControlled = [ifr, eq('controlled', true)];

/** 91.409(b) and 141.39(a)(3): who needs the 100-hour inspection, and under which paragraph. */
const NEEDED: readonly { readonly cite: string; readonly when: readonly Condition[] }[] = [
  { cite: '14cfr91.409(b)', when: [eq('hire', true)] },
  {
    cite: '14cfr141.39(a)(3)',
    when: [eq('hire', false), eq('purpose', 'student-solo'), eq('part141', true)],
  },
  {
    cite: '14cfr91.409(b)',
    when: [eq('hire', false), eq('purpose', 'to-inspection'), eq('hundred.there', true)],
  },
];
const NOT_NEEDED: Condition = any(
  all(eq('hire', false), is('purpose', 'notIn', ['student-solo', 'to-inspection'])),
  all(eq('hire', false), eq('purpose', 'student-solo'), eq('part141', false)),
);

const hundredDoubt = any(
  unknownApproval('hundred'),
  ...doubtful('hundred'),
  is('hundred.excess', 'greaterThanInclusive', 1000),
);
const overHundred = is('after', 'greaterThan', fact('hundred.due'));

const hundredHours: readonly RuleProperties[] = [
  rule('bars', '14cfr141.39(a)(3)', [eq('hire', false), eq('purpose', 'student-solo'), eq('part141', null)]),
  ...NEEDED.flatMap(({ cite, when }) => [
    rule('bars', cite, [...when, noRecord('hundred')]),
    rule('bars', cite, [...when, done('hundred'), hundredDoubt]),
    rule('supports', cite, [
      ...when,
      done('hundred'),
      { not: hundredDoubt },
      is('after', 'lessThanInclusive', fact('hundred.due')),
    ]),
    rule('bars', cite, [...when, done('hundred'), overHundred, ne('purpose', 'to-inspection')]),
  ]),
  // Ten hours more to reach the place where it is done, and not a tenth beyond.
  rule('bars', '14cfr91.409(b)', [
    ...[done('hundred'), eq('purpose', 'to-inspection')],
    is('after', 'greaterThan', fact('hundred.latest')),
  ]),
  rule('limits', '14cfr91.409(b)', [
    ...[done('hundred'), eq('purpose', 'to-inspection'), overHundred],
    is('after', 'lessThanInclusive', fact('hundred.latest')),
  ]),
  rule('notes', '14cfr91.409(b)', [NOT_NEEDED, done('hundred'), overHundred]),
];

const altimeter: readonly RuleProperties[] = [
  rule('bars', '14cfr91.411(a)(1)', [ifr, eq('controlled', null)]),
  ...byCalendar('static', '14cfr91.411(a)(1)', inControlled),
  rule('bars', '14cfr91.411(d)', [
    ...inControlled,
    done('static'),
    any(
      eq('static.testedFt', null),
      eq('highestFt', null),
      is('highestFt', 'greaterThan', fact('static.testedFt')),
    ),
  ]),
  rule('supports', '14cfr91.411(d)', [
    ...inControlled,
    done('static'),
    is('highestFt', 'lessThanInclusive', fact('static.testedFt')),
  ]),
];

const inUse = is('transponder.inUse', 'greaterThan', 0);
const lapsed = any(...doubtful('transponder'), ranOut('transponder'));
const transponder: readonly RuleProperties[] = [
  rule('bars', '14cfr91.413(a)', [inUse, noRecord('transponder')]),
  rule('bars', '14cfr91.413(a)', [inUse, done('transponder'), unknownApproval('transponder')]),
  rule('bars', '14cfr91.413(a)', [inUse, done('transponder'), lapsed, ne('transponderAirspace', false)]),
  rule('limits', '14cfr91.413(a)', [inUse, done('transponder'), lapsed, eq('transponderAirspace', false)]),
  rule('bars', '14cfr91.215(b)', [
    ...[inUse, done('transponder'), eq('transponderAirspace', null)],
    any(unknownApproval('transponder'), lapsed),
  ]),
  rule('supports', '14cfr91.413(a)', [
    ...[inUse, done('transponder')],
    { not: any(unknownApproval('transponder'), lapsed) },
  ]),
];

/** 91.207(f)(3) for a lapsed inspection or battery. */
const training = [eq('purpose', 'instruction-for-hire'), is('distanceNm', 'lessThanInclusive', 50)];
const nearby = all(...training, eq('within50', true));
const maybeNearby = all(...training, eq('within50', null));
const carried = [eq('category', 'airplane'), ne('seats', 1), is('elt.inUse', 'greaterThan', 0)];
const eltLapsed = any(...doubtful('eltInspection'), ranOut('eltInspection'));
const eltBad = any(unknownApproval('eltInspection'), eltLapsed);
const dated = ne('eltBattery.through', null);
const usedUp = is('eltMinutes', 'greaterThan', 60);
const batteryBad = any(eq('eltBattery.through', null), ranOut('eltBattery'), usedUp);
const d207 = '14cfr91.207(d)';
const c1 = '14cfr91.207(c)(1)';
const c2 = '14cfr91.207(c)(2)';
const f3 = '14cfr91.207(f)(3)';

const transmitter: readonly RuleProperties[] = [
  rule('bars', d207, [...carried, noRecord('eltInspection')]),
  rule('bars', d207, [...carried, done('eltInspection'), unknownApproval('eltInspection')]),
  rule('bars', d207, [...carried, done('eltInspection'), eltLapsed, { not: nearby }]),
  rule('limits', f3, [...carried, done('eltInspection'), eltLapsed, nearby]),
  rule('bars', f3, [...carried, done('eltInspection'), eltBad, maybeNearby]),
  rule('supports', d207, [...carried, done('eltInspection'), { not: eltBad }]),
  // A date nobody knows bars whatever the flight is.
  rule('bars', c2, [...carried, eq('eltBattery.through', null)]),
  rule('bars', c2, [...carried, ranOut('eltBattery'), { not: nearby }]),
  rule('bars', c1, [...carried, usedUp, { not: nearby }]),
  rule('limits', f3, [...carried, any(ranOut('eltBattery'), usedUp), nearby]),
  rule('bars', f3, [...carried, batteryBad, maybeNearby]),
  rule('supports', c2, [...carried, dated, { not: ranOut('eltBattery') }]),
];

export const INSPECTION_RULES: readonly RuleProperties[] = [
  rule('bars', '14cfr91.417(a)(2)(i)', [eq('ttis', null)]),
  rule('bars', '14cfr39.7', [eq('directivesKnown', false)]),
  ...byCalendar('annual', '14cfr91.409(a)', []),
  ...hundredHours,
  ...altimeter,
  ...transponder,
  ...transmitter,
  rule('bars', '14cfr91.171(a)(2)', [ifr, eq('usesVor', null)]),
  ...byCalendar('vor', '14cfr91.171(a)(2)', [ifr, eq('usesVor', true)]),
];

/** 39.7, 91.403(a) and (c): a row by the calendar, the hours and the mark of its own, whichever comes first. */
const OWN = { directive: '14cfr39.7', 'life-limit': '14cfr91.403(c)', 'maker-interval': '14cfr91.403(a)' };
const dateOnly = all(eq('done', false), ne('fixedExpiry', null), eq('interval', false));
const measured = any(eq('done', true), dateOnly);
const badRecord = any(
  ...[is('on', 'greaterThan', fact('lastDay')), eq('approved', false), eq('approved', null)],
  all(ne('ttis', null), is('at', 'greaterThan', fact('ttis'))),
);
const inDoubt = all(eq('done', true), badRecord);
const noLimit = all(eq('through', null), eq('due', null));

const ownRow = (
  cite: string,
  whose: readonly Condition[],
  bad: 'bars' | 'notes',
  once: boolean,
): RuleProperties[] => [
  rule(bad, cite, [...whose, eq('done', false), unflagged('date-only')]),
  rule(bad, cite, [...whose, inDoubt]),
  rule(bad, cite, [...whose, flagged('measured'), is('lastDay', 'greaterThan', fact('through'))]),
  // The library compares with null as with 0.
  rule(bad, cite, [...whose, flagged('measured'), ne('due', null), is('after', 'greaterThan', fact('due'))]),
  rule(bad, '14cfr91.417(a)(2)(i)', [...whose, flagged('measured'), ne('due', null), eq('ttis', null)]),
  rule('supports', cite, [
    ...[...whose, flagged('measured'), { not: inDoubt }],
    any(
      is('lastDay', 'lessThanInclusive', fact('through')),
      is('after', 'lessThanInclusive', fact('due')),
      ...(once ? [noLimit] : []),
    ),
  ]),
  ...(once ? [] : [rule(bad, cite, [...whose, flagged('measured'), noLimit])]),
];

export const ROW_RULES: readonly RuleProperties[] = [
  flagWhen('date-only', [dateOnly], PRIORITY.first),
  flagWhen('measured', [measured], PRIORITY.first),
  ...ownRow(OWN.directive, [eq('kind', 'directive')], 'bars', true),
  ...ownRow(OWN['life-limit'], [eq('kind', 'life-limit')], 'bars', false),
  ...ownRow(OWN['maker-interval'], [eq('kind', 'maker-interval'), eq('binding', true)], 'bars', false),
  ...ownRow(OWN['maker-interval'], [eq('kind', 'maker-interval'), eq('binding', false)], 'notes', false),
];
