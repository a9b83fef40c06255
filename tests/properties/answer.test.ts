import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AircraftFacts } from '@/lib/rules/aircraft';
import { answerForFlight } from '@/lib/rules/answer';
import { known } from '@/lib/rules/facts';
import { LAW } from '@/lib/rules/law';
import type { ProposedFlight } from '@/lib/rules/operations';
import type { Outcome } from '@/lib/rules/verdict';
import { AWAY, BASE, flightOf, permitOf } from '../fixtures/aircraft';
import { aircraftArbitrary, discrepancyWith, sometimes } from '../fixtures/arbitrary-aircraft';
import { knownPaths, withoutFact } from '../fixtures/facts-taken-away';

/**
 * What must hold for every aircraft and every flight, whatever the paragraphs say. Source: none, these are the
 * promises of the core itself: unknown is never go, a worse aircraft never gets a better answer, and the order in which
 * facts are kept decides nothing.
 */

const RANK: Record<Outcome, number> = { 'no-go': 0, 'go-with-limits': 1, go: 2 };
const outcomeOf = ({ aircraft, flight }: Case): Outcome => answerForFlight(aircraft, flight).answer.outcome;

interface Case {
  readonly aircraft: AircraftFacts;
  readonly flight: ProposedFlight;
}

const knownBoolean = fc.boolean().map(known);
const flightArbitrary: fc.Arbitrary<ProposedFlight> = fc
  .record({
    departAt: fc.constantFrom('2026-11-25T16:00:00Z', '2026-11-25T21:50:00Z', '2026-11-26T00:30:00Z'),
    rules: sometimes(fc.constant('IFR' as const), 'VFR' as const),
    purpose: fc.constantFrom(
      'instruction-for-hire',
      'carriage-for-hire',
      'student-solo',
      'private',
      'check-flight',
      'to-inspection',
    ),
    plannedTenths: fc.integer({ min: 1, max: 15 }),
    overWaterBeyondGlide: sometimes(knownBoolean, known(false)),
    transponderAirspace: knownBoolean,
    adsbAirspace: sometimes(knownBoolean, known(false)),
    controlledAirspace: knownBoolean,
    usesVor: knownBoolean,
    trainingWithin50Nm: knownBoolean,
    crewOnly: knownBoolean,
    atcTransponder: fc.constantFrom('not-asked', 'granted', 'refused'),
    atcAdsb: fc.constantFrom('not-asked', 'granted', 'refused'),
    continuingToRepair: fc.boolean(),
    away: fc.boolean(),
    permit: sometimes(
      fc
        .record({
          covers: fc.subarray(['annual', 'hundred-hour']),
          goodThrough: sometimes(fc.constant('2026-11-24'), '2026-11-30'),
          inspection: fc.constantFrom('not-asked' as const, 'signed' as const, 'owed' as const),
          used: sometimes(fc.constant(true), false),
        })
        .map((said) => permitOf({ ...said, limits: ['Direct to the base.'] })),
      null,
    ),
  })
  .map(({ away, permit, departAt, ...rest }) =>
    flightOf({
      ...rest,
      departAt,
      arriveAt: new Date(Date.parse(departAt) + 90 * 60_000).toISOString(),
      from: away ? AWAY : BASE,
      specialFlightPermit: permit,
    }),
  );

/** A permit names some of the aircraft's write-ups, by the bits of `named`. */
const cases: fc.Arbitrary<Case> = fc
  .record({ aircraft: aircraftArbitrary, flight: flightArbitrary, named: fc.nat({ max: 255 }) })
  .map(({ aircraft, flight, named }) => {
    const permit = flight.specialFlightPermit;
    const ids = aircraft.discrepancies.filter((_, at) => (named >> at) % 2 === 1).map(({ id }) => id);
    return {
      aircraft,
      flight: {
        ...flight,
        specialFlightPermit: permit && { ...permit, covers: [...permit.covers, ...ids] },
      },
    };
  });

describe('for every aircraft and every flight', () => {
  it('reaches all three outcomes, so that the properties below are about something', () => {
    const seen = new Map<Outcome, number>();
    for (const sample of fc.sample(cases, { numRuns: 300, seed: 20261125 })) {
      const outcome = outcomeOf(sample);
      seen.set(outcome, (seen.get(outcome) ?? 0) + 1);
    }
    for (const outcome of ['go', 'go-with-limits', 'no-go'] as const) {
      expect(seen.get(outcome) ?? 0).toBeGreaterThan(15);
    }
  });

  it('a fact taken away never improves the answer', () => {
    fc.assert(
      fc.property(cases, fc.nat(), (given, pick) => {
        const paths = knownPaths(given);
        const path = paths[pick % paths.length] ?? [];
        const poorer = withoutFact(given, path);
        expect(RANK[outcomeOf(poorer)], path.join('.')).toBeLessThanOrEqual(RANK[outcomeOf(given)]);
      }),
      { numRuns: 1000 },
    );
  });

  it('one more open discrepancy never improves the answer', () => {
    fc.assert(
      fc.property(cases, discrepancyWith(fc.constant(null)), (given, more) => {
        const aircraft = {
          ...given.aircraft,
          discrepancies: [...given.aircraft.discrepancies, { ...more, id: 'one-more' }],
        };
        expect(RANK[outcomeOf({ ...given, aircraft })]).toBeLessThanOrEqual(RANK[outcomeOf(given)]);
      }),
      { numRuns: 400 },
    );
  });

  it('a longer time in the air never improves the answer', () => {
    fc.assert(
      fc.property(cases, fc.integer({ min: 1, max: 30 }), (given, more) => {
        const flight = { ...given.flight, plannedTenths: given.flight.plannedTenths + more };
        expect(RANK[outcomeOf({ ...given, flight })]).toBeLessThanOrEqual(RANK[outcomeOf(given)]);
      }),
      { numRuns: 300 },
    );
  });

  // 21.199(a): it is issued for the ways in which the aircraft does not comply that were named.
  it('a permit never improves a bar it does not name, and never makes a plain go', () => {
    fc.assert(
      fc.property(cases, ({ aircraft, flight }) => {
        const permit =
          flight.specialFlightPermit ??
          permitOf({ covers: aircraft.discrepancies.slice(0, 1).map(({ id }) => id) });
        const without = answerForFlight(aircraft, { ...flight, specialFlightPermit: null }).answer;
        const under = answerForFlight(aircraft, { ...flight, specialFlightPermit: permit }).answer;
        const named = (id: string | undefined) =>
          id !== undefined &&
          (permit.covers.includes(id) ||
            aircraft.discrepancies.some(
              (d) => (d.deferral?.id === id || d.equipmentId === id) && permit.covers.includes(d.id),
            ));
        for (const line of without.lines.filter(({ effect }) => effect === 'bars')) {
          if (named(line.about?.id) && line.missing === undefined) continue;
          expect(under.lines).toContainEqual(line);
        }
        expect(under.outcome).not.toBe('go');
      }),
      { numRuns: 500 },
    );
  });

  it('the order in which facts are kept never matters, to the last word', () => {
    const shuffled = <T>(rows: readonly T[]) =>
      fc.shuffledSubarray([...rows], { minLength: rows.length, maxLength: rows.length });
    const withShuffle = cases.chain((given) =>
      fc.record({
        given: fc.constant(given),
        other: fc
          .record({
            equipment: shuffled(given.aircraft.equipment),
            papers: shuffled(given.aircraft.papers),
            requirements: shuffled(given.aircraft.requirements),
            discrepancies: shuffled(given.aircraft.discrepancies),
            work: shuffled(given.aircraft.work),
          })
          .map((lists) => ({ ...given.aircraft, ...lists })),
      }),
    );
    fc.assert(
      fc.property(withShuffle, ({ given, other }) => {
        expect(answerForFlight(other, given.flight)).toEqual(answerForFlight(given.aircraft, given.flight));
      }),
      { numRuns: 300 },
    );
  });

  it('every line cites a paragraph of the register, and a missing fact always bars', () => {
    fc.assert(
      fc.property(cases, fc.nat(), (given, pick) => {
        const paths = knownPaths(given);
        const { aircraft, flight } = withoutFact(given, paths[pick % paths.length] ?? []);
        const { outcome, lines } = answerForFlight(aircraft, flight).answer;
        expect(lines.length).toBeGreaterThan(0);
        for (const line of lines) {
          expect(LAW).toHaveProperty([line.cite]);
          expect(line.because.trim()).not.toBe('');
          if (line.missing !== undefined) expect(line.effect).toBe('bars');
        }
        if (outcome !== 'no-go') expect(lines.some((line) => line.missing !== undefined)).toBe(false);
      }),
      { numRuns: 500 },
    );
  });

  it('answers the same facts the same way, and changes none of them', () => {
    fc.assert(
      fc.property(cases, (given) => {
        const before = structuredClone(given);
        const first = answerForFlight(given.aircraft, given.flight);
        expect(answerForFlight(given.aircraft, given.flight)).toEqual(first);
        expect(given).toEqual(before);
      }),
      { numRuns: 200 },
    );
  });
});
