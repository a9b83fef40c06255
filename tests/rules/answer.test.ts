import { describe, expect, it } from 'vitest';
import {
  answerForFlight,
  answerForUse,
  answersByOperation,
  headline,
  RULES_VERSION,
} from '@/lib/rules/answer';
import type { AircraftFacts, RequirementFacts } from '@/lib/rules/aircraft';
import { known, unknown } from '@/lib/rules/facts';
import { LAW } from '@/lib/rules/law';
import { operationId, operationName } from '@/lib/rules/operations';
import type { ReferenceBase } from '@/lib/rules/use-of-flight';
import {
  BASE,
  TODAY,
  deferralOf,
  discrepancyOf,
  flightOf,
  permitOf,
  trainer,
  trainerRequirements,
  useOf,
  withBroken,
} from '../fixtures/aircraft';

const REFERENCE_BASE: ReferenceBase = {
  ...BASE,
  transponderAirspace: known(false),
  adsbAirspace: known(false),
  controlledAirspace: known(true),
};
const NOW = '2026-11-25T17:00:00Z';
const board = (aircraft: AircraftFacts) => answersByOperation(aircraft, REFERENCE_BASE, TODAY, NOW);
const outcomes = (aircraft: AircraftFacts) =>
  Object.fromEntries(board(aircraft).map(({ kind, answer }) => [operationId(kind), answer.outcome]));
const withAnnual = (change: Partial<RequirementFacts>) =>
  trainer({
    requirements: trainerRequirements().map((row) => (row.kind === 'annual' ? { ...row, ...change } : row)),
  });

describe('the healthy trainer', () => {
  it('goes, for a reason under every section that was looked at', () => {
    const { answer, use } = answerForFlight(trainer(), flightOf());
    expect(answer.outcome).toBe('go');
    expect(use?.light).toBe('day');
    expect(answer.lines.every((line) => line.effect === 'supports' && line.cite in LAW)).toBe(true);
    const cites = answer.lines.map((line) => line.cite);
    for (const cite of [
      '14cfr91.203(a)(1)',
      '14cfr91.203(a)(2)',
      '14cfr91.9(b)',
      '14cfr91.409(a)',
      '14cfr91.413(a)',
      '14cfr91.207(d)',
      '14cfr91.207(c)(2)',
      '14cfr91.205(b)',
    ] as const) {
      expect(cites).toContain(cite);
    }
  });

  it('goes for all eight kinds of operation', () => {
    expect(new Set(Object.values(outcomes(trainer())))).toEqual(new Set(['go']));
    expect(board(trainer())).toHaveLength(8);
  });

  it('has a version of the rules to be stored with the answer', () => {
    expect(RULES_VERSION).toMatch(/^\d{4}\.\d{2}\.\d{2}-\d+$/);
  });
});

describe('a dead landing light, deferred (14 CFR 91.205(c)(4), 91.213(d))', () => {
  it('closes the night for hire and limits the rest', () => {
    const aircraft = withBroken(trainer(), 'landing-light', { deferral: deferralOf() });
    expect(outcomes(aircraft)).toEqual({
      'day-vfr-private': 'go-with-limits',
      'day-vfr-hire': 'go-with-limits',
      'night-vfr-private': 'go-with-limits',
      'night-vfr-hire': 'no-go',
      'day-ifr-private': 'go-with-limits',
      'day-ifr-hire': 'go-with-limits',
      'night-ifr-private': 'go-with-limits',
      'night-ifr-hire': 'no-go',
    });
  });

  it('is no go for every kind while it is only written up', () => {
    expect(new Set(Object.values(outcomes(withBroken(trainer(), 'landing-light'))))).toEqual(
      new Set(['no-go']),
    );
  });
});

describe('a limit by day (14 CFR 91.209(a)(1))', () => {
  it('names the sunset in the zone of the place of landing', () => {
    const aircraft = withBroken(trainer(), 'position-lights', { deferral: deferralOf() });
    const { answer, use } = answerForFlight(aircraft, flightOf());
    expect(answer.outcome).toBe('go-with-limits');
    expect(use?.sunsetAt).not.toBeNull();
    const limit = answer.lines.find((line) => line.cite === '14cfr91.209(a)(1)');
    // Worked by hand from declination -20.8 degrees and solar noon 11:54 CST: half a day is 4 h 41 min.
    expect(limit).toMatchObject({ effect: 'limits' });
    expect(limit?.because).toMatch(/^On the ground by sunset, 16:3[456] at 0WC\.$/);
  });
});

describe('what is not known is never go', () => {
  it.each([
    [
      'time in service',
      trainer({ ttisTenths: unknown('the total time in service') }),
      'the total time in service',
    ],
    ['airworthiness class', trainer({ standardCategory: unknown('the category') }), 'the category'],
    ['directives', trainer({ directives: unknown('which directives apply') }), 'which directives apply'],
    ['the annual', withAnnual({ lastDone: unknown('the date of the annual') }), 'the date of the annual'],
    [
      'severity of a finding',
      trainer({
        discrepancies: [discrepancyOf({ kind: 'cosmetic', severity: unknown('how severe it is') })],
      }),
      'how severe it is',
    ],
  ])('%s', (_words, aircraft, missing) => {
    const { answer } = answerForFlight(aircraft, flightOf());
    expect(answer.outcome).toBe('no-go');
    expect(answer.lines.flatMap((line) => line.missing ?? [])).toContain(missing);
  });

  it('says a missing fact once, though several checks need it', () => {
    const aircraft = trainer({ ttisTenths: unknown('the total time in service') });
    const { answer } = answerForFlight(aircraft, flightOf({ purpose: 'instruction-for-hire' }));
    expect(answer.lines.filter((line) => line.missing === 'the total time in service')).toHaveLength(1);
  });

  it('refuses an aircraft of another airworthiness class', () => {
    expect(answerForFlight(trainer({ standardCategory: known(false) }), flightOf()).answer.outcome).toBe(
      'no-go',
    );
  });
});

describe('a flight that cannot be judged as composed', () => {
  it.each([
    ['ends when it begins', { arriveAt: '2026-11-25T16:00:00Z' }],
    ['ends before it begins', { arriveAt: '2026-11-25T15:59:00Z' }],
    ['takes no time', { plannedTenths: 0 }],
    ['is not in UTC', { departAt: '2026-11-25T10:00:00-06:00' }],
  ])('%s: no go, no use', (_words, change) => {
    const { answer, use } = answerForFlight(trainer(), flightOf(change));
    expect(use).toBeNull();
    expect(answer).toMatchObject({ outcome: 'no-go', lines: [{ effect: 'bars', cite: 'house-caution' }] });
  });
});

describe('one reason, one line', () => {
  it('does not repeat under the equipment what is said under its discrepancy', () => {
    const aircraft = withBroken(trainer(), 'landing-light', { deferral: deferralOf() });
    const answer = answerForUse(aircraft, useOf({ light: 'night', purpose: 'instruction-for-hire' }));
    const lines = answer.lines.filter((line) => line.cite === '14cfr91.205(c)(4)');
    expect(lines).toMatchObject([{ effect: 'bars', about: { kind: 'discrepancy' } }]);
  });
});

describe('special flight permit (14 CFR 21.197(a)(1), 91.409(c))', () => {
  const lapsed = withAnnual({
    lastDone: known({
      on: '2025-10-14',
      ttisTenths: 43820,
      wasDueTenths: null,
      approvedByAuthorised: known(true),
    }),
  });
  const ferry = flightOf({
    purpose: 'to-inspection',
    crewOnly: known(true),
    specialFlightPermit: permitOf({ covers: ['annual', 'discrepancy-tachometer'] }),
  });

  it('lets a lapsed annual be flown to its inspection, within its words', () => {
    const { answer } = answerForFlight(lapsed, ferry);
    expect(answer.outcome).toBe('go-with-limits');
    expect(answer.lines.map((line) => line.cite)).toContain('14cfr91.409(c)');
    expect(answer.lines.some((line) => line.because.includes('Day VFR, direct.'))).toBe(true);
  });

  it('does not stand in for the registration', () => {
    const papers = lapsed.papers.map((paper) =>
      paper.kind === 'registration' ? { ...paper, aboard: known(false) } : paper,
    );
    expect(answerForFlight({ ...lapsed, papers }, ferry).answer.outcome).toBe('no-go');
  });

  it('lifts an inoperative item of the day list once, with the permit said once', () => {
    const { answer } = answerForFlight(withBroken(trainer(), 'tachometer'), ferry);
    expect(answer.outcome).toBe('go-with-limits');
    expect(answer.lines.filter((line) => line.because.endsWith('Day VFR, direct.'))).toHaveLength(1);
  });
});

describe('headline for a cell of the board', () => {
  const headlineOf = (aircraft: AircraftFacts) => headline(answerForFlight(aircraft, flightOf()).answer);

  it('names the discrepancy in its own words', () => {
    expect(headlineOf(withBroken(trainer(), 'landing-light', { deferral: deferralOf() }))).toBe(
      'Landing light inoperative',
    );
  });

  it('names what ran out and when', () => {
    const aircraft = withAnnual({
      lastDone: known({
        on: '2025-06-14',
        ttisTenths: 43820,
        wasDueTenths: null,
        approvedByAuthorised: known(true),
      }),
    });
    expect(headlineOf(aircraft)).toBe('Annual inspection ran out 30 Jun 2026');
  });

  it('names a missing fact', () => {
    expect(headlineOf(trainer({ ttisTenths: unknown('the total time in service') }))).toBe(
      'Not known: the total time in service',
    );
  });

  it('says in order when nothing bars or limits, and never more than fits', () => {
    expect(headlineOf(trainer())).toBe('In order');
    expect(headline({ outcome: 'no-go', lines: [] })).toBe('Nothing looked at');
    const long = withBroken(trainer(), 'taxi-light', { title: 'Taxi light '.repeat(12) });
    expect(headlineOf(long).length).toBeLessThanOrEqual(61);
  });
});

describe('names of the kinds of operation', () => {
  it('go with the answers in the order of the board', () => {
    expect(board(trainer()).map(({ kind }) => operationName(kind))).toEqual([
      'Day VFR, private',
      'Day VFR, for hire',
      'Night VFR, private',
      'Night VFR, for hire',
      'Day IFR, private',
      'Day IFR, for hire',
      'Night IFR, private',
      'Night IFR, for hire',
    ]);
  });
});
