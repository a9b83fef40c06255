/**
 * Types and aircraft in the office: entered with the document named and signed, changed, retired, brought back. Sources: issue 6; 47.15 for
 * the form of a registration (from memory).
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { addAircraft } from '@/lib/aircraft/add-aircraft';
import { changeAircraft } from '@/lib/aircraft/change-aircraft';
import { readOfficeAircraft } from '@/lib/aircraft/read-office-aircraft';
import { readOfficeFleet } from '@/lib/aircraft/read-office-fleet';
import { bringBackAircraft, retireAircraft } from '@/lib/aircraft/retire-aircraft';
import { readInOperator } from '@/lib/db/scope';
import { readBoard } from '@/lib/fleet/read-board';
import { planFlight } from '@/lib/flights/plan-flight';
import { verifyAudit } from '@/lib/operate/audit-verify';
import { addType } from '@/lib/types/add-type';
import { changeType } from '@/lib/types/change-type';
import { problemOf, valueOf } from '../fixtures/acts';
import type { FreshDatabase } from '../fixtures/database';
import { aircraftOf, freeMark, own, typeOf } from '../fixtures/fleet-office';
import { released, standing } from '../fixtures/flights';
import { closeSchools, foundSchool, NOW, openSchools, type School } from '../fixtures/school';
import { trainer } from '../fixtures/aircraft';

let database: FreshDatabase;
let school: School;
let other: School;
let minutes = 0;
/** Later by a minute each time: what was signed last counts. */
const soon = () => ({ now: new Date(NOW.getTime() + (minutes += 1) * 60_000) });

beforeAll(async () => {
  ({ database, school, other } = await openSchools());
});
afterAll(() => closeSchools(database));

const manager = () => school.people.manager;
const fleet = async () => valueOf(await readOfficeFleet(manager(), {}, soon()));
const version = (of: School, aircraftId: string) =>
  readInOperator(of.operatorId, async (tx) => {
    const row = await tx.aircraft.findFirstOrThrow({ where: { id: aircraftId } });
    return row.factsVersion;
  });

describe('a type', () => {
  test('keeps what is not known as not known, and is signed for', async () => {
    const { typeId } = valueOf(await addType(manager(), typeOf({ seats: '', cooling: 'not-known' }), soon()));
    const type = (await fleet()).types.find(({ id }) => id === typeId);
    expect(type).toMatchObject({
      seats: null,
      cooling: null,
      certificatedOn: null,
      fuelTanks: 2,
      turbine: false,
    });
    // Seats, cooling, day of certification and whether under part 23.
    expect(type?.notKnown).toBe(4);
  });

  test.each([
    ['seats', { seats: '0', frontSeats: '' }],
    ['seats', { seats: '100' }],
    ['frontSeats', { seats: '2', frontSeats: '3' }],
    ['certificatedOn', { certificatedOn: '1999-02-29' }],
    ['maxTakeoffWeightLb', { maxTakeoffWeightLb: '2450.5' }],
    ['turbine', { turbine: '' }],
    ['rating', { rating: 'rocket' }],
    ['engines', { engines: '9' }],
    ['source', { source: 'x' }],
    ['password', { password: '' }],
  ])('is refused at %s for %o', async (field, some) => {
    expect(Object.keys(problemOf(await addType(manager(), typeOf(some), soon())).fields ?? {})).toEqual([
      field,
    ]);
  });

  test('has a name of its own', async () => {
    const { name } = valueOf(await addType(manager(), typeOf(), soon()));
    const again = typeOf({ name: name.toUpperCase() });
    expect(problemOf(await addType(manager(), again, soon())).fields).toHaveProperty('name');
  });

  test('changed, it changes every aircraft of it and recalls what cannot go any more', async () => {
    const at = await foundSchool('third', trainer());
    const releaseId = await released(at);
    expect((await standing(at, releaseId)).events).not.toContain('void');
    const before = await version(at, at.aircraftId);
    // Five seats: one safety belt is missing now, 91.205(b)(13).
    const change = typeOf({
      typeId: at.typeId,
      seats: '5',
      certificatedOn: '1998-06-15',
      certificatedUnderPart23: 'yes',
    });
    const { changed } = valueOf(await changeType(at.people.manager, change, soon()));
    expect(changed).toContain('seats');
    expect(await version(at, at.aircraftId)).toBe(before + 1);
    expect((await standing(at, releaseId)).events).toContain('void');
    // The same once more changes nothing.
    valueOf(await changeType(at.people.manager, { ...change, ...own() }, soon()));
    expect(await version(at, at.aircraftId)).toBe(before + 1);
  });

  test('of another school is not there', async () => {
    expect(problemOf(await changeType(manager(), typeOf({ typeId: other.typeId }), soon())).code).toBe(
      'not_found',
    );
  });
});

describe('an aircraft', () => {
  test('is added with hours in tenths and leaves what is not known', async () => {
    const { aircraftId } = valueOf(await addAircraft(manager(), aircraftOf(school), soon()));
    expect(valueOf(await readOfficeAircraft(manager(), { aircraftId }, soon()))).toMatchObject({
      hobbs: '1234.5',
      ttis: null,
      ttisMeter: null,
      vouched: { source: 'Invented logbook, page 1' },
    });
    const board = valueOf(await readBoard(manager(), {}, soon()));
    expect(JSON.stringify(board)).toContain(aircraftId);
  });

  test.each([
    ['registration', { registration: 'G-ABCD' }],
    ['registration', { registration: 'N0I12' }],
    ['registration', { registration: 'N0123A' + 'B' }],
    ['registration', { registration: 'N' }],
    ['ttis', { ttis: '1.25' }],
    ['hobbs', { hobbs: '-1' }],
    ['manufacturedOn', { manufacturedOn: '2026-13-01' }],
    ['typeId', { typeId: '' }],
    ['forHire', { forHire: '' }],
    ['serial', { serial: ' ' }],
  ])('is refused at %s for %o', async (field, some) => {
    const problem = problemOf(await addAircraft(manager(), aircraftOf(school, some), soon()));
    expect(Object.keys(problem.fields ?? {})).toEqual([field]);
  });

  test('takes no registration that is here, and no type or base of another school', async () => {
    const registration = freeMark();
    const { aircraftId } = valueOf(
      await addAircraft(manager(), aircraftOf(school, { registration }), soon()),
    );
    const again = () =>
      addAircraft(manager(), aircraftOf(school, { registration: registration.toLowerCase() }), soon());
    expect(problemOf(await again()).fields?.registration?.[0]).toContain('already');
    valueOf(await retireAircraft(manager(), { ...own(), aircraftId, why: 'Sold.' }, soon()));
    expect(problemOf(await again()).fields?.registration?.[0]).toContain('Bring it back');
    for (const field of ['typeId', 'baseId'] as const) {
      const theirs = aircraftOf(school, { [field]: other[field] });
      expect(problemOf(await addAircraft(manager(), theirs, soon())).fields).toHaveProperty(field);
    }
  });

  test('is changed: hours once, the registration until something is on record', async () => {
    const input = aircraftOf(school, { ttis: '' });
    const { aircraftId } = valueOf(await addAircraft(manager(), input, soon()));
    const change = (some: object) =>
      changeAircraft(manager(), { ...input, ...own(), aircraftId, ...some }, soon());
    const registration = freeMark();
    expect(valueOf(await change({ registration, ttis: '4500.1' })).changed.sort()).toEqual([
      'registration',
      'ttisTenths',
    ]);
    expect(await version(school, aircraftId)).toBe(2);
    // A form that was open meanwhile shows older hours: they stand as they are. More of them come by the meters only.
    expect(valueOf(await change({ registration, ttis: '', hobbs: '1234.4' })).changed).toEqual([]);
    expect(problemOf(await change({ registration, ttis: '4500.2' })).fields).toHaveProperty('ttis');
    const taken = aircraftOf(school, { aircraftId: school.aircraftId, registration: freeMark() });
    expect(problemOf(await changeAircraft(manager(), taken, soon())).fields).toHaveProperty('registration');
  });

  test('is retired with the reason and comes back', async () => {
    const { aircraftId } = valueOf(await addAircraft(manager(), aircraftOf(school), soon()));
    const retire = () => retireAircraft(manager(), { ...own(), aircraftId, why: 'Sold to a club.' }, soon());
    valueOf(await retire());
    expect(JSON.stringify(valueOf(await readBoard(manager(), {}, soon())))).not.toContain(aircraftId);
    expect((await fleet()).aircraft.find(({ id }) => id === aircraftId)).toMatchObject({
      retiredWhy: 'Sold to a club.',
    });
    expect(problemOf(await retire()).code).toBe('conflict');
    const change = aircraftOf(school, { aircraftId });
    expect(problemOf(await changeAircraft(manager(), change, soon())).code).toBe('not_found');
    const back = () => bringBackAircraft(manager(), { ...own(), aircraftId, why: 'Bought back.' }, soon());
    valueOf(await back());
    expect(JSON.stringify(valueOf(await readBoard(manager(), {}, soon())))).toContain(aircraftId);
    expect(problemOf(await back()).code).toBe('conflict');
  });

  test('is not retired under a released flight, nor with flights planned', async () => {
    const at = await foundSchool('fourth', trainer());
    const retire = () =>
      retireAircraft(at.people.manager, { ...own(), aircraftId: at.aircraftId, why: 'Sold.' }, { now: NOW });
    await released(at);
    expect(problemOf(await retire())).toMatchObject({
      code: 'conflict',
      say: expect.stringContaining('not back'),
    });
    const planned = await foundSchool('fifth', trainer());
    const plan = {
      ...own(),
      aircraftId: planned.aircraftId,
      pilotId: null,
      departLocal: '2026-11-26T10:00',
      arriveLocal: '2026-11-26T11:30',
      plannedHours: '1.2',
      words: '',
    };
    valueOf(await planFlight(planned.people.manager, plan, { now: NOW }));
    const sold = { ...own(), aircraftId: planned.aircraftId, why: 'Sold.' };
    expect(problemOf(await retireAircraft(planned.people.manager, sold, { now: NOW }))).toMatchObject({
      code: 'conflict',
      say: expect.stringContaining('planned'),
    });
  });
});

test('everything above stands in the chain as it was signed', async () => {
  const reports = await verifyAudit(database.adminUrl);
  expect(reports.flatMap(({ faults }) => faults)).toEqual([]);
});
