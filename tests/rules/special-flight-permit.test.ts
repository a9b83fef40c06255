/**
 * What a special flight permit does to an answer. Sources: 14 CFR 21.197(a), 21.199, 91.213(e), 91.409(c), 39.23; the good
 * days and "spent with its flight" are from memory, as the head of the rule says.
 */
import { describe, expect, it } from 'vitest';
import type { AircraftFacts } from '@/lib/rules/aircraft';
import { answerForFlight } from '@/lib/rules/answer';
import { known } from '@/lib/rules/facts';
import type { ProposedFlight, SpecialFlightPermit } from '@/lib/rules/operations';
import {
  AWAY,
  BASE,
  deferralOf,
  flightOf,
  permitOf,
  requirementRow,
  trainer,
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
