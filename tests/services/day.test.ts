/** Booked flights as the rules count them, and the page of one aircraft's day. Source: issue 5, and common practice. */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readInOperator, writeInOperator } from '@/lib/db/scope';
import { bookedFlights } from '@/lib/fleet/booked-flights';
import { readDay } from '@/lib/fleet/read-day';
import { cancelPlannedFlight } from '@/lib/flights/cancel-planned-flight';
import { planFlight } from '@/lib/flights/plan-flight';
import { readMetersIn, readMetersOut } from '@/lib/releases/record-meters';
import { releaseFlight } from '@/lib/releases/release-flight';
import { sunTimes } from '@/lib/rules/sun';
import { BASE } from '../fixtures/aircraft';
import { dayLesson, problemOf, valueOf } from '../fixtures/acts';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, NOW, openSchools, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let other: School;
const now = { now: NOW };
const AN_HOUR = 3_600_000;
const later = (hours: number) => new Date(NOW.getTime() + hours * AN_HOUR);

beforeAll(async () => {
  ({ database, school, other } = await openSchools());
});
afterAll(() => closeSchools(database));

const booked = async (at: Date = NOW, ids?: readonly string[]) =>
  readInOperator(school.operatorId, (tx) => bookedFlights(tx, school.operatorId, at, ids));
const ofAircraft = async (at?: Date) => (await booked(at)).get(school.aircraftId) ?? [];
const day = async (input: object = {}, at: Date = NOW) =>
  readDay(school.people.renter, { aircraftId: school.aircraftId, ...input }, { now: at });

const plan = async (some: object = {}) =>
  valueOf(
    await planFlight(
      school.people.dispatcher,
      {
        requestId: randomUUID(),
        aircraftId: school.aircraftId,
        pilotId: school.people.renter.personId,
        departLocal: '2026-11-25T13:00',
        arriveLocal: '2026-11-25T14:30',
        plannedHours: '1.2',
        words: 'Lesson',
        ...some,
      },
      now,
    ),
  ).plannedFlightId;
const cancel = async (plannedFlightId: string) =>
  valueOf(
    await cancelPlannedFlight(school.people.dispatcher, { requestId: randomUUID(), plannedFlightId }, now),
  );
const release = async (factsVersion: number) =>
  valueOf(
    await releaseFlight(
      school.people.dispatcher,
      { ...dayLesson(school), requestId: randomUUID(), factsVersion, limitsPassedOn: false },
      now,
    ),
  ).releaseId;
const event = (releaseId: string, what: string) =>
  writeInOperator(school.operatorId, (tx) =>
    tx.flightEvent.create({
      data: {
        id: randomUUID(),
        operatorId: school.operatorId,
        releaseId,
        what,
        at: NOW,
        words: 'Said by the test.',
        recordedById: school.people.dispatcher.personId,
        recordedAt: NOW,
      },
    }),
  );
const version = () =>
  readInOperator(school.operatorId, async (tx) => {
    const { factsVersion } = await tx.aircraft.findFirstOrThrow({ where: { id: school.aircraftId } });
    return factsVersion;
  });

describe('booked flights', () => {
  test('a plan counts until it is over or cancelled; without hours said it counts for all its time', async () => {
    const first = await plan();
    const second = await plan({
      departLocal: '2026-11-25T16:00',
      arriveLocal: '2026-11-25T17:10',
      plannedHours: '',
      pilotId: null,
      words: '',
    });
    expect(await ofAircraft()).toEqual([
      {
        id: first,
        label: 'Rue Fernhollow, Lesson',
        departAt: '2026-11-25T19:00:00.000Z',
        arriveAt: '2026-11-25T20:30:00.000Z',
        plannedTenths: 12,
        state: 'planned',
      },
      expect.objectContaining({ id: second, label: 'Planned flight', plannedTenths: 12, state: 'planned' }),
    ]);
    // It ends at 20:30 UTC: a second before, at the end, a second after.
    const end = Date.parse('2026-11-25T20:30:00Z');
    for (const [ms, counts] of [
      [-1000, true],
      [0, false],
      [1000, false],
    ] as const) {
      expect((await ofAircraft(new Date(end + ms))).some(({ id }) => id === first)).toBe(counts);
    }
    expect((await booked(NOW, [randomUUID()])).size).toBe(0);
    await cancel(first);
    await cancel(second);
    expect((await booked()).size).toBe(0);
  });

  test('a released flight counts until it is back, overdue or not, and is out once its meters were read', async () => {
    const releaseId = await release(1);
    const [released] = await ofAircraft();
    expect(released).toMatchObject({ id: releaseId, label: 'Rue Fernhollow', state: 'released' });
    expect(released?.plannedTenths).toBeGreaterThan(0);
    expect((await ofAircraft(later(10)))[0]?.id).toBe(releaseId);
    const read = { releaseId, hobbsTenths: 21234, tachTenths: 19876, readAt: NOW.toISOString() };
    valueOf(
      await readMetersOut(school.people.renter, { ...read, requestId: randomUUID(), moment: 'out' }, now),
    );
    expect((await ofAircraft(later(60)))[0]?.state).toBe('out');
    const at = later(4);
    const back = { ...read, hobbsTenths: 21246, tachTenths: 19886, readAt: at.toISOString() };
    valueOf(
      await readMetersIn(
        school.people.renter,
        { ...back, requestId: randomUUID(), moment: 'in' },
        { now: at },
      ),
    );
    expect(await ofAircraft()).toEqual([]);
  });

  test.each(['withdrawn', 'void', 'closed'])(
    'a release that never set out and is %s does not count',
    async (what) => {
      const releaseId = await release(await version());
      expect((await ofAircraft()).map(({ id }) => id)).toEqual([releaseId]);
      await event(releaseId, what);
      expect(await ofAircraft()).toEqual([]);
    },
  );

  test.each([
    [null, ['released']],
    ['withdrawn', ['planned']],
    ['void', ['planned']],
    ['closed', []],
  ])('a plan that was released counts as its release; the release %s', async (what, states) => {
    const plannedFlightId = await plan();
    const aircraft = await readInOperator(school.operatorId, (tx) =>
      tx.aircraft.findFirstOrThrow({ where: { id: school.aircraftId } }),
    );
    const releaseId = valueOf(
      await releaseFlight(
        school.people.dispatcher,
        {
          ...dayLesson(school),
          requestId: randomUUID(),
          factsVersion: aircraft.factsVersion,
          limitsPassedOn: false,
          plannedFlightId,
        },
        now,
      ),
    ).releaseId;
    if (what) await event(releaseId, what);
    expect((await ofAircraft()).map(({ state }) => state)).toEqual(states);
    await cancel(plannedFlightId);
    if (!what) await event(releaseId, 'withdrawn');
  });
});

describe('the day', () => {
  test('today at the base unless told, with its light, its lanes and the flights booked', async () => {
    const plannedFlightId = await plan();
    const view = valueOf(await day());
    expect(view).toMatchObject({
      on: '2026-11-25',
      today: '2026-11-25',
      previous: '2026-11-24',
      next: '2026-11-26',
      from: '2026-11-25T06:00:00Z',
      until: '2026-11-26T06:00:00Z',
      isPast: false,
      asOf: NOW.toISOString(),
    });
    expect(view.lanes.map(({ name }) => name)).toEqual([
      'VFR, private',
      'VFR, for hire',
      'IFR, private',
      'IFR, for hire',
    ]);
    expect(view.light.map(({ light }) => light)).toEqual(['night', 'twilight', 'day', 'twilight', 'night']);
    expect(view.borders.find(({ events }) => events.includes('Sunset'))?.at).toBe(
      sunTimes('2026-11-25', BASE).sunset,
    );
    expect(view.flights.map(({ id }) => id)).toEqual([plannedFlightId]);
    expect(view.hours.map(({ label }) => label)).toEqual(['03', '06', '09', '12', '15', '18', '21']);
    const tomorrow = valueOf(await day({ on: '2026-11-26' }));
    expect(tomorrow.flights).toEqual([]);
    expect(tomorrow.spentBefore).toEqual({ tenths: 12, flights: 1 });
    await cancel(plannedFlightId);
  });

  // America/Chicago: 8 March 2026 has 23 hours, 1 November 25 (IANA tz database).
  test.each([
    ['2026-03-08', 23],
    ['2026-11-01', 25],
    ['2026-11-24', 24],
  ])('%s has %d hours, and is past', async (on, hours) => {
    const view = valueOf(await day({ on }));
    expect((Date.parse(view.until) - Date.parse(view.from)) / AN_HOUR).toBe(hours);
    expect(view.isPast).toBe(true);
  });

  test.each([
    ['a day that is none', { on: '2026-02-30' }, 'invalid'],
    ['words', { on: 'today' }, 'invalid'],
    ['a day two years away', { on: '2028-11-25' }, 'invalid'],
    ['an aircraft that is not here', { aircraftId: randomUUID() }, 'not_found'],
  ])('refuses %s', async (_name, input, code) => {
    expect(problemOf(await day(input)).code).toBe(code);
  });

  test('another school’s aircraft is not here', async () => {
    const result = await readDay(other.people.manager, { aircraftId: school.aircraftId }, now);
    expect(problemOf(result).code).toBe('not_found');
  });
});
