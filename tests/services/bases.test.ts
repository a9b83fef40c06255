/** Bases: added from the airport file or typed, put right, and what a change of them does to answers. Source: issue 5, and our own limits. */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readAirports, readZoneProposal } from '@/lib/airports/read-airports';
import { addBase } from '@/lib/bases/add-base';
import { changeBase } from '@/lib/bases/change-base';
import { readBases } from '@/lib/bases/read-bases';
import { readInOperator } from '@/lib/db/scope';
import { placeOfIdent } from '@/lib/fleet/place-of';
import { problemOf, valueOf } from '../fixtures/acts';
import { BASE, trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import { released, standing } from '../fixtures/flights';
import { closeSchools, foundSchool, NOW, openSchools, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let other: School;
const now = { now: NOW };

beforeAll(async () => {
  ({ database, school, other } = await openSchools());
});
afterAll(() => closeSchools(database));

const tromso = (some: object = {}) => ({
  requestId: randomUUID(),
  ident: 'entc',
  airportIdent: 'ENTC',
  name: 'Tromsø',
  latitudeDeg: '69.68333',
  longitudeDeg: '18.9189',
  zone: 'Europe/Oslo',
  zoneConfirmed: true,
  repairAvailable: 'not-said',
  transponderAirspace: 'no',
  adsbAirspace: 'not-said',
  controlledAirspace: 'yes',
  ...some,
});
const home = (some: object = {}) => ({
  requestId: randomUUID(),
  baseId: school.baseId,
  name: 'Home',
  latitudeDeg: String(BASE.latitudeDeg),
  longitudeDeg: String(BASE.longitudeDeg),
  zone: BASE.zone,
  zoneConfirmed: false,
  repairAvailable: 'yes',
  transponderAirspace: 'no',
  adsbAirspace: 'no',
  controlledAirspace: 'yes',
  ...some,
});
const add = (some: object = {}) => addBase(school.people.manager, tromso(some), now);
const change = (some: object = {}) => changeBase(school.people.manager, home(some), now);
const bases = async (as = school) => valueOf(await readBases(as.people.renter, {}, now)).bases;
const version = () =>
  readInOperator(school.operatorId, async (tx) => {
    const { factsVersion } = await tx.aircraft.findFirstOrThrow({ where: { id: school.aircraftId } });
    return factsVersion;
  });

describe('adding', () => {
  test('one of the file: there with its sun in words, for this school alone', async () => {
    const [airport] = valueOf(await readAirports(school.people.manager, { text: 'entc' }, now));
    const position = {
      latitudeDeg: String(airport?.latitudeDeg),
      longitudeDeg: String(airport?.longitudeDeg),
      zone: airport?.zone,
    };
    valueOf(await add(position));
    const added = (await bases()).find(({ ident }) => ident === 'ENTC');
    expect(added).toMatchObject({
      source: 'airport ENTC',
      repairAvailable: null,
      transponderAirspace: false,
      controlledAirspace: true,
      aircraft: [],
    });
    // Late November at 69.7 N: the sun is about to stay away.
    expect(added?.today).toMatchObject({ date: '2026-11-25', night: 'part' });
    expect(added?.clockChange?.at).toBe('2027-03-28T01:00:00Z');
    expect((await bases(other)).map(({ ident }) => ident)).toEqual([BASE.ident]);
  });

  test('what the file says is changed by hand: it counts as typed', async () => {
    valueOf(await add({ ident: 'ZZTY', latitudeDeg: '69.7' }));
    expect((await bases()).find(({ ident }) => ident === 'ZZTY')?.source).toBe('typed');
  });

  test.each([
    [{ ident: 'Z' }, 'ident'],
    [{ ident: 'ZZZZZZZZ' }, 'ident'],
    [{ ident: 'Z-1' }, 'ident'],
    [{ ident: BASE.ident }, 'ident'],
    [{ name: ' ' }, 'name'],
    [{ latitudeDeg: '90.1' }, 'latitudeDeg'],
    [{ latitudeDeg: '69,7' }, 'latitudeDeg'],
    [{ longitudeDeg: '180.01' }, 'longitudeDeg'],
    [{ longitudeDeg: '' }, 'longitudeDeg'],
    [{ zone: 'Europe/Quillback' }, 'zone'],
    [{ zone: '+02:00' }, 'zone'],
    [{ zoneConfirmed: false }, 'zoneConfirmed'],
    // East for west: noon by the sun would be at night by the clock.
    [{ longitudeDeg: '-98.9' }, 'longitudeDeg'],
  ])('refused at its field: %o', async (some, field) => {
    expect(Object.keys(problemOf(await add({ ident: 'ZZNO', ...some })).fields ?? {})).toEqual([field]);
    expect((await bases()).some(({ ident }) => ident === 'ZZNO')).toBe(false);
  });

  test('the same request twice adds it once', async () => {
    const input = tromso({ ident: 'ZZON' });
    const first = valueOf(await addBase(school.people.manager, input, now));
    expect(valueOf(await addBase(school.people.manager, input, now))).toEqual(first);
    expect((await bases()).filter(({ ident }) => ident === 'ZZON')).toHaveLength(1);
  });

  test('a dispatcher does not', async () => {
    expect(problemOf(await addBase(school.people.dispatcher, tromso({ ident: 'ZZDI' }), now)).code).toBe(
      'not_allowed',
    );
  });
});

describe('putting right', () => {
  test('a name changes no answer, everything else raises the version of the aircraft there', async () => {
    const start = await version();
    expect(valueOf(await change())).toMatchObject({ changed: [] });
    expect(valueOf(await change({ name: 'Home field' }))).toMatchObject({ changed: ['name'] });
    expect(await version()).toBe(start);
    valueOf(await change({ name: 'Home field', adsbAirspace: 'not-said' }));
    expect(await version()).toBe(start + 1);
    valueOf(await change({ latitudeDeg: '47.51' }));
    expect(await version()).toBe(start + 2);
    valueOf(await change());
    expect(await version()).toBe(start + 3);
  });

  test('a new zone has to be confirmed, and has to fit', async () => {
    const refused = problemOf(await change({ zone: 'America/Denver' }));
    expect(Object.keys(refused.fields ?? {})).toEqual(['zoneConfirmed']);
    const unfit = problemOf(await change({ zone: 'Asia/Tokyo', zoneConfirmed: true }));
    expect(Object.keys(unfit.fields ?? {})).toEqual(['longitudeDeg']);
    valueOf(await change({ zone: 'America/Denver', zoneConfirmed: true }));
    expect((await bases()).find(({ id }) => id === school.baseId)?.zone).toBe('America/Denver');
    valueOf(await change({ zoneConfirmed: true }));
  });

  test('what was and what is stand in the audit row', async () => {
    valueOf(await change({ repairAvailable: 'no' }));
    const row = await readInOperator(school.operatorId, (tx) =>
      tx.auditRow.findFirstOrThrow({ where: { verb: 'base.change' }, orderBy: { seq: 'desc' } }),
    );
    expect(row.detail).toMatchObject({ changed: { repairAvailable: { from: true, to: false } } });
    valueOf(await change());
  });

  test('another school’s base is not there', async () => {
    expect(problemOf(await change({ baseId: other.baseId })).code).toBe('not_found');
  });
});

describe('finding a place', () => {
  test('own bases come first, an airport that is a base here comes once', async () => {
    const found = valueOf(await readAirports(school.people.renter, { text: 'ENTC' }, now));
    expect(found.map(({ kind, ident }) => `${kind} ${ident}`)).toEqual(['base ENTC']);
    const others = valueOf(await readAirports(other.people.renter, { text: 'ENTC' }, now));
    expect(others.map(({ kind, ident }) => `${kind} ${ident}`)).toEqual(['airport ENTC']);
    expect(valueOf(await readAirports(school.people.renter, { text: 'airport' }, now))).toHaveLength(8);
    expect(valueOf(await readAirports(school.people.renter, { text: ' ' }, now))).toEqual([]);
  });

  test('signs of the search mean themselves', async () => {
    expect(valueOf(await readAirports(school.people.renter, { text: '%' }, now))).toEqual([]);
    expect(valueOf(await readAirports(school.people.renter, { text: '_' }, now))).toEqual([]);
  });

  test('as a place of a flight: a base knows more, an airport leaves unknown what the file does not say', async () => {
    const place = (ident: string, as = school) =>
      readInOperator(as.operatorId, (tx) => placeOfIdent(tx, as.operatorId, ident));
    expect(await place('entc')).toMatchObject({ controlledAirspace: { known: true, value: true } });
    expect(await place('entc', other)).toMatchObject({
      ident: 'ENTC',
      zone: 'Europe/Oslo',
      repairAvailable: { known: false },
      controlledAirspace: { known: false },
    });
    expect(await place('ZZNO')).toBeNull();
  });

  test('a zone is proposed for a point', async () => {
    const point = { latitudeDeg: 43.31, longitudeDeg: -91.79 };
    expect(valueOf(await readZoneProposal(school.people.manager, point, now)).zone).toBe('America/Chicago');
  });
});

test('a release to a base that was put right is judged anew with it, also of aircraft that are based elsewhere', async () => {
  // Without a landing light no flight for hire arrives at night (91.205(c)(4)).
  const unlit = trainer().equipment.filter((row) => row.function !== 'landing-light');
  const own = await foundSchool('bases-recall', { ...trainer(), equipment: unlit });
  const where = {
    latitudeDeg: String(BASE.latitudeDeg),
    longitudeDeg: String(BASE.longitudeDeg),
    zone: BASE.zone,
  };
  const near = tromso({ ident: 'ZZNR', airportIdent: '', ...where });
  const { baseId } = valueOf(await addBase(own.people.manager, near, now));
  const releaseId = await released(own, { toBaseId: baseId });
  const put = (some: object) =>
    changeBase(
      own.people.manager,
      { ...home({ baseId, ...where, name: 'Near', ...some }), requestId: randomUUID() },
      now,
    );
  valueOf(await put({ repairAvailable: 'no' }));
  expect((await standing(own, releaseId)).state).toBe('released');
  // It lies in Tromsø after all: 17:12 UTC in late November is night there.
  const { latitudeDeg, longitudeDeg } = tromso();
  valueOf(await put({ latitudeDeg, longitudeDeg, zone: 'Europe/Oslo', zoneConfirmed: true }));
  expect((await standing(own, releaseId)).state).toBe('void');
});
