import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AircraftFacts } from '@/lib/rules/aircraft';
import { answerForFlight } from '@/lib/rules/answer';
import { known } from '@/lib/rules/facts';
import type { ProposedFlight } from '@/lib/rules/operations';
import { answersOverTime, deciding, LANES, type Lane, type LaneOverTime } from '@/lib/rules/over-time';
import type { BookedFlight } from '@/lib/rules/spent-hours';
import type { ReferenceBase } from '@/lib/rules/use-of-flight';
import type { Outcome } from '@/lib/rules/verdict';
import { BASE, deferralOf, flightOf, trainer, withBroken } from '../fixtures/aircraft';
import { aircraftArbitrary } from '../fixtures/arbitrary-aircraft';

/**
 * The answer over time against the answer for a flight, which is worked out another way: `useOfFlight` looks at the light
 * of the whole flight and at two dates, and knows of no borders. Source: none, these are the promises of `over-time.ts`.
 *
 * A rule that comes to read more of the time of a flight than its light and its dates changes its answer inside a span,
 * and these tests turn red.
 */

const HOME: ReferenceBase = {
  ...BASE,
  transponderAirspace: known(true),
  adsbAirspace: known(false),
  controlledAirspace: known(true),
};
/** Where night is short, absent, or on another date than in UTC. 78 degrees north has polar night in November. */
const BASES: readonly ReferenceBase[] = [
  HOME,
  HOME,
  { ...HOME, latitudeDeg: 78.2, longitudeDeg: 15.6, zone: 'Arctic/Longyearbyen' },
  { ...HOME, latitudeDeg: -77.8, longitudeDeg: 166.7, zone: 'Antarctica/McMurdo' },
  { ...HOME, latitudeDeg: -36.8, longitudeDeg: 174.8, zone: 'Pacific/Auckland' },
];

const FROM_MS = Date.parse('2026-11-25T09:30:00Z');
const WINDOW_SECONDS = 2 * 86_400;
const at = (seconds: number, ms = 0) => new Date(FROM_MS + seconds * 1000 + ms).toISOString();
/** The same cases every time: how many of each outcome they meet is counted, and few cases can meet none. */
const COUNTED = { numRuns: 60, seed: 20261126 } as const;
/** These ask hundreds of answers a case; a busy machine takes its time. */
const PATIENCE_MS = 120_000;
const WINDOW = { from: at(0), until: at(WINDOW_SECONDS) };

const bookedArbitrary: fc.Arbitrary<readonly BookedFlight[]> = fc
  .array(
    fc.record({
      departs: fc.integer({ min: -7200, max: WINDOW_SECONDS }),
      lasts: fc.integer({ min: 600, max: 4 * 3600 }),
      plannedTenths: fc.integer({ min: 1, max: 40 }),
    }),
    { maxLength: 3 },
  )
  .map((flights) =>
    flights.map(({ departs, lasts, plannedTenths }, index) => ({
      id: `booked-${index}`,
      label: 'Booked',
      departAt: at(departs),
      arriveAt: at(departs + lasts),
      plannedTenths,
      state: 'planned' as const,
    })),
  );

/** Most random aircraft have something wrong on every lane: some without a fault, some with a light deferred in good order. */
const someWell = fc.oneof(
  { weight: 2, arbitrary: aircraftArbitrary },
  { weight: 1, arbitrary: fc.constant(trainer()) },
  {
    weight: 1,
    arbitrary: fc.constant(withBroken(trainer(), 'landing-light', { deferral: deferralOf() })),
  },
);

/** Near the limits of the arbitrary aircraft, so that booked hours cross them often. */
const aircraftNearLimits = fc
  .record({ aircraft: someWell, ttis: fc.integer({ min: 45560, max: 45605 }), near: fc.boolean() })
  .map(({ aircraft, ttis, near }) => (near ? { ...aircraft, ttisTenths: known(ttis) } : aircraft));

const cases = fc.record({
  aircraft: aircraftNearLimits,
  base: fc.constantFrom(...BASES),
  lane: fc.constantFrom(...LANES),
});

function laneOf(
  aircraft: AircraftFacts,
  base: ReferenceBase,
  lane: Lane,
  booked: readonly BookedFlight[] = [],
) {
  const [over] = answersOverTime(aircraft, base, WINDOW, booked, [lane]);
  if (over === undefined) throw new Error('a lane was asked for');
  return over;
}

/** The facts behind a column of the board, said anew here. */
const flightOn = (lane: Lane, base: ReferenceBase, times: Partial<ProposedFlight>): ProposedFlight =>
  flightOf({
    from: base,
    to: base,
    rules: lane.rules,
    purpose: lane.hire ? 'instruction-for-hire' : 'private',
    plannedTenths: 1,
    transponderAirspace: base.transponderAirspace,
    adsbAirspace: base.adsbAirspace,
    controlledAirspace: base.controlledAirspace,
    usesVor: known(lane.rules === 'IFR'),
    highestAltitudeFtMsl: known(9_999),
    trainingWithin50Nm: known(lane.hire),
    ...times,
  });

const spanHolding = ({ spans }: LaneOverTime, instant: string) =>
  spans.find(
    ({ from, until }) => Date.parse(from) <= Date.parse(instant) && Date.parse(instant) < Date.parse(until),
  );
const keyOf = ({ effect, cite, because }: { effect: string; cite: string; because: string }) =>
  `${effect} ${cite} ${because}`;

/** A flight of a thousandth of a second: it meets the light and the date of that instant, and no others. */
function directly(
  aircraft: AircraftFacts,
  base: ReferenceBase,
  lane: Lane,
  booked: readonly BookedFlight[],
  seconds: number,
) {
  const ms = FROM_MS + seconds * 1000;
  const sum = (flights: readonly BookedFlight[]) => flights.reduce((all, one) => all + one.plannedTenths, 0);
  const over = booked.filter(({ arriveAt }) => Date.parse(arriveAt) <= ms);
  const air = booked.filter((one) => Date.parse(one.departAt) <= ms && ms < Date.parse(one.arriveAt));
  const { ttisTenths } = aircraft;
  const facts: AircraftFacts = {
    ...aircraft,
    ttisTenths: ttisTenths.known ? known(ttisTenths.value + sum(over)) : ttisTenths,
  };
  const times = {
    departAt: at(seconds),
    arriveAt: at(seconds, 1),
    plannedTenths: Math.max(1, sum(air)),
  };
  return answerForFlight(facts, flightOn(lane, base, times)).answer;
}

describe('the answer over time', () => {
  it(
    'is at every instant what the rules answer for that instant',
    () => {
      const seen = new Map<Outcome, number>();
      fc.assert(
        fc.property(
          cases,
          bookedArbitrary,
          fc.array(fc.integer({ min: 0, max: WINDOW_SECONDS - 1 }), { minLength: 3, maxLength: 3 }),
          ({ aircraft, base, lane }, booked, instants) => {
            const over = laneOf(aircraft, base, lane, booked);
            // The seconds around each border as well as any others.
            const around = over.borders.flatMap((border) => {
              const second = Math.round((Date.parse(border.at) - FROM_MS) / 1000);
              return [second - 1, second].filter((one) => one >= 0 && one < WINDOW_SECONDS);
            });
            for (const seconds of [...instants, ...around]) {
              const answer = directly(aircraft, base, lane, booked, seconds);
              const span = spanHolding(over, at(seconds));
              expect(span?.answer.outcome, at(seconds)).toBe(answer.outcome);
              expect(span && deciding(span.answer).map(keyOf)).toEqual(deciding(answer).map(keyOf));
              seen.set(answer.outcome, (seen.get(answer.outcome) ?? 0) + 1);
            }
          },
        ),
        COUNTED,
      );
      for (const outcome of ['go', 'go-with-limits', 'no-go'] as const) {
        expect(seen.get(outcome) ?? 0, outcome).toBeGreaterThan(10);
      }
    },
    PATIENCE_MS,
  );

  it('tiles the window without gap or overlap, with one border between neighbours that differ', () => {
    fc.assert(
      fc.property(cases, bookedArbitrary, ({ aircraft, base, lane }, booked) => {
        const { spans, borders } = laneOf(aircraft, base, lane, booked);
        expect(Date.parse(spans[0]?.from ?? '')).toBe(Date.parse(WINDOW.from));
        expect(Date.parse(spans.at(-1)?.until ?? '')).toBe(Date.parse(WINDOW.until));
        expect(borders).toHaveLength(spans.length - 1);
        for (const [index, border] of borders.entries()) {
          const [before, after] = [spans[index], spans[index + 1]];
          expect([before?.until, after?.from]).toEqual([border.at, border.at]);
          expect(Date.parse(before?.from ?? '')).toBeLessThan(Date.parse(border.at));
          expect(border.events.length).toBeGreaterThan(0);
          const changes = border.comes.length + border.goes.length > 0;
          const light =
            before?.kind.light !== after?.kind.light ||
            before?.betweenSunsetAndSunrise !== after?.betweenSunsetAndSunrise;
          expect(changes || light).toBe(true);
          if (!changes) expect(before?.answer.outcome).toBe(after?.answer.outcome);
        }
      }),
      { numRuns: 60 },
    );
  });

  // Landing at the very midnight counts with the next date (strict), so arrivals are a second off whole minutes here.
  it(
    'a flight inside one lane is no go exactly if some span it meets is',
    () => {
      let [stopped, flown] = [0, 0];
      fc.assert(
        fc.property(
          cases,
          fc.array(
            fc.record({
              departs: fc.integer({ min: 0, max: WINDOW_SECONDS - 86_400 }),
              minutes: fc.integer({ min: 1, max: 20 * 60 }),
            }),
            { minLength: 4, maxLength: 4 },
          ),
          ({ aircraft, base, lane }, flights) => {
            const over = laneOf(aircraft, base, lane);
            for (const { departs, minutes } of flights) {
              const arrives = departs - (departs % 60) + minutes * 60 + 61;
              const times = { departAt: at(departs), arriveAt: at(arrives) };
              const { answer } = answerForFlight(aircraft, flightOn(lane, base, times));
              const met = over.spans.filter(
                ({ from, until }) =>
                  Date.parse(from) < Date.parse(times.arriveAt) &&
                  Date.parse(until) > Date.parse(times.departAt),
              );
              const bars = met.some((span) => span.answer.outcome === 'no-go');
              expect(answer.outcome === 'no-go', `${times.departAt} to ${times.arriveAt}`).toBe(bars);
              if (bars) stopped += 1;
              else flown += 1;
            }
          },
        ),
        COUNTED,
      );
      expect(Math.min(stopped, flown)).toBeGreaterThan(15);
    },
    PATIENCE_MS,
  );
});
