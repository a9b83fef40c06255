import { describe, expect, it } from 'vitest';
import { answerForFlight } from '../../lib/rules/answer';
import { known, unknown } from '../../lib/rules/facts';
import { afterFlights, type BookedFlight } from '../../lib/rules/spent-hours';
import { flightOf, requirementRow, trainer, trainerRequirements } from '../fixtures/aircraft';

// Counting the hours of earlier flights: common practice, no source. The limit of the examples is 91.409(b).
const booked = (id: string, departAt: string, plannedTenths: number): BookedFlight => ({
  id,
  label: 'R. Fernhollow',
  departAt,
  arriveAt: new Date(Date.parse(departAt) + 7_200_000).toISOString(),
  plannedTenths,
  state: 'planned',
});
const MORNING = booked('morning', '2026-11-25T15:00:00Z', 15);
const NOON = booked('noon', '2026-11-25T18:00:00Z', 12);

describe('hours of booked flights', () => {
  // 4512.3 h now. Counted from the departure on (strict), so at the very departure they are not yet.
  it.each([
    ['a second before the departure', '2026-11-25T14:59:59Z', 45123, []],
    ['at the departure', '2026-11-25T15:00:00Z', 45123, []],
    ['a second after it: all of its hours', '2026-11-25T15:00:01Z', 45138, ['morning']],
    ['after both', '2026-11-25T23:00:00.000Z', 45150, ['morning', 'noon']],
  ])('%s', (_when, before, ttis, counted) => {
    const after = afterFlights(trainer(), [NOON, MORNING], before);
    expect(after.facts.ttisTenths).toEqual(known(ttis));
    expect(after.spentTenths).toBe(ttis - 45123);
    expect(after.counted.map(({ id }) => id).sort()).toEqual(counted);
  });

  // 91.409(b): due at 4515.0 h in this example, 2.7 h from 4512.3 h.
  it.each([
    ['a tenth to spare', 11, 'go'],
    ['exactly', 12, 'go'],
    ['a tenth over', 13, 'no-go'],
  ])('a later flight for hire fits after an earlier one: %s', (_name, plannedTenths, outcome) => {
    const aircraft = trainer({
      requirements: trainerRequirements().map((row) =>
        row.kind === 'hundred-hour'
          ? requirementRow('hundred-hour', '100-hour inspection', '2026-10-20', 44150)
          : row,
      ),
    });
    const flight = flightOf({
      departAt: '2026-11-25T19:00:00Z',
      arriveAt: '2026-11-25T20:30:00Z',
      purpose: 'instruction-for-hire',
      plannedTenths,
    });
    const { facts } = afterFlights(aircraft, [MORNING], flight.departAt);
    expect(answerForFlight(facts, flight).answer.outcome).toBe(outcome);
  });

  it('leaves time in service unknown when it is unknown', () => {
    const aircraft = trainer({ ttisTenths: unknown('the total time in service of N0417W') });
    const after = afterFlights(aircraft, [MORNING], NOON.departAt);
    expect(after.facts.ttisTenths).toEqual(aircraft.ttisTenths);
    expect(after.spentTenths).toBe(15);
  });

  // A record of more hours than the aircraft has is in doubt (91.417(a)(2)(i)); flying on does not mend it.
  it.each([
    ['a tenth less than it will have', 45137],
    ['exactly what it will have', 45138],
    ['a tenth more', 45139],
  ])('a record of more hours than the aircraft has now bars before and after: %s', (_name, doneAt) => {
    const aircraft = trainer({
      requirements: trainerRequirements().map((row) =>
        row.kind === 'annual' ? requirementRow('annual', 'Annual inspection', '2026-03-10', doneAt) : row,
      ),
    });
    const barred = (facts: typeof aircraft) =>
      answerForFlight(facts, flightOf()).answer.lines.some(
        ({ effect, about }) => effect === 'bars' && about?.id === 'annual',
      );
    expect(barred(aircraft)).toBe(true);
    expect(barred(afterFlights(aircraft, [MORNING], NOON.departAt).facts)).toBe(true);
  });

  it('changes nothing it was given, and nothing without a flight', () => {
    const aircraft = trainer();
    const before = structuredClone(aircraft);
    afterFlights(aircraft, [MORNING], NOON.departAt);
    expect(aircraft).toEqual(before);
    expect(afterFlights(aircraft, [], NOON.departAt).facts).toBe(aircraft);
  });

  it('refuses an instant that is none', () => {
    expect(() => afterFlights(trainer(), [MORNING], 'tomorrow')).toThrow(RangeError);
  });
});
