/**
 * CSV and JSON of everything. Sources: issue 5; RFC 4180 for CSV, read back by another library (csv-parse); the list of
 * what a spreadsheet runs as a formula is common practice, no source.
 */
import { randomUUID } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { answerExport } from '@/lib/feeds/export/answer-export';
import { columnName, columnsOf, isInstantField } from '@/lib/feeds/export/columns';
import { readExportPage } from '@/lib/feeds/export/read-set';
import { EXPORT_SETS, NOT_EXPORTED } from '@/lib/feeds/export/sets';
import { reportFinding } from '@/lib/findings/report-finding';
import { planFlight } from '@/lib/flights/plan-flight';
import { withClient } from '@/lib/operate/connection';
import { releaseFlight } from '@/lib/releases/release-flight';
import { dayLesson, nickedPropeller, problemOf, valueOf } from '../fixtures/acts';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, NOW, openSchools, PEOPLE, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let other: School;
const now = { now: NOW };
const WORDS = '=1+2, "quoted"\nand a second line; ümlaut';

beforeAll(async () => {
  ({ database, school, other } = await openSchools());
  const { dispatcher, renter } = school.people;
  const released = { ...dayLesson(school), requestId: randomUUID(), factsVersion: 1, limitsPassedOn: false };
  valueOf(await releaseFlight(dispatcher, released, now));
  valueOf(await reportFinding(renter, { ...nickedPropeller(school), words: WORDS }, now));
  const plan = {
    requestId: randomUUID(),
    aircraftId: school.aircraftId,
    pilotId: null,
    departLocal: '2026-11-26T10:00',
    arriveLocal: '2026-11-26T11:30',
    plannedHours: '1.2',
    words: '@lesson',
  };
  valueOf(await planFlight(dispatcher, plan, now));
});
afterAll(() => closeSchools(database));

const file = (name: string, ref = school.people.manager) => answerExport(ref, name, now);
const text = async (name: string) => {
  const answer = await file(name);
  expect(answer.status).toBe(200);
  return new TextDecoder('utf-8', { ignoreBOM: true }).decode(await answer.arrayBuffer());
};
const json = async <T = Record<string, unknown>[]>(name: string) => JSON.parse(await text(name)) as T;
const records = async (name: string) =>
  parse(await text(name), { columns: true, bom: true }) as Record<string, string>[];

describe('what is given out', () => {
  test('is every table of an operator, or it is said why not', async () => {
    const owned = await withClient(database.adminUrl, (client) =>
      client.query<{ name: string }>(`SELECT table_name AS name FROM information_schema.columns
        WHERE table_schema = 'public' AND column_name = 'operator_id' ORDER BY table_name`),
    );
    const tables = await tableNames();
    const told = [...EXPORT_SETS.map(({ model }) => model as string), ...Object.keys(NOT_EXPORTED)];
    expect(new Set(told).size).toBe(told.length);
    const toldTables = told.filter((model) => model !== 'Operator').map((model) => tables.get(model));
    expect(toldTables.sort()).toEqual(owned.rows.map(({ name }) => name));
    expect(new Set(EXPORT_SETS.map(({ name }) => name)).size).toBe(EXPORT_SETS.length);
  });

  test('has no column that guards the way in, and no bytes', () => {
    const columns = EXPORT_SETS.flatMap((set) => columnsOf(set).map(({ field }) => `${set.model}.${field}`));
    expect(columns.filter((name) => /password|secret|session|bytes|sha256|storedAs/i.test(name))).toEqual([
      // How many bytes a proof has, not the bytes.
      'Proof.bytes',
      'Proof.sha256',
      'TakenIn.sha256',
      'Photo.sha256',
      'PlanImport.sha256',
    ]);
  });

  test('says of every moment whether it is an instant or a calendar date, as the table does', async () => {
    const schema = await readFile('prisma/schema.prisma', 'utf8');
    const moments = [...schema.matchAll(/^ {2}(\w+)\s+DateTime\??\s.*@db\.(Date|Timestamptz)/gm)];
    expect(moments.length).toBeGreaterThan(80);
    const wrong = moments.filter(
      ([, field = '', kind]) => isInstantField(field) !== (kind === 'Timestamptz'),
    );
    // Not given out.
    expect(wrong.map(([, field]) => field)).toEqual(['lockedUntil']);
  });

  test.each([
    ['plannedTenths', 'planned_tenths_of_hour'],
    ['latitudeDeg', 'latitude_degrees'],
    ['testedToFt', 'tested_to_feet'],
    ['releasedAt', 'released_at_utc'],
    ['at', 'at_utc'],
    ['completedOn', 'completed_on'],
    ['aircraftId', 'aircraft_id'],
  ])('names the column of %s %s', (field, name) => expect(columnName(field)).toBe(name));
});

describe('CSV', () => {
  test('has a mark of UTF-8, a header, and CRLF between records (RFC 4180, section 2)', async () => {
    const bases = await text('bases.csv');
    expect(bases.startsWith('\uFEFFid,ident,name,latitude_degrees,longitude_degrees,zone')).toBe(true);
    expect(bases.endsWith('\r\n')).toBe(true);
    expect(bases.slice(0, -2).split('\r\n')).toHaveLength(2);
  });

  test('comes back whole, hours as whole tenths, instants in UTC, dates as dates', async () => {
    const [plan] = await records('planned-flights.csv');
    expect(plan).toMatchObject({
      planned_tenths_of_hour: '12',
      depart_at_utc: '2026-11-26T16:00:00.000Z',
      pilot_id: '',
    });
    const manager = (await records('people.csv')).find(({ name }) => name === PEOPLE.manager.name);
    expect(manager).toMatchObject({ roles: 'manager', left_on: '' });
    const gone = (await records('people.csv')).find(({ name }) => name === PEOPLE.gone.name);
    expect(gone).toMatchObject({ left_on: '2026-10-31' });
  });

  test('runs nothing in a spreadsheet, and leaves numbers below zero numbers', async () => {
    const [finding] = await records('findings.csv');
    expect(finding?.['words']).toBe(`'${WORDS}`);
    const [plan] = await records('planned-flights.csv');
    expect(plan?.['words']).toBe("'@lesson");
    const [base] = await records('bases.csv');
    expect(Number(base?.['longitude_degrees'])).toBeLessThan(0);
  });

  test('without a row is its header', async () => {
    expect(await text('check-flights.csv')).toMatch(/^\uFEFFid,work_id,[a-z0-9_,]+\r\n$/);
  });
});

describe('JSON', () => {
  test('has the words as they were written, and what is deep as it is', async () => {
    const [finding] = await json('findings.json');
    expect(finding?.['words']).toBe(WORDS);
    const [release] = await json('releases.json');
    expect(release).toMatchObject({ answer: { outcome: expect.any(String) }, planned_flight_id: null });
    expect(await json('check-flights.json')).toEqual([]);
  });

  test('of everything has every set, each as it is alone', async () => {
    const all = await json<{ made_at_utc: string; sets: Record<string, unknown[]> }>('everything.json');
    expect(all.made_at_utc).toBe(NOW.toISOString());
    expect(Object.keys(all.sets)).toEqual(EXPORT_SETS.map(({ name }) => name));
    for (const name of ['aircraft', 'people', 'audit-rows', 'releases']) {
      expect(all.sets[name], name).toEqual(await json(`${name}.json`));
    }
    expect(all.sets['school']).toHaveLength(1);
    expect(JSON.stringify(all)).not.toContain(other.operatorId);
    expect(JSON.stringify(all)).not.toContain(other.aircraftId);
  });

  test('of more rows than a page has each once, in order', async () => {
    await withClient(database.adminUrl, (client) =>
      client.query(
        `INSERT INTO elt_use (id, operator_id, aircraft_id, used_on, minutes, words, recorded_by_id, recorded_at)
         SELECT gen_random_uuid(), $1, $2, '2026-11-25', n, 'Test', $3, now() FROM generate_series(1, 201) n`,
        [school.operatorId, school.aircraftId, school.people.manager.personId],
      ),
    );
    const uses = await json('locator-uses.json');
    expect(uses.map(({ minutes }) => minutes).toSorted((a, b) => Number(a) - Number(b))).toEqual(
      Array.from({ length: 201 }, (_, index) => index + 1),
    );
    expect((await records('locator-uses.csv')).map(({ id }) => id)).toEqual(uses.map(({ id }) => id));
  });
});

describe('who may', () => {
  test.each([
    ['nobody', null, 401],
    ['a pilot', 'renter', 403],
    ['a mechanic', 'powerplant', 403],
    ['a dispatcher', 'dispatcher', 403],
    ['a manager', 'manager', 200],
  ] as const)('%s: %s', async (_who, key, status) => {
    expect((await answerExport(key ? school.people[key] : null, 'write-ups.json', now)).status).toBe(status);
  });

  test.each([
    'nothing.json',
    'access-keys.csv',
    'write-ups.xml',
    'write-ups',
    '../people.csv',
    'everything.csv',
  ])('there is no %s', async (name) => expect((await file(name)).status).toBe(404));

  test('and of another school nothing is seen', async () => {
    const theirs = valueOf(await readExportPage(other.people.manager, { set: 'findings' }, now));
    expect(theirs.rows).toEqual([]);
    expect(problemOf(await readExportPage(school.people.manager, { set: 'Person' }, now)).code).toBe(
      'not_found',
    );
  });
});

async function tableNames(): Promise<Map<string, string>> {
  const schema = await readFile('prisma/schema.prisma', 'utf8');
  return new Map(
    [...schema.matchAll(/^model (\w+) \{[\s\S]*?@@map\("(\w+)"\)/gm)].map(([, model = '', table = '']) => [
      model,
      table,
    ]),
  );
}
