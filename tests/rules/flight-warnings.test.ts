import { describe, expect, it } from 'vitest';
import { Temporal } from 'temporal-polyfill';
import type { AircraftFacts, RequirementFacts, RequirementKind } from '../../lib/rules/aircraft';
import { answerForFlight } from '../../lib/rules/answer';
import { known, unknown } from '../../lib/rules/facts';
import { warningsFor } from '../../lib/rules/flight-warnings';
import type { Place, ProposedFlight } from '../../lib/rules/operations';
import type { BookedFlight } from '../../lib/rules/spent-hours';
import { sunTimes } from '../../lib/rules/sun';
import { AWAY, BASE, flightOf, requirementRow, trainer, trainerRequirements } from '../fixtures/aircraft';

// 1.1 (night), 91.209(a)(1) (sunset), 91.409(b) (100 hours). Overlaps and hours for later flights: common practice, no source.
const SUN = sunTimes('2026-11-25', BASE);
const second = (at: string | null | undefined, seconds: number): string =>
  Temporal.Instant.from(at ?? '')
    .add({ seconds })
    .toString();

function warnings(aircraft: AircraftFacts, flight: ProposedFlight, booked: readonly BookedFlight[] = []) {
  return warningsFor(aircraft, flight, answerForFlight(aircraft, flight).use, booked);
}
const kinds = (...of: Parameters<typeof warnings>) => warnings(...of).map(({ kind }) => kind);
const booking = (departAt: string, arriveAt: string, plannedTenths = 10): BookedFlight => ({
  id: departAt,
  label: 'R. Fernhollow',
  departAt,
  arriveAt,
  plannedTenths,
  state: 'planned',
});
const hundredHourIn = (left: number): AircraftFacts =>
  trainer({
    requirements: trainerRequirements().map((row) =>
      row.kind === 'hundred-hour'
        ? requirementRow('hundred-hour', '100-hour inspection', '2026-10-20', 45123 + left - 1000)
        : row,
    ),
  });

describe('light', () => {
  const until = (arriveAt: string) => flightOf({ departAt: '2026-11-25T21:00:00Z', arriveAt });

  it.each([
    ['lands a second before sunset', second(SUN.sunset, -1), []],
    ['lands at sunset', second(SUN.sunset, 0), []],
    ['lands a second after sunset', second(SUN.sunset, 1), ['lands-after-sunset']],
    ['lands a second before night begins', second(SUN.civilDusk, -1), ['lands-after-sunset']],
    ['lands as night begins', second(SUN.civilDusk, 0), ['lands-after-sunset']],
    ['lands a second later', second(SUN.civilDusk, 1), ['runs-into-night']],
  ])('%s', (_name, arriveAt, expected) => expect(kinds(trainer(), until(arriveAt))).toEqual(expected));

  it('says when night begins, and where first', () => {
    const [warning] = warnings(trainer(), { ...until('2026-11-26T00:00:00Z'), to: AWAY });
    expect(warning?.because).toMatch(/^Runs into night\. Night begins 17:0\d at 0W[AC]\.$/);
    expect(warning?.cite).toBe('14cfr1.1(night)');
  });

  it('does not warn of the dark in which it departs', () => {
    const night = flightOf({ departAt: '2026-11-26T01:00:00Z', arriveAt: '2026-11-26T02:00:00Z' });
    expect(kinds(trainer(), night)).toEqual([]);
  });
});

/** A place nine degrees of longitude away: there the sun sets 36 minutes sooner (east) or later (west). */
const placeAt = (ident: string, longitudeDeg: number): Place => ({ ...BASE, ident, longitudeDeg });
const EAST = placeAt('0WE', BASE.longitudeDeg + 9);
const WEST = placeAt('0WW', BASE.longitudeDeg - 9);

// 1.1 and 91.209(a)(1): a flight is warned of the dark it ends in, whatever the light was there when it left.
describe('light along a parallel', () => {
  const between = (from: Place, to: Place, departAt: string, hours: number) =>
    flightOf({ from, to, departAt, arriveAt: second(departAt, hours * 3600) });

  it('eastward: it leaves a minute before sunset, and where it lands it is dark already', () => {
    const flight = between(BASE, EAST, second(SUN.sunset, -60), 2);
    expect(answerForFlight(trainer(), flight).use?.light).toBe('night');
    const [warning, ...more] = warnings(trainer(), flight);
    expect(more).toEqual([]);
    expect(warning?.kind).toBe('runs-into-night');
    expect(warning?.because).toBe('Runs into night. At 0WE it is night already when this flight departs.');
  });

  it('eastward: the sun is down where it lands before it leaves, and it is not night yet', () => {
    const east = sunTimes('2026-11-25', EAST);
    const departAt = second(east.sunset, 60);
    const flight = { ...between(BASE, EAST, departAt, 0), arriveAt: second(departAt, 600) };
    const [warning, ...more] = warnings(trainer(), flight);
    expect(more).toEqual([]);
    expect(warning?.kind).toBe('lands-after-sunset');
    expect(warning?.because).toContain('At 0WE the sun is down already when this flight departs.');
  });

  // The sun sets at 0WE first, wherever the flight began.
  it.each([
    ['to', BASE, EAST],
    ['from', EAST, BASE],
  ])('the dark that comes first is named, %s the place in the east', (_name, from, to) => {
    const east = sunTimes('2026-11-25', EAST);
    const departAt = second(east.sunset, -3600);
    const clock = (at: string | null) =>
      Temporal.Instant.from(at ?? '')
        .toZonedDateTimeISO(EAST.zone)
        .toPlainTime()
        .toString()
        .slice(0, 5);
    const [night] = warnings(trainer(), between(from, to, departAt, 3));
    expect(night?.kind).toBe('runs-into-night');
    expect(night?.because).toContain(`${clock(east.civilDusk)} at 0WE`);
    const untilSunset = { ...between(from, to, departAt, 0), arriveAt: second(east.sunset, 120) };
    const [sunset] = warnings(trainer(), untilSunset);
    expect(sunset).toMatchObject({ kind: 'lands-after-sunset', cite: '14cfr91.209(a)(1)' });
    expect(sunset?.because).toContain(`${clock(east.sunset)} at 0WE`);
  });

  it('westward: it leaves in daylight and lands after dusk, or leaves in the dark and was meant so', () => {
    const intoNight = between(BASE, WEST, second(SUN.sunset, -60), 2);
    expect(kinds(trainer(), intoNight)).toEqual(['runs-into-night']);
    expect(warnings(trainer(), intoNight)[0]?.because).toMatch(/Night begins 17:0\d at 0WC\.$/);
    expect(kinds(trainer(), between(BASE, WEST, second(SUN.civilDusk, 60), 2))).toEqual([]);
  });
});

describe('inspections', () => {
  // Private flights do not need the 100-hour (91.409(b)); the hours past it still count against the next one.
  it.each([
    ['a tenth before it', 14, []],
    ['exactly', 13, []],
    ['a tenth past it', 12, ['runs-past-inspection']],
  ])('a private flight of 1.3 h ends %s', (_name, left, expected) => {
    const aircraft = hundredHourIn(left);
    expect(answerForFlight(aircraft, flightOf()).answer.outcome).toBe('go');
    expect(kinds(aircraft, flightOf())).toEqual(expected);
  });

  it('counts the hours of everything booked before it, plans too', () => {
    const before = booking('2026-11-25T13:00:00Z', '2026-11-25T15:00:00Z', 1);
    expect(kinds(hundredHourIn(13), flightOf(), [before])).toEqual(['runs-past-inspection']);
  });

  // 91.409(a): through the last day of November; 06:00 UTC is midnight at the base.
  it.each([
    ['a second before midnight', '2026-12-01T05:59:59Z', []],
    ['at midnight: the next date', '2026-12-01T06:00:00Z', ['runs-past-inspection']],
    ['a second after', '2026-12-01T06:00:01Z', ['runs-past-inspection']],
  ])('an annual that runs out with the month, a flight that ends %s', (_name, arriveAt, expected) => {
    const aircraft = trainer({
      requirements: trainerRequirements().map((row) =>
        row.kind === 'annual' ? requirementRow('annual', row.name, '2025-11-02', 43820) : row,
      ),
    });
    const flight = flightOf({ departAt: '2026-12-01T04:00:00Z', arriveAt });
    expect(kinds(aircraft, flight)).toEqual(expected);
  });

  // 91.171: only for IFR by VOR. Done 10 November, good through 10 December.
  it.each([
    ['VFR', []],
    ['IFR', ['runs-past-inspection']],
  ] as const)('a VOR check that has run out, under %s', (rules, expected) => {
    const flight = flightOf({ rules, departAt: '2026-12-11T16:00:00Z', arriveAt: '2026-12-11T17:30:00Z' });
    expect(kinds(trainer(), flight)).toEqual(expected);
  });
});

describe('which inspections are watched', () => {
  const late = (kind: RequirementKind, change: Partial<RequirementFacts> = {}) =>
    trainer({
      requirements: [
        requirementRow(kind, 'Invented check', '2020-01-01', 40000, {
          intervalMonths: 12,
          intervalTenths: 100,
          ...change,
        }),
      ],
    });
  // The paragraph of each kind: 91.409(a) and (b), 91.411(a)(1), 91.413(a), 91.207(d), 91.171(a)(2), 39.7, 91.403(c).
  it.each<[RequirementKind, string, string[], string[]]>([
    ['annual', '14cfr91.409(a)', ['VFR', 'IFR'], ['date']],
    ['hundred-hour', '14cfr91.409(b)', ['VFR', 'IFR'], ['hours']],
    ['static-and-altimeter', '14cfr91.411(a)(1)', ['IFR'], ['date']],
    ['transponder', '14cfr91.413(a)', ['VFR', 'IFR'], ['date']],
    ['elt-inspection', '14cfr91.207(d)', ['VFR', 'IFR'], ['date']],
    ['vor-check', '14cfr91.171(a)(2)', ['IFR'], ['date']],
    ['directive', '14cfr39.7', ['VFR', 'IFR'], ['date', 'hours']],
    ['life-limit', '14cfr91.403(c)', ['VFR', 'IFR'], ['date', 'hours']],
  ])('%s, under %s', (kind, cite, rules, measures) => {
    for (const under of ['VFR', 'IFR'] as const) {
      const found = warnings(late(kind), flightOf({ rules: under }));
      expect(found.map((warning) => [warning.kind, warning.cite])).toEqual(
        rules.includes(under) ? measures.map(() => ['runs-past-inspection', cite]) : [],
      );
    }
    expect(kinds(late(kind, { binding: false }), flightOf({ rules: 'IFR' }))).toEqual([]);
  });

  it('what binds nobody leaves too few hours for nobody', () => {
    const later = booking('2026-11-25T20:00:00Z', '2026-11-25T21:30:00Z', 10);
    const near = { lastDone: requirementRow('directive', '', '2026-11-01', 45045).lastDone };
    const row = { ...near, intervalMonths: null };
    expect(warnings(late('directive', row), flightOf(), [later])).toMatchObject([
      { kind: 'leaves-too-few-hours', cite: '14cfr39.7' },
    ]);
    expect(kinds(late('directive', { ...row, binding: false }), flightOf(), [later])).toEqual([]);
  });
});

describe('other bookings', () => {
  // The flight is from 16:00 to 17:30 UTC.
  it.each([
    ['ends at its departure', '2026-11-25T15:00:00Z', '2026-11-25T16:00:00.000Z', []],
    ['ends a second after its departure', '2026-11-25T15:00:00Z', '2026-11-25T16:00:01Z', ['overlaps']],
    ['lies inside it', '2026-11-25T16:30:00Z', '2026-11-25T17:00:00Z', ['overlaps']],
    ['departs a second before its arrival', '2026-11-25T17:29:59Z', '2026-11-25T19:00:00Z', ['overlaps']],
    ['departs at its arrival', '2026-11-25T17:30:00.000Z', '2026-11-25T19:00:00Z', []],
  ])('another that %s', (_name, departAt, arriveAt, expected) => {
    expect(kinds(trainer(), flightOf(), [booking(departAt, arriveAt)])).toEqual(expected);
  });

  // 1.3 h flown here, 1.0 h needed after it.
  it.each([
    ['a tenth to spare', 24, []],
    ['exactly enough', 23, []],
    ['a tenth too few', 22, ['leaves-too-few-hours']],
    ['nothing left at all', 13, ['leaves-too-few-hours']],
    ['past it already: that is the other warning', 12, ['runs-past-inspection']],
  ])('hours for a later flight: %s', (_name, left, expected) => {
    const later = booking('2026-11-25T20:00:00Z', '2026-11-25T21:30:00Z', 10);
    expect(kinds(hundredHourIn(left), flightOf(), [later])).toEqual(expected);
  });
});

it('says nothing of hours that are not known, and of a flight that cannot be judged', () => {
  const later = booking('2026-11-25T20:00:00Z', '2026-11-25T21:30:00Z');
  const aircraft = { ...hundredHourIn(0), ttisTenths: unknown('the total time in service') };
  expect(kinds(aircraft, flightOf(), [later])).toEqual([]);
  expect(kinds(trainer({ ttisTenths: known(45123) }), { ...flightOf(), plannedTenths: 0 })).toEqual([]);
});
