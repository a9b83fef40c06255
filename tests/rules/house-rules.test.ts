import { describe, expect, it } from 'vitest';
import { answerForUse, headline } from '@/lib/rules/answer';
import type { AircraftFacts, DiscrepancyFacts } from '@/lib/rules/aircraft';
import { known, unknown } from '@/lib/rules/facts';
import { houseLines } from '@/lib/rules/house/house-lines';
import {
  asksOfWalks,
  newestVersions,
  rulesFor,
  type HouseRule,
  type HouseRuleVersion,
} from '@/lib/rules/house/house-rule';
import { markInWords, settingInWords } from '@/lib/rules/house/in-words';
import { HOUSE_KIND_KEYS } from '@/lib/rules/house/kinds';
import { agesEndAt, agesEnded, newer } from '@/lib/rules/house/readings';
import type { Purpose, UseOfAircraft } from '@/lib/rules/operations';
import type { Line } from '@/lib/rules/verdict';
import { deferralOf, discrepancyOf, requirementRow, trainer, useOf } from '../fixtures/aircraft';
import { houseRule } from '../fixtures/house-rules';

/**
 * Each kind of rule of the house, just under, on and just over its border. Source of every border here: the words of the
 * kind itself (lib/rules/house/kinds.ts). Common practice of schools, no source; the law asks for none of it.
 */

const linesOf = (
  setting: HouseRule['setting'],
  aircraft: Partial<AircraftFacts>,
  use: Partial<UseOfAircraft> = {},
  law: readonly Line[] = [],
) => houseLines(law, trainer({ ...aircraft, houseRules: [houseRule(setting)] }), useOf(use));

const deferred = (count: number): DiscrepancyFacts[] =>
  Array.from({ length: count }, (_, at) =>
    discrepancyOf({
      id: `d-${at}`,
      number: `W-000${at + 1}`,
      deferral: deferralOf({ id: `deferral-${at}` }),
    }),
  );

describe('a line of the house', () => {
  it('says whose it is and cites no paragraph', () => {
    const [line] = linesOf({ kind: 'most-deferrals', most: 0 }, { discrepancies: deferred(1) });
    expect(line).toEqual({
      effect: 'bars',
      cite: 'house-rule',
      because: 'At most 0 deferrals at one time. Open are 1: W-0001.',
      about: { kind: 'aircraft', id: 'aircraft-1', label: 'N0417W' },
      house: {
        ruleId: 'rule-1',
        version: 1,
        by: 'Gil Arden',
        on: '2026-03-03',
        why: 'The board decided so.',
      },
    });
    expect(markInWords(houseRule({ kind: 'no-night-with-deferral' }))).toBe(
      'Rule of the house, by Gil Arden, 3 Mar 2026',
    );
  });

  it('is told apart in the headline of a cell too', () => {
    const aircraft = trainer({
      discrepancies: deferred(1),
      houseRules: [houseRule({ kind: 'no-night-with-deferral' })],
    });
    expect(headline(answerForUse(aircraft, useOf({ light: 'night', betweenSunsetAndSunrise: true })))).toBe(
      'House rule: No night flight with a deferral',
    );
  });

  it('bars where the settings cannot be read: what is not known is never go', () => {
    const [line] = linesOf({ kind: 'unreadable', storedKind: 'no-flights-on-mondays' }, {});
    expect(line).toMatchObject({ effect: 'bars', missing: expect.stringContaining('no-flights-on-mondays') });
  });
});

describe('deferrals', () => {
  it.each([
    ['day', 0],
    ['night', 2],
  ] as const)('no night with a deferral: by %s %i lines, one a deferral', (light, count) => {
    const lines = linesOf({ kind: 'no-night-with-deferral' }, { discrepancies: deferred(2) }, { light });
    expect(lines.map(({ about }) => about?.id)).toEqual(['d-0', 'd-1'].slice(0, count));
  });

  it('no night with a deferral says nothing about a write-up that is not deferred', () => {
    expect(
      linesOf({ kind: 'no-night-with-deferral' }, { discrepancies: [discrepancyOf()] }, { light: 'night' }),
    ).toEqual([]);
  });

  it.each([
    ['VFR', 0],
    ['IFR', 1],
  ] as const)('no IFR with a deferral: %s %i', (rules, count) => {
    expect(linesOf({ kind: 'no-ifr-with-deferral' }, { discrepancies: deferred(1) }, { rules })).toHaveLength(
      count,
    );
  });

  it.each([
    [1, 0],
    [2, 0],
    [3, 1],
  ])('most deferrals two: %i open, %i bars', (open, count) => {
    expect(linesOf({ kind: 'most-deferrals', most: 2 }, { discrepancies: deferred(open) })).toHaveLength(
      count,
    );
  });

  // Recorded 1 November, 30 days: through 1 December.
  it.each([
    ['2026-11-30', '2026-11-30', 0],
    ['2026-12-01', '2026-12-01', 0],
    ['2026-12-02', '2026-12-02', 1],
    // A flight that lands after midnight touches the day after the last.
    ['2026-12-01', '2026-12-02', 1],
  ])('a deferral of 1 November, no older than 30 days: %s to %s, %i bars', (departOn, arriveOn, count) => {
    const discrepancies = [discrepancyOf({ deferral: deferralOf({ recordedOn: '2026-11-01' }) })];
    expect(
      linesOf({ kind: 'deferral-no-older', days: 30 }, { discrepancies }, { departOn, arriveOn }),
    ).toHaveLength(count);
  });
});

describe('oil', () => {
  const rule = { kind: 'oil-minimum', leastTenthsQuart: 60, oldestHours: 12 } as const;
  const oil = (tenthsQuart: number) => ({ lastOil: known({ tenthsQuart, at: '2026-11-25T04:00:00Z' }) });

  it.each([
    [59, 1],
    [60, 0],
    [61, 0],
  ])('least 6.0 qt: %i tenths, %i bars', (tenths, count) => {
    expect(linesOf(rule, oil(tenths), { departAt: '2026-11-25T16:00:00Z' })).toHaveLength(count);
  });

  it.each([
    ['2026-11-25T15:59:59.999Z', 0],
    ['2026-11-25T16:00:00Z', 0],
    ['2026-11-25T16:00:00.001Z', 1],
  ])('read at 04:00Z, not older than 12 hours: departs %s, %i bars', (departAt, count) => {
    const lines = linesOf(rule, oil(70), { departAt });
    expect(lines).toHaveLength(count);
    if (count > 0) {
      expect(lines[0]?.missing).toBe(
        'an oil reading not older than 12 hours at departure (the last is of 24 Nov 2026, 22:00)',
      );
    }
  });

  it('bars with what is missing when nobody has read it', () => {
    const [line] = linesOf(rule, { lastOil: unknown('how much oil N0417W has') });
    expect(line).toMatchObject({ effect: 'bars', missing: 'how much oil N0417W has' });
    expect(line?.because).toBe('Least oil of the house is 6.0 qt. Not known: how much oil N0417W has.');
  });

  it('counts a reading taken after a departure that was put off as new', () => {
    expect(linesOf(rule, oil(70), { departAt: '2026-11-25T03:00:00Z' })).toEqual([]);
  });
});

describe('walkaround before flight', () => {
  const rule = { kind: 'walkaround-before-flight', oldestHours: 2 } as const;
  const walked = { lastWalkaround: known({ at: '2026-11-25T14:00:00Z' }) };

  it.each([
    ['2026-11-25T15:59:59.999Z', 0],
    ['2026-11-25T16:00:00Z', 0],
    ['2026-11-25T16:00:00.001Z', 1],
  ])('finished at 14:00Z, two hours: departs %s, %i bars', (departAt, count) => {
    expect(linesOf(rule, walked, { departAt })).toHaveLength(count);
  });

  it('bars when there is none on record', () => {
    const [line] = linesOf(rule, { lastWalkaround: unknown('when it was walked') });
    expect(line?.missing).toBe('when it was walked');
  });

  it('ends at the last instant that is allowed, each once and in order', () => {
    const houseRules = [
      houseRule(rule),
      houseRule({ ...rule, oldestHours: 1 }, { ruleId: 'rule-2' }),
      houseRule(rule, { ruleId: 'rule-3' }),
      houseRule({ kind: 'oil-minimum', leastTenthsQuart: 60, oldestHours: 12 }, { ruleId: 'rule-4' }),
    ];
    const ends = agesEndAt(trainer({ ...walked, houseRules }));
    expect(ends).toEqual(['2026-11-25T15:00:00Z', '2026-11-25T16:00:00Z']);
    expect(
      ['15:00:00', '15:00:00.001', '16:00:00.001'].map((time) =>
        agesEnded(ends, Date.parse(`2026-11-25T${time}Z`)),
      ),
    ).toEqual([0, 1, 2]);
  });

  it('takes the newer of two readings', () => {
    const [early, late] = [{ at: '2026-11-25T14:00:00Z' }, { at: '2026-11-25T14:00:00.001Z' }];
    expect([newer(early, late), newer(late, early), newer(null, early), newer(early, null)]).toEqual([
      late,
      late,
      early,
      early,
    ]);
  });
});

describe('students', () => {
  it.each([
    ['student-solo', 'night', 'solo', 1],
    ['student-solo', 'day', 'solo', 0],
    ['instruction-for-hire', 'night', 'solo', 0],
    ['instruction-for-hire', 'night', 'solo-and-dual', 1],
    ['student-solo', 'night', 'solo-and-dual', 1],
    ['private', 'night', 'solo-and-dual', 0],
  ] as const)('%s by %s with "%s": %i bars', (purpose, light, flights, count) => {
    expect(linesOf({ kind: 'no-students-at-night', flights }, {}, { purpose, light })).toHaveLength(count);
  });

  const limit: Line = { effect: 'limits', cite: '14cfr91.7(b)', because: 'Down by 17:10.' };
  it.each([
    ['student-solo', [], 0],
    ['student-solo', [limit], 1],
    ['private', [limit], 0],
  ] as const)('solo never with limits: %s with %j, %i bars', (purpose, law, count) => {
    expect(linesOf({ kind: 'solo-never-with-limits' }, {}, { purpose }, law)).toHaveLength(count);
  });

  it('a limit of the house is a limit too, whichever rule is listed first', () => {
    const own = houseRule(
      { kind: 'limit-in-own-words', purposes: ['student-solo'], words: 'Crosswind at most 8 kt.' },
      { ruleId: 'z' },
    );
    const solo = houseRule({ kind: 'solo-never-with-limits' }, { ruleId: 'a' });
    const ask = (houseRules: HouseRule[]) =>
      houseLines([], trainer({ houseRules }), useOf({ purpose: 'student-solo' })).map(
        ({ effect, because }) => `${effect} ${because}`,
      );
    expect(ask([solo, own])).toEqual(ask([own, solo]));
    expect(ask([solo, own])).toEqual([
      'limits Crosswind at most 8 kt.',
      'bars Students never fly solo with limits. This flight has one: Crosswind at most 8 kt.',
    ]);
  });

  it.each<[Purpose, number]>([
    ['student-solo', 1],
    ['private', 0],
  ])('a limit in own words stands on the chosen purposes: %s %i', (purpose, count) => {
    const lines = linesOf(
      { kind: 'limit-in-own-words', purposes: ['student-solo'], words: 'By day only.' },
      {},
      { purpose },
    );
    expect(lines.map(({ effect }) => effect)).toEqual(Array.from({ length: count }, () => 'limits'));
  });
});

describe('a mechanic looks at it', () => {
  const propeller = (some: Partial<DiscrepancyFacts>) => ({
    discrepancies: [
      discrepancyOf({ kind: 'wear', jasc: '6111', station: 'propeller', severity: known('watch'), ...some }),
    ],
  });
  const by = { by: 'M. Oakridge', on: '2026-11-24' };

  it.each([
    ['nobody has judged it', {}, 1],
    ['a mechanic has', { mechanicJudged: by }, 0],
    ['of the chapter before', { jasc: '5753' }, 0],
    ['of no system yet, which may be the propeller', { jasc: '' }, 1],
  ] as const)('chapter 61, %s: %i bars', (_, some, count) => {
    const lines = linesOf({ kind: 'mechanic-looks-at', chapters: ['61'], areas: [] }, propeller(some));
    expect(lines.filter(({ effect }) => effect === 'bars')).toHaveLength(count);
  });

  it.each([
    ['propeller', 1],
    ['tail', 0],
  ])('found at %s, the place propeller: %i bars', (station, count) => {
    const rule = { kind: 'mechanic-looks-at', chapters: [], areas: ['propeller'] } as const;
    expect(linesOf(rule, propeller({ station, jasc: '' }))).toHaveLength(count);
  });

  // Our own design: a paper names no area (lib/carry-over/keep-write-up.ts), and unknown is never go.
  describe('carried over, its place not told', () => {
    const carried = (some: Partial<DiscrepancyFacts>) => propeller({ station: 'carried over', ...some });
    const rule = (areas: readonly string[], chapters: readonly string[] = []) =>
      ({ kind: 'mechanic-looks-at', chapters, areas }) as const;

    it.each([
      ['the chapter tells the place, and it is the chosen one', '6111', ['propeller'], 1, false],
      ['the chapter tells the place, and it is another', '6111', ['tail'], 0, false],
      ['no chapter before or after it tells a place', '6000', ['propeller'], 1, true],
      ['no chapter before or after it tells a place', '6200', ['propeller'], 1, true],
      ['a system that may be anywhere', '3340', ['tail'], 1, true],
      ['no system named', '', ['tail'], 1, true],
      ['no place chosen', '3340', [], 0, false],
    ] as const)('%s (%s, %j): %i bars', (_, jasc, areas, count, isMissing) => {
      const lines = linesOf(rule(areas), carried({ jasc }));
      expect(lines.map(({ effect }) => effect)).toEqual(Array.from({ length: count }, () => 'bars'));
      expect(lines.some(({ missing }) => missing !== undefined)).toBe(isMissing);
      if (isMissing) expect(lines[0]?.because).toContain('Not known: where on the aircraft');
    });

    it('a mechanic has judged it: the rule is content', () => {
      expect(linesOf(rule(['tail']), carried({ jasc: '3340', mechanicJudged: by }))).toEqual([]);
    });
    it('a place that is told and not chosen does not bar, whatever the chapter', () => {
      expect(linesOf(rule(['tail']), propeller({ station: 'cabin', jasc: '3340' }))).toEqual([]);
    });
    it('with a chapter chosen as well, the chapter speaks first and once', () => {
      const lines = linesOf(rule(['tail'], ['33']), carried({ jasc: '3340' }));
      expect(lines).toHaveLength(1);
      expect(lines[0]?.because).toContain('JASC chapter 33');
    });
  });
});

describe('reserve before an inspection', () => {
  const rule = { kind: 'reserve-before-inspection', reserveTenths: 50, counts: 'hundred-hour' } as const;
  // The trainer's 100-hour was done at 4460.0 h and is due at 4560.0 h (91.409(b)).
  it.each([
    [45539, 10, 0],
    [45540, 10, 0],
    [45541, 10, 1],
    [45540, 11, 1],
  ])('5.0 h before the 100-hour: %i tenths and a flight of %i, %i bars', (ttis, plannedTenths, count) => {
    expect(linesOf(rule, { ttisTenths: known(ttis) }, { plannedTenths })).toHaveLength(count);
  });

  it('lets a flight to the inspection spend it', () => {
    expect(linesOf(rule, { ttisTenths: known(45595) }, { purpose: 'to-inspection' })).toEqual([]);
  });

  it('bars when the time in service, or when it was last done, is not known', () => {
    expect(linesOf(rule, { ttisTenths: unknown('the hours') })[0]?.missing).toBe('the hours');
    const requirements = trainer().requirements.map((row) =>
      row.kind === 'hundred-hour' ? { ...row, lastDone: unknown('when it was done') } : row,
    );
    expect(linesOf(rule, { requirements })[0]?.missing).toBe('when it was done');
  });

  it.each([
    ['hundred-hour', 0],
    ['all-by-hours', 1],
  ] as const)('counts %s: a directive by hours %i', (counts, count) => {
    const requirements = [
      ...trainer().requirements,
      requirementRow('directive', 'Oil hose', '2026-10-01', 44500, { intervalTenths: 700 }),
    ];
    expect(linesOf({ ...rule, counts, reserveTenths: 80 }, { requirements })).toHaveLength(count);
  });

  it('asks nothing of what is due by the calendar alone', () => {
    const requirements = trainer().requirements.filter(({ kind }) => kind === 'annual');
    expect(linesOf({ ...rule, counts: 'all-by-hours' }, { requirements })).toEqual([]);
  });
});

describe('versions', () => {
  const version = (some: Partial<HouseRuleVersion>): HouseRuleVersion => ({
    ruleId: 'r',
    version: 1,
    holds: true,
    setting: { kind: 'no-night-with-deferral' },
    reach: null,
    by: 'Gil Arden',
    at: '2026-03-03T18:00:00Z',
    why: 'Because.',
    ...some,
  });
  const one = { id: 'aircraft-1', typeId: 'type-1' };

  it('the newest counts, in whatever order they are read', () => {
    const versions = [version({ version: 2 }), version({ version: 10 }), version({ version: 9 })];
    expect(newestVersions(versions).map((v) => v.version)).toEqual([10]);
    expect(newestVersions(versions.toReversed()).map((v) => v.version)).toEqual([10]);
  });

  it.each([
    ['the whole fleet', null, 1],
    ['this aircraft', { aircraftIds: ['aircraft-1'], typeIds: [] }, 1],
    ['its type', { aircraftIds: [], typeIds: ['type-1'] }, 1],
    ['others', { aircraftIds: ['aircraft-2'], typeIds: ['type-2'] }, 0],
  ])('for %s: %i', (_, reach, count) => {
    expect(rulesFor([version({ reach })], one, () => '2026-03-03')).toHaveLength(count as number);
  });

  it('an ended rule can be set again', () => {
    const versions = [version({}), version({ version: 2, holds: false }), version({ version: 3 })];
    expect(rulesFor(versions.slice(0, 2), one, () => '')).toEqual([]);
    expect(rulesFor(versions, one, () => '')).toHaveLength(1);
  });

  it('only rules about oil and walkarounds have those read', () => {
    expect(HOUSE_KIND_KEYS.filter((kind) => asksOfWalks([{ kind }]))).toEqual([
      'oil-minimum',
      'walkaround-before-flight',
    ]);
  });

  it('says in words what each asks', () => {
    expect(settingInWords({ kind: 'oil-minimum', leastTenthsQuart: 60, oldestHours: 12 })).toBe(
      'No flight with less than 6.0 qt of oil, read not more than 12 hours before departure.',
    );
    expect(settingInWords({ kind: 'mechanic-looks-at', chapters: ['61'], areas: ['propeller'] })).toMatch(
      /^No flight before a mechanic has judged what is written up in: JASC chapter 61, Propeller/,
    );
  });
});
