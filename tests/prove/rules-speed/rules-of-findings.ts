/**
 * One open write-up as rules of the library: 91.7(a) and (b), 91.405(a) and (c), 91.213(a) and (d) without a minimum equipment list,
 * 91.209(b). The engine runs once for each write-up; rules that hang on others come later in the same run, by priority.
 */
import type { RuleProperties } from 'json-rules-engine';
import {
  PRIORITY,
  all,
  any,
  eq,
  fact,
  flagged,
  flagWhen,
  is,
  ne,
  rule,
  unflagged,
  type Condition,
} from './conditions';

const inoperative = eq('kind', 'inoperative');
const a213 = '14cfr91.213(a)';

const judged: readonly RuleProperties[] = [
  rule('bars', '14cfr91.7(a)', [any(eq('severity', null), eq('severity', 'grounding'))]),
  rule('bars', '14cfr91.7(a)', [eq('kind', 'servicing')]),
  rule('limits', '14cfr91.7(b)', [
    is('kind', 'in', ['damage', 'wear', 'leak', 'contamination', 'fastener', 'document', 'cosmetic']),
    eq('severity', 'limiting'),
  ]),
  rule('notes', '14cfr91.7(a)', [eq('kind', 'cosmetic'), ne('severity', null), ne('severity', 'grounding')]),
];

const toRepair = is('kind', 'in', ['damage', 'wear', 'leak', 'contamination', 'fastener', 'document']);
const repaired: readonly RuleProperties[] = [
  rule('bars', '14cfr91.405(a)', [toRepair, eq('withinLimits', 'no')]),
  rule('bars', '14cfr91.405(a)', [toRepair, eq('withinLimits', 'without a source')]),
  rule('notes', '14cfr91.405(a)', [toRepair, eq('withinLimits', 'with a source')]),
];

const notAnItem = any(
  ...[eq('listed', false), eq('confirmed', false), eq('out', null), eq('outWhole', false)],
  is('out', 'lessThan', 1),
  is('out', 'greaterThan', fact('installed')),
);

const deferred = eq('deferred', true);
/** An item of 91.213 on an aircraft without a list. */
const item = [flagged('item'), eq('mel', 'none')];

/** Bars, and lets the rules of the edges know. */
const barring = (cite: string, conditions: readonly Condition[]): RuleProperties =>
  rule('bars', cite, [...item, ...conditions], { flag: 'barred', priority: PRIORITY.second });
/** What speaks for an item, or limits it, is said of a deferral only. */
const saying = (
  effect: 'supports' | 'limits',
  cite: string,
  conditions: readonly Condition[],
): RuleProperties => rule(effect, cite, [...item, deferred, ...conditions], { priority: PRIORITY.second });

const goesOn = eq('part91.continues', true);
const stays = eq('part91.continues', false);
const i = '14cfr91.213(d)(2)(i)';
const ii = '14cfr91.213(d)(2)(ii)';
const iii = '14cfr91.213(d)(2)(iii)';
const iv = '14cfr91.213(d)(2)(iv)';
const tooFew = all(ne('asked', null), is('remaining', 'lessThan', fact('asked')));

/** (d)(1) and (d)(2). */
const paragraphD: readonly RuleProperties[] = [
  barring('@kind', [eq('kindOpen', false)]),
  saying('supports', '@kind', [eq('kindOpen', true)]),
  barring(i, [any(eq('design', null), all(eq('design', true), stays))]),
  saying('limits', i, [eq('design', true), goesOn]),
  saying('supports', i, [eq('design', false)]),
  barring(ii, [any(eq('asked', null), eq('remaining', null), all(tooFew, stays))]),
  saying('limits', ii, [tooFew, goesOn]),
  saying('supports', ii, [ne('asked', null), is('remaining', 'greaterThanInclusive', fact('asked'))]),
  barring(iii, [eq('part91.unknown', true)]),
  barring('@part91-bars', [is('part91.bars', 'greaterThan', 0)]),
  saying('limits', '@part91-limits', [is('part91.limits', 'greaterThan', 0)]),
  saying('supports', iii, [eq('part91.unknown', false), eq('part91.bars', 0), eq('part91.limits', 0)]),
  barring(iv, [
    any(
      eq('directivesKnown', false),
      is('directives.open', 'greaterThan', 0),
      is('directives.naming', 'greaterThan', 0),
    ),
  ]),
  saying('supports', iv, [eq('directivesKnown', true), eq('directives.open', 0), eq('directives.naming', 0)]),
];

const removed = eq('method', 'removed');
const work = any(removed, eq('isMaintenance', true));
const byList = eq('basis', 'mel');
const mayDetermine = any(
  all(is('grade', 'notIn', [null, 'student']), eq('rated', true)),
  is('ratings', 'greaterThan', 0),
  eq('repairStation', true),
);
/** Owed by the deferral: it counts for nothing yet. */
const owed = (cite: string, conditions: readonly Condition[]): RuleProperties =>
  rule('bars', cite, [...item, deferred, ...conditions], { flag: 'owed', priority: PRIORITY.second });
const unrecorded = [work, eq('recordSigned', false)];
const unplacarded = eq('placard', false);

/** (d)(3), (d)(4), and the way it was deferred on. */
const steps: readonly RuleProperties[] = [
  owed('14cfr91.213(a)(1)', [byList]),
  owed('14cfr43.9(a)', [...unrecorded, byList]),
  owed('14cfr91.213(a)(5)', [unplacarded, byList]),
  ...[removed, eq('method', 'deactivated')].map((way, at) =>
    owed(`14cfr91.213(d)(3)(${at === 0 ? 'i' : 'ii'})`, [
      ...[way, ne('basis', 'mel')],
      any(unplacarded, all(...unrecorded)),
    ]),
  ),
  owed('14cfr91.207(f)(10)(i)', [eq('eltRecord', false)]),
  owed('14cfr91.213(d)(4)', [
    any(eq('determined', false), { not: mayDetermine }, is('determinedOn', 'lessThan', fact('recordedOn'))),
  ]),
];

/** 91.405(c) and (d)(4) for a deferral, whichever way is open. */
const besides: readonly RuleProperties[] = [
  rule('bars', '14cfr91.405(c)', [flagged('item'), deferred, is('inspections', 'someFact:equal', null)], {
    flag: 'owed',
    priority: PRIORITY.second,
  }),
  rule('supports', 'counsel-letter-2018', [
    ...[flagged('item'), deferred],
    is('inspections', 'someFact:equal', 'inspected'),
  ]),
  rule('notes', '14cfr91.213(d)(4)', [flagged('item'), deferred, is('otherDeferrals', 'greaterThan', 0)]),
];

/** What the flight must not come to do, because the item would be required then. */
const edge = (cite: string, fn: string, conditions: readonly Condition[]): RuleProperties =>
  rule('limits', cite, [
    ...item,
    deferred,
    unflagged('barred'),
    eq('fn', fn),
    ne('working', null),
    ...conditions,
  ]);
const noneWorks = is('working', 'lessThan', 1);
const noVorYet = [eq('powered', true), eq('rules', 'IFR'), eq('usesVor', false), noneWorks];

const edges: readonly RuleProperties[] = [
  edge('14cfr91.209(a)(1)', 'position-lights', [
    eq('between', false),
    is('working', 'lessThan', fact('whole')),
  ]),
  edge('14cfr91.215(b)', 'transponder', [eq('transponderAirspace', false), noneWorks]),
  edge('14cfr91.215(b)', 'altitude-reporting', [eq('transponderAirspace', false), noneWorks]),
  edge('14cfr91.225', 'adsb-out', [eq('adsbAirspace', false), noneWorks]),
  edge('14cfr91.205(b)(12)', 'flotation-and-signal', [
    ...[eq('powered', true), eq('hire', true), eq('overWater', false)],
    any(eq('need.flotation', null), is('working', 'lessThan', fact('need.flotation'))),
  ]),
  edge('14cfr91.205(d)(2)', 'vor-receiver', noVorYet),
  edge('14cfr91.205(e)', 'dme', [
    ...noVorYet,
    any(eq('highestFt', null), is('highestFt', 'greaterThanInclusive', 24_000)),
    any(eq('working.gps-navigator', null), eq('working.gps-navigator', 0)),
  ]),
];

export const FINDING_RULES: readonly RuleProperties[] = [
  ...judged,
  ...repaired,
  rule('bars', a213, [inoperative, notAnItem]),
  flagWhen('item', [inoperative, { not: notAnItem }], PRIORITY.first),
  rule('bars', a213, [flagged('item'), eq('deferred', false)]),
  rule('bars', '14cfr91.213(a)(1)', [flagged('item'), eq('mel', 'unknown')], {
    flag: 'barred',
    priority: PRIORITY.second,
  }),
  saying('supports', '14cfr91.213(a)(1)', []),
  ...paragraphD,
  ...steps,
  ...besides,
  ...edges,
  rule('limits', '14cfr91.213(d)', [flagged('item'), deferred, unflagged('barred'), unflagged('owed')], {
    priority: PRIORITY.last,
  }),
  rule('bars', '14cfr91.209(b)', [
    ...[inoperative, eq('fn', 'anticollision-lights')],
    any(eq('deferred', false), unplacarded, all(...unrecorded)),
  ]),
];
