/**
 * What a special flight permit does to an answer. Sources: 14 CFR 21.197(a), 21.199, 91.213(e), 91.409(c), 39.23; the good
 * days and "spent with its flight" are from memory, as the head of the rule says.
 */
import { describe, expect, it } from 'vitest';
import type { AircraftFacts } from '@/lib/rules/aircraft';
import { answerForFlight } from '@/lib/rules/answer';
import { known, unknown } from '@/lib/rules/facts';
import type { CiteId } from '@/lib/rules/law';
import type { ProposedFlight, SpecialFlightPermit } from '@/lib/rules/operations';
import { canBeLifted, withSpecialFlightPermit } from '@/lib/rules/special-flight-permit';
import type { Line } from '@/lib/rules/verdict';
import {
  AWAY,
  BASE,
  deferralOf,
  flightOf,
  permitOf,
  requirementRow,
  trainer,
  useOf,
  withBroken,
} from '../fixtures/aircraft';

const lapsed: AircraftFacts = {
  ...trainer(),
  requirements: trainer().requirements.map((row) =>
    row.kind === 'annual' ? requirementRow('annual', 'Annual inspection', '2025-10-14', 43820) : row,
  ),
};
const answered = (
  aircraft: AircraftFacts,
  permit: Partial<SpecialFlightPermit>,
  flight: Partial<ProposedFlight> = {},
) =>
  answerForFlight(
    aircraft,
    flightOf({
      purpose: 'to-inspection',
      crewOnly: known(true),
      specialFlightPermit: permitOf({ covers: ['annual'], ...permit }),
      ...flight,
    }),
  ).answer;
const barsOf = (answer: ReturnType<typeof answered>) =>
  answer.lines.filter((line) => line.effect === 'bars').map((line) => line.cite);

describe('what it names (21.199(a))', () => {
  it('the lapsed annual, named: go with limits by 91.409(c)', () => {
    const answer = answered(lapsed, {});
    expect(answer.outcome).toBe('go-with-limits');
    expect(answer.lines).toContainEqual(
      expect.objectContaining({ effect: 'limits', cite: '14cfr91.409(c)' }),
    );
  });

  it('the lapsed annual, not named: no go', () => {
    expect(barsOf(answered(lapsed, { covers: ['transponder'] }))).toEqual(['14cfr91.409(a)']);
  });

  it('one write-up named, another not: the other still bars', () => {
    const plane = withBroken(withBroken(trainer(), 'tachometer'), 'altimeter');
    const answer = answered(plane, { covers: ['discrepancy-tachometer'] });
    const about = answer.lines.filter((line) => line.effect === 'bars').map((line) => line.about?.id);
    expect(new Set(about)).toEqual(new Set(['discrepancy-altimeter']));
  });

  it('a deferral is named by its write-up', () => {
    const plane = withBroken(trainer(), 'tachometer', { deferral: deferralOf({ placardPlaced: false }) });
    expect(answered(plane, { covers: ['discrepancy-tachometer'] }).outcome).toBe('go-with-limits');
    expect(answered(plane, { covers: [] }).outcome).toBe('no-go');
  });

  // 91.407(a), 43.9(a): taking it out was maintenance. What flies is not what the permit named but work nobody answers for.
  it.each([
    ['(d), removed, record signed', 'removed', false, true, null, []],
    ['(d), removed, record not signed', 'removed', false, false, null, ['14cfr43.9(a)']],
    ['(d), deactivating is maintenance, not signed', 'deactivated', true, false, null, ['14cfr43.9(a)']],
    ['(d), deactivating is no maintenance', 'deactivated', false, false, null, []],
    ['a list without an entry for it, removed, not signed', 'removed', false, false, [], ['14cfr43.9(a)']],
    [
      'a list without its letter, removed, not signed',
      'removed',
      false,
      false,
      null,
      ['14cfr43.9(a)'],
      false,
    ],
    ['a list without its letter, removed, signed', 'removed', false, true, null, [], false],
  ] as const)(
    'a deferral by %s: the part 43 record is not the permit’s to lift',
    (_words, method, deactivationIsMaintenance, maintenanceRecordSigned, items, bars, letter?: boolean) => {
      const mel = { reference: 'MEL 1', enforceCategories: true, extension: null };
      const listed = items !== null || letter === false;
      const plane = {
        ...withBroken(trainer(), 'cabin-heat', {
          deferral: deferralOf({
            basis: listed ? 'mel' : '91.213(d)',
            method,
            deactivationIsMaintenance,
            maintenanceRecordSigned,
          }),
        }),
        mel: known(listed ? { ...mel, letterAboard: known(letter ?? true), items: items ?? [] } : null),
      };
      expect(barsOf(answered(plane, { covers: ['discrepancy-cabin-heat'] }))).toEqual(bars);
    },
  );

  it('damage named: 91.405(a) and the grounding of 91.7(a) become limits', () => {
    const plane = withBroken(trainer(), 'cabin-heat', { kind: 'damage', severity: known('grounding') });
    const answer = answered(plane, { covers: ['discrepancy-cabin-heat'] });
    expect(answer.outcome).toBe('go-with-limits');
    expect(answer.lines.filter((line) => line.cite === '14cfr21.197(a)')).toHaveLength(2);
  });
});

describe('its days, both ends good', () => {
  // The flight is on 25 November, 10:00 to 11:30 at the base.
  it.each([
    ['the day before', '2026-11-24', 'go-with-limits'],
    ['the same day', '2026-11-25', 'go-with-limits'],
    ['the day after', '2026-11-26', 'no-go'],
  ])('good from %s', (_words, goodFrom, outcome) => {
    expect(answered(lapsed, { goodFrom }).outcome).toBe(outcome);
  });

  it.each([
    ['the day before', '2026-11-24', 'no-go'],
    ['the same day', '2026-11-25', 'go-with-limits'],
    ['the day after', '2026-11-26', 'go-with-limits'],
  ])('good through %s', (_words, goodThrough, outcome) => {
    expect(answered(lapsed, { goodFrom: '2026-11-01', goodThrough }).outcome).toBe(outcome);
  });

  it('a flight that lands on the day after its last is out of it', () => {
    // Departs 25 November 23:30 at the base, arrives 26 November 00:30.
    const overMidnight = {
      departAt: '2026-11-26T05:30:00Z',
      arriveAt: '2026-11-26T06:30:00Z',
      plannedTenths: 10,
    };
    expect(barsOf(answered(lapsed, { goodThrough: '2026-11-25' }, overMidnight))).toContain('14cfr21.199');
    expect(barsOf(answered(lapsed, { goodThrough: '2026-11-26' }, overMidnight))).not.toContain(
      '14cfr21.199',
    );
  });
});

describe('its flight', () => {
  it.each([
    ['another departure', { fromIdent: AWAY.ident }],
    ['another arrival', { toIdent: AWAY.ident }],
  ])('bars with %s', (_words, change) => {
    expect(barsOf(answered(lapsed, change))).toEqual(['14cfr21.199(a)']);
  });

  it('goes where it was issued for', () => {
    const away = answered(lapsed, { fromIdent: AWAY.ident, toIdent: BASE.ident }, { from: AWAY });
    expect(away.outcome).toBe('go-with-limits');
  });

  it.each([
    ['not asked for', { inspection: 'not-asked' }, []],
    ['signed', { inspection: 'signed' }, []],
    ['owed', { inspection: 'owed' }, ['14cfr21.199(b)']],
  ] as const)('inspection %s (21.199(b))', (_words, change, bars) => {
    expect(barsOf(answered(lapsed, change))).toEqual(bars);
  });

  it('is spent with one flight', () => {
    expect(barsOf(answered(lapsed, { used: true }))).toEqual(['14cfr21.199(a)']);
  });

  it('puts each of its limits on the flight in its own words', () => {
    const answer = answered(lapsed, { limits: ['Day VFR only.', 'No flight over a town.'] });
    expect(
      answer.lines
        .filter((line) => line.cite === '14cfr21.199')
        .map(({ effect, because }) => [effect, because]),
    ).toEqual([
      ['limits', 'Special flight permit SFP 26-014: Day VFR only.'],
      ['limits', 'Special flight permit SFP 26-014: No flight over a town.'],
    ]);
  });

  it('holds a flight to it even where nothing else bars', () => {
    expect(answered(trainer(), {}).outcome).toBe('go-with-limits');
    expect(answered(trainer(), { used: true }).outcome).toBe('no-go');
  });
});

describe('which bars a permit can lift', () => {
  const bar: Line = { effect: 'bars', cite: '14cfr91.409(a)', because: 'Invented.' };

  // 91.409(c), 39.23, 91.213(e), 21.197(a): airworthiness and inspection. The rest is our strict reading, see the head of the rule.
  it.each<[CiteId, CiteId | null]>([
    ['14cfr91.409(a)', '14cfr91.409(c)'],
    ['14cfr91.409(b)', '14cfr91.409(c)'],
    ['14cfr141.39(a)(3)', '14cfr91.409(c)'],
    ['14cfr39.7', '14cfr39.23'],
    ['14cfr91.403(c)', '14cfr21.197(a)'],
    ['14cfr91.7(a)', '14cfr21.197(a)'],
    ['14cfr91.405(a)', '14cfr21.197(a)'],
    ['14cfr91.405(c)', '14cfr21.197(a)'],
    ['14cfr91.205(b)(4)', '14cfr91.213(e)'],
    ['14cfr91.213(a)', '14cfr91.213(e)'],
    ['14cfr91.213(d)(2)(iii)', '14cfr91.213(e)'],
    ['mmel-category-c', '14cfr91.213(e)'],
    ['14cfr91.203(a)(1)', null],
    ['14cfr91.203(a)(2)', null],
    ['14cfr91.9(b)', null],
    ['14cfr47.40', null],
    ['14cfr91.407(a)(1)', null],
    ['14cfr43.9(a)', null],
    ['14cfr91.205(c)(2)', null],
    ['14cfr91.205(d)(2)', null],
    ['14cfr91.207(a)(2)', null],
    ['14cfr91.209(a)(1)', null],
    ['14cfr91.215(b)', null],
    ['14cfr91.411(a)(1)', null],
    ['14cfr91.413(a)', null],
    ['14cfr91.171(a)(2)', null],
    ['14cfr91.417(a)(2)(i)', null],
  ])('%s: %s', (cite, by) => {
    const about = { kind: 'requirement', id: 'annual', label: 'Annual inspection' } as const;
    expect(canBeLifted({ ...bar, cite })).toBe(by !== null);
    const permit = permitOf({ covers: ['annual'] });
    const use = useOf({ crewOnly: known(true), specialFlightPermit: permit });
    const [first] = withSpecialFlightPermit([{ ...bar, cite, about }], use, trainer());
    expect(first).toMatchObject(by === null ? { effect: 'bars', cite } : { effect: 'limits', cite: by });
  });

  it('never what nobody knows, nor what does not bar', () => {
    expect(canBeLifted({ ...bar, missing: 'when it was done' })).toBe(false);
    for (const effect of ['limits', 'notes', 'supports'] as const)
      expect(canBeLifted({ ...bar, effect })).toBe(false);
  });
});

describe('its days and those aboard, asked of the use itself', () => {
  const lines = (use: Parameters<typeof useOf>[0], permit: Partial<SpecialFlightPermit> = {}) =>
    withSpecialFlightPermit(
      [],
      useOf({ crewOnly: known(true), specialFlightPermit: permitOf(permit), ...use }),
      trainer(),
    ).filter(({ effect }) => effect === 'bars');

  // Dates are those of the two bases: westward over the date line a flight arrives on the day before it left.
  it.each([
    ['2026-11-25', '2026-11-26', []],
    ['2026-11-26', '2026-11-25', []],
    ['2026-11-24', '2026-11-25', ['14cfr21.199']],
    ['2026-11-25', '2026-11-24', ['14cfr21.199']],
    ['2026-11-26', '2026-11-27', ['14cfr21.199']],
    ['2026-11-27', '2026-11-26', ['14cfr21.199']],
  ])('good on the 25th and 26th, from %s to %s', (departOn, arriveOn, bars) => {
    const good = { goodFrom: '2026-11-25', goodThrough: '2026-11-26' };
    expect(lines({ departOn, arriveOn }, good).map(({ cite }) => cite)).toEqual(bars);
  });

  it('not knowing who is aboard bars as a missing fact, somebody aboard as a known one', () => {
    expect(lines({ crewOnly: unknown('who is aboard') })).toMatchObject([
      { cite: '14cfr21.197(a)', missing: 'who is aboard' },
    ]);
    const [known_, ...more] = lines({ crewOnly: known(false) });
    expect(more).toEqual([]);
    expect(known_).toMatchObject({ cite: '14cfr21.197(a)', effect: 'bars' });
    expect(known_?.missing).toBeUndefined();
  });

  it.each(['student-solo', 'instruction-for-hire', 'carriage-for-hire'] as const)(
    'carries no %s',
    (purpose) => {
      expect(lines({ purpose }).map(({ cite }) => cite)).toEqual(['14cfr21.197(a)']);
    },
  );
});
