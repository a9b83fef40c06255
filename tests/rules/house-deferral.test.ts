/**
 * What rules of the house would add while something is deferred, who they are for, and their words. Common practice of schools, no
 * source: the borders are the words of the kinds themselves (lib/rules/house/kinds.ts).
 */
import { describe, expect, it } from 'vitest';
import type { AircraftFacts } from '@/lib/rules/aircraft';
import { known, unknown } from '@/lib/rules/facts';
import { houseOnDeferral } from '@/lib/rules/house/deferral-under-house';
import { houseLines, withHouseRules } from '@/lib/rules/house/house-lines';
import {
  asksOfWalks,
  newestVersions,
  rulesFor,
  type HouseRule,
  type HouseRuleVersion,
} from '@/lib/rules/house/house-rule';
import { settingInWords } from '@/lib/rules/house/in-words';
import { HOUSE_KINDS } from '@/lib/rules/house/kinds';
import { agesEndAt, newer, readingOr } from '@/lib/rules/house/readings';
import type { UseOfAircraft } from '@/lib/rules/operations';
import {
  TODAY,
  deferralOf,
  discrepancyOf,
  requirementRow,
  trainer,
  useOf,
  REFERENCE,
} from '../fixtures/aircraft';
import { houseRule } from '../fixtures/house-rules';

const NOW = '2026-11-25T15:00:00Z';
const NO_NIGHT = houseRule({ kind: 'no-night-with-deferral' }, { ruleId: 'night' });
const added = (aircraft: AircraftFacts, d = discrepancyOf()) =>
  houseOnDeferral(aircraft, d, REFERENCE, TODAY, NOW).map(({ line, operations }) => [
    line.because,
    operations,
  ]);
const BROKEN = discrepancyOf();

describe('what the house adds while a write-up is deferred', () => {
  it('says nothing where the house has no rule', () => {
    expect(added(trainer({ discrepancies: [BROKEN] }))).toEqual([]);
  });

  it('names the kinds of operation, each line once, in the order of the board', () => {
    const aircraft = trainer({ discrepancies: [BROKEN], houseRules: [NO_NIGHT] });
    expect(added(aircraft)).toEqual([
      [
        'No night flight with a deferral. W-0001 Taxi light does not light is deferred.',
        ['Night VFR, private', 'Night VFR, for hire', 'Night IFR, private', 'Night IFR, for hire'],
      ],
    ]);
  });

  it('a deferral that has begun keeps its own day; one that is only thought of begins today', () => {
    const rule = houseRule({ kind: 'deferral-no-older', days: 3 });
    const since = (recordedOn: string) =>
      added(trainer({ houseRules: [rule] }), discrepancyOf({ deferral: deferralOf({ recordedOn }) })).length;
    // Older than 3 days on 25 November: since the 21st, not since the 22nd or the 23rd.
    expect(['2026-11-23', '2026-11-22', '2026-11-21'].map(since)).toEqual([0, 0, 1]);
    expect(added(trainer({ houseRules: [rule] }), BROKEN)).toEqual([]);
  });

  it('leaves out what the house says without it as well, and counts the write-up once', () => {
    const unreadable = houseRule({ kind: 'unreadable', storedKind: 'mondays' }, { ruleId: 'other' });
    const most = houseRule({ kind: 'most-deferrals', most: 1 }, { ruleId: 'most' });
    const one = trainer({ discrepancies: [BROKEN], houseRules: [unreadable, most] });
    expect(added(one)).toEqual([]);
    const two = {
      ...one,
      discrepancies: [BROKEN, discrepancyOf({ id: 'd-2', number: 'W-0002', deferral: deferralOf() })],
    };
    expect(added(two)).toHaveLength(1);
    expect(added(two)[0]?.[1]).toHaveLength(8);
  });
});

describe('lines of the house', () => {
  const said = (
    rules: readonly HouseRule[],
    use: Partial<UseOfAircraft> = {},
    aircraft: Partial<AircraftFacts> = {},
  ) => houseLines([], trainer({ ...aircraft, houseRules: rules }), useOf(use));
  const words = (purposes: readonly UseOfAircraft['purpose'][], text: string, ruleId: string) =>
    houseRule({ kind: 'limit-in-own-words', purposes, words: text }, { ruleId });

  it('come in the order of the rules’ ids, whatever the order they are kept in', () => {
    const [a, b, c] = ['a', 'b', 'c'].map((id) => words(['private'], `${id}.`, id)) as [
      HouseRule,
      HouseRule,
      HouseRule,
    ];
    for (const kept of [
      [a, b, c],
      [c, b, a],
      [b, a, c],
      [c, a, b],
    ])
      expect(said(kept).map(({ because }) => because)).toEqual(['a.', 'b.', 'c.']);
  });

  it('stay unsaid where the law said nothing: no lines are no go', () => {
    expect(
      withHouseRules([], trainer({ houseRules: [NO_NIGHT, words(['private'], 'x.', 'x')] }), useOf()),
    ).toEqual({
      outcome: 'no-go',
      lines: [],
    });
  });

  it('solo looks at limits alone, of the law and of the house', () => {
    const solo = houseRule({ kind: 'solo-never-with-limits' }, { ruleId: 'solo' });
    const about = { kind: 'flight', id: 'aircraft-1', label: 'N0417W' };
    const use = { purpose: 'student-solo' } as const;
    expect(said([solo], use)).toEqual([]);
    expect(
      said(
        [solo, NO_NIGHT],
        { ...use, light: 'night' },
        { discrepancies: [discrepancyOf({ deferral: deferralOf() })] },
      ),
    ).toHaveLength(1);
    expect(said([solo, words(['student-solo'], 'One.', 'x')], use)[1]).toMatchObject({
      because: 'Students never fly solo with limits. This flight has one: One.',
      about,
    });
    expect(
      said([solo, words(['student-solo'], 'One.', 'x'), words(['student-solo'], 'Two.', 'y')], use)[2],
    ).toMatchObject({
      because: 'Students never fly solo with limits. This flight has one: One. And 1 more.',
      about,
    });
  });

  it('say what they are about, and name what is missing only where something is', () => {
    const night = houseRule({ kind: 'no-students-at-night', flights: 'solo-and-dual' });
    const at = (purpose: UseOfAircraft['purpose']) => said([night], { purpose, light: 'night' })[0];
    expect(at('student-solo')).toMatchObject({
      because: 'No student flies solo at night.',
      about: { kind: 'flight', id: 'aircraft-1', label: 'N0417W' },
    });
    expect(at('instruction-for-hire')?.because).toBe('No instruction at night.');
    expect(at('instruction-for-hire')).not.toHaveProperty('missing');
    const oil = houseRule({ kind: 'oil-minimum', leastTenthsQuart: 60, oldestHours: 12 });
    expect(said([oil], {}, { lastOil: unknown('how much oil') })[0]).toMatchObject({
      missing: 'how much oil',
      about: { kind: 'aircraft', id: 'aircraft-1', label: 'N0417W' },
    });
  });

  it('hours in reserve: said of the requirement, with the hours as they are', () => {
    const rule = (counts: 'hundred-hour' | 'all-by-hours') =>
      houseRule({ kind: 'reserve-before-inspection', reserveTenths: 500, counts });
    // The last 100-hour was at 4460.0 h, so 47.7 h are left at 4512.3 h; the flight takes 1.3 h.
    expect(said([rule('hundred-hour')])[0]).toMatchObject({
      because:
        '50.0 h stay in reserve before 100-hour inspection. It has 47.7 h left, this flight takes 1.3 h.',
      about: { kind: 'requirement', id: 'hundred-hour', label: '100-hour inspection' },
    });
    const bindingByHours = (binding: boolean) =>
      trainer({
        requirements: [
          requirementRow('life-limit', 'Spar', '2026-01-01', 40_000, { intervalTenths: 5200, binding }),
          requirementRow('annual', 'Annual', '2026-01-01', 40_000, { intervalMonths: 12 }),
        ],
      }).requirements;
    const of = (counts: 'hundred-hour' | 'all-by-hours', binding: boolean) =>
      said([rule(counts)], {}, { requirements: bindingByHours(binding) }).map(({ about }) => about?.id);
    expect(of('all-by-hours', true)).toEqual(['life-limit']);
    expect(of('all-by-hours', false)).toEqual([]);
    expect(of('hundred-hour', true)).toEqual([]);
  });
});

describe('versions of a rule', () => {
  const version = (
    ruleId: string,
    number: number,
    change: Partial<HouseRuleVersion> = {},
  ): HouseRuleVersion => ({
    ruleId,
    version: number,
    holds: true,
    setting: { kind: 'no-ifr-with-deferral' },
    reach: null,
    by: 'Gil Arden',
    at: '2026-03-03T12:00:00Z',
    why: `Version ${number}.`,
    ...change,
  });

  it('the newest counts, and the first of two that are equally new; in the order of the ids', () => {
    const kept = [
      version('b', 2),
      version('b', 1),
      version('c', 1, { why: 'first' }),
      version('c', 1, { why: 'second' }),
      version('a', 1),
    ];
    expect(newestVersions(kept).map(({ ruleId, why }) => [ruleId, why])).toEqual([
      ['a', 'Version 1.'],
      ['b', 'Version 2.'],
      ['c', 'first'],
    ]);
  });

  it('a rule in force for an aircraft carries whose it is, and the day at the base', () => {
    expect(rulesFor([version('a', 3)], { id: 'x', typeId: 't' }, (at) => at.slice(0, 10))).toEqual([
      {
        ruleId: 'a',
        version: 3,
        by: 'Gil Arden',
        on: '2026-03-03',
        why: 'Version 3.',
        setting: { kind: 'no-ifr-with-deferral' },
      },
    ]);
  });

  it.each([
    [['oil-minimum', 'most-deferrals'], true],
    [['most-deferrals', 'walkaround-before-flight'], true],
    [['most-deferrals'], false],
    [[], false],
  ])('%s asks for what walkarounds leave: %s', (kinds, asks) => {
    expect(asksOfWalks(kinds.map((kind) => ({ kind })))).toBe(asks);
  });
});

describe('readings', () => {
  const at = (minute: number) => ({ at: `2026-11-25T10:${String(minute).padStart(2, '0')}:00Z` });
  it('the newer of two; of two at one moment the first', () => {
    const [early, same] = [at(1), at(1)];
    expect(newer(early, same)).toBe(early);
    expect(newer(early, at(2))).toEqual(at(2));
    expect(newer(at(2), early)).toEqual(at(2));
    expect(newer(null, early)).toBe(early);
    expect(newer(early, null)).toBe(early);
  });

  it('none is not known', () => {
    expect(readingOr(null, 'how much oil')).toEqual({ known: false, missing: 'how much oil' });
    expect(readingOr(at(1), 'how much oil')).toEqual(known(at(1)));
  });

  it('each age ends by its own reading; a rule without an age, or without a reading, has no end', () => {
    const aircraft = trainer({
      lastOil: known({ tenthsQuart: 70, ...at(0) }),
      lastWalkaround: unknown('when'),
      houseRules: [
        houseRule({ kind: 'oil-minimum', leastTenthsQuart: 60, oldestHours: 2 }),
        houseRule({ kind: 'walkaround-before-flight', oldestHours: 3 }),
        houseRule({ kind: 'most-deferrals', most: 1 }),
      ],
    });
    expect(agesEndAt(aircraft)).toEqual(['2026-11-25T12:00:00Z']);
    expect(agesEndAt({ ...aircraft, lastWalkaround: known(at(30)), lastOil: unknown('how much') })).toEqual([
      '2026-11-25T13:30:00Z',
    ]);
  });
});

describe('a rule of the house in words', () => {
  it.each([
    [{ kind: 'no-night-with-deferral' }, 'No night flight while anything is deferred.'],
    [{ kind: 'no-ifr-with-deferral' }, 'No IFR flight while anything is deferred.'],
    [{ kind: 'solo-never-with-limits' }, 'No student solo flight that has a limit.'],
    [{ kind: 'no-students-at-night', flights: 'solo' }, 'No student solo flight at night.'],
    [
      { kind: 'no-students-at-night', flights: 'solo-and-dual' },
      'No student solo flight and no instruction at night.',
    ],
    [
      { kind: 'walkaround-before-flight', oldestHours: 1 },
      'No flight without a walkaround finished not more than 1 hour before departure.',
    ],
    [
      { kind: 'reserve-before-inspection', reserveTenths: 50, counts: 'hundred-hour' },
      'No flight that ends with less than 5.0 h left before the 100-hour inspection, unless it is a flight to the inspection.',
    ],
    [
      { kind: 'reserve-before-inspection', reserveTenths: 50, counts: 'all-by-hours' },
      'No flight that ends with less than 5.0 h left before anything due by hours, unless it is a flight to the inspection.',
    ],
    [{ kind: 'most-deferrals', most: 2 }, 'No flight with more than 2 open deferrals.'],
    [{ kind: 'deferral-no-older', days: 3 }, 'No flight with a deferral older than 3 days.'],
    [
      { kind: 'unreadable', storedKind: 'x' },
      'This program cannot read what the rule asks, so nothing flies under it.',
    ],
    [
      { kind: 'limit-in-own-words', purposes: ['student-solo'], words: 'By day.' },
      'A limit on Student solo: By day.',
    ],
  ] as const)('%j', (setting, words) => {
    expect(settingInWords(setting)).toBe(words);
  });

  it('every kind says what it is called, what it does and whom it reaches', () => {
    for (const { title, explains, reaches } of Object.values(HOUSE_KINDS))
      for (const text of [title, explains, reaches]) expect(text.trim()).not.toBe('');
  });
});
