import { describe, expect, test } from 'vitest';
import type {
  AircraftFacts,
  AircraftTypeFacts,
  DeferralFacts,
  DiscrepancyFacts,
  EquipmentFunction,
  MelFacts,
  MelItemFacts,
} from '@/lib/rules/aircraft';
import { known, unknown } from '@/lib/rules/facts';
import { judgeDiscrepancy } from '@/lib/rules/judge-discrepancy';
import type { UseOfAircraft } from '@/lib/rules/operations';
import { deferralEligibility, deferralEnds } from '@/lib/rules/part-91/91-213-deferral-eligibility';
import { judgeInoperative } from '@/lib/rules/part-91/91-213-inoperative-equipment';
import { extensionOf } from '@/lib/rules/part-91/91-213-list-entry';
import type { Line } from '@/lib/rules/verdict';
import {
  BASE,
  REFERENCE,
  TODAY,
  deferralOf,
  discrepancyOf,
  equipmentRow,
  melItemOf,
  trainer,
  trainerType,
  useOf,
  withBroken,
  withEquipment,
  withRow,
} from '../fixtures/aircraft';

/*
 * 14 CFR 91.213, what is said with each answer: every paragraph that was looked at, in the section's order, and what is asked of a person.
 * Sources as in 91-213.test.ts: (a), (d) from copies named there; (b) from memory; wording our own.
 */
const NOW = '2026-11-25T15:00:00Z';
const HEAT = { kind: 'discrepancy', id: 'discrepancy-cabin-heat', label: 'W-0001 Cabin heat inoperative' };

function broken(aircraft: AircraftFacts, fn: EquipmentFunction, overrides: Partial<DiscrepancyFacts> = {}) {
  const out = withBroken(aircraft, fn, overrides);
  return { aircraft: out, d: out.discrepancies.at(-1)! };
}
const judged = (aircraft: AircraftFacts, fn: EquipmentFunction, use: Partial<UseOfAircraft> = {}) => {
  const { aircraft: out, d } = broken(aircraft, fn);
  return judgeInoperative(out, d, useOf(use));
};
const report = (
  aircraft: AircraftFacts,
  fn: EquipmentFunction,
  overrides: Partial<DiscrepancyFacts> = {},
) => {
  const { aircraft: out, d } = broken(aircraft, fn, overrides);
  return deferralEligibility(out, d, REFERENCE, TODAY, NOW);
};
const answerDeferred = (
  aircraft: AircraftFacts,
  fn: EquipmentFunction,
  deferral: Partial<DeferralFacts> = {},
  use: Partial<UseOfAircraft> = {},
) => {
  const { aircraft: out, d } = broken(aircraft, fn, { deferral: deferralOf(deferral) });
  return judgeDiscrepancy(out, d, useOf(use));
};
const short = (lines: readonly Line[]) =>
  lines.map(({ effect, cite }) => `${effect} ${cite.replace('14cfr', '')}`);
const saying = (lines: readonly Line[], cite: string) => lines.find((line) => line.cite === `14cfr${cite}`);

const ENTRY = melItemOf();
const listed = (entry: Partial<MelItemFacts> = {}, mel: Partial<MelFacts> = {}): AircraftFacts =>
  trainer({
    mel: known({
      reference: 'MEL-1',
      letterAboard: known(true),
      enforceCategories: true,
      extension: null,
      items: [{ ...ENTRY, ...entry }],
      ...mel,
    }),
  });
const BY_LIST: Partial<DeferralFacts> = { basis: 'mel', melItemId: 'mel-heat' };

describe('paragraph (d): what is said of an item that may be out', () => {
  test('each test by its paragraph, in order, of this write-up', () => {
    const lines = judged(trainer(), 'cabin-heat');
    expect(short(lines)).toEqual([
      'supports 91.213(a)(1)',
      'supports 91.213(d)(1)',
      'supports 91.213(d)(2)(i)',
      'supports 91.213(d)(2)(ii)',
      'supports 91.213(d)(2)(iii)',
      'supports 91.213(d)(2)(iv)',
    ]);
    for (const { about } of lines) expect(about).toEqual(HEAT);
    expect(saying(lines, '91.213(d)(2)(iii)')?.because).toBe(
      'Cabin heat: part 91 does not ask for it for day VFR, private.',
    );
  });

  test('an item that part 91 does ask for, of which enough still work', () => {
    const plane = withRow(trainer(), 'two-way-radio', { installed: 3 });
    const line = saying(judged(plane, 'two-way-radio', { rules: 'IFR' }), '91.213(d)(2)(iii)');
    expect(line).toMatchObject({ effect: 'supports' });
    expect(line?.because).toBe(
      'VHF communication radio: enough still work for what part 91 asks for day IFR, private.',
    );
  });

  test.each([
    {
      facts: {},
      effect: 'supports',
      cite: '91.213(d)(1)',
      words: /open to this aircraft: a nonturbine airplane, not more/,
    },
    {
      facts: { turbine: known(true) },
      effect: 'bars',
      cite: '91.213(d)(1)',
      words: /closed to this aircraft: a turbine airplane/,
    },
    {
      facts: { turbine: known(true), mmelPublished: unknown('the list') },
      effect: 'bars',
      cite: '91.213(d)(1)',
      words: /closed to this aircraft: a turbine airplane/,
    },
    {
      facts: { maxTakeoffWeightLb: known(13_000), mmelPublished: known(false) },
      effect: 'supports',
      cite: '91.213(d)(1)(i)',
      words: /nonturbine airplane, without a published master list/,
    },
    {
      facts: { maxTakeoffWeightLb: unknown('the weight'), mmelPublished: known(false) },
      effect: 'supports',
      cite: '91.213(d)(1)(i)',
      words: /without a published master list/,
    },
    {
      facts: { maxTakeoffWeightLb: unknown('the weight') },
      effect: 'bars',
      cite: '91.213(d)(1)(ii)',
      words: /^Not known: the weight/,
    },
    {
      facts: { category: 'weight-shift-control' },
      effect: 'bars',
      cite: '91.213(d)(1)(ii)',
      words: /closed to this aircraft: weight shift control/,
    },
    {
      facts: { category: 'weight-shift-control', mmelPublished: unknown('the list') },
      effect: 'bars',
      cite: '91.213(d)(1)',
      words: /^Not known: the list/,
    },
    {
      facts: { category: 'lighter-than-air', mmelPublished: unknown('the list') },
      effect: 'supports',
      cite: '91.213(d)(1)',
      words: /lighter than air/,
    },
    {
      facts: { category: 'glider', maxTakeoffWeightLb: unknown('x'), turbine: unknown('y') },
      effect: 'supports',
      cite: '91.213(d)(1)',
      words: /glider/,
    },
    {
      facts: { category: 'rotorcraft', maxTakeoffWeightLb: unknown('the weight') },
      effect: 'bars',
      cite: '91.213(d)(1)(ii)',
      words: /the weight/,
    },
    {
      facts: { category: 'rotorcraft', maxTakeoffWeightLb: known(12_501), mmelPublished: known(false) },
      effect: 'supports',
      cite: '91.213(d)(1)(i)',
      words: /rotorcraft, without/,
    },
    {
      facts: { turbine: unknown('the engine'), mmelPublished: known(false) },
      effect: 'bars',
      cite: '91.213(d)(1)(i)',
      words: /the engine/,
    },
    // (ii) asks of a rotorcraft only that it is small, of an airplane also that it has no turbine.
    {
      facts: { category: 'rotorcraft', turbine: known(true) },
      effect: 'supports',
      cite: '91.213(d)(1)',
      words: /rotorcraft/,
    },
    {
      facts: {
        turbine: unknown('the engine'),
        maxTakeoffWeightLb: known(13_000),
        mmelPublished: known(false),
      },
      effect: 'bars',
      cite: '91.213(d)(1)(i)',
      words: /^Not known: the engine/,
    },
  ] as { facts: Partial<AircraftTypeFacts>; effect: string; cite: string; words: RegExp }[])(
    '(d)(1) with $facts',
    ({ facts, effect, cite, words }) => {
      const lines = judged(trainer({ type: trainerType(facts) }), 'cabin-heat').filter((line) =>
        line.cite.startsWith('14cfr91.213(d)(1)'),
      );
      expect(lines).toHaveLength(1);
      expect(lines[0]).toMatchObject({ effect, cite: `14cfr${cite}`, about: HEAT });
      expect(lines[0]?.because).toMatch(words);
    },
  );

  // 91.205(b)(11): to a place where it can be repaired. (i) and (ii) are set aside with that; unknown is not.
  test('a beacon on the way to its repair: own equipment limits, and what is not known bars still', () => {
    const onward = { continuingToRepair: true, from: { ...BASE, repairAvailable: known(false) } };
    const lines = judged(trainer(), 'anticollision-lights', onward);
    expect(saying(lines, '91.213(d)(2)(i)')).toMatchObject({ effect: 'limits' });
    expect(saying(lines, '91.213(d)(2)(i)')?.because).toMatch(
      /certificated with, .*Set aside only to go on to the place of repair\.$/,
    );
    expect(saying(lines, '91.213(d)(2)(ii)')).toMatchObject({ effect: 'limits' });
    const doubtful = withRow(trainer(), 'anticollision-lights', {
      vfrDayTypeDesign: unknown('the type design'),
    });
    expect(saying(judged(doubtful, 'anticollision-lights', onward), '91.213(d)(2)(i)')).toMatchObject({
      effect: 'bars',
      missing: 'the type design',
    });
    const free = withRow(trainer(), 'anticollision-lights', { vfrDayTypeDesign: known(false) });
    expect(saying(judged(free, 'anticollision-lights', onward), '91.213(d)(2)(i)')).toMatchObject({
      effect: 'supports',
      because: 'Anticollision beacon: not part of the VFR-day equipment the type was certificated with.',
    });
  });

  test('(iv): a directive that names the item bars by its number; one that asks nothing of it does not', () => {
    const directive = {
      id: 'ad',
      number: '2020-01-02',
      title: 'Heat',
      equipmentId: 'cabin-heat',
      requiresOperable: true,
    };
    const of = (
      ...directives: (typeof directive | (Omit<typeof directive, 'equipmentId'> & { equipmentId: null }))[]
    ) =>
      judged(trainer({ directives: known(directives) }), 'cabin-heat').filter(
        ({ cite }) => cite === '14cfr91.213(d)(2)(iv)',
      );
    expect(
      of(directive, { ...directive, id: 'b', number: '2021-03-04' }).map(
        ({ effect, because }) => `${effect} ${because}`,
      ),
    ).toEqual([
      'bars Cabin heat: airworthiness directive 2020-01-02 (Heat) requires it to work.',
      'bars Cabin heat: airworthiness directive 2021-03-04 (Heat) requires it to work.',
    ]);
    expect(short(of({ ...directive, requiresOperable: false }))).toEqual(['supports 91.213(d)(2)(iv)']);
    expect(short(of({ ...directive, equipmentId: 'intercom' }))).toEqual(['supports 91.213(d)(2)(iv)']);
    expect(of({ ...directive, equipmentId: null })[0]).toMatchObject({
      effect: 'bars',
      missing: 'which equipment airworthiness directive 2020-01-02 (Heat) requires to work',
    });
    expect(short(of({ ...directive, equipmentId: null, requiresOperable: false }))).toEqual([
      'supports 91.213(d)(2)(iv)',
    ]);
  });
});

describe('paragraph (d): what the other write-ups leave unknown', () => {
  const other = (change: Partial<DiscrepancyFacts>) =>
    discrepancyOf({ id: 'other', number: 'W-0009', ...change });

  // Two landing lights, one out; how many the other write-up means is not known: nobody can say how many still work.
  test('another write-up on the same row without its number: not known, whichever is asked about', () => {
    const plane = trainer({
      discrepancies: [
        other({ equipmentId: 'landing-light', inoperativeCount: unknown('how many landing lights') }),
      ],
    });
    const bars = judged(withRow(plane, 'landing-light', { installed: 2 }), 'landing-light').filter(
      ({ effect }) => effect === 'bars',
    );
    expect(bars).toMatchObject([{ cite: '14cfr91.213(d)(2)(ii)', missing: 'how many landing lights' }]);
  });

  test('another write-up that may be on it: what part 91 asks for cannot be counted', () => {
    const plane = trainer({
      discrepancies: [other({ equipmentId: null, jasc: '3340', title: 'A light is out' })],
    });
    const { aircraft, d } = broken(withRow(plane, 'landing-light', { installed: 2 }), 'landing-light');
    const bars = judgeInoperative(
      aircraft,
      d,
      useOf({ light: 'night', purpose: 'carriage-for-hire' }),
    ).filter(({ effect }) => effect === 'bars');
    expect(bars).toMatchObject([
      { cite: '14cfr91.213(d)(2)(iii)', missing: 'which item of equipment W-0009 (A light is out) is about' },
    ]);
  });
});

describe('limits that keep a flight where the item is not required', () => {
  const limits = (fn: EquipmentFunction, use: Partial<UseOfAircraft> = {}) =>
    judged(trainer(), fn, use)
      .filter(({ effect }) => effect === 'limits')
      .map(({ cite, because }) => `${cite.replace('14cfr', '')}: ${because}`);

  test('position lights: on the ground by sunset, with the time and the place where it is known', () => {
    expect(limits('position-lights')).toEqual(['91.209(a)(1): On the ground by sunset, 16:32 at 0WC.']);
    expect(limits('position-lights', { sunsetAt: null })).toEqual(['91.209(a)(1): On the ground by sunset.']);
  });

  test('the others by their airspace, water, navigation and training', () => {
    expect(limits('transponder')).toEqual([
      '91.215(b): Stay out of airspace that requires a transponder with altitude reporting.',
    ]);
    expect(limits('adsb-out')).toEqual(['91.225: Stay out of airspace that requires ADS-B Out.']);
    expect(limits('cabin-heat')).toEqual([]);
    expect(limits('elt', { purpose: 'instruction-for-hire', trainingWithin50Nm: known(true) })).toEqual([
      '91.207(f)(3): Emergency locator transmitter out: training only, all of it within 50 nautical miles of 0WC.',
    ]);
  });

  // 91.205(d)(2): a VOR receiver where the route is flown by VOR; (b)(12): flotation gear for hire over water.
  test('a VOR receiver and flotation gear, where the flight does without them', () => {
    expect(limits('vor-receiver', { rules: 'IFR' })).toEqual([
      '91.205(d)(2): Do not navigate by VOR under IFR.',
    ]);
    expect(limits('vor-receiver')).toEqual([]);
    const gear = equipmentRow('flotation-and-signal', 'Flotation gear', '2560', { installed: 4 });
    const overWater = (use: Partial<UseOfAircraft>) => {
      const { aircraft, d } = broken(withEquipment(trainer(), gear), 'flotation-and-signal');
      return judgeInoperative(aircraft, d, useOf({ purpose: 'carriage-for-hire', ...use }));
    };
    expect(overWater({}).at(-1)).toMatchObject({
      effect: 'limits',
      cite: '14cfr91.205(b)(12)',
      because: 'Stay within gliding distance of shore.',
      about: { kind: 'discrepancy', id: 'discrepancy-flotation-and-signal' },
    });
    expect(overWater({ overWaterBeyondGlide: known(true) }).some(({ effect }) => effect === 'bars')).toBe(
      true,
    );
    expect(overWater({ purpose: 'private' }).some(({ effect }) => effect === 'limits')).toBe(false);
  });

  test('by night, in the airspace, or where it is not known, the limit is not offered', () => {
    expect(
      limits('transponder', { transponderAirspace: known(true), atcTransponder: 'granted' }).join(),
    ).not.toContain('Stay out');
    expect(limits('adsb-out', { adsbAirspace: known(true), atcAdsb: 'granted' }).join()).not.toContain(
      'Stay out',
    );
    expect(limits('adsb-out', { adsbAirspace: unknown('the airspace') })).toEqual([]);
    expect(limits('vor-receiver', { rules: 'IFR', usesVor: unknown('the route') })).toEqual([]);
  });

  test('none where it is not known whether the flight stays there: that bars', () => {
    const lines = judged(trainer(), 'transponder', { transponderAirspace: unknown('the airspace') });
    expect(lines.some(({ effect }) => effect === 'bars')).toBe(true);
    expect(lines.filter(({ effect }) => effect === 'limits')).toEqual([]);
  });
});

describe('a minimum equipment list: what is said', () => {
  test('in force: the list, the count, the conditions, and nothing of paragraph (d)', () => {
    const plane = listed({
      proviso: 'No icing.',
      operatingProcedure: 'Valve off.',
      maintenanceProcedure: 'Tag it.',
    });
    const lines = judged(plane, 'cabin-heat');
    expect(short(lines)).toEqual([
      'supports 91.213(a)(2)',
      'supports 91.213(a)(3)(ii)',
      'limits 91.213(a)(5)',
      'limits 91.213(a)(5)',
    ]);
    for (const { about } of lines) expect(about).toEqual(HEAT);
    expect(lines.map(({ because }) => because).slice(1)).toEqual([
      'Cabin heat: the list requires 0 of 1 for dispatch, 0 would work.',
      'Cabin heat, proviso: No icing.',
      'Cabin heat, operating procedure (O): Valve off.',
    ]);
    expect(short(judged(listed({ proviso: '   ' }), 'cabin-heat'))).toEqual([
      'supports 91.213(a)(2)',
      'supports 91.213(a)(3)(ii)',
    ]);
  });

  test.each([
    { use: {}, allowed: {}, bars: [] },
    { use: { light: 'night' }, allowed: { night: false }, bars: ['this at night'] },
    { use: {}, allowed: { night: false, ifr: false, hire: false }, bars: [] },
    { use: { rules: 'IFR' }, allowed: { ifr: false }, bars: ['this under IFR'] },
    { use: { purpose: 'instruction-for-hire' }, allowed: { hire: false }, bars: ['this for hire'] },
    {
      use: { light: 'night', rules: 'IFR', purpose: 'carriage-for-hire' },
      allowed: { night: false, ifr: false, hire: false },
      bars: ['this at night', 'this under IFR', 'this for hire'],
    },
    { use: { light: 'night', rules: 'IFR', purpose: 'carriage-for-hire' }, allowed: {}, bars: [] },
  ] as { use: Partial<UseOfAircraft>; allowed: Partial<MelItemFacts['allowed']>; bars: string[] }[])(
    '(a)(5): $use with $allowed bars $bars',
    ({ use, allowed, bars }) => {
      const plane = listed({ allowed: { ...ENTRY.allowed, ...allowed } });
      const lines = judged(plane, 'cabin-heat', use).filter(({ effect }) => effect === 'bars');
      expect(lines.map(({ because }) => because)).toEqual(
        bars.map((words) => `Cabin heat: the list does not allow ${words}.`),
      );
      for (const line of lines) expect(line).toMatchObject({ cite: '14cfr91.213(a)(5)', about: HEAT });
    },
  );

  test('not aboard, not known, not in it, or written for another number: each by its paragraph and of this write-up', () => {
    const told = (plane: AircraftFacts) =>
      judged(plane, 'cabin-heat').filter(({ effect }) => effect === 'bars');
    expect(told(listed({}, { letterAboard: known(false) }))).toMatchObject([
      {
        cite: '14cfr91.213(a)(2)',
        about: HEAT,
        because: 'Minimum equipment list MEL-1: its letter of authorization is not aboard.',
      },
    ]);
    expect(told(listed({}, { letterAboard: known(false) }))[0]?.strictReading).toMatch(
      /paragraph \(d\) instead/,
    );
    expect(told(listed({}, { letterAboard: unknown('the letter') }))).toMatchObject([
      { missing: 'the letter', about: HEAT },
    ]);
    expect(told(listed({ equipmentId: 'intercom' }))).toMatchObject([
      {
        cite: '14cfr91.213(a)(3)(ii)',
        about: HEAT,
        because: 'Cabin heat: not in minimum equipment list MEL-1, so it must work.',
      },
    ]);
    expect(told(listed({ installed: 2 }))).toMatchObject([
      { about: HEAT, because: 'Cabin heat: the list is written for 2 installed, this aircraft has 1.' },
    ]);
  });

  test('(b): what part 91 or a directive asks bars under its paragraph, with the strict reading said; what supports is not repeated', () => {
    const plane = { ...listed({ equipmentId: 'airspeed-indicator', title: 'Airspeed' }) };
    const { aircraft, d } = broken(plane, 'airspeed-indicator');
    const bars = judgeInoperative(aircraft, d, useOf()).filter(({ effect }) => effect === 'bars');
    expect(bars.map(({ cite }) => cite)).toEqual(['14cfr91.205(b)(1)']);
    expect(bars[0]?.strictReading).toMatch(/We hold a list to 91\.213\(b\)/);
    const directive = {
      id: 'ad',
      number: '1',
      title: 'T',
      equipmentId: 'cabin-heat',
      requiresOperable: true,
    };
    const lines = judged({ ...listed(), directives: known([directive]) }, 'cabin-heat');
    expect(short(lines)).toEqual(['supports 91.213(a)(2)', 'supports 91.213(a)(3)(ii)', 'bars 91.213(b)(2)']);
  });

  test.each([
    [
      'C',
      {},
      {},
      '2026-12-04',
      'limits',
      'Repair category C, recorded 24 Nov 2026: to be repaired by the end of 4 Dec 2026.',
    ],
    [
      'C',
      {},
      {},
      '2026-12-05',
      'bars',
      'Repair category C, recorded 24 Nov 2026: the interval ended with 4 Dec 2026.',
    ],
    [
      'B',
      {},
      {},
      '2026-11-27',
      'limits',
      'Repair category B, recorded 24 Nov 2026: to be repaired by the end of 27 Nov 2026.',
    ],
    [
      'B',
      {},
      {},
      '2026-11-28',
      'bars',
      'Repair category B, recorded 24 Nov 2026: the interval ended with 27 Nov 2026.',
    ],
    [
      'C',
      {},
      { enforceCategories: false },
      '2026-12-05',
      'notes',
      'Repair category C: the interval would end with 4 Dec 2026. This operator is not held to intervals.',
    ],
    [
      'A',
      {},
      { enforceCategories: false },
      '2026-11-25',
      'notes',
      'Repair category A: the interval is not known: days of category A. This operator is not held to intervals.',
    ],
    [
      'C',
      { extendedThrough: '2026-12-07' },
      { extension: { categories: ['C'], reference: 'Letter' } },
      '2026-12-05',
      'limits',
      'Repair category C, recorded 24 Nov 2026, extended once: to be repaired by the end of 7 Dec 2026.',
    ],
  ] as const)('interval %s %j %j on %s: %s', (category, deferral, mel, on, effect, because) => {
    const lines = answerDeferred(
      listed({ category }, mel as Partial<MelFacts>),
      'cabin-heat',
      { ...BY_LIST, ...deferral },
      { departOn: on, arriveOn: on },
    );
    const found = lines.filter((line) => line.cite.startsWith('mmel-category'));
    expect(found).toMatchObject([{ effect, because, about: { kind: 'deferral', id: 'deferral-1' } }]);
  });
});

describe('the report', () => {
  const answers = (eligibility: ReturnType<typeof report>) =>
    eligibility.tree.map(
      ({ cite, answer, stops }) => `${cite.replace('14cfr', '')} ${answer}${stops ? ' stops' : ''}`,
    );

  test('damage: the one question, and it stops', () => {
    const { tree, path, deferrable, judgements, listEntry } = report(trainer(), 'cabin-heat', {
      kind: 'damage',
    });
    expect({ path, deferrable, judgements, listEntry }).toEqual({
      path: 'not-equipment',
      deferrable: false,
      judgements: [],
      listEntry: null,
    });
    expect(tree).toEqual([
      {
        question: 'Is it installed equipment that does not work, and not damage, wear or a leak?',
        cite: '14cfr91.213(a)',
        answer: 'no',
        because: 'Damage is not inoperative equipment: it can never be deferred under 91.213.',
        stops: true,
      },
    ]);
  });

  test('nobody said what: unknown, and it stops', () => {
    const d = discrepancyOf({ equipmentId: null });
    expect(answers(deferralEligibility(trainer(), d, REFERENCE, TODAY, NOW))).toEqual([
      '91.213(a) unknown stops',
    ]);
  });

  test('an aircraft that (d) does not name: closed, as far as it was read', () => {
    const turbine = trainer({ type: trainerType({ turbine: known(true) }) });
    const eligibility = report(turbine, 'cabin-heat');
    expect(eligibility).toMatchObject({
      path: 'closed',
      deferrable: false,
      stepsOwed: [],
      ends: [],
      judgements: [],
    });
    expect(answers(eligibility)).toEqual(['91.213(a) yes', '91.213(a)(1) no', '91.213(d)(1) no stops']);
  });

  test('an item of the type design: every kind is barred, and the fork is said', () => {
    const eligibility = report(trainer(), 'airspeed-indicator');
    expect(answers(eligibility)).toEqual([
      '91.213(a) yes',
      '91.213(a)(1) no',
      '91.213(d)(1) yes',
      '91.213(d)(2)(i) yes stops',
      '91.213(d)(2)(ii) yes stops',
      '91.213(d)(2)(iii) yes stops',
      '91.213(d)(2)(iv) no',
      '91.405(a) no stops',
    ]);
    expect(eligibility.tree.at(-1)).toMatchObject({
      question: 'Is any kind of operation left?',
      because: 'Every kind of operation is barred: the item is repaired, not deferred.',
    });
  });

  test('what is not known of every kind is unknown, and stops; known for some it depends', () => {
    const doubt = withRow(trainer(), 'cabin-heat', { vfrDayTypeDesign: unknown('the type design') });
    expect(report(doubt, 'cabin-heat').tree[3]).toMatchObject({ answer: 'unknown', stops: true });
    const landing = report(trainer(), 'landing-light').tree[5];
    expect(landing).toMatchObject({ answer: 'depends', stops: false });
    expect(report(trainer(), 'cabin-heat').tree[5]?.because).toBe(
      'Cabin heat: part 91 does not ask for it for day VFR, private.',
    );
  });

  test('with a list: its own questions, and none of (d)', () => {
    const eligibility = report(listed({ maintenanceProcedure: 'Tag it.' }), 'cabin-heat');
    expect(answers(eligibility)).toEqual([
      '91.213(a) yes',
      '91.213(a)(2) yes',
      '91.213(a)(5) yes',
      '91.213(a)(4) no stops',
      '91.213(d)(3) no stops',
      '91.213(d)(3) no stops',
      '91.213(a)(5) no stops',
    ]);
    expect(answers(report(listed(), 'intercom'))).toEqual([
      '91.213(a) yes',
      '91.213(a)(2) yes',
      '91.213(a)(3)(ii) no stops',
      '91.405(a) no stops',
    ]);
    const dayOnly = report(listed({ allowed: { night: false, ifr: true, hire: true } }), 'cabin-heat');
    expect(dayOnly.tree[2]).toMatchObject({ answer: 'depends', stops: false });
    expect(dayOnly.tree[2]?.because).toMatch(
      /^Not at night \(14 CFR 91\.213\(a\)\(5\)\): Cabin heat: the list does not allow this at night\.$/,
    );
    const never = report(listed({ requiredForDispatch: 1 }), 'cabin-heat');
    expect(never.tree[2]).toMatchObject({ answer: 'no', stops: true });
  });

  test('what a person is asked under (d), in order', () => {
    const judgements = report(trainer(), 'cabin-heat').judgements.map(({ id, cite }) => `${id} ${cite}`);
    expect(judgements).toEqual([
      'equipment-or-damage 14cfr91.213(a)',
      'removed-or-deactivated 14cfr91.213(d)(3)',
      'is-maintenance 14cfr91.213(d)(3)(ii)',
      'hazard-alone 14cfr91.213(d)(4)',
    ]);
    expect(report(trainer(), 'cabin-heat').judgements[0]?.question).toBe(
      'Is it only that Cabin heat does not work, with nothing damaged?',
    );
  });

  test('what a person is asked under a list: its procedures where it has some', () => {
    const asked = (entry: Partial<MelItemFacts>) =>
      report(listed(entry), 'cabin-heat').judgements.map(({ id, cite }) => `${id} ${cite}`);
    expect(asked({})).toEqual([
      'equipment-or-damage 14cfr91.213(a)',
      'removed-or-deactivated 14cfr91.213(a)(5)',
      'is-maintenance 14cfr43.9(a)',
      'hazard-alone 14cfr91.7(b)',
    ]);
    expect(asked({ operatingProcedure: 'Valve off.' })[3]).toBe('procedures-done 14cfr91.213(a)(5)');
  });

  test('counted together: other deferrals and what is judged limiting, never the write-up itself', () => {
    const others = trainer({
      discrepancies: [
        discrepancyOf({ id: 'a', number: 'W-0002', title: 'Intercom', deferral: deferralOf() }),
        discrepancyOf({ id: 'b', number: 'W-0003', title: 'Scratch', severity: known('limiting') }),
        discrepancyOf({ id: 'c', number: 'W-0004', title: 'Paint', severity: known('note') }),
        discrepancyOf({ id: 'd', number: 'W-0005', title: 'Unjudged', severity: unknown('how bad') }),
      ],
    });
    const { together, judgements } = report(others, 'cabin-heat');
    expect(together).toEqual([
      { id: 'a', number: 'W-0002', title: 'Intercom', why: 'deferred' },
      { id: 'b', number: 'W-0003', title: 'Scratch', why: 'limiting' },
    ]);
    expect(judgements.at(-1)).toMatchObject({
      id: 'hazard-together',
      look: 'Counted together: W-0002 Intercom (deferred); W-0003 Scratch (limiting).',
    });
    expect(report(trainer(), 'cabin-heat').together).toEqual([]);
  });

  test('nothing is asked of a person once it is deferred, and the steps say what was done', () => {
    const { judgements, stepsOwed } = report(trainer(), 'cabin-heat', { deferral: deferralOf() });
    expect(judgements).toEqual([]);
    expect(stepsOwed.map(({ id, done }) => [id, done])).toEqual([
      ['remove-or-deactivate', true],
      ['placard', true],
      ['determination', true],
    ]);
    expect(report(trainer(), 'airspeed-indicator', { deferral: deferralOf() }).stepsOwed).toEqual([]);
  });

  test.each([
    // Category C counts ten days after the day of the write-up, 24 November.
    [{}, {}, deferralOf(BY_LIST), 'Repair category C: repaired by the end of 4 Dec 2026.', '2026-12-04'],
    [{}, {}, null, 'Repair category C: counted from the day of the write-up, once deferred.', null],
    [
      {},
      { enforceCategories: false },
      deferralOf(BY_LIST),
      'Repair category C: 4 Dec 2026; this operator is not held to intervals.',
      null,
    ],
    [{ category: 'A' }, {}, deferralOf(BY_LIST), 'Repair category A: not known: days of category A.', null],
    [
      {},
      { extension: { categories: ['C'], reference: 'Letter' } },
      deferralOf({ ...BY_LIST, extendedThrough: '2026-12-07' }),
      'Repair category C, extended once: repaired by the end of 7 Dec 2026.',
      '2026-12-07',
    ],
  ] as [Partial<MelItemFacts>, Partial<MelFacts>, DeferralFacts | null, string, string | null][])(
    'the interval among what ends it: %j %j',
    (entry, mel, deferral, text, on) => {
      const { aircraft, d } = broken(listed(entry, mel), 'cabin-heat', { deferral });
      expect(deferralEnds(aircraft, d)[0]).toMatchObject({ text, on });
    },
  );

  test('the next inspection ends it, and what is not known of it is said', () => {
    const { aircraft, d } = broken(trainer(), 'cabin-heat', { deferral: deferralOf() });
    expect(deferralEnds(aircraft, d)).toHaveLength(1);
    expect(deferralEnds(aircraft, d)[0]).toMatchObject({ cite: '14cfr91.405(c)' });
    expect(deferralEnds(aircraft, d)[0]?.text).toMatch(
      /^Repaired, replaced, removed or inspected at the next .+ \(.+\)\.$/,
    );
    expect(deferralEnds({ ...aircraft, requirements: [] }, d)[0]?.text).toMatch(/not known: /);
  });

  // 91.207(f)(10)(ii): not more than 90 days.
  test('a removed transmitter ends by its own day as well', () => {
    const eltRemoval = { firstRemovedOn: '2026-09-01', recordComplete: true };
    const { aircraft, d } = broken(trainer(), 'elt', {
      deferral: deferralOf({ method: 'removed', eltRemoval }),
    });
    expect(deferralEnds(aircraft, d).at(-1)).toEqual({
      cite: '14cfr91.207(f)(10)(ii)',
      text: 'Emergency locator transmitter removed for not more than 90 days: through 30 Nov 2026.',
      on: '2026-11-30',
    });
  });

  test('the entry with its clock, before and while it is deferred', () => {
    const entry = report(listed({ proviso: 'No icing.' }), 'cabin-heat').listEntry;
    expect(entry).toEqual({
      reference: 'MEL-1',
      title: 'Cabin heat',
      category: 'C',
      installed: 1,
      requiredForDispatch: 0,
      working: known(0),
      allowed: ENTRY.allowed,
      proviso: 'No icing.',
      operatingProcedure: null,
      maintenanceProcedure: null,
      clock: {
        recordedOn: '2026-11-24',
        lastDay: known('2026-12-04'),
        daysLeft: 9,
        binds: true,
        extended: false,
      },
    });
    expect(report(listed({ category: 'A' }), 'cabin-heat').listEntry?.clock).toMatchObject({
      daysLeft: null,
    });
    expect(report(trainer(), 'cabin-heat').listEntry).toBeNull();
    expect(report(listed(), 'intercom').listEntry).toBeNull();
  });

  test('an extension is no question without a deferral under a list in force that holds the item', () => {
    const asked = (plane: AircraftFacts, fn: EquipmentFunction, deferral: DeferralFacts | null) => {
      const { aircraft, d } = broken(plane, fn, { deferral });
      return extensionOf(aircraft, d, TODAY);
    };
    const deferral = deferralOf(BY_LIST);
    expect(asked(listed(), 'cabin-heat', deferral)).not.toBeNull();
    expect(asked(listed(), 'cabin-heat', null)).toBeNull();
    expect(asked(listed(), 'cabin-heat', deferralOf())).toBeNull();
    expect(asked(trainer(), 'cabin-heat', deferral)).toBeNull();
    expect(asked(listed(), 'intercom', deferral)).toBeNull();
    const nothing = discrepancyOf({ equipmentId: null, deferral });
    expect(extensionOf({ ...listed(), discrepancies: [nothing] }, nothing, TODAY)).toBeNull();
  });
});

describe('the steps, in words and by their paragraph', () => {
  const owed = (deferral: DeferralFacts | null, plane = trainer()) =>
    report(plane, 'cabin-heat', { deferral }).stepsOwed.map(
      ({ id, cite, done }) => `${id} ${cite.replace('14cfr', '')} ${done}`,
    );

  test('before anything is done', () => {
    expect(owed(null)).toEqual([
      'remove-or-deactivate 91.213(d)(3) false',
      'part-43-record 91.213(d)(3) false',
      'placard 91.213(d)(3) false',
      'determination 91.213(d)(4) false',
    ]);
  });

  test('removed: the record always, under (i); deactivated: the record where it was maintenance, under (ii)', () => {
    expect(owed(deferralOf({ method: 'removed' }))).toEqual([
      'remove-or-deactivate 91.213(d)(3)(i) true',
      'part-43-record 91.213(d)(3)(i) false',
      'placard 91.213(d)(3)(i) true',
      'determination 91.213(d)(4) true',
    ]);
    expect(
      owed(
        deferralOf({ deactivationIsMaintenance: true, maintenanceRecordSigned: true, placardPlaced: false }),
      ),
    ).toEqual([
      'remove-or-deactivate 91.213(d)(3)(ii) true',
      'part-43-record 91.213(d)(3)(ii) true',
      'placard 91.213(d)(3)(ii) false',
      'determination 91.213(d)(4) true',
    ]);
  });

  test('under a list', () => {
    const plane = listed({ operatingProcedure: 'Valve off.', maintenanceProcedure: 'Tag it.' });
    expect(owed(deferralOf({ ...BY_LIST, method: 'removed' }), plane)).toEqual([
      'record 91.213(a)(4) true',
      'part-43-record 43.9(a) false',
      'placard 91.213(a)(5) true',
      'mel-procedures 91.213(a)(5) false',
    ]);
    expect(owed(deferralOf({ ...BY_LIST, melProceduresDone: true }), plane).at(-1)).toBe(
      'mel-procedures 91.213(a)(5) true',
    );
    expect(report(plane, 'cabin-heat').stepsOwed.at(-1)?.text).toBe(
      'Carry out the procedures of the list: (O) Valve off. (M) Tag it.',
    );
    expect(owed(deferralOf(BY_LIST), listed())).toEqual([
      'record 91.213(a)(4) true',
      'placard 91.213(a)(5) true',
    ]);
  });

  test('words: what was done, what is owed, and why a determination does not count', () => {
    const text = (deferral: Partial<DeferralFacts>, id: string) =>
      report(trainer(), 'cabin-heat', { deferral: deferralOf(deferral) }).stepsOwed.find(
        (step) => step.id === id,
      )?.text;
    expect(text({}, 'remove-or-deactivate')).toBe('Cabin heat is deactivated.');
    expect(text({ method: 'removed' }, 'remove-or-deactivate')).toBe('Cabin heat is removed.');
    expect(text({}, 'placard')).toBe('Placard Cabin heat in view of the pilot: "Inoperative".');
    expect(text({ method: 'removed' }, 'placard')).toBe(
      'Placard the cockpit control of Cabin heat: removed.',
    );
    expect(text({ method: 'removed' }, 'part-43-record')).toBe(
      'Sign the part 43 record for removing Cabin heat.',
    );
    expect(text({ deactivationIsMaintenance: true }, 'part-43-record')).toBe(
      'Sign the part 43 record for deactivating Cabin heat.',
    );
    expect(text({}, 'determination')).toBe('R. Fernhollow determined on 24 Nov 2026: no hazard.');
    const by = {
      name: 'S. Novak',
      pilotGrade: 'student',
      pilotRatedForAircraft: true,
      mechanicRatings: [],
      repairStation: false,
    } as const;
    expect(text({ determination: known({ by, on: '2026-11-24' }) }, 'determination')).toMatch(
      /no hazard to the aircraft\. S\. Novak may not: neither a pilot rated/,
    );
    expect(
      text(
        { determination: known({ by: { ...by, repairStation: true }, on: '2026-11-23' }) },
        'determination',
      ),
    ).toMatch(/The determination of 23 Nov 2026 is older than the write-up of 24 Nov 2026\.$/);
  });
});
