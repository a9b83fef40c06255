import { describe, expect, test } from 'vitest';
import type {
  AircraftFacts,
  AircraftTypeFacts,
  DeferralFacts,
  DiscrepancyFacts,
  EquipmentFunction,
  FindingKind,
  MelFacts,
  MelItemFacts,
} from '../../lib/rules/aircraft';
import { known, unknown } from '../../lib/rules/facts';
import { answerForUse } from '../../lib/rules/answer';
import { judgeDiscrepancy } from '../../lib/rules/judge-discrepancy';
import { operationId, type UseOfAircraft } from '../../lib/rules/operations';
import { deferralEligibility } from '../../lib/rules/part-91/91-213-deferral-eligibility';
import {
  isInoperativeEquipment,
  judgeInoperative,
} from '../../lib/rules/part-91/91-213-inoperative-equipment';
import { joinLines, type Line } from '../../lib/rules/verdict';
import {
  BASE,
  REFERENCE,
  TODAY,
  deferralOf,
  discrepancyOf,
  equipmentRow,
  melItemOf,
  permitOf,
  trainer,
  trainerType,
  useOf,
  withBroken,
  withEquipment,
  withRow,
} from '../fixtures/aircraft';
import { missingOf } from '../fixtures/lines';

/*
 * 14 CFR 91.213. Sources: (a) as in a GPO copy of 2008; (d) as on faraim.org page 50; (d)(1) in outline from a copy of a
 * trade page; (b) from memory. The strict sides taken beyond the text are marked "our strict reading".
 */
const NOW = '2026-11-25T15:00:00Z';

function broken(aircraft: AircraftFacts, fn: EquipmentFunction, overrides: Partial<DiscrepancyFacts> = {}) {
  const out = withBroken(aircraft, fn, overrides);
  const d = out.discrepancies.at(-1);
  if (d === undefined) throw new Error('nothing was broken');
  return { aircraft: out, d };
}

const barsOf = (lines: readonly Line[]) =>
  lines.filter((line) => line.effect === 'bars').map((line) => line.cite);

const judged = (aircraft: AircraftFacts, fn: EquipmentFunction, use: Partial<UseOfAircraft> = {}) => {
  const { aircraft: out, d } = broken(aircraft, fn);
  return judgeInoperative(out, d, useOf(use));
};

const answerDeferred = (
  aircraft: AircraftFacts,
  fn: EquipmentFunction,
  deferral: Partial<DeferralFacts> = {},
  use: Partial<UseOfAircraft> = {},
) => {
  const { aircraft: out, d } = broken(aircraft, fn, { deferral: deferralOf(deferral) });
  return joinLines(judgeDiscrepancy(out, d, useOf(use)));
};

const report = (
  aircraft: AircraftFacts,
  fn: EquipmentFunction,
  overrides: Partial<DiscrepancyFacts> = {},
) => {
  const { aircraft: out, d } = broken(aircraft, fn, overrides);
  return deferralEligibility(out, d, REFERENCE, TODAY, NOW);
};

const allowedKinds = (table: ReturnType<typeof report>['table']) =>
  table.filter((row) => row.allowed).map((row) => operationId(row.kind));

describe('91.213(a): what counts as inoperative equipment', () => {
  test.each([
    'damage',
    'wear',
    'leak',
    'contamination',
    'fastener',
    'servicing',
    'document',
    'cosmetic',
  ] as FindingKind[])('%s is never deferrable', (kind) => {
    const d = discrepancyOf({ kind });
    expect(isInoperativeEquipment(d)).toMatchObject({ is: false, lines: [{ effect: 'bars' }] });
    const eligibility = deferralEligibility(trainer({ discrepancies: [d] }), d, REFERENCE, TODAY, NOW);
    expect(eligibility).toMatchObject({ path: 'not-equipment', deferrable: false, stepsOwed: [], ends: [] });
    expect(allowedKinds(eligibility.table)).toEqual([]);
  });

  test('inoperative, but nobody said what', () => {
    const d = discrepancyOf({ equipmentId: null });
    expect(isInoperativeEquipment(d).is).toBe(false);
    expect(missingOf(judgeInoperative(trainer(), d, useOf()))).toHaveLength(1);
    const gone = discrepancyOf({ equipmentId: 'not-on-the-list' });
    expect(missingOf(judgeInoperative(trainer(), gone, useOf()))).toHaveLength(1);
  });

  test.each([
    { count: known(0), bars: true },
    { count: known(1), bars: false },
    { count: known(2), bars: true },
    { count: unknown('how many taxi lights are out'), bars: true },
  ])('one installed, $count inoperative', ({ count, bars }) => {
    const { aircraft, d } = broken(trainer(), 'taxi-light', { inoperativeCount: count });
    expect(barsOf(judgeInoperative(aircraft, d, useOf())).length > 0).toBe(bars);
  });
});

describe('91.213(d)(1): kinds of aircraft', () => {
  const type = (overrides: Partial<AircraftTypeFacts>) => trainer({ type: trainerType(overrides) });
  const open = (overrides: Partial<AircraftTypeFacts>) =>
    !judged(type(overrides), 'cabin-heat').some(
      (line) => line.effect === 'bars' && line.cite.startsWith('14cfr91.213(d)(1)'),
    );

  // Small is 12,500 lb or less: 14 CFR 1.1.
  test.each([
    { lb: 12_499, open: true },
    { lb: 12_500, open: true },
    { lb: 12_501, open: false },
  ])('nonturbine airplane of $lb lb with a master list', ({ lb, open: expected }) => {
    expect(open({ maxTakeoffWeightLb: known(lb) })).toBe(expected);
  });

  test.each([
    {
      title: 'large nonturbine, no list',
      facts: { maxTakeoffWeightLb: known(13_000), mmelPublished: known(false) },
      is: true,
    },
    { title: 'turbine, no list', facts: { turbine: known(true), mmelPublished: known(false) }, is: false },
    { title: 'small turbine, list', facts: { turbine: known(true) }, is: false },
    { title: 'glider, list', facts: { category: 'glider' }, is: true },
    { title: 'lighter-than-air, list', facts: { category: 'lighter-than-air' }, is: true },
    { title: 'small rotorcraft, list', facts: { category: 'rotorcraft' }, is: true },
    {
      title: 'large rotorcraft, list',
      facts: { category: 'rotorcraft', maxTakeoffWeightLb: known(12_501) },
      is: false,
    },
    {
      title: 'weight-shift, no list',
      facts: { category: 'weight-shift-control', mmelPublished: known(false) },
      is: true,
    },
    { title: 'weight-shift, list', facts: { category: 'weight-shift-control' }, is: false },
    { title: 'powered parachute, list', facts: { category: 'powered-parachute' }, is: false },
    {
      title: 'small nonturbine, list not known (both ways open)',
      facts: { mmelPublished: unknown('list') },
      is: true,
    },
    {
      title: 'turbine, list not known (both ways closed)',
      facts: { turbine: known(true), mmelPublished: unknown('list') },
      is: false,
    },
  ] as { title: string; facts: Partial<AircraftTypeFacts>; is: boolean }[])('$title', ({ facts, is }) => {
    expect(open(facts)).toBe(is);
  });

  test.each([
    { facts: { turbine: unknown('the engine') }, missing: 'the engine' },
    { facts: { maxTakeoffWeightLb: unknown('the weight') }, missing: 'the weight' },
    { facts: { maxTakeoffWeightLb: known(13_000), mmelPublished: unknown('the list') }, missing: 'the list' },
  ] as { facts: Partial<AircraftTypeFacts>; missing: string }[])('names $missing', ({ facts, missing }) => {
    expect(missingOf(judged(type(facts), 'cabin-heat'))).toContain(missing);
  });
});

describe('91.213(d)(2): unknown is never clear', () => {
  test.each([
    {
      plane: withRow(trainer(), 'intercom', { vfrDayTypeDesign: unknown('type design') }),
      cite: '14cfr91.213(d)(2)(i)',
    },
    {
      plane: withRow(trainer(), 'intercom', { requiredByList: unknown('the list') }),
      cite: '14cfr91.213(d)(2)(ii)',
    },
    { plane: trainer({ directives: unknown('directives') }), cite: '14cfr91.213(d)(2)(iv)' },
    {
      // It asks for something to work, and nobody has said which line of the list that is.
      plane: trainer({
        directives: known([
          { id: 'ad', number: '0000-00-03', title: 'Heat', equipmentId: null, requiresOperable: true },
        ]),
      }),
      cite: '14cfr91.213(d)(2)(iv)',
    },
  ])('$cite', ({ plane, cite }) => {
    const lines = judged(plane, 'intercom');
    expect(barsOf(lines)).toEqual([cite]);
    expect(missingOf(lines)).toHaveLength(1);
    const eligibility = report(plane, 'intercom');
    expect(eligibility.deferrable).toBe(false);
    expect(eligibility.tree.find((question) => question.cite === cite)).toMatchObject({
      answer: 'unknown',
      stops: true,
    });
  });

  // (d)(2)(iii): a demand that hangs on a missing fact.
  test('(iii) airspace not known', () => {
    const lines = judged(trainer(), 'transponder', { transponderAirspace: unknown('the airspace') });
    expect(lines).toContainEqual(expect.objectContaining({ effect: 'bars', missing: 'the airspace' }));
  });
});

describe('91.213(d)(2)(ii) and (iii): what still works is counted', () => {
  const list = (count: number) => known({ dayVfr: count, nightVfr: count, dayIfr: count, nightIfr: count });

  // Border of "required on the list": remaining just under, exactly on, just over.
  test.each([
    { required: 1, bars: [] },
    { required: 2, bars: [] },
    { required: 3, bars: ['14cfr91.213(d)(2)(ii)'] },
  ])('three installed, one out, list asks for $required', ({ required, bars }) => {
    const plane = withRow(trainer(), 'cabin-heat', { installed: 3, requiredByList: list(required) });
    expect(barsOf(judged(plane, 'cabin-heat'))).toEqual(bars);
  });

  // Our strict reading of "the combination" (design): every open write-up on the item counts.
  test('two deferrals that are harmless alone bar together', () => {
    const plane = withRow(trainer(), 'cabin-heat', { installed: 3, requiredByList: list(2) });
    const one = withBroken(plane, 'cabin-heat', { id: 'first', deferral: deferralOf() });
    const both = broken(one, 'cabin-heat', { id: 'second', deferral: deferralOf() });
    expect(barsOf(judgeDiscrepancy(one, one.discrepancies[0]!, useOf()))).toEqual([]);
    for (const d of both.aircraft.discrepancies) {
      expect(barsOf(judgeDiscrepancy(both.aircraft, d, useOf()))).toEqual(['14cfr91.213(d)(2)(ii)']);
    }
  });

  // 91.205(d)(2), checked: one two-way radio; a second one, in its own row, still answers the demand.
  test('(iii) counts all rows of the function', () => {
    const ifr = { rules: 'IFR', usesVor: known(true) } as const;
    const second = equipmentRow('two-way-radio', 'Second radio', '2312', { id: 'radio-2' });
    const one = withRow(trainer(), 'two-way-radio', { requiredByList: list(0) });
    expect(barsOf(judged(one, 'two-way-radio', ifr))).toEqual(['14cfr91.205(d)(2)']);
    const two = withEquipment(one, second);
    expect(barsOf(judged(two, 'two-way-radio', ifr))).toEqual([]);
    const otherOut = {
      ...two,
      discrepancies: [discrepancyOf({ id: 'other', title: 'Second radio', equipmentId: 'radio-2' })],
    };
    expect(barsOf(judged(otherOut, 'two-way-radio', ifr))).toEqual(['14cfr91.205(d)(2)']);
  });

  test('names the other deferrals in a note', () => {
    const first = withBroken(trainer(), 'intercom', {
      id: 'first',
      number: 'W-0002',
      deferral: deferralOf(),
    });
    const { aircraft, d } = broken(first, 'cabin-heat', { deferral: deferralOf() });
    const notes = judgeDiscrepancy(aircraft, d, useOf()).filter((line) => line.effect === 'notes');
    expect(notes.map((line) => line.because).join()).toContain('W-0002 Intercom');
  });
});

// 91.205 rows as in regulations: (c) checked on faraim.org 2014 p743, (c)(2) from memory; (d) checked there.
describe('the table for equipment of interest, deferred under (d)', () => {
  const vfr = ['day-vfr-private', 'day-vfr-hire', 'night-vfr-private', 'night-vfr-hire'];
  const ifr = ['day-ifr-private', 'day-ifr-hire', 'night-ifr-private', 'night-ifr-hire'];
  const without = (...kinds: string[]) => [...vfr, ...ifr].filter((kind) => !kinds.includes(kind));
  const night = ['night-vfr-private', 'night-vfr-hire', 'night-ifr-private', 'night-ifr-hire'];

  test.each([
    { fn: 'cabin-heat', allowed: without() },
    { fn: 'taxi-light', allowed: without() },
    { fn: 'clock', allowed: vfr },
    { fn: 'two-way-radio', allowed: vfr },
    { fn: 'attitude-indicator', allowed: vfr },
    { fn: 'heading-gyro', allowed: vfr },
    { fn: 'rate-of-turn-indicator', allowed: vfr },
    { fn: 'vacuum-pump', allowed: vfr },
    { fn: 'vor-receiver', allowed: vfr },
    { fn: 'landing-light', allowed: without('night-vfr-hire', 'night-ifr-hire') },
    { fn: 'position-lights', allowed: without(...night) },
    { fn: 'spare-fuses', allowed: without(...night) },
    {
      fn: 'elt',
      allowed: without('day-vfr-private', 'night-vfr-private', 'day-ifr-private', 'night-ifr-private'),
    },
    { fn: 'transponder', allowed: without() },
    { fn: 'adsb-out', allowed: without() },
    { fn: 'airspeed-indicator', allowed: [] },
    { fn: 'fuel-quantity-gauge', allowed: [] },
    { fn: 'oil-pressure-gauge', allowed: [] },
    { fn: 'seat-belts', allowed: [] },
    { fn: 'stall-warning', allowed: [] },
    { fn: 'anticollision-lights', allowed: [] },
  ] as { fn: EquipmentFunction; allowed: string[] }[])('$fn', ({ fn, allowed }) => {
    const eligibility = report(trainer(), fn);
    expect(eligibility.path).toBe('paragraph-d');
    expect(eligibility.table).toHaveLength(8);
    expect(allowedKinds(eligibility.table)).toEqual(
      eligibility.table.map((row) => operationId(row.kind)).filter((id) => allowed.includes(id)),
    );
    expect(eligibility.deferrable).toBe(allowed.length > 0);
    expect(eligibility.stepsOwed.length > 0).toBe(allowed.length > 0);
  });

  test('position lights: day rows are limited to sunset', () => {
    const day = report(trainer(), 'position-lights').table.filter((row) => row.allowed);
    expect(day).toHaveLength(4);
    for (const row of day) {
      expect(row.lines).toContainEqual(
        expect.objectContaining({
          effect: 'limits',
          cite: '14cfr91.209(a)(1)',
          because: 'On the ground by sunset.',
        }),
      );
    }
  });

  test('the tree reads the section in order, and says where it depends', () => {
    const { tree } = report(trainer(), 'landing-light');
    expect(tree.map(({ cite, answer }) => [cite, answer])).toEqual([
      ['14cfr91.213(a)', 'yes'],
      ['14cfr91.213(a)(1)', 'no'],
      ['14cfr91.213(d)(1)', 'yes'],
      ['14cfr91.213(d)(2)(i)', 'no'],
      ['14cfr91.213(d)(2)(ii)', 'no'],
      ['14cfr91.213(d)(2)(iii)', 'depends'],
      ['14cfr91.213(d)(2)(iv)', 'no'],
      ['14cfr91.213(d)(3)', 'no'],
      ['14cfr91.213(d)(3)', 'no'],
      ['14cfr91.213(d)(3)', 'no'],
      ['14cfr91.213(d)(4)', 'no'],
    ]);
    expect(tree[5]?.because).toContain('Not at night for hire (14 CFR 91.205(c)(4))');
  });

  test('ends at the next required inspection', () => {
    const { ends } = report(trainer(), 'clock');
    expect(ends).toMatchObject([{ cite: '14cfr91.405(c)', on: '2027-03-31' }]);
    expect(ends[0]?.text).toContain('4560.0 h');
  });

  // 91.207(f)(10)(ii), checked in outline: not more than 90 days after first removal.
  test('a removed transmitter ends on day 90', () => {
    const eltRemoval = { firstRemovedOn: '2026-11-01', recordComplete: true };
    const deferral = deferralOf({ method: 'removed', maintenanceRecordSigned: true, eltRemoval });
    const { ends } = report(trainer(), 'elt', { deferral });
    expect(ends.at(-1)).toMatchObject({ cite: '14cfr91.207(f)(10)(ii)', on: '2027-01-30' });
  });
});

describe('91.213(d)(3) and (d)(4): the steps', () => {
  test('all taken: go with limits, with the placard in words', () => {
    const answer = answerDeferred(trainer(), 'cabin-heat');
    expect(answer.outcome).toBe('go-with-limits');
    expect(answer.lines[0]?.because).toBe('Deferred: Cabin heat, deactivated, placarded.');
  });

  const rated = { name: 'R. Fernhollow', pilotGrade: 'private', pilotRatedForAircraft: true } as const;
  const nobody = {
    name: 'A. Quill',
    pilotGrade: null,
    pilotRatedForAircraft: false,
    mechanicRatings: [],
    repairStation: false,
  } as const;
  const on = '2026-11-24';

  test.each([
    { title: 'no placard', deferral: { placardPlaced: false }, bars: ['14cfr91.213(d)(3)(ii)'] },
    {
      title: 'deactivating was maintenance, no record',
      deferral: { deactivationIsMaintenance: true },
      bars: ['14cfr91.213(d)(3)(ii)'],
    },
    { title: 'removed, no record', deferral: { method: 'removed' }, bars: ['14cfr91.213(d)(3)(i)'] },
    {
      title: 'removed and recorded',
      deferral: { method: 'removed', maintenanceRecordSigned: true },
      bars: [],
    },
    {
      title: 'nobody determined',
      deferral: { determination: unknown('the determination') },
      bars: ['14cfr91.213(d)(4)'],
    },
    {
      title: 'student',
      deferral: {
        determination: known({ by: { ...nobody, pilotGrade: 'student', pilotRatedForAircraft: true }, on }),
      },
      bars: ['14cfr91.213(d)(4)'],
    },
    {
      title: 'pilot not rated for the aircraft',
      deferral: { determination: known({ by: { ...nobody, ...rated, pilotRatedForAircraft: false }, on }) },
      bars: ['14cfr91.213(d)(4)'],
    },
    {
      title: 'no certificate',
      deferral: { determination: known({ by: nobody, on }) },
      bars: ['14cfr91.213(d)(4)'],
    },
    {
      title: 'mechanic',
      deferral: { determination: known({ by: { ...nobody, mechanicRatings: ['airframe'] }, on }) },
      bars: [],
    },
    {
      title: 'repair station',
      deferral: { determination: known({ by: { ...nobody, repairStation: true }, on }) },
      bars: [],
    },
    // Our strict reading: a determination made before the write-up is not of it.
    {
      title: 'determined the day before',
      deferral: { determination: known({ by: { ...nobody, ...rated }, on: '2026-11-23' }) },
      bars: ['14cfr91.213(d)(4)'],
    },
    {
      title: 'determined that day',
      deferral: { determination: known({ by: { ...nobody, ...rated }, on }) },
      bars: [],
    },
    {
      title: 'determined the day after',
      deferral: { determination: known({ by: { ...nobody, ...rated }, on: '2026-11-25' }) },
      bars: [],
    },
  ] as { title: string; deferral: Partial<DeferralFacts>; bars: string[] }[])(
    '$title',
    ({ deferral, bars }) => {
      expect(barsOf(answerDeferred(trainer(), 'cabin-heat', deferral).lines)).toEqual(bars);
    },
  );

  // 91.207(f)(10)(i), field list from memory. Training near by needs no transmitter, the record of removal is owed still.
  test.each([
    { recordComplete: false, bars: ['14cfr91.207(f)(10)(i)'] },
    { recordComplete: true, bars: [] },
  ])('transmitter removed, record complete: $recordComplete', ({ recordComplete, bars }) => {
    const deferral = {
      method: 'removed',
      maintenanceRecordSigned: true,
      eltRemoval: { firstRemovedOn: '2026-11-24', recordComplete },
    } as const;
    const training = { purpose: 'instruction-for-hire', trainingWithin50Nm: known(true) } as const;
    expect(barsOf(answerDeferred(trainer(), 'elt', deferral, training).lines)).toEqual(bars);
  });

  test('the report says which steps are done', () => {
    const { stepsOwed } = report(trainer(), 'cabin-heat', { deferral: deferralOf({ placardPlaced: false }) });
    expect(stepsOwed.map(({ id, done }) => [id, done])).toEqual([
      ['remove-or-deactivate', true],
      ['placard', false],
      ['determination', true],
    ]);
    expect(report(trainer(), 'cabin-heat').stepsOwed.map(({ id, done }) => [id, done])).toEqual([
      ['remove-or-deactivate', false],
      ['part-43-record', false],
      ['placard', false],
      ['determination', false],
    ]);
  });
});

describe('91.213(a), (b): with a minimum equipment list', () => {
  const list = (overrides: Partial<MelFacts> = {}): AircraftFacts =>
    trainer({
      mel: known({
        reference: 'MEL-1',
        letterAboard: known(true),
        enforceCategories: true,
        extension: null,
        items: [melItemOf()],
        ...overrides,
      }),
    });
  const mel: Partial<DeferralFacts> = { basis: 'mel', melItemId: 'mel-heat' };

  test('the listed item goes with limits, nobody determines anything', () => {
    const answer = answerDeferred(list(), 'cabin-heat', { ...mel, determination: unknown('nobody') });
    expect(answer.outcome).toBe('go-with-limits');
  });

  test('only the list counts: an item it does not name is barred, though (d) would let it go', () => {
    expect(barsOf(judged(list(), 'intercom'))).toEqual(['14cfr91.213(a)(3)(ii)']);
    expect(report(list(), 'intercom')).toMatchObject({ path: 'mel', deferrable: false });
  });

  test.each([
    { title: 'letter not aboard', plane: list({ letterAboard: known(false) }), cite: '14cfr91.213(a)(2)' },
    {
      title: 'letter not known',
      plane: list({ letterAboard: unknown('the letter') }),
      cite: '14cfr91.213(a)(2)',
    },
    { title: 'list not known', plane: trainer({ mel: unknown('a list') }), cite: '14cfr91.213(a)(1)' },
  ])('$title: closed both ways', ({ plane, cite }) => {
    expect(barsOf(judged(plane, 'cabin-heat'))).toEqual([cite]);
    expect(report(plane, 'cabin-heat')).toMatchObject({ path: 'closed', deferrable: false });
  });

  test('a deferral stands on the way that is open now', () => {
    expect(barsOf(answerDeferred(list(), 'cabin-heat').lines)).toEqual(['14cfr91.213(a)(5)']);
    expect(barsOf(answerDeferred(trainer(), 'cabin-heat', mel).lines)).toEqual(['14cfr91.213(a)(1)']);
  });

  // Remaining against required for dispatch: just under, exactly on, just over.
  test.each([
    { required: 2, bars: ['14cfr91.213(a)(3)(ii)'] },
    { required: 1, bars: [] },
    { required: 0, bars: [] },
  ])('two installed, one out, $required required', ({ required, bars }) => {
    const plane = withRow(
      list({ items: [melItemOf({ installed: 2, requiredForDispatch: required })] }),
      'cabin-heat',
      {
        installed: 2,
      },
    );
    expect(barsOf(judged(plane, 'cabin-heat'))).toEqual(bars);
  });

  test('an entry written for another number installed bars', () => {
    expect(barsOf(judged(list({ items: [melItemOf({ installed: 2 })] }), 'cabin-heat'))).toEqual([
      '14cfr91.213(a)(3)(ii)',
    ]);
  });

  test('two entries for one item: the deferral has to name one', () => {
    const plane = list({ items: [melItemOf(), melItemOf({ id: 'mel-heat-2' })] });
    expect(missingOf(judged(plane, 'cabin-heat'))).toHaveLength(1);
    expect(answerDeferred(plane, 'cabin-heat', mel).outcome).toBe('go-with-limits');
    expect(barsOf(answerDeferred(plane, 'cabin-heat', { ...mel, melItemId: 'gone' }).lines)).toHaveLength(1);
  });

  test.each([
    { allowed: { night: false, ifr: true, hire: true }, use: { light: 'night' } },
    { allowed: { night: true, ifr: false, hire: true }, use: { rules: 'IFR' } },
    { allowed: { night: true, ifr: true, hire: false }, use: { purpose: 'instruction-for-hire' } },
  ] as { allowed: MelItemFacts['allowed']; use: Partial<UseOfAircraft> }[])(
    'kinds: $use',
    ({ allowed, use }) => {
      const plane = list({ items: [melItemOf({ allowed })] });
      expect(barsOf(judged(plane, 'cabin-heat', use))).toEqual(['14cfr91.213(a)(5)']);
      expect(barsOf(judged(plane, 'cabin-heat'))).toEqual([]);
    },
  );

  test('provisos and operating procedures limit, procedures must be done', () => {
    const items = [
      melItemOf({
        proviso: 'Not below freezing.',
        operatingProcedure: 'Brief it.',
        maintenanceProcedure: 'Cap it.',
      }),
    ];
    expect(barsOf(answerDeferred(list({ items }), 'cabin-heat', mel).lines)).toEqual(['14cfr91.213(a)(5)']);
    const done = answerDeferred(list({ items }), 'cabin-heat', { ...mel, melProceduresDone: true });
    expect(done.outcome).toBe('go-with-limits');
    const limits = done.lines.filter((line) => line.effect === 'limits').map((line) => line.because);
    expect(limits).toContain('Cabin heat, proviso: Not below freezing.');
    expect(limits).toContain('Cabin heat, operating procedure (O): Brief it.');
  });

  // (b)(2), (b)(3): from memory; our strict reading holds a list to them.
  test('(b): a list cannot allow what part 91 or a directive requires', () => {
    const clock = list({ items: [melItemOf({ equipmentId: 'clock', title: 'Clock' })] });
    expect(barsOf(judged(clock, 'clock', { rules: 'IFR', usesVor: known(true) }))).toEqual([
      '14cfr91.205(d)(6)',
    ]);
    const directive = {
      id: 'ad',
      number: '0000-00-02',
      title: 'Heat',
      equipmentId: 'cabin-heat',
      requiresOperable: true,
    };
    const bound = { ...list(), directives: known([directive]) };
    expect(barsOf(judged(bound, 'cabin-heat'))).toEqual(['14cfr91.213(b)(2)']);
  });

  // MMEL repair categories: B and C from weak copies, D likewise; the day of recording is not counted.
  test.each([
    { category: 'B', recordedOn: '2026-11-23', bars: [] },
    { category: 'B', recordedOn: '2026-11-22', bars: [] },
    { category: 'B', recordedOn: '2026-11-21', bars: ['mmel-category-b'] },
    { category: 'C', recordedOn: '2026-11-16', bars: [] },
    { category: 'C', recordedOn: '2026-11-15', bars: [] },
    { category: 'C', recordedOn: '2026-11-14', bars: ['mmel-category-c'] },
    { category: 'D', recordedOn: '2026-07-29', bars: [] },
    { category: 'D', recordedOn: '2026-07-28', bars: [] },
    { category: 'D', recordedOn: '2026-07-27', bars: ['mmel-category-d'] },
    { category: 'A', recordedOn: '2026-11-21', bars: [] },
    { category: 'A', recordedOn: '2026-11-20', bars: [] },
    { category: 'A', recordedOn: '2026-11-19', bars: ['mmel-category-a'] },
  ] as { category: MelItemFacts['category']; recordedOn: string; bars: string[] }[])(
    'category $category (A: 5 days) recorded $recordedOn, flown 25 November',
    ({ category, recordedOn, bars }) => {
      const items = [melItemOf({ category, categoryADays: known(5) })];
      expect(barsOf(answerDeferred(list({ items }), 'cabin-heat', { ...mel, recordedOn }).lines)).toEqual(
        bars,
      );
      const free = answerDeferred(list({ items, enforceCategories: false }), 'cabin-heat', {
        ...mel,
        recordedOn,
      });
      expect(barsOf(free.lines)).toEqual([]);
      expect(free.lines).toContainEqual(
        expect.objectContaining({ effect: 'notes', cite: `mmel-category-${category.toLowerCase()}` }),
      );
    },
  );

  test('a flight that lands after the midnight of the last day is over it', () => {
    const items = [melItemOf({ category: 'B' })];
    const late = answerDeferred(
      list({ items }),
      'cabin-heat',
      { ...mel, recordedOn: '2026-11-22' },
      { arriveOn: '2026-11-26' },
    );
    expect(barsOf(late.lines)).toEqual(['mmel-category-b']);
  });

  test('category A without its days is not known', () => {
    const lines = answerDeferred(list({ items: [melItemOf({ category: 'A' })] }), 'cabin-heat', mel).lines;
    expect(missingOf(lines)).toEqual(['days of category A']);
  });

  test('the report: steps of the list, its interval, no determination', () => {
    const { stepsOwed, ends, tree } = report(list(), 'cabin-heat', { deferral: deferralOf(mel) });
    expect(stepsOwed.map(({ id }) => id)).toEqual(['record', 'placard']);
    expect(ends.map(({ cite, on }) => [cite, on])).toEqual([
      ['mmel-category-c', '2026-12-04'],
      ['14cfr91.405(c)', '2027-03-31'],
    ]);
    expect(tree.map(({ answer }) => answer)).toEqual(['yes', 'yes', 'yes', 'yes', 'yes']);
  });
});

describe('one open discrepancy, for dispatch', () => {
  const plain = (overrides: Partial<DiscrepancyFacts>, use: Partial<UseOfAircraft> = {}) => {
    const d = discrepancyOf({ equipmentId: null, ...overrides });
    return joinLines(judgeDiscrepancy(trainer({ discrepancies: [d] }), d, useOf(use)));
  };
  const withinLimits = {
    by: 'T. Marrow',
    on: TODAY,
    limit: 'tread 3/32 in, limit groove base',
    source: 'tire manual',
  };

  // 91.213(a); whether a deferral would help is said.
  test('inoperative, not deferred', () => {
    const could = broken(trainer(), 'cabin-heat');
    const [first, ...rest] = judgeDiscrepancy(could.aircraft, could.d, useOf());
    expect(first).toMatchObject({ effect: 'bars', cite: '14cfr91.213(a)' });
    expect(first?.because).toContain('It could be deferred for this flight.');
    expect(rest).toEqual([]);
    const not = broken(trainer(), 'airspeed-indicator');
    const lines = judgeDiscrepancy(not.aircraft, not.d, useOf());
    expect(lines[0]?.because).toContain('It could not be deferred');
    expect(barsOf(lines)).toContain('14cfr91.205(b)(1)');
    const open = broken(trainer({ directives: unknown('directives') }), 'cabin-heat');
    expect(judgeDiscrepancy(open.aircraft, open.d, useOf())[0]?.because).toContain('is not known');
  });

  // 91.7(a), and our own rule that undecided grounds.
  test.each([
    { severity: unknown('how serious it is'), outcome: 'no-go' },
    { severity: known('grounding'), outcome: 'no-go' },
    { severity: known('limiting'), outcome: 'go-with-limits' },
    { severity: known('watch'), outcome: 'go' },
    { severity: known('note'), outcome: 'go' },
  ] as { severity: DiscrepancyFacts['severity']; outcome: string }[])(
    'within limits, severity $severity: $outcome',
    ({ severity, outcome }) => {
      expect(plain({ kind: 'wear', severity, withinLimits }).outcome).toBe(outcome);
      expect(plain({ kind: 'cosmetic', severity }).outcome).toBe(outcome);
    },
  );

  test.each(['damage', 'wear', 'leak', 'contamination', 'fastener', 'document'] as const)(
    '%s: barred until repaired or found within limits, whatever the severity',
    (kind) => {
      const open = plain({ kind, severity: known('note') });
      expect(barsOf(open.lines)).toEqual(['14cfr91.405(a)']);
      expect(plain({ kind, severity: known('note'), withinLimits }).outcome).toBe('go');
    },
  );

  test('servicing owed bars', () => {
    expect(barsOf(plain({ kind: 'servicing', severity: known('note') }).lines)).toEqual(['14cfr91.7(a)']);
  });

  test('grounding and undecided bar even where a deferral is in order', () => {
    for (const severity of [known('grounding' as const), unknown('how serious it is')]) {
      const { aircraft, d } = broken(trainer(), 'cabin-heat', { severity, deferral: deferralOf() });
      expect(joinLines(judgeDiscrepancy(aircraft, d, useOf())).outcome).toBe('no-go');
    }
  });

  // 91.213(e), 21.197.
  test('a special flight permit that names it limits what would bar', () => {
    const { aircraft, d } = broken(trainer(), 'fuel-quantity-gauge', { severity: known('grounding') });
    const use = useOf({ specialFlightPermit: permitOf({ covers: [d.id] }), crewOnly: known(true) });
    const answer = answerForUse(aircraft, use);
    expect(answer.outcome).toBe('go-with-limits');
    expect(answer.lines.map((line) => line.cite)).toContain('14cfr91.213(e)');
    // Nobody has judged it: the permit cannot have named it.
    const unjudged = { ...aircraft, discrepancies: [{ ...d, severity: unknown('how serious it is') }] };
    expect(answerForUse(unjudged, use).outcome).toBe('no-go');
  });

  // 91.205(b)(11), checked: may continue to a place where it can be repaired; the beacon is type design here.
  test('a failed anticollision light may go on to the place of repair once deferred, and no further', () => {
    const onward = { continuingToRepair: true, from: { ...BASE, repairAvailable: known(false) } };
    const continuing = answerDeferred(trainer(), 'anticollision-lights', {}, onward);
    expect(continuing.outcome).toBe('go-with-limits');
    expect(continuing.lines).toContainEqual(
      expect.objectContaining({ effect: 'limits', cite: '14cfr91.205(b)(11)' }),
    );
    expect(answerDeferred(trainer(), 'anticollision-lights').outcome).toBe('no-go');
    const undeferred = broken(trainer(), 'anticollision-lights');
    expect(barsOf(judgeDiscrepancy(undeferred.aircraft, undeferred.d, useOf(onward)))).toEqual([
      '14cfr91.213(a)',
    ]);
  });

  test('a discrepancy not yet among those of the aircraft is judged all the same', () => {
    const { d } = broken(trainer(), 'airspeed-indicator', { deferral: deferralOf() });
    expect(joinLines(judgeDiscrepancy(trainer(), d, useOf())).outcome).toBe('no-go');
  });
});
