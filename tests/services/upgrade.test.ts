/**
 * The upgrade from the previous version, on the rows that version left behind (tests/fixtures/previous-version). Source: issue
 * 6, "zero-downtime migration order; upgrade from the previous version tested". Two ways: its database is migrated and holds
 * all it held; and its program, still running while the new tables are there already, can write everything it wrote.
 */
import type pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { closeDatabase } from '@/lib/db/client';
import { NEEDED_MIGRATIONS } from '@/lib/db/needed-migrations';
import { reportFinding } from '@/lib/findings/report-finding';
import { verifyAudit } from '@/lib/operate/audit-verify';
import { databaseIn, withClient, withDatabase } from '@/lib/operate/connection';
import { readRows, type DumpedRows, type DumpedTable } from '@/lib/operate/dump-rows';
import { migrate } from '@/lib/operate/migrate';
import { enterWork } from '@/lib/work/enter-work';
import { signWork } from '@/lib/work/sign-work';
import { startWork } from '@/lib/work/start-work';
import { deadLandingLight, entryOf, signatureOf, startOf, valueOf } from '../fixtures/acts';
import { freshDatabase, type FreshDatabase } from '../fixtures/database';
import {
  bringBackPrevious,
  dropDatabase,
  literally,
  migrateAsThen,
  previousAnswers,
  previousRows,
} from '../fixtures/previous-version/bring-back';
import { answersOf, type KeptAnswers } from '../fixtures/previous-version/make';
import { NOW, PEOPLE, type School } from '../fixtures/school';

let dumped: DumpedRows;
let kept: KeptAnswers;
let current: FreshDatabase;

beforeAll(async () => {
  dumped = await previousRows();
  kept = await previousAnswers();
  current = await freshDatabase();
});
afterAll(() => current.close());

test('the fixture is of the version before, and holds rows of many kinds', () => {
  expect(dumped.migrations).toEqual(NEEDED_MIGRATIONS.filter((name) => name < '0007'));
  const count = (table: string) => dumped.tables.find((one) => one.table === table)?.rows.length ?? 0;
  for (const table of [
    'audit_row',
    'release',
    'sign_off',
    'deferral',
    'visit',
    'inspection',
    'webhook',
    'access_key',
  ]) {
    expect([table, count(table) > 0]).toEqual([table, true]);
  }
  expect(kept.answers.length).toBeGreaterThan(40);
  expect(new Set(kept.answers.map(({ outcome }) => outcome))).toEqual(
    new Set(['go', 'go-with-limits', 'no-go']),
  );
});

describe('the database of the previous version, migrated', () => {
  let adminUrl: string;

  beforeAll(async () => {
    adminUrl = withDatabase(current.adminUrl, `${databaseIn(current.adminUrl)}_before`);
    await bringBackPrevious(adminUrl, dumped);
    const { appUrl, applied } = await migrate(adminUrl);
    expect(applied).toEqual(NEEDED_MIGRATIONS.filter((name) => !dumped.migrations.includes(name)));
    process.env['APP_DATABASE_URL'] = appUrl;
    await closeDatabase();
  });
  afterAll(async () => {
    await closeDatabase();
    await dropDatabase(adminUrl);
  });

  test('every value of every row is what it was', async () => {
    const after = new Map((await readRows(adminUrl)).tables.map((table) => [table.table, table]));
    for (const { table, columns, rows } of dumped.tables) {
      const now = after.get(table);
      const places = columns.map((column) => now?.columns.indexOf(column) ?? -1);
      expect([table, places.includes(-1)]).toEqual([table, false]);
      const told = (now?.rows ?? []).map((row) => JSON.stringify(places.map((place) => row[place])));
      expect(told.sort()).toEqual(rows.map((row) => JSON.stringify(row)).sort());
    }
  });

  test('audit chains and signatures verify', async () => {
    const reports = await verifyAudit(adminUrl);
    expect(reports.length).toBe(5);
    expect(reports.flatMap(({ faults }) => faults)).toEqual([]);
    expect(reports.reduce((sum, { signatures }) => sum + signatures, 0)).toBeGreaterThan(50);
  });

  test('every aircraft is answered as the previous version answered it', async () => {
    expect(await answersOf(adminUrl)).toEqual(kept.answers);
  });

  test('work goes on: a finding, its repair, the sign-off; and the chain still verifies', async () => {
    const school: School = { ...kept.school, equipment: new Map(kept.school.equipment) };
    const now = { now: NOW };
    const finding = valueOf(await reportFinding(school.people.renter, deadLandingLight(school), now));
    const discrepancyId = finding.discrepancyId ?? '';
    const who = school.people.powerplant;
    const { workId } = valueOf(await startWork(who, startOf(discrepancyId), now));
    const { entryHash } = valueOf(await enterWork(who, entryOf(workId, PEOPLE.powerplant.name), now));
    valueOf(await signWork(who, signatureOf(workId, entryHash), now));
    const report = (await verifyAudit(adminUrl)).find(({ operatorId }) => operatorId === school.operatorId);
    expect(report?.faults).toEqual([]);
    expect(report?.rows).toBeGreaterThan(2);
  });
});

describe('the previous program on the new tables', () => {
  test('as the application’s role, under row security, by its own columns: every row goes in', async () => {
    const operators = dumped.tables.find(({ table }) => table === 'operator');
    const ids = operators?.rows.map((row) => row[operators.columns.indexOf('id')] ?? '') ?? [];
    expect(ids).toHaveLength(5);
    await withClient(current.appUrl, async (client) => {
      for (const id of ids) {
        await client.query('BEGIN');
        await client.query(`SELECT set_config('app.operator_id', $1, true)`, [id]);
        expect(await insertAll(client, id)).toEqual([]);
        await client.query('COMMIT');
      }
    });
    const counts = (tables: readonly DumpedTable[]) => tables.map(({ table, rows }) => [table, rows.length]);
    const now = await readRows(current.adminUrl);
    expect(counts(now.tables)).toEqual(counts(dumped.tables));
    expect((await verifyAudit(current.adminUrl)).flatMap(({ faults }) => faults)).toEqual([]);
  });

  test('what it may do to which column is still allowed to it', async () => {
    const may = (url: string) =>
      withClient(url, async (client) => {
        const { rows } = await client.query<{ told: string }>(
          `SELECT concat_ws(' ', privilege_type, table_name, column_name) AS told FROM information_schema.column_privileges
           WHERE grantee = 'wheelchock_app' AND table_schema = 'public'`,
        );
        return rows.map(({ told }) => told);
      });
    const adminUrl = withDatabase(current.adminUrl, `${databaseIn(current.adminUrl)}_rights`);
    try {
      await migrateAsThen(adminUrl, dumped);
      const now = new Set(await may(current.adminUrl));
      const before = await may(adminUrl);
      expect(before.length).toBeGreaterThan(300);
      expect(before.filter((one) => !now.has(one))).toEqual([]);
    } finally {
      await dropDatabase(adminUrl);
    }
  });
});

/**
 * Inserts the operator's rows, a table at a time; one that names a row not there yet is tried again after the others, in the
 * end row by row. Gives what never went in.
 */
async function insertAll(client: pg.Client, operatorId: string): Promise<string[]> {
  let waiting = dumped.tables.flatMap((table) => {
    const whose = table.columns.indexOf(table.table === 'operator' ? 'id' : 'operator_id');
    expect([table.table, whose >= 0]).toEqual([table.table, true]);
    const rows = table.rows.filter((row) => row[whose] === operatorId);
    return rows.length === 0 ? [] : [{ table, rows }];
  });
  for (;;) {
    const later: typeof waiting = [];
    const why: string[] = [];
    for (const part of waiting) {
      await client.query('SAVEPOINT part');
      try {
        await client.query(part.rows.map((row) => literally(client, part.table, row)).join(';\n'));
      } catch (error) {
        await client.query('ROLLBACK TO SAVEPOINT part');
        why.push(`${part.table.table}: ${String(error)}`);
        later.push(part);
      }
      await client.query('RELEASE SAVEPOINT part');
    }
    if (later.length === 0) return [];
    if (later.length < waiting.length) waiting = later;
    else if (later.some(({ rows }) => rows.length > 1)) {
      waiting = later.flatMap(({ table, rows }) => rows.map((row) => ({ table, rows: [row] })));
    } else return why;
  }
}
