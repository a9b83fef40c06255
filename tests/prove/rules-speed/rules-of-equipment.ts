/** Required equipment as rules of the library: the demands, what relieves of them, and what a section says when all is there. */
import type { RuleProperties } from 'json-rules-engine';
import { PRIORITY, any, eq, event, fact, is, ne, rule, unflagged, type Condition } from './conditions';
import { airplane, DEMANDS, ifr, night, powered, type Section } from './demands';

const onToRepair = [
  eq('continuing', true),
  eq('repairHere', false),
  eq('repairThere', true),
  is('installed.anticollision-lights', 'greaterThan', 0),
];
const granted = eq('atcTransponder', 'granted');
const adsbGranted = eq('atcAdsb', 'granted');

/** What a demand that is not met may turn into a limit, by paragraph. */
const RELIEFS: Readonly<Record<string, readonly Condition[]>> = {
  '205(b)(11)': onToRepair,
  '205(c)(3)': onToRepair,
  '207(f)(10)': [
    is('elt.removals', 'greaterThan', 0),
    is('elt.removals', 'equal', fact('elt.writeUps')),
    is('lastDay', 'lessThanInclusive', fact('elt.removedThrough')),
    is('departOn', 'greaterThanInclusive', fact('elt.removedOn')),
  ],
  '207(f)(3)': [
    eq('purpose', 'instruction-for-hire'),
    is('distanceNm', 'lessThanInclusive', 50),
    eq('within50', true),
  ],
  '207(e)(2)': [
    is('purpose', 'in', ['private', 'check-flight', 'to-inspection']),
    eq('crewOnly', true),
    eq('repairHere', false),
    eq('repairThere', true),
  ],
  '215(d)(1)': [granted, is('working.transponder', 'greaterThan', 0)],
  '215(d)(2)': [granted, is('installed.transponder', 'greaterThan', 0)],
  '215(d)(3)': [granted, eq('installed.transponder', 0)],
  '225(g)(1)': [adsbGranted, is('installed.adsb-out', 'greaterThan', 0)],
  '225(g)(2)': [adsbGranted, eq('installed.adsb-out', 0)],
};

/** A section speaks for the flight when it asks for something and all of it is there. */
const ASKS: Readonly<Record<Section, { readonly cite: string; readonly when: readonly Condition[] }>> = {
  b: { cite: '14cfr91.205(b)', when: [powered] },
  c: { cite: '14cfr91.205(c)', when: [powered, night] },
  d: { cite: '14cfr91.205(d)', when: [powered, ifr] },
  '207': { cite: '14cfr91.207(a)(2)', when: [airplane, ne('seats', 1)] },
  '209': { cite: '14cfr91.209(a)(1)', when: [eq('between', true)] },
  '215': { cite: '14cfr91.215(b)', when: [ne('transponderAirspace', false)] },
  '225': { cite: '14cfr91.225', when: [ne('adsbAirspace', false)] },
};

export const EQUIPMENT_RULES: readonly RuleProperties[] = [
  ...DEMANDS.map(({ id, fn, section, possible, unsure, need }) =>
    event(
      'unmet',
      { id },
      [
        ...possible,
        any(
          ...unsure,
          eq(need, null),
          eq(`working.${fn}`, null),
          is(`working.${fn}`, 'lessThan', fact(need)),
        ),
      ],
      { flag: `unmet.${section}`, priority: PRIORITY.first },
    ),
  ),
  ...DEMANDS.filter(({ unsure }) => unsure.length > 0).map(({ id, possible, unsure }) =>
    event('unsure', { id }, [...possible, any(...unsure)]),
  ),
  ...Object.entries(RELIEFS).map(([id, conditions]) => event('relief', { id }, conditions)),
  ...Object.entries(ASKS).map(([section, { cite, when }]) =>
    rule('supports', cite, [...when, unflagged(`unmet.${section}`)], { priority: PRIORITY.last }),
  ),
  rule('bars', '14cfr91.205(a)', [ne('standardCategory', true)]),
  rule('bars', 'house-caution', [is('lines.confirmed', 'someFact:equal', false)]),
  rule('bars', '14cfr91.7(a)', [
    any(
      is('lines.short', 'someFact:equal', null),
      is('lines.short', 'someFact:greaterThan', 0),
      is('lines.absentDesign', 'someFact:notEqual', false),
    ),
  ]),
];

const known = ne('working', null);
const short = any(eq('need', null), is('working', 'lessThan', fact('need')));

/** Asked of each demand that is not met: what it does to the flight, and to a write-up on such an item. */
export const UNMET_RULES: readonly RuleProperties[] = [
  event('bars', { cite: '@own' }, [any(eq('sure', false), eq('working', null))]),
  event('bars', { cite: '@own' }, [eq('sure', true), known, eq('unconfirmed', false), eq('relief', false)]),
  event('limits', { cite: '@relief' }, [
    eq('sure', true),
    known,
    eq('unconfirmed', false),
    eq('relief', true),
  ]),
  event('item-bars', {}, [known, short, any(eq('sure', false), eq('relief', false))]),
  event('item-limits', {}, [known, short, eq('sure', true), eq('relief', true)]),
];
