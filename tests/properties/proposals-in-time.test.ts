/**
 * What is proposed can be entered: the form refuses planned hours that do not fit between departure and arrival, and a
 * proposal that it refuses helps nobody. Property over every length and planned time that the form takes.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fewestTenths, mostTenths, plannedHoursProblem } from '@/lib/rules/planned-hours';
import { earlierReturn, leaveEarlier } from '@/lib/rules/proposals-in-time';
import type { Ask } from '@/lib/rules/proposals';
import { answerForFlight } from '@/lib/rules/answer';
import { flightOf, trainer } from '../fixtures/aircraft';

const MINUTE_MS = 60_000;
const DEPART = Date.parse('2026-11-25T20:00:00Z');
const at = (minutes: number) => new Date(DEPART + minutes * MINUTE_MS).toISOString();
const { answer } = answerForFlight(trainer(), flightOf());

/** A flight that the form takes, and the minute from which on it may no longer be out. */
const taken = fc.integer({ min: 2, max: 24 * 60 }).chain((minutes) =>
  fc.record({
    minutes: fc.constant(minutes),
    plannedTenths: fc.integer({
      min: fewestTenths(minutes * MINUTE_MS),
      max: mostTenths(minutes * MINUTE_MS),
    }),
    latest: fc.integer({ min: 1, max: minutes - 1 }),
  }),
);

/** May go when it is back by the latest minute. */
const backBy =
  (latest: number): Ask =>
  ({ flight }) =>
    flight !== undefined && Date.parse(flight.arriveAt) <= DEPART + latest * MINUTE_MS
      ? { outcome: 'go', answer }
      : null;

test('every earlier return and every earlier departure can be entered as it is proposed', () => {
  let proposed = 0;
  fc.assert(
    fc.property(taken, ({ minutes, plannedTenths, latest }) => {
      const flight = flightOf({ departAt: at(0), arriveAt: at(minutes), plannedTenths });
      expect(plannedHoursProblem(flight)).toBeNull();
      const ask = backBy(latest);
      const all = [...earlierReturn(flight, ask), ...leaveEarlier(flight, [], '2026-11-25T00:00:00Z', ask)];
      for (const one of all) {
        proposed += 1;
        const times = { departAt: flight.departAt, plannedTenths: flight.plannedTenths, ...one };
        expect(plannedHoursProblem(times)).toBeNull();
        expect(times.plannedTenths).toBeLessThanOrEqual(plannedTenths);
        expect(Date.parse(times.arriveAt) % MINUTE_MS).toBe(0);
      }
    }),
    // The same cases every time: how many find a proposal is counted.
    { numRuns: 2000, seed: 20261126 },
  );
  expect(proposed).toBeGreaterThan(500);
});

// 121 minutes hold at most 21 tenths, and 66 of them 11: in proportion, rounded up, it would be 12.
test('66 of 121 minutes at 2.1 h planned are 1.1 h', () => {
  const flight = flightOf({ departAt: at(0), arriveAt: at(121), plannedTenths: 21 });
  const [found] = earlierReturn(flight, backBy(66));
  expect(Date.parse(found?.arriveAt ?? '')).toBe(Date.parse(at(66)));
  expect(found?.plannedTenths).toBe(11);
});

// 90 minutes: at most 15 tenths, at least 8. Six minutes are a tenth.
test.each([
  [90, 16, 'too-many'],
  [90, 15, null],
  [90, 14, null],
  [90, 9, null],
  [90, 8, null],
  [90, 7, 'too-few'],
  [91, 16, null],
  [6, 1, null],
  [6, 2, 'too-many'],
  [7, 2, null],
  [13, 1, 'too-few'],
  [12, 1, null],
] as const)('%i minutes and %i tenths: %s', (minutes, plannedTenths, expected) => {
  expect(plannedHoursProblem({ departAt: at(0), arriveAt: at(minutes), plannedTenths })).toBe(expected);
});
