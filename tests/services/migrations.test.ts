import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { withClient } from '@/lib/operate/connection';
import { dropMadeObjects } from '@/lib/operate/made-objects';
import { migrate } from '@/lib/operate/migrate';
import { checkAppAccount, loginRoleFor } from '@/lib/operate/roles';
import { type FreshDatabase, freshDatabase } from '../fixtures/database';

// Source of every check here: issue 2 ("signed rows are append-only, enforced in the database") and the roles in
// DEVELOPERS.md; common practice otherwise.

let database: FreshDatabase;
let folder: string;

/** Writes one migration; the real ones are already in the template. */
async function write(name: string, sql: string): Promise<void> {
  await mkdir(path.join(folder, name), { recursive: true });
  await writeFile(path.join(folder, name, 'migration.sql'), sql);
}

/** Runs the test's own migrations on a database that has forgotten the real ones. */
function run() {
  return migrate(database.adminUrl, { folder, appUrl: database.appUrl });
}

beforeAll(async () => {
  database = await freshDatabase();
  folder = await mkdtemp(path.join(tmpdir(), 'wheelchock-migrations-'));
  await withClient(database.adminUrl, (client) => client.query('DELETE FROM applied_migration'));
  await write('0001_a', 'CREATE TABLE first_thing (a int);');
});

afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
  await database.close();
});

describe('migrations', () => {
  test('are applied once, also when two runs start together', async () => {
    const both = await Promise.all([run(), run()]);
    expect(both.flatMap((result) => result.applied)).toEqual(['0001_a']);
    expect((await run()).applied).toEqual([]);
  });

  test('one that fails leaves nothing behind and says the line', async () => {
    await write('0002_b', 'CREATE TABLE second_thing (a int);\n\nSELECT nonsense;');
    await expect(run()).rejects.toThrow(/0002_b failed and was undone.*nonsense.*line 3/);
    const stands = await withClient(database.adminUrl, (client) =>
      client.query<{ name: string | null }>(`SELECT to_regclass('second_thing')::text AS name`),
    );
    expect(stands.rows).toEqual([{ name: null }]);
    await write('0002_b', 'CREATE TABLE second_thing (a int);');
    expect((await run()).applied).toEqual(['0002_b']);
  });

  test('turned line ends are no change, any other change is refused', async () => {
    await write('0002_b', 'CREATE TABLE second_thing (a int);\r\n'.trimEnd());
    expect((await run()).applied).toEqual([]);
    await write('0002_b', 'CREATE TABLE second_thing (a bigint);');
    await expect(run()).rejects.toThrow(/0002_b was changed after it had been applied/);
    await write('0002_b', 'CREATE TABLE second_thing (a int);');
  });

  test('a database newer than the program is refused', async () => {
    await rm(path.join(folder, '0002_b'), { recursive: true });
    await expect(run()).rejects.toThrow(/newer than the program/);
    await write('0002_b', 'CREATE TABLE second_thing (a int);');
  });

  test('starting anew takes away what they made and nothing else', async () => {
    await withClient(database.adminUrl, async (client) => {
      await client.query('CREATE TABLE somebody_elses (a int)');
      expect(await dropMadeObjects(client)).toBeGreaterThan(20);
      const { rows } = await client.query<{ relname: string }>(
        `SELECT relname FROM pg_class WHERE relnamespace = 'public'::regnamespace AND relkind = 'r'`,
      );
      expect(rows).toEqual([{ relname: 'somebody_elses' }]);
    });
    expect((await run()).applied).toEqual(['0001_a', '0002_b']);
  });
});

describe('the web account', () => {
  test('is bound by row security, and its sessions are in UTC on a server that is not', async () => {
    await expect(checkAppAccount(database.appUrl)).resolves.toBeUndefined();
    const zone = await withClient(database.adminUrl, async (client) => {
      const { rows } = await client.query<{ setconfig: string[] }>(
        `SELECT s.setconfig FROM pg_db_role_setting s JOIN pg_roles r ON r.oid = s.setrole
          WHERE r.rolname = $1 AND s.setdatabase = 0`,
        [new URL(database.appUrl).username],
      );
      return rows;
    });
    expect(zone).toEqual([{ setconfig: ['TimeZone=UTC'] }]);
  });

  test('the owner of the tables is refused as web account', async () => {
    await expect(checkAppAccount(database.adminUrl)).rejects.toThrow(/owns tables in this database/);
    await expect(migrate(database.adminUrl, { folder, appUrl: database.adminUrl })).rejects.toThrow(
      /may not serve the web/,
    );
  });

  test.each([
    { database: 'wheelchock', role: 'wc_wheelchock' },
    { database: 'Flying Club', role: /^wc_flying_club_[0-9a-f]{8}$/ },
    { database: 'x'.repeat(63), role: /^wc_x{51}_[0-9a-f]{8}$/ },
  ])('gets a name from the database $database that PostgreSQL does not cut', ({ database: name, role }) => {
    expect(loginRoleFor(name)).toMatch(role);
    expect(loginRoleFor(name).length).toBeLessThanOrEqual(63);
  });
});
