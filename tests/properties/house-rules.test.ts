import fc from 'fast-check';
import { describe, expect, expectTypeOf, it } from 'vitest';
import type { AircraftFacts } from '@/lib/rules/aircraft';
import { answerForFlight, answerForUse } from '@/lib/rules/answer';
import { known, unknown } from '@/lib/rules/facts';
import { withHouseRules, type HouseLine } from '@/lib/rules/house/house-lines';
import { rulesFor, type HouseFinding, type HouseRuleVersion } from '@/lib/rules/house/house-rule';
import { answersOverTime, deciding, LANES } from '@/lib/rules/over-time';
import { momentUse, type ReferenceBase } from '@/lib/rules/use-of-flight';
import type { Line, Outcome } from '@/lib/rules/verdict';
import { BASE, deferralOf, flightOf, permitOf, trainer, useOf, withBroken } from '../fixtures/aircraft';
import { aircraftArbitrary, sometimes } from '../fixtures/arbitrary-aircraft';
import { houseRule, houseRulesArbitrary } from '../fixtures/house-rules';

/**
 * The promise of the rules of the house: an operator may be stricter than the law and can never loosen it. Source: none, it
 * is ours; the law has no such rules.
 */

const RANK: Record<Outcome, number> = { 'no-go': 0, 'go-with-limits': 1, go: 2 };

/** Walked around, with the oil read, on the morning of the fixtures. */
const walked = (one: AircraftFacts): AircraftFacts => ({
  ...one,
  lastOil: known({ tenthsQuart: 70, at: '2026-11-25T14:00:00Z' }),
  lastWalkaround: known({ at: '2026-11-25T14:10:00Z' }),
});

/** Healthy ones, one with a light deferred in good order, and any. */
const someWell = fc.oneof(
  { weight: 2, arbitrary: aircraftArbitrary },
  { weight: 1, arbitrary: fc.constant(trainer()) },
  { weight: 1, arbitrary: fc.constant(withBroken(trainer(), 'landing-light', { deferral: deferralOf() })) },
);

const aircraft = fc
  .record({
    one: someWell,
    lastOil: sometimes<AircraftFacts['lastOil']>(
      fc.constant<AircraftFacts['lastOil']>(unknown('how much oil')),
      known({ tenthsQuart: 70, at: '2026-11-25T14:00:00Z' }),
    ),
  })
  .map(({ one, lastOil }) => ({ ...walked(one), lastOil }));

const flight = fc
  .record({
    departAt: fc.constantFrom('2026-11-25T16:00:00Z', '2026-11-25T21:50:00Z', '2026-11-26T00:30:00Z'),
    rules: fc.constantFrom('VFR' as const, 'IFR' as const),
    purpose: fc.constantFrom(
      'instruction-for-hire' as const,
      'student-solo' as const,
      'private' as const,
      'to-inspection' as const,
    ),
    permit: sometimes(
      fc.constant(permitOf({ covers: ['annual', 'hundred-hour', 'discrepancy-1'] })),
      null,
      3,
    ),
  })
  .map(({ permit, ...rest }) =>
    flightOf({
      ...rest,
      arriveAt: new Date(Date.parse(rest.departAt) + 90 * 60_000).toISOString(),
      specialFlightPermit: permit,
    }),
  );

const cases = fc.record({ aircraft, flight, rules: houseRulesArbitrary });

describe('rules of the house', () => {
  it('cannot be written to support or to note: the types have only bars and limits', () => {
    expectTypeOf<HouseFinding['effect']>().toEqualTypeOf<'bars' | 'limits'>();
    expectTypeOf<HouseLine['effect']>().toEqualTypeOf<'bars' | 'limits'>();
  });

  it('never make an answer better, leave every line of the law as it was, and add only marked bars and limits', () => {
    const worse = new Map<string, number>();
    fc.assert(
      fc.property(cases, ({ aircraft: one, flight: proposed, rules }) => {
        const law = answerForFlight({ ...one, houseRules: [] }, proposed).answer;
        const both = answerForFlight({ ...one, houseRules: rules }, proposed).answer;
        expect(RANK[both.outcome]).toBeLessThanOrEqual(RANK[law.outcome]);
        expect(both.lines.filter(({ house }) => house === undefined)).toEqual(law.lines);
        for (const line of both.lines.filter(({ house }) => house !== undefined)) {
          expect(['bars', 'limits']).toContain(line.effect);
          expect(line.cite).toBe('house-rule');
          expect(line.because.trim()).not.toBe('');
          if (line.missing !== undefined) expect(line.effect).toBe('bars');
        }
        const change = `${law.outcome} ${both.outcome}`;
        worse.set(change, (worse.get(change) ?? 0) + 1);
      }),
      { numRuns: 800, seed: 20261127 },
    );
    // The property is about something: rules do stop flights that the law lets fly.
    for (const change of ['go no-go', 'go-with-limits no-go', 'go go-with-limits', 'go go']) {
      expect(worse.get(change) ?? 0, change).toBeGreaterThan(5);
    }
  });

  it('never make an answer better when one more is set', () => {
    fc.assert(
      fc.property(cases, ({ aircraft: one, flight: proposed, rules }) => {
        const outcomes = rules.map(
          (_, at) =>
            RANK[answerForFlight({ ...one, houseRules: rules.slice(0, at + 1) }, proposed).answer.outcome],
        );
        expect(outcomes).toEqual(outcomes.toSorted((a, b) => b - a));
      }),
      { numRuns: 300 },
    );
  });

  it('leave no lines of the law at all a no go', () => {
    const limit = houseRule({ kind: 'limit-in-own-words', purposes: ['private'], words: 'By day only.' });
    const use = useOf({ purpose: 'private' });
    const one = trainer({ houseRules: [limit] });
    const supports: Line = { effect: 'supports', cite: '14cfr91.7(a)', because: 'In order.' };
    expect(withHouseRules([], one, use).outcome).toBe('no-go');
    expect(withHouseRules([supports], one, use).outcome).toBe('go-with-limits');
  });

  it('say the same in whatever order they are listed', () => {
    fc.assert(
      fc.property(
        cases.chain((given) =>
          fc.record({
            given: fc.constant(given),
            shuffled: fc.shuffledSubarray(given.rules, {
              minLength: given.rules.length,
              maxLength: given.rules.length,
            }),
          }),
        ),
        ({ given, shuffled }) => {
          const ask = (houseRules: typeof shuffled) =>
            answerForFlight({ ...given.aircraft, houseRules }, given.flight);
          expect(ask(shuffled)).toEqual(ask(given.rules));
        },
      ),
      { numRuns: 300 },
    );
  });

  it('do nothing once they are ended, and nothing to aircraft they are not for', () => {
    fc.assert(
      fc.property(
        cases,
        fc.integer({ min: 1, max: 9 }),
        fc.constantFrom('ended' as const, 'other aircraft' as const),
        ({ aircraft: one, flight: proposed, rules }, version, why) => {
          const kept = rules.flatMap(({ ruleId, setting, by, why: because }): HouseRuleVersion[] => {
            const row = { ruleId, setting, by, why: because, at: '2026-03-03T18:00:00Z' };
            const reach = why === 'ended' ? null : { aircraftIds: ['another'], typeIds: ['another-type'] };
            const first = { ...row, version, reach, holds: true };
            return why === 'ended' ? [{ ...first, version: version + 1, holds: false }, first] : [first];
          });
          const houseRules = rulesFor(kept, { id: one.id, typeId: 'type-1' }, () => '2026-03-03');
          expect(houseRules).toEqual([]);
          expect(answerForFlight({ ...one, houseRules }, proposed)).toEqual(
            answerForFlight({ ...one, houseRules: [] }, proposed),
          );
        },
      ),
      { numRuns: 200 },
    );
  });

  it('bar all the same under a special flight permit, to the last word', () => {
    fc.assert(
      fc.property(cases, ({ aircraft: one, flight: proposed, rules }) => {
        const permit = permitOf({ covers: one.discrepancies.map(({ id }) => id) });
        // A rule about limits bars more under a permit, which has limits; all others say the same.
        const others = rules.filter(({ setting }) => setting.kind !== 'solo-never-with-limits');
        const ofHouse = (specialFlightPermit: typeof permit | null) =>
          answerForFlight(
            { ...one, houseRules: others },
            { ...proposed, specialFlightPermit },
          ).answer.lines.filter(({ house }) => house !== undefined);
        expect(ofHouse(permit)).toEqual(ofHouse(null));
      }),
      { numRuns: 300 },
    );
  });

  it('a fact taken from them never improves the answer', () => {
    fc.assert(
      fc.property(cases, ({ aircraft: one, flight: proposed, rules }) => {
        const all = { ...one, houseRules: rules };
        const before = answerForFlight(all, proposed).answer;
        for (const less of [
          { ...all, lastOil: unknown('the oil') },
          { ...all, lastWalkaround: unknown('the walkaround') },
        ]) {
          expect(RANK[answerForFlight(less, proposed).answer.outcome]).toBeLessThanOrEqual(
            RANK[before.outcome],
          );
        }
      }),
      { numRuns: 200 },
    );
  });
});

const HOME: ReferenceBase = {
  ...BASE,
  transponderAirspace: known(true),
  adsbAirspace: known(false),
  controlledAirspace: known(true),
};
const FROM_MS = Date.parse('2026-11-25T09:30:00Z');
const HOURS = 48;
const WINDOW = {
  from: new Date(FROM_MS).toISOString(),
  until: new Date(FROM_MS + HOURS * 3_600_000).toISOString(),
};

describe('rules of the house over time', () => {
  it('change at no instant at which the answer over time has no border', () => {
    let aged = 0;
    fc.assert(
      fc.property(
        fc.record({ aircraft: someWell, rules: houseRulesArbitrary, lane: fc.constantFrom(...LANES) }),
        fc.array(fc.integer({ min: 0, max: HOURS * 3_600_000 - 1 }), { minLength: 4, maxLength: 4 }),
        ({ aircraft: one, rules, lane }, instants) => {
          const facts = { ...walked(one), houseRules: rules };
          const [over] = answersOverTime(facts, HOME, WINDOW, [], [lane]);
          if (!over) throw new Error('a lane was asked for');
          // The thousandths of a second around each border as well as any others.
          const around = over.borders.flatMap(({ at }) => [Date.parse(at) - 1, Date.parse(at)]);
          aged += over.borders.filter(({ events }) =>
            events.some(({ what }) => what === 'reading-too-old'),
          ).length;
          for (const ms of [...instants.map((offset) => FROM_MS + offset), ...around]) {
            const span = over.spans.find(
              ({ from, until }) => Date.parse(from) <= ms && ms < Date.parse(until),
            );
            if (!span) continue;
            const on = new Intl.DateTimeFormat('en-CA', { timeZone: BASE.zone }).format(ms);
            const use = momentUse(span.kind, HOME, {
              at: new Date(ms).toISOString(),
              on,
              betweenSunsetAndSunrise: span.betweenSunsetAndSunrise,
              sunsetAt: null,
              plannedTenths: 1,
            });
            const answer = answerForUse(facts, use);
            expect(span.answer.outcome, use.departAt).toBe(answer.outcome);
            const ofHouse = (lines: readonly Line[]) =>
              lines.filter(({ house }) => house).map(({ because }) => because);
            // A limit that names a sunset is worded by the span; the lines of the house name none but through a limit.
            if (!rules.some(({ setting }) => setting.kind === 'solo-never-with-limits')) {
              expect(ofHouse(deciding(span.answer))).toEqual(ofHouse(deciding(answer)));
            }
          }
        },
      ),
      { numRuns: 60, seed: 20261127 },
    );
    expect(aged).toBeGreaterThan(10);
  }, 120_000);

  it('a flight in the air keeps the age its reading had at departure', () => {
    // Read at 14:00Z and good for four hours: a flight that departs at 17:00Z and ends at 19:00Z meets no border at 18:00Z.
    const facts = walked(
      trainer({
        houseRules: [houseRule({ kind: 'oil-minimum', leastTenthsQuart: 60, oldestHours: 4 })],
      }),
    );
    const flight = {
      id: 'f',
      label: 'Lesson',
      departAt: '2026-11-25T17:00:00Z',
      arriveAt: '2026-11-25T19:00:00Z',
      plannedTenths: 15,
      state: 'released' as const,
    };
    const outcomeAt = (booked: readonly (typeof flight)[], at: string) =>
      answersOverTime(facts, HOME, WINDOW, booked, [{ rules: 'VFR', hire: false }])[0]?.spans.find(
        ({ from, until }) => Date.parse(from) <= Date.parse(at) && Date.parse(at) < Date.parse(until),
      )?.answer.outcome;
    expect(outcomeAt([], '2026-11-25T18:00:00Z')).toBe('go');
    expect(outcomeAt([], '2026-11-25T18:00:00.001Z')).toBe('no-go');
    expect(outcomeAt([flight], '2026-11-25T18:30:00Z')).toBe('go');
    expect(outcomeAt([flight], '2026-11-25T19:00:00Z')).toBe('no-go');
  });
});
