/**
 * The records of an aircraft. Sources: 14 CFR 91.417(a) to (c), 43.9(a)(4); issue 4, "verify shows any row changed since" and
 * "Retention of 91.417 computed and shown".
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { withClient } from '@/lib/operate/connection';
import type { RecordRow } from '@/lib/records/record-row';
import { readRecords } from '@/lib/records/read-records';
import { problemOf, valueOf } from '../fixtures/acts';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, NOW, openSchools, PEOPLE, type School } from '../fixtures/school';
import { signEverything, type SignedThings } from '../fixtures/signed-school';

let database: FreshDatabase;
let school: School;
let other: School;
let things: SignedThings;
const now = { now: NOW };
const read = async (query: object = {}) =>
  valueOf(await readRecords(school.people.renter, { aircraftId: school.aircraftId, ...query }, now));
const of = (rows: readonly RecordRow[], kind: RecordRow['kind']) => rows.filter((row) => row.kind === kind);

beforeAll(async () => {
  ({ database, school, other } = await openSchools());
  things = await signEverything(school, database);
});
afterAll(() => closeSchools(database));

test('every kind of signed record is there, newest first, unchanged, with who signed', async () => {
  const { rows } = await read();
  expect(new Set(rows.map(({ kind }) => kind))).toEqual(
    new Set([
      'work',
      'inspection',
      'compliance',
      'determination',
      'deferral',
      'check-flight',
      'list',
      'extension',
      'permit',
      'permit-inspection',
    ]),
  );
  const moments = rows.map(({ at }) => at);
  expect(moments).toEqual(moments.toSorted((a, b) => b.localeCompare(a)));
  for (const { title, changes } of rows)
    expect({ title, changes }).toEqual({ title, changes: changes && [] });
  const [work] = of(rows, 'work');
  expect(work).toMatchObject({
    part: 'propeller',
    on: '2026-11-25',
    by: PEOPLE.powerplant.name,
    certificate: { kind: expect.any(String), number: 'M-airframepowerplant' },
    paper: { kind: 'entry', id: things.workId },
    changes: [],
  });
  expect(work?.hash).toMatch(/^[0-9a-f]{64}$/);
});

test('how long the law asks for each is said with its paragraph (91.417(b))', async () => {
  const { rows } = await read();
  expect(of(rows, 'work')[0]?.retention).toMatchObject({
    keepThrough: '2027-11-25',
    cite: '14cfr91.417(b)(1)',
  });
  expect(of(rows, 'inspection')[0]?.retention.keepThrough).toBe('until-the-next');
  // An item of the list is still open.
  expect(of(rows, 'list')[0]?.retention).toMatchObject({
    keepThrough: 'until-repaired',
    cite: '14cfr91.417(b)(3)',
  });
  expect(of(rows, 'deferral')[0]?.retention.keepThrough).toBe('not-named');
});

test('the status sheet has every paragraph of 91.417(a)(2), and says what it does not hold', async () => {
  const { status } = await read();
  expect(status.ttisTenths).toBe(45123);
  expect(status.inspections.map(({ name }) => name)).toContain('Annual inspection');
  expect(status.inspections.find(({ name }) => name === 'Annual inspection')).toMatchObject({
    lastOn: expect.stringMatching(/^\d{4}-/),
    dueOn: expect.stringMatching(/^\d{4}-/),
    missing: null,
  });
  expect(status.directivesReviewedOn).toBe('2026-11-01');
  expect(status.forms337).toEqual([]);
});

test('records of other years stand under their year', async () => {
  const view = await read({ year: 2025 });
  expect(view.year).toBe(2025);
  expect(view.years[0]).toBe(2026);
  expect(view.rows.every(({ at }) => at.startsWith('2025'))).toBe(true);
  expect(
    problemOf(await readRecords(school.people.renter, { aircraftId: school.aircraftId, year: 12 }, now)).code,
  ).toBe('invalid');
});

test('whoever works here may read them (91.417(c)); another operator finds nothing', async () => {
  for (const person of [school.people.student, school.people.dispatcher, school.people.manager]) {
    expect((await readRecords(person, { aircraftId: school.aircraftId }, now)).ok).toBe(true);
  }
  const foreign = await readRecords(other.people.manager, { aircraftId: school.aircraftId }, now);
  expect(problemOf(foreign).code).toBe('not_found');
});

describe('a row changed by somebody who switched the guards off', () => {
  test('is not as it was signed, and the page says which column', async () => {
    await withClient(database.adminUrl, (client) =>
      client.query(
        `BEGIN; SET LOCAL session_replication_role = replica;
         UPDATE maintenance_action SET description = 'Nothing done.' WHERE id = '${things.workId}'; COMMIT`,
      ),
    );
    const { rows } = await read();
    expect(of(rows, 'work')[0]?.changes).toEqual([
      'was changed after it was signed: work.description is not what was signed',
    ]);
    expect(rows.filter(({ changes }) => changes && changes.length > 0)).toHaveLength(1);
  });
});
