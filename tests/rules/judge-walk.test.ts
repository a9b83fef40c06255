import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FINDING_CATALOGUE, findingOf } from '../../lib/rules/findings/catalogue';
import type { StoredLimit } from '../../lib/rules/findings/measured-against-limits';
import { MEASUREMENTS, type MeasurementKey } from '../../lib/rules/findings/measurements';
import { LAW } from '../../lib/rules/law';
import {
  NO_ANSWER,
  SAMPLE_RESULTS,
  type ItemAnswer,
  type SampleResult,
  type WalkAnswers,
} from '../../lib/rules/walkaround/answers';
import { AREA_KEYS, areaTitle, isArea } from '../../lib/rules/walkaround/areas';
import { judgeSamples, SAMPLE_REPEATS } from '../../lib/rules/walkaround/fuel-samples';
import {
  ENDED_BY_SERVICING,
  judgeItem,
  judgeWalk,
  placardItemKey,
  raisedByItem,
  raisedByMissingPlacard,
} from '../../lib/rules/walkaround/judge-walk';
import type { ListItem, NumberItem, SampleItem, WalkaroundList } from '../../lib/rules/walkaround/plan';
import { STARTING_LIST } from '../../lib/rules/walkaround/starting-list';

// Source of the whole file, where none is named: issue 3 ("A number outside its limit raises a proposed finding by itself;
// water or sediment after repeated sampling makes the aircraft no go and calls for purging by maintenance"). Limits are
// invented: no figure here is any maker's.

const AT = '2026-11-25T15:00:00Z';
const MANUAL = 'Invented manual, section 12';

const read = (...values: readonly (number | { readonly struck: number })[]): ItemAnswer => ({
  ...NO_ANSWER,
  readings: values.map((value) =>
    typeof value === 'number'
      ? { value, at: AT, struck: false }
      : { value: value.struck, at: AT, struck: true },
  ),
});
const sampled = (...results: readonly SampleResult[]): ItemAnswer => ({
  ...NO_ANSWER,
  samples: results.map((result) => ({ result, at: AT })),
});

const item = (
  measurement: MeasurementKey,
  findingKey: string | null,
  min: number | null,
  max: number | null,
  source = MANUAL,
): NumberItem => ({
  kind: 'number',
  key: measurement,
  title: MEASUREMENTS[measurement].label,
  lookFor: '',
  measurement,
  findingKey,
  limit: min === null && max === null ? null : { min, max, source },
});
const OIL = item('oil-quantity', 'oil-low', 50, 80);
const STRUT = item('nose-strut-extension', 'nose-strut-low', 20, 35);
const TYRE = item('main-tyre-pressure', 'tyre-low', 210, 300);
const FUEL = item('fuel-in-left-tank', null, null, null);
const DRAIN: SampleItem = { kind: 'sample', key: 'drain-l2', title: 'Drain L2', lookFor: '', drain: 'L2' };
const LOOK: ListItem = { kind: 'look', key: 'tyre', title: 'Tyre', lookFor: '' };

const stored = (measurement: MeasurementKey, more: Partial<StoredLimit>): StoredLimit => ({
  measurement,
  unit: MEASUREMENTS[measurement].unit,
  min: null,
  max: null,
  source: 'Invented maintenance manual of this aircraft',
  sourceDate: null,
  ...more,
});

const raisedAs = (of: ListItem, answer: ItemAnswer, limits: readonly StoredLimit[] = []) =>
  raisedByItem(of, 'nose-right', answer, limits)?.findingKey ?? null;

describe('a number against its limit: a border value is within', () => {
  it.each<[string, NumberItem, number, string | null]>([
    // Oil, least: 5.0 qt.
    ['oil just under the least', OIL, 49, 'oil-low'],
    ['oil exactly the least', OIL, 50, null],
    ['oil just over the least', OIL, 51, null],
    // Oil, most: 8.0 qt.
    ['oil just under the most', OIL, 79, null],
    ['oil exactly the most', OIL, 80, null],
    ['oil just over the most', OIL, 81, 'oil-low'],
    // Strut, least: 2.0 in.
    ['strut just under the least', STRUT, 19, 'nose-strut-low'],
    ['strut exactly the least', STRUT, 20, null],
    ['strut just over the least', STRUT, 21, null],
    // Strut, most: 3.5 in.
    ['strut just under the most', STRUT, 34, null],
    ['strut exactly the most', STRUT, 35, null],
    ['strut just over the most', STRUT, 36, 'nose-strut-low'],
    // Main tyre, least: 21.0 psi; most: 30.0 psi.
    ['tyre just under the least', TYRE, 209, 'tyre-low'],
    ['tyre exactly the least', TYRE, 210, null],
    ['tyre just over the least', TYRE, 211, null],
    ['tyre just under the most', TYRE, 299, null],
    ['tyre exactly the most', TYRE, 300, null],
    ['tyre just over the most', TYRE, 301, 'tyre-low'],
  ])('%s', (_, of, value, findingKey) => {
    expect(raisedAs(of, read(value))).toBe(findingKey);
    const verdict = judgeItem(of, 'nose-right', read(value), []);
    expect(verdict.answer).toBe(findingKey ? 'finding' : 'good');
    expect(verdict.line?.effect).toBe(findingKey ? 'bars' : 'supports');
    expect(verdict.line?.because).toContain(MANUAL);
  });

  it('says what was measured, the limit and its source, and keeps the number in the smallest unit', () => {
    expect(raisedByItem(OIL, 'nose-right', read(45), [])).toMatchObject({
      itemKey: 'oil-quantity',
      station: 'nose-right',
      findingKey: 'oil-low',
      measurements: { 'oil-quantity': 45 },
      words:
        'Oil on the dipstick: 4.5 qt is under the least allowed, 5.0 qt (Invented manual, section 12, undated).',
      line: {
        effect: 'bars',
        cite: '14cfr91.405(a)',
        because:
          'Oil on the dipstick: 4.5 qt is under the least allowed, 5.0 qt (Invented manual, section 12, undated).',
      },
    });
  });
});

describe('whose limit counts', () => {
  // Least of the list 5.0 qt, of this very aircraft 6.0 qt.
  const own = [stored('oil-quantity', { min: 60 })];
  it.each([
    [59, 'oil-low'],
    [60, null],
    [61, null],
    // Outside the list's limit, inside the aircraft's own: the aircraft's own goes before.
    [90, null],
  ])('this aircraft’s own goes before the list’s: %d', (value, findingKey) => {
    expect(raisedAs(OIL, read(value), own)).toBe(findingKey);
  });

  it.each<[string, StoredLimit]>([
    ['without a source', stored('oil-quantity', { min: 60, source: ' ' })],
    ['in another unit', stored('oil-quantity', { min: 60, unit: 'tenth-gallon' })],
    ['without a bound', stored('oil-quantity', {})],
    ['of another measurement', stored('battery-voltage', { min: 60 })],
    ['that is no whole number', stored('oil-quantity', { min: 59.5 })],
  ])('a stored limit %s judges nothing; the list’s does', (_, limit) => {
    expect(raisedAs(OIL, read(49), [limit])).toBe('oil-low');
    expect(raisedAs(OIL, read(50), [limit])).toBeNull();
    expect(raisedAs(OIL, read(51), [limit])).toBeNull();
  });

  it('a number with no usable limit is recorded, and is not called within', () => {
    for (const of of [FUEL, item('oil-quantity', 'oil-low', 50, null, '')]) {
      const { answer, raised, line } = judgeItem(of, 'left-wing-fuel', read(3), []);
      expect({ answer, raised }).toEqual({ answer: 'good', raised: null });
      expect(line).toMatchObject({ effect: 'notes' });
      expect(line?.because).toContain('Recorded, no limit known.');
      expect(line?.because).not.toContain('within');
    }
  });

  it('outside a limit that no usual finding names is raised all the same, for a mechanic to name', () => {
    expect(
      raisedByItem(FUEL, 'left-wing-fuel', read(201), [stored('fuel-in-left-tank', { max: 200 })]),
    ).toMatchObject({ findingKey: null, measurements: { 'fuel-in-left-tank': 201 } });
    expect(
      raisedByItem(FUEL, 'left-wing-fuel', read(200), [stored('fuel-in-left-tank', { max: 200 })]),
    ).toBeNull();
    // The finding the limit was stored beside names it.
    const beside = stored('fuel-in-left-tank', { max: 199, findingKey: 'fuel-stain' });
    expect(raisedAs(FUEL, read(200), [beside])).toBe('fuel-stain');
  });

  it('hands on the list’s limit behind a raised number, and not one of the aircraft', () => {
    expect(raisedByItem(OIL, 'nose-right', read(45), [])?.listLimit).toMatchObject({
      min: 50,
      source: MANUAL,
    });
    expect(raisedByItem(OIL, 'nose-right', read(45), own)?.listLimit).toBeUndefined();
  });
});

describe('more than one reading', () => {
  // Adding oil or air is servicing by the pilot, see `settledBy` of the catalogue; issue 3.
  it('oil and tyre pressure: the last one counts, since it was taken after the servicing', () => {
    expect(raisedAs(OIL, read(45, 60))).toBeNull();
    expect(raisedAs(OIL, read(60, 45))).toBe('oil-low');
    expect(raisedAs(TYRE, read(180, 250))).toBeNull();
    expect(raisedAs(TYRE, read(250, 180))).toBe('tyre-low');
  });

  // Servicing a strut is preventive maintenance with an entry: Appendix A(c)(3) to part 43.
  it('a strut: the worst one counts, since putting it right is maintenance', () => {
    expect(raisedByItem(STRUT, 'nose-gear', read(30, 12, 18, 30), [])?.measurements).toEqual({
      'nose-strut-extension': 12,
    });
    expect(raisedAs(STRUT, read(20, 35))).toBeNull();
  });

  it('a reading taken back counts no more, and with nothing left the item was not looked at', () => {
    expect(raisedAs(STRUT, read({ struck: 3 }, 30))).toBeNull();
    expect(raisedAs(OIL, read(45, { struck: 60 }))).toBe('oil-low');
    for (const of of [OIL, STRUT, TYRE, FUEL]) {
      expect(judgeItem(of, 'nose-right', read({ struck: 1 }), []).answer).toBe('not-looked-at');
      expect(judgeItem(of, 'nose-right', NO_ANSWER, []).answer).toBe('not-looked-at');
    }
  });

  it('what is no whole number, or negative, is no reading', () => {
    expect(judgeItem(OIL, 'nose-right', read(50.5), []).answer).toBe('not-looked-at');
    expect(judgeItem(OIL, 'nose-right', read(-1), []).answer).toBe('not-looked-at');
  });

  it('the findings ended by servicing are those the catalogue leaves to pilot servicing', () => {
    const measured = FINDING_CATALOGUE.filter((entry) =>
      entry.measurements.some(({ role }) => role !== 'described'),
    );
    expect(measured.length).toBeGreaterThan(6);
    for (const entry of measured) {
      expect([entry.key, ENDED_BY_SERVICING.has(entry.key)]).toEqual([
        entry.key,
        entry.settledBy === 'pilot-servicing',
      ]);
    }
    for (const key of ENDED_BY_SERVICING) expect(findingOf(key)?.settledBy).toBe('pilot-servicing');
  });
});

describe('samples of a drain', () => {
  // Sampling until clean: FAA leaflet P-8740-35; where water and dirt come from: AC 20-43C. Three repeats: our own design.
  it.each<[SampleResult[], 'good' | 'finding' | 'not-looked-at', string | null, number]>([
    [[], 'not-looked-at', null, 4],
    [['clean'], 'good', null, 3],
    [['clean', 'clean'], 'good', null, 2],
    // Water: first sample and up to three repeats.
    [['water'], 'finding', 'water-keeps-coming', 3],
    [['water', 'clean'], 'good', null, 2],
    [['water', 'water'], 'finding', 'water-keeps-coming', 2],
    [['water', 'water', 'clean'], 'good', null, 1],
    [['water', 'water', 'water'], 'finding', 'water-keeps-coming', 1],
    // The third repeat decides: just before it, on it, after it.
    [['water', 'water', 'water', 'clean'], 'good', null, 0],
    [['water', 'water', 'water', 'water'], 'finding', 'water-keeps-coming', 0],
    [['water', 'water', 'water', 'water', 'clean'], 'finding', 'water-keeps-coming', 0],
    [['water', 'water', 'water', 'water', 'clean', 'clean'], 'finding', 'water-keeps-coming', 0],
    // Back again after a clean one: still not clean.
    [['water', 'clean', 'water'], 'finding', 'water-keeps-coming', 1],
    [['clean', 'clean', 'clean', 'water', 'clean'], 'finding', 'water-keeps-coming', 0],
    // Rust or dirt likewise.
    [['sediment'], 'finding', 'fuel-dirt', 3],
    [['sediment', 'clean'], 'good', null, 2],
    [['sediment', 'sediment', 'sediment', 'clean'], 'good', null, 0],
    [['sediment', 'sediment', 'sediment', 'sediment'], 'finding', 'fuel-dirt', 0],
    [['sediment', 'sediment', 'sediment', 'sediment', 'clean'], 'finding', 'fuel-dirt', 0],
    [['water', 'sediment'], 'finding', 'fuel-dirt', 2],
    [['sediment', 'water'], 'finding', 'water-keeps-coming', 2],
    // Wrong fuel: at once, and nothing takes it away (AC 20-43C).
    [['wrong-fuel'], 'finding', 'fuel-wrong', 0],
    [['wrong-fuel', 'clean'], 'finding', 'fuel-wrong', 0],
    [['clean', 'wrong-fuel'], 'finding', 'fuel-wrong', 0],
    [['water', 'wrong-fuel', 'clean', 'clean'], 'finding', 'fuel-wrong', 0],
  ])('%j: %s', (results, answer, findingKey, repeatsLeft) => {
    expect(judgeSamples('L2', sampled(...results).samples)).toMatchObject({
      answer,
      findingKey,
      repeatsLeft,
    });
    expect(judgeItem(DRAIN, 'left-wing-fuel', sampled(...results), []).answer).toBe(answer);
    expect(raisedAs(DRAIN, sampled(...results))).toBe(findingKey);
  });

  it('still water after three repeats: all samples stand in the words, and maintenance is to purge the tank', () => {
    const answer = sampled('water', 'water', 'water', 'water');
    const raised = raisedByItem(DRAIN, 'left-wing-fuel', answer, []);
    expect(raised?.words).toBe(
      'Drain L2: water, then water, then water, then water. Still water after 3 repeats. No flight. Maintenance has to drain and purge the tank and find where it comes from.',
    );
    expect(raised?.measurements).toEqual({ 'fuel-sample-repeats': 4 });
    expect(raised?.line.effect).toBe('bars');
  });

  it('what a drain raises grounds: the catalogue proposes it for each of the three', () => {
    for (const key of ['water-keeps-coming', 'fuel-dirt', 'fuel-wrong'])
      expect(findingOf(key)?.proposed).toBe('ground');
  });
});

const LIST: WalkaroundList = {
  stations: [
    { area: 'nose-right', title: 'Nose', items: [OIL, LOOK] },
    { area: 'left-wing-fuel', title: 'Left wing', items: [DRAIN, FUEL] },
    { area: 'nose-gear', title: 'Nose gear', items: [STRUT] },
  ],
};
const answers = (items: WalkAnswers['items']): WalkAnswers => ({ items, placards: {} });
const good = { ...NO_ANSWER, looked: 'good' } as const;

describe('the whole walk', () => {
  it('a station is good only when each of its items was looked at', () => {
    const { stations, counts } = judgeWalk(
      LIST,
      answers({
        'oil-quantity': read(60),
        tyre: good,
        'drain-l2': sampled('clean'),
        'nose-strut-extension': read(10),
      }),
      [],
    );
    expect(stations).toEqual({
      'nose-right': 'good',
      'left-wing-fuel': 'not-looked-at',
      'nose-gear': 'finding',
    });
    expect(counts).toEqual({ good: 1, withFinding: 1, notLookedAt: 1 });
  });

  it('nothing answered is nothing looked at', () => {
    const { raised, counts } = judgeWalk(STARTING_LIST, answers({}), []);
    expect(raised).toEqual([]);
    expect(counts).toEqual({ good: 0, withFinding: 0, notLookedAt: 18 });
  });

  it('a finding written at an item makes its station one with a finding, also at a number or a drain', () => {
    for (const key of ['oil-quantity', 'tyre'])
      expect(
        judgeWalk(LIST, answers({ [key]: { ...read(60), looked: 'finding' } }), []).stations['nose-right'],
      ).toBe('finding');
  });

  it('a number or a drain is not good because somebody said so without reading or sampling', () => {
    expect(judgeItem(OIL, 'nose-right', good, []).answer).toBe('not-looked-at');
    expect(judgeItem(DRAIN, 'left-wing-fuel', good, []).answer).toBe('not-looked-at');
  });

  it('keys that every object inherits are no answers', () => {
    const odd: WalkaroundList = {
      stations: [{ area: 'tail', title: 'Tail', items: [{ ...LOOK, key: 'constructor' }] }],
    };
    expect(judgeWalk(odd, answers({}), []).stations).toEqual({ tail: 'not-looked-at' });
  });

  it('a missing placard is a finding at its place (91.213(d)(3)(ii))', () => {
    const placard = { id: 'p1', wording: 'LANDING LIGHT INOPERATIVE', location: 'Beside the switch' };
    const raised = raisedByMissingPlacard(placard, 'cabin');
    expect(raised).toMatchObject({ itemKey: placardItemKey('p1'), findingKey: 'placard-missing' });
    expect(raised.words).toContain('LANDING LIGHT INOPERATIVE');
    expect(raised.words).toContain('Beside the switch');
    expect(Object.keys(LAW)).toContain(raised.line.cite);
  });
});

const result = fc.constantFrom(...SAMPLE_RESULTS);
const answer: fc.Arbitrary<ItemAnswer> = fc.record({
  looked: fc.constantFrom('good' as const, 'finding' as const, null),
  readings: fc.array(
    fc.record({ value: fc.integer({ min: 0, max: 400 }), at: fc.constant(AT), struck: fc.boolean() }),
    { maxLength: 5 },
  ),
  samples: fc.array(fc.record({ result, at: fc.constant(AT) }), { maxLength: 7 }),
});
const anyItem = fc.constantFrom<ListItem>(OIL, STRUT, TYRE, FUEL, DRAIN);

describe('whatever is answered', () => {
  it('what is raised stands in the order of the list', () => {
    const keys = LIST.stations.flatMap(({ items }) => items.map(({ key }) => key));
    fc.assert(
      fc.property(fc.dictionary(fc.constantFrom(...keys), answer), (items) => {
        const raised = judgeWalk(LIST, answers(items), []).raised.map(({ itemKey }) => itemKey);
        expect(raised).toEqual(keys.filter((key) => raised.includes(key)));
      }),
    );
  });

  it('what is raised bars, names a paragraph we know and a finding of the catalogue', () => {
    fc.assert(
      fc.property(anyItem, answer, (of, given) => {
        const raised = raisedByItem(of, 'nose-right', given, []);
        if (!raised) return;
        expect(raised.line.effect).toBe('bars');
        expect(Object.keys(LAW)).toContain(raised.line.cite);
        expect(findingOf(raised.findingKey ?? '')).not.toBeNull();
        expect(judgeItem(of, 'nose-right', given, []).answer).toBe('finding');
      }),
    );
  });

  it('a struck reading is as good as none', () => {
    fc.assert(
      fc.property(anyItem, answer, (of, given) => {
        const without = { ...given, readings: given.readings.filter(({ struck }) => !struck) };
        expect(judgeItem(of, 'tail', given, [])).toEqual(judgeItem(of, 'tail', without, []));
      }),
    );
  });

  it('taking back the only reading makes what it raised not looked at, never good', () => {
    fc.assert(
      fc.property(fc.constantFrom(OIL, STRUT, TYRE), fc.integer({ min: 0, max: 400 }), (of, value) => {
        const before = judgeItem(of, 'tail', read(value), []);
        expect(before.answer).not.toBe('not-looked-at');
        const after = judgeItem(of, 'tail', read({ struck: value }), []);
        expect(after).toEqual({ answer: 'not-looked-at', raised: null, line: null });
      }),
    );
  });

  it('for what is maintenance no further reading makes a raised number good', () => {
    fc.assert(
      fc.property(answer, fc.integer({ min: 0, max: 400 }), (given, more) => {
        if (!raisedByItem(STRUT, 'nose-gear', given, [])) return;
        const readings = [...given.readings, { value: more, at: AT, struck: false }];
        expect(raisedByItem(STRUT, 'nose-gear', { ...given, readings }, [])).not.toBeNull();
      }),
    );
  });

  it('samples: the last one not clean is raised; raised with no repeat left stays raised whatever is sampled then', () => {
    fc.assert(
      fc.property(fc.array(result, { maxLength: 8 }), result, (results, more) => {
        const { samples } = sampled(...results);
        const before = judgeSamples('F1', samples);
        const last = results.at(-1);
        if (last && last !== 'clean') expect(before.findingKey).not.toBeNull();
        if (before.answer === 'not-looked-at') expect(results).toEqual([]);
        const after = judgeSamples('F1', [...samples, { result: more, at: AT }]);
        if (before.findingKey && before.repeatsLeft === 0) expect(after.findingKey).not.toBeNull();
        if (results.length <= SAMPLE_REPEATS && !results.includes('wrong-fuel'))
          expect(judgeSamples('F1', [...samples, { result: 'clean', at: AT }]).answer).toBe('good');
      }),
    );
  });
});

describe('the starting list', () => {
  const items = STARTING_LIST.stations.flatMap((station) => station.items);

  it('walks papers, cabin, tail, right wing, nose, left wing, each area once', () => {
    const areas = STARTING_LIST.stations.map(({ area }) => area);
    expect(new Set(areas).size).toBe(areas.length);
    const at = (area: (typeof areas)[number]) => areas.indexOf(area);
    expect(at('cabin')).toBeLessThan(at('tail'));
    expect(at('tail')).toBeLessThan(at('right-wing-fuel'));
    expect(at('right-wing-fuel')).toBeLessThan(at('propeller'));
    expect(at('propeller')).toBeLessThan(at('left-wing-fuel'));
  });

  it('names each item once', () => {
    expect(new Set(items.map(({ key }) => key)).size).toBe(items.length);
  });

  it('has thirteen drains: five a wing, three under the fuselage (common practice, no source)', () => {
    const drains = items.flatMap((one) => (one.kind === 'sample' ? [one.drain] : [])).toSorted();
    expect(drains).toEqual(
      ['F1', 'F2', 'F3', 'L1', 'L2', 'L3', 'L4', 'L5', 'R1', 'R2', 'R3', 'R4', 'R5'].toSorted(),
    );
  });

  it('states no limit: those are the maker’s, and no document gives one for all', () => {
    const numbers = items.flatMap((one) => (one.kind === 'number' ? [one] : []));
    expect(numbers.length).toBeGreaterThanOrEqual(7);
    expect(numbers.map(({ limit }) => limit)).toEqual(numbers.map(() => null));
    for (const { findingKey, measurement } of numbers) {
      if (findingKey === null) continue;
      expect(findingOf(findingKey)?.measurements.map(({ key }) => key)).toContain(measurement);
    }
  });

  it('looks at the papers of 91.203 and 91.9', () => {
    const keys = items.map(({ key }) => key);
    for (const paper of [
      'registration-paper',
      'airworthiness-paper',
      'operating-limitations',
      'weight-and-balance',
    ])
      expect(keys).toContain(paper);
  });
});

it('every area has a title of its own', () => {
  const titles = AREA_KEYS.map(areaTitle);
  expect(new Set(titles).size).toBe(AREA_KEYS.length);
  expect(titles).not.toContain('');
  for (const key of AREA_KEYS) expect(areaTitle(key)).not.toBe(key);
  expect(isArea('toString')).toBe(false);
  expect(areaTitle('an older place')).toBe('an older place');
});
