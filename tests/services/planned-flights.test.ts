/** Flights that are planned: they say how soon an aircraft is wanted and release nothing. Source: issue 4, and common practice. */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readInOperator } from '@/lib/db/scope';
import { cancelPlannedFlight } from '@/lib/flights/cancel-planned-flight';
import { nextFlights } from '@/lib/flights/next-flights';
import { planFlight } from '@/lib/flights/plan-flight';
import { readPlannedFlights } from '@/lib/flights/read-planned-flights';
import { readMetersIn, readMetersOut } from '@/lib/releases/record-meters';
import { readReleases } from '@/lib/releases/read-desk';
import { releaseFlight } from '@/lib/releases/release-flight';
import { dayLesson, problemOf, valueOf } from '../fixtures/acts';
import { BASE } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, NOW, openSchools, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let other: School;
const now = { now: NOW };
const AN_HOUR = 3_600_000;

beforeAll(async () => {
  ({ database, school, other } = await openSchools());
});
afterAll(() => closeSchools(database));

/** 10:00 to 11:30 on the day after the fixtures, at the base. */
const aFlight = (some: object = {}) => ({
  requestId: randomUUID(),
  aircraftId: school.aircraftId,
  pilotId: school.people.renter.personId,
  departLocal: '2026-11-26T10:00',
  arriveLocal: '2026-11-26T11:30',
  plannedHours: '1.2',
  words: 'Lesson',
  ...some,
});
const plan = (some: object = {}, as = school.people.dispatcher) => planFlight(as, aFlight(some), now);
const planned = async (at: Date = NOW) =>
  valueOf(await readPlannedFlights(school.people.dispatcher, {}, { now: at })).aircraft.flatMap(
    ({ flights }) => flights,
  );

describe('planning', () => {
  test('a flight is on the list in the time of its base, and nothing is released by it', async () => {
    const { plannedFlightId } = valueOf(await plan());
    expect(await planned()).toEqual([
      {
        id: plannedFlightId,
        departAt: '2026-11-26T16:00:00.000Z',
        arriveAt: '2026-11-26T17:30:00.000Z',
        pilot: 'Rue Fernhollow',
        plannedTenths: 12,
        words: 'Lesson',
        plannedBy: 'Dee Morrowby',
        from: { ident: BASE.ident, zone: BASE.zone },
        to: { ident: BASE.ident, zone: BASE.zone },
        rules: null,
        purpose: null,
        fromFile: null,
        release: null,
      },
    ]);
    expect(valueOf(await readReleases(school.people.dispatcher, {}, now))).toEqual([]);
    valueOf(
      await cancelPlannedFlight(school.people.dispatcher, { requestId: randomUUID(), plannedFlightId }, now),
    );
    expect(await planned()).toEqual([]);
  });

  test('sent twice it is planned once; cancelled twice is told', async () => {
    const input = aFlight({ pilotId: null, plannedHours: '', words: '' });
    const first = valueOf(await planFlight(school.people.dispatcher, input, now));
    expect(valueOf(await planFlight(school.people.dispatcher, input, now))).toEqual(first);
    expect(await planned()).toMatchObject([{ pilot: null, plannedTenths: null, words: '' }]);
    const cancel = () =>
      cancelPlannedFlight(school.people.manager, { requestId: randomUUID(), ...first }, now);
    valueOf(await cancel());
    expect(problemOf(await cancel()).say).toBe('This flight is cancelled already.');
  });

  test.each([
    [{ aircraftId: '' }, 'aircraftId'],
    [{ departLocal: 'tomorrow' }, 'departLocal'],
    [{ arriveLocal: '2026-11-26T10:00' }, 'arriveLocal'],
    [{ plannedHours: '1.6' }, 'plannedHours'],
    [{ plannedHours: 'an hour' }, 'plannedHours'],
    // Clocks go forward on 14 March 2027: 02:30 does not exist.
    [{ departLocal: '2027-03-14T02:30', arriveLocal: '2027-03-14T05:00' }, 'departLocal'],
  ])('what cannot be a flight is refused at its field: %o', async (some, field) => {
    expect(Object.keys(problemOf(await plan(some)).fields ?? {})).toEqual([field]);
  });

  test('only a pilot with a certificate on file, of this school', async () => {
    const bad = await plan({ pilotId: school.people.dispatcher.personId });
    expect(problemOf(bad).fields).toEqual({ pilotId: ['No pilot certificate of Dee Morrowby is on file.'] });
    expect(problemOf(await plan({ pilotId: other.people.renter.personId })).code).toBe('not_found');
  });

  // Our own limits: 24 hours for one flight, and not over already.
  test.each([
    ['2026-11-27T09:59', true],
    ['2026-11-27T10:00', true],
    ['2026-11-27T10:01', false],
  ])('24 hours at most: back %s', async (arriveLocal, goes) => {
    const result = await plan({ arriveLocal });
    expect(result.ok).toBe(goes);
    if (result.ok) {
      const cancel = { requestId: randomUUID(), ...result.value };
      valueOf(await cancelPlannedFlight(school.people.dispatcher, cancel, now));
    }
  });

  // It is 09:00 at the base.
  test.each([
    ['2026-11-25T08:59', false],
    ['2026-11-25T09:00', false],
    ['2026-11-25T09:01', true],
  ])('a flight that is over is not planned: back %s', async (arriveLocal, goes) => {
    const result = await plan({ departLocal: '2026-11-25T08:30', arriveLocal, plannedHours: '' });
    expect(result.ok).toBe(goes);
    if (result.ok) {
      const cancel = { requestId: randomUUID(), ...result.value };
      valueOf(await cancelPlannedFlight(school.people.dispatcher, cancel, now));
    }
  });
});

describe('the list', () => {
  test('seven days ahead, by departure; until the flight is over', async () => {
    const { plannedFlightId } = valueOf(await plan());
    const departs = Date.parse('2026-11-26T16:00:00Z');
    const arrives = Date.parse('2026-11-26T17:30:00Z');
    const week = 7 * 24 * AN_HOUR;
    const seen = async (at: number) => (await planned(new Date(at))).length;
    expect([
      await seen(departs - week - 1),
      await seen(departs - week),
      await seen(departs - week + 1),
    ]).toEqual([0, 1, 1]);
    expect([await seen(arrives - 1), await seen(arrives), await seen(arrives + 1)]).toEqual([1, 0, 0]);
    valueOf(
      await cancelPlannedFlight(school.people.dispatcher, { requestId: randomUUID(), plannedFlightId }, now),
    );
  });
});

describe('the next flight', () => {
  const next = async (at: Date = NOW) =>
    readInOperator(school.operatorId, async (tx) =>
      (await nextFlights(tx, school.operatorId, at)).get(school.aircraftId),
    );

  test('the earliest of planned and released; a cancelled one and one that is back do not count', async () => {
    expect(await next()).toBeUndefined();
    const late = valueOf(await plan());
    expect(await next()).toBe('2026-11-26T16:00:00.000Z');
    const { releaseId } = valueOf(
      await releaseFlight(
        school.people.dispatcher,
        { ...dayLesson(school), requestId: randomUUID(), factsVersion: 1, limitsPassedOn: false },
        now,
      ),
    );
    // Released for 10:00 today.
    expect(await next()).toBe('2026-11-25T16:00:00.000Z');
    const during = new Date('2026-11-25T16:30:00Z');
    expect(await next(during)).toBe('2026-11-25T16:00:00.000Z');
    const meters = (tenths: number, at: Date) => ({
      requestId: randomUUID(),
      releaseId,
      hobbsTenths: 21234 + tenths,
      tachTenths: 19876 + tenths,
      readAt: at.toISOString(),
    });
    const left = new Date('2026-11-25T16:00:00Z');
    valueOf(await readMetersOut(school.people.renter, { ...meters(0, left), moment: 'out' }, { now: left }));
    valueOf(
      await readMetersIn(school.people.renter, { ...meters(4, during), moment: 'in' }, { now: during }),
    );
    expect(await next(during)).toBe('2026-11-26T16:00:00.000Z');
    valueOf(await cancelPlannedFlight(school.people.dispatcher, { requestId: randomUUID(), ...late }, now));
    expect(await next(during)).toBeUndefined();
  });

  test('a mechanic reads the plan and makes none', async () => {
    valueOf(await readPlannedFlights(school.people.airframe, {}, now));
    expect(problemOf(await plan({}, school.people.airframe)).code).toBe('not_allowed');
  });
});
