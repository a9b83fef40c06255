/**
 * A backup and its way back, on a real PostgreSQL and real folders. Source: issue 7, "npm run backup / restore with verification
 * of counts, hashes and audit chain". What is refused stands in backup-refused.test.ts.
 */
import { execFileSync } from 'node:child_process';
import { readFile, readdir, stat } from 'node:fs/promises';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { checkSignIn } from '@/lib/access/passwords';
import { closeDatabase } from '@/lib/db/client';
import { reportFinding } from '@/lib/findings/report-finding';
import { checkBackup } from '@/lib/operate/backup/check';
import { MANIFEST, readSums, SUMS, type Manifest } from '@/lib/operate/backup/manifest';
import { restoreBackup, type Restored } from '@/lib/operate/backup/restore-into';
import { writeBackup } from '@/lib/operate/backup/write';
import { verifyAudit } from '@/lib/operate/audit-verify';
import { withAccount, withClient, withDatabase, databaseIn } from '@/lib/operate/connection';
import { readRows } from '@/lib/operate/dump-rows';
import { photosIn } from '@/lib/operate/photos-in';
import { readPhoto } from '@/lib/photos/read-photo';
import { deadLandingLight, valueOf } from '../fixtures/acts';
import { AWKWARD, backupFolder, filesIn, newDatabase, openSignedSchools } from '../fixtures/backed-up';
import type { FreshDatabase } from '../fixtures/database';
import {
  bringBackPrevious,
  dropDatabase,
  previousAnswers,
  previousRows,
} from '../fixtures/previous-version/bring-back';
import { answersOf } from '../fixtures/previous-version/make';
import { NOW, PASSWORD, type School } from '../fixtures/school';

const now = { now: NOW };
let database: FreshDatabase;
let school: School;
let photoId: string;
let folder: string;
let remove: () => Promise<void>;
let backup: string;
let manifest: Manifest;

beforeAll(async () => {
  ({ database, school, photoId } = await openSignedSchools());
  ({ folder, remove } = await backupFolder());
  backup = path.join(folder, 'first');
  manifest = await writeBackup(database.adminUrl, backup);
});
afterAll(async () => {
  await closeDatabase();
  await database.close();
  await remove();
});

describe('a backup', () => {
  test('holds every row of every table, the chains’ ends, the files, and nothing was wrong', async () => {
    const counted = await withClient(database.adminUrl, async (client) => {
      const { rows } = await client.query<{ name: string }>(
        `SELECT format('%I.%I', schemaname, tablename) AS name FROM pg_tables
         WHERE schemaname IN ('public', 'pgboss') AND tablename <> 'applied_migration'`,
      );
      const counts = new Map<string, number>();
      for (const { name } of rows) {
        const { rows: found } = await client.query<{ n: number }>(`SELECT count(*)::int AS n FROM ${name}`);
        counts.set(name, found[0]?.n ?? -1);
      }
      return counts;
    });
    // The partitions of the queue are told as one.
    for (const name of [...counted.keys()].filter((one) => /^pgboss\.j[0-9a-f]{8,}$/.test(one))) {
      counted.delete(name);
    }
    counted.set('pgboss.job', 0);
    counted.set('operate.note', 0);
    expect(new Map(manifest.tables.map(({ name, rows }) => [name, rows]))).toEqual(counted);
    expect(manifest.operators).toHaveLength(2);
    expect(manifest.operators.find(({ id }) => id === school.operatorId)?.auditRows).toBeGreaterThan(20);
    expect(manifest.verified?.signatures).toBeGreaterThan(10);
    expect(manifest.verified?.faults).toEqual([]);
    // A photo in two sizes and a proof.
    expect(manifest.files).toMatchObject({ kept: 'folder', count: 3, lost: [] });
  });

  test('is readable by this account only, and nothing half-made lies beside it', async () => {
    expect((await stat(backup)).mode & 0o777).toBe(0o700);
    for (const file of await filesIn(backup)) {
      expect([file, (await stat(path.join(backup, file))).mode & 0o777]).toEqual([file, 0o600]);
    }
    expect(await readdir(folder)).toEqual(['first']);
  });

  test('is known again by ordinary programs: sha256sum, gzip', async () => {
    const told = execFileSync('sha256sum', ['--check', '--strict', SUMS], { cwd: backup, encoding: 'utf8' });
    expect(told.split('\n').filter((line) => line.endsWith(': OK'))).toHaveLength(
      (await filesIn(backup)).length - 1,
    );
    const biggest = manifest.tables.toSorted((a, b) => b.rows - a.rows).slice(0, 6);
    expect(biggest.at(-1)?.rows).toBeGreaterThan(1);
    for (const { file, sha256, rows } of biggest) {
      const shell = (command: string) =>
        execFileSync('sh', ['-c', command, 'sh', path.join(backup, file)], { encoding: 'utf8' }).trim();
      expect([file, shell('gzip -dc "$1" | sha256sum').slice(0, 64)]).toEqual([file, sha256]);
      expect([file, Number(shell('gzip -dc "$1" | wc -l'))]).toEqual([file, rows]);
    }
  });

  test('holds no secret of the server, and says which to keep apart', async () => {
    const text = execFileSync('sh', ['-c', 'cat manifest.json SHA256SUMS; gzip -dc tables/*.gz'], {
      cwd: backup,
      encoding: 'utf8',
      maxBuffer: 1e9,
    });
    for (const url of [database.adminUrl, database.appUrl]) {
      expect(text).not.toContain(decodeURIComponent(new URL(url).password));
    }
    expect(text).not.toContain(PASSWORD);
    expect(manifest.keptApart.join()).toContain('NEXTAUTH_SECRET');
  });

  test('of the same state has the same files', async () => {
    const again = path.join(folder, 'again');
    await writeBackup(database.adminUrl, again);
    const [a, b] = [await readSums(backup), await readSums(again)];
    // That one holds the moment.
    for (const sums of [a, b]) sums.delete(MANIFEST);
    expect(b).toEqual(a);
  });
});

describe('restored into a database that was not there', () => {
  let target: string;
  let restored: Restored;
  let photos: Record<string, string>;

  beforeAll(async () => {
    target = newDatabase(database.adminUrl);
    photos = photosIn(path.join(folder, 'photos'));
    restored = await restoreBackup(target, backup, { photos });
    process.env['APP_DATABASE_URL'] = restored.appUrl;
    await closeDatabase();
  });
  afterAll(async () => {
    await closeDatabase();
    process.env['APP_DATABASE_URL'] = database.appUrl;
    await dropDatabase(target);
  });

  test('it says what it verified, and every value is what it was', async () => {
    const { rows } = await checkBackup(backup);
    expect(restored).toMatchObject({ rows, filesVerified: 3, migrated: [], verified: { faults: [] } });
    const before = (await readRows(database.adminUrl)).tables;
    const after = (await readRows(target)).tables;
    const told = (tables: typeof before) =>
      tables.map(({ table, rows: all }) => [table, all.map((row) => JSON.stringify(row)).toSorted()]);
    expect(told(after)).toEqual(told(before));
    expect(JSON.stringify(after)).toContain(JSON.stringify(AWKWARD));
  });

  test('a backup of it has the same files', async () => {
    const twice = path.join(folder, 'of-the-restored');
    await writeBackup(target, twice, { ...process.env, ...photos });
    const [a, b] = [await readSums(backup), await readSums(twice)];
    for (const sums of [a, b]) sums.delete(MANIFEST);
    expect(b).toEqual(a);
  });

  test('people sign in, each aircraft is answered as before, pictures are there, work goes on', async () => {
    const answers = await answersOf(target);
    process.env['APP_DATABASE_URL'] = database.appUrl;
    await closeDatabase();
    const before = await answersOf(database.adminUrl);
    process.env['APP_DATABASE_URL'] = restored.appUrl;
    await closeDatabase();
    expect(answers).toEqual(before);
    expect(answers.length).toBeGreaterThan(0);
    expect(await checkSignIn('manager@first.example', PASSWORD, NOW)).toMatchObject({
      operatorId: school.operatorId,
    });
    const whole = process.env['PHOTO_DIR'];
    process.env['PHOTO_DIR'] = photos['PHOTO_DIR'];
    try {
      expect(valueOf(await readPhoto(school.people.renter, { photoId }, now)).bytes).not.toBeNull();
    } finally {
      process.env['PHOTO_DIR'] = whole;
    }
    valueOf(await reportFinding(school.people.renter, deadLandingLight(school), now));
    expect((await verifyAudit(target)).flatMap(({ faults }) => faults)).toEqual([]);
  });

  test('constraints and triggers are those of a database that was never restored', async () => {
    const guards = (url: string) =>
      withClient(url, async (client) => {
        const { rows } = await client.query<{ told: string }>(
          `SELECT concat_ws(' ', conrelid::regclass, conname, convalidated, condeferrable, pg_get_constraintdef(oid)) AS told
             FROM pg_constraint WHERE connamespace IN ('public'::regnamespace, 'pgboss'::regnamespace)
           UNION ALL SELECT concat_ws(' ', tgenabled, pg_get_triggerdef(oid)) FROM pg_trigger WHERE NOT tgisinternal
           ORDER BY 1`,
        );
        return rows.map(({ told }) => told);
      });
    expect(await guards(target)).toEqual(await guards(database.adminUrl));
    await withClient(target, async (client) => {
      await expect(client.query('DELETE FROM sign_off')).rejects.toThrow('never changed or deleted');
      await expect(client.query(`DELETE FROM audit_head`)).rejects.toThrow('only grows');
    });
  });
});

test('an owner who is no superuser, bound by row security, can back up and restore', async () => {
  const target = newDatabase(database.adminUrl);
  const name = databaseIn(target);
  const plain = withAccount(target, `${name}_owner`, 'only-for-tests');
  await withClient(withDatabase(target, 'postgres'), async (client) => {
    await client.query(`CREATE ROLE ${name}_owner LOGIN CREATEROLE PASSWORD 'only-for-tests' NOBYPASSRLS`);
    await client.query(`GRANT wheelchock_app TO ${name}_owner WITH ADMIN OPTION`);
    await client.query(`CREATE DATABASE ${name} OWNER ${name}_owner`);
  });
  try {
    const photos = photosIn(path.join(folder, 'photos-plain'));
    expect((await restoreBackup(plain, backup, { photos })).verified.faults).toEqual([]);
    const twice = path.join(folder, 'by-plain-owner');
    const again = await writeBackup(plain, twice, { ...process.env, ...photos });
    expect(again.tables).toEqual(manifest.tables);
  } finally {
    await dropDatabase(target);
    await withClient(withDatabase(target, 'postgres'), (client) => client.query(`DROP ROLE ${name}_owner`));
  }
});

test('a backup at the state of the version before goes in, is migrated on, and answers as it answered', async () => {
  const [old, target] = [newDatabase(database.adminUrl), newDatabase(database.adminUrl)];
  try {
    const dumped = await previousRows();
    await bringBackPrevious(old, dumped);
    const older = path.join(folder, 'older');
    const kept = await writeBackup(old, older);
    expect(kept.verified).toBeNull();
    expect(kept.migrations.map(({ name }) => name)).toEqual(dumped.migrations);
    // The tables are there already, at the state of today.
    const { migrated, verified, appUrl } = await restoreBackup(target, older);
    expect(migrated).toEqual(['0007_trust']);
    expect(verified.faults).toEqual([]);
    expect(verified.signatures).toBeGreaterThan(50);
    process.env['APP_DATABASE_URL'] = appUrl;
    await closeDatabase();
    expect(await answersOf(target)).toEqual((await previousAnswers()).answers);
  } finally {
    await closeDatabase();
    process.env['APP_DATABASE_URL'] = database.appUrl;
    await dropDatabase(target);
    await dropDatabase(old);
  }
});

test('the manifest is plain JSON with its form, moment and migrations', async () => {
  const read = JSON.parse(await readFile(path.join(backup, MANIFEST), 'utf8')) as Manifest;
  expect(read).toEqual(manifest);
  expect(read.form).toBe(1);
  expect(Math.abs(Date.now() - Date.parse(read.takenAt))).toBeLessThan(600_000);
});
