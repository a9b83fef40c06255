/**
 * What a backup and a restore refuse, and that nothing is kept then. Source: issue 7, "verification of counts, hashes and audit
 * chain": each way in which a backup can be hurt is done to a copy of a real one.
 */
import { mkdir, readFile, rm, truncate, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { checkBackup } from '@/lib/operate/backup/check';
import { FILE_LIST, MANIFEST, SUMS } from '@/lib/operate/backup/manifest';
import { restoreBackup } from '@/lib/operate/backup/restore-into';
import { writeBackup } from '@/lib/operate/backup/write';
import { withClient } from '@/lib/operate/connection';
import { readRows } from '@/lib/operate/dump-rows';
import { photosIn } from '@/lib/operate/photos-in';
import {
  backupFolder,
  changeByte,
  changeManifest,
  changeRows,
  copyOf,
  filesIn,
  openSignedSchools,
} from '../fixtures/backed-up';
import { freshDatabase, type FreshDatabase } from '../fixtures/database';
import { closeSchools } from '../fixtures/school';

let database: FreshDatabase;
let empty: FreshDatabase;
let folder: string;
let remove: () => Promise<void>;
let backup: string;
let photos: Record<string, string>;
/** One file of the photos. */
let photo: string;

const SIGNED = 'public.sign_off';
const signedFile = `tables/${SIGNED}.ndjson.gz`;

beforeAll(async () => {
  ({ database } = await openSignedSchools());
  ({ folder, remove } = await backupFolder());
  backup = path.join(folder, 'whole');
  photos = photosIn(path.join(folder, 'photos'));
  await writeBackup(database.adminUrl, backup);
  expect((await checkBackup(backup)).rows).toBeGreaterThan(100);
  empty = await freshDatabase();
  photo = (await filesIn(backup)).find((file) => file.endsWith('full.jpg')) ?? '';
  expect(photo).toContain('files/');
});
afterAll(async () => {
  await empty.close();
  await closeSchools(database);
  await remove();
});

const rowsIn = async (url: string): Promise<number> =>
  (await readRows(url)).tables.reduce((all, { rows }) => all + rows.length, 0);

describe('looking a backup over names the file', () => {
  const hurts: readonly [string, (copy: string) => Promise<unknown>, () => string][] = [
    ['a table cut off', (copy) => truncate(path.join(copy, signedFile), 100), () => signedFile],
    ['a table emptied', (copy) => truncate(path.join(copy, signedFile)), () => signedFile],
    ['a table gone', (copy) => rm(path.join(copy, signedFile)), () => signedFile],
    ['one bit of a table', (copy) => changeByte(path.join(copy, signedFile)), () => signedFile],
    ['one bit of its packing', (copy) => changeByte(path.join(copy, signedFile), 0), () => signedFile],
    ['one bit of the manifest', (copy) => changeByte(path.join(copy, MANIFEST), 0.01), () => MANIFEST],
    ['the manifest gone', (copy) => rm(path.join(copy, MANIFEST)), () => MANIFEST],
    ['the sums gone', (copy) => rm(path.join(copy, SUMS)), () => SUMS],
    ['the sums cut off', (copy) => truncate(path.join(copy, SUMS), 1000), () => SUMS],
    ['one bit of the sums', (copy) => changeByte(path.join(copy, SUMS), 0), () => 'files'],
    ['the list of files gone', (copy) => rm(path.join(copy, FILE_LIST)), () => FILE_LIST],
    ['one bit of a photo', (copy) => changeByte(path.join(copy, photo)), () => photo],
    ['a photo gone', (copy) => rm(path.join(copy, photo)), () => photo],
    ['a row gone', (copy) => changeRows(copy, SIGNED, (rows) => rows.slice(1), 'none'), () => signedFile],
    [
      'a row gone, its file’s sum made anew',
      (copy) => changeRows(copy, SIGNED, (rows) => rows.slice(1), 'file'),
      () => signedFile,
    ],
    [
      'a row twice, its file’s sum made anew',
      (copy) => changeRows(copy, SIGNED, ([first = '', ...rows]) => [first, first, ...rows], 'file'),
      () => signedFile,
    ],
    [
      'a row changed, its file’s sum made anew',
      (copy) => changeRows(copy, SIGNED, ([first = '', ...rows]) => [other(first), ...rows], 'file'),
      () => signedFile,
    ],
    [
      'a table that the sums do not name any more',
      async (copy) => {
        const text = await readFile(path.join(copy, SUMS), 'utf8');
        await writeFile(path.join(copy, SUMS), text.replace(/^.*public\.sign_off\.ndjson\.gz\n/m, ''));
      },
      () => signedFile,
    ],
  ];
  test.each(hurts)('%s', async (_what, hurt, named) => {
    const copy = await copyOf(backup);
    await hurt(copy);
    const refused = checkBackup(copy);
    await expect(refused).rejects.toThrow(named());
    await expect(refused).rejects.toMatchObject({ name: 'Trouble' });
    await expect(restoreBackup(empty.adminUrl, copy, { photos })).rejects.toThrow(named());
    expect(await rowsIn(empty.adminUrl)).toBe(0);
    await rm(copy, { recursive: true });
  });

  test('what is no backup', async () => {
    const nothing = path.join(folder, 'nothing');
    await mkdir(nothing);
    await expect(checkBackup(nothing)).rejects.toThrow('that is no backup');
    await expect(checkBackup(path.join(folder, 'not-there'))).rejects.toThrow('that is no backup');
  });
});

/** Another digit in the middle of the line, so that it is still a row. */
const other = (line: string): string =>
  line.replace(/(?<=[0-9a-f]{20})[0-9a-f](?=[0-9a-f]{20})/, (digit) => (digit === '0' ? '1' : '0'));

/** The restore refuses this backup although each sum in it is right, and the database stays empty. */
async function refusedByRestore(copy: string, words: RegExp | string): Promise<void> {
  await expect(restoreBackup(empty.adminUrl, copy, { photos })).rejects.toThrow(words);
  expect(await rowsIn(empty.adminUrl)).toBe(0);
  await rm(copy, { recursive: true });
}

describe('a backup that was changed with all its sums', () => {
  test('a signed row changed: the signatures and the chain say so', async () => {
    const copy = await copyOf(backup);
    await changeRows(copy, SIGNED, ([first = '', ...rows]) => [other(first), ...rows], 'all');
    await checkBackup(copy);
    await refusedByRestore(copy, /do not verify: operator .* sign.off|signature/i);
  });

  test('an audit row gone: the chain’s end says so', async () => {
    const copy = await copyOf(backup);
    await changeRows(copy, 'public.audit_row', (rows) => rows.slice(1), 'all');
    await checkBackup(copy);
    await refusedByRestore(copy, /audit chain of operator .* does not end where the backup says/);
  });

  test('a row that others name gone: foreign keys say so', async () => {
    const copy = await copyOf(backup);
    await changeRows(copy, 'public.finding', (rows) => rows.slice(1), 'all');
    await checkBackup(copy);
    await refusedByRestore(copy, /names one that is not in the backup/);
  });

  test('a row twice: the keys say so', async () => {
    const copy = await copyOf(backup);
    await changeRows(copy, SIGNED, ([first = '', ...rows]) => [first, first, ...rows], 'all');
    await checkBackup(copy);
    await refusedByRestore(copy, /Rows of public\.sign_off .* do not go in/);
  });
});

describe('of other times', () => {
  test('a newer form, a newer migration, a migration of other content', async () => {
    const form = await copyOf(backup);
    await changeManifest(form, (manifest) => ({ ...manifest, form: 2, more: 'unknown' }));
    await refusedByRestore(form, 'made by a newer program (form 2');

    const migration = await copyOf(backup);
    const later = { name: '0007_later', sha256: '0'.repeat(64) };
    await changeManifest(migration, (manifest) => ({
      ...manifest,
      migrations: [...manifest.migrations, later],
    }));
    await refusedByRestore(migration, 'made by a newer program: it has the migration 0007_later');

    const content = await copyOf(backup);
    await changeManifest(content, (manifest) => ({
      ...manifest,
      migrations: manifest.migrations.map((one) => ({ ...one, sha256: '0'.repeat(64) })),
    }));
    await refusedByRestore(content, 'is not the one of this program');
  });
});

describe('what the database does', () => {
  test('one that holds rows is refused and not touched', async () => {
    const before = await readRows(database.adminUrl);
    await expect(restoreBackup(database.adminUrl, backup, { photos })).rejects.toThrow(
      'The database is not empty',
    );
    expect(await readRows(database.adminUrl)).toEqual(before);
  });

  test('one that drops a row on the way in is noticed, with table and row, and keeps nothing', async () => {
    const id = await withClient(database.adminUrl, async (client) => {
      const { rows } = await client.query<{ id: string }>('SELECT id FROM compliance ORDER BY id LIMIT 1');
      return rows[0]?.id ?? '';
    });
    await withClient(empty.adminUrl, (client) =>
      client.query(`CREATE RULE lose AS ON INSERT TO compliance WHERE NEW.id = '${id}' DO INSTEAD NOTHING`),
    );
    await expect(restoreBackup(empty.adminUrl, backup, { photos })).rejects.toThrow(
      `public.compliance is not what the backup holds: row ${id} is missing`,
    );
    expect(await rowsIn(empty.adminUrl)).toBe(0);
    await withClient(empty.adminUrl, (client) => client.query('DROP RULE lose ON compliance'));
  });

  test('another file under a photo’s name in the store', async () => {
    const place = path.join(folder, 'taken');
    const file = path.join(place, photo.replace('files/', ''));
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(file, 'another picture');
    await expect(restoreBackup(empty.adminUrl, backup, { photos: photosIn(place) })).rejects.toThrow(
      'is not the one of the backup; one of that name lay there before',
    );
    expect(await readFile(file, 'utf8')).toBe('another picture');
    expect(await rowsIn(empty.adminUrl)).toBe(0);
  });
});

describe('making a backup', () => {
  test('refuses a folder that is not empty, and the web account', async () => {
    await expect(writeBackup(database.adminUrl, backup)).rejects.toThrow('is not empty');
    await expect(writeBackup(database.appUrl, path.join(folder, 'web'))).rejects.toThrow(
      'does not see all rows',
    );
  });

  test('in an empty folder it is made; a photo that is lost is said and does not keep it', async () => {
    const place = path.join(folder, 'prepared');
    await mkdir(place);
    const manifest = await writeBackup(database.adminUrl, place, photosIn(path.join(folder, 'no-photos')));
    expect(manifest.files.lost).toHaveLength(3);
    expect(manifest.files.lost[0]?.why).toBe('it is not in the store');
    expect((await checkBackup(place)).files).toBe(0);
  });

  test('photos in a bucket are named, not copied; a restore then wants them there. What did not verify comes back so', async () => {
    await withClient(database.adminUrl, async (client) => {
      await client.query('BEGIN; SET LOCAL session_replication_role = replica');
      await client.query(`UPDATE sign_off SET signed_at = signed_at + interval '1 hour'`);
      await client.query('COMMIT');
    });
    const bucket = {
      PHOTO_S3_ENDPOINT: 'https://s3.example.org',
      PHOTO_S3_BUCKET: 'photos',
      PHOTO_S3_REGION: 'eu',
      PHOTO_S3_KEY_ID: 'nobody',
      PHOTO_S3_SECRET: 'a-secret-of-the-bucket',
    };
    const place = path.join(folder, 'bucket');
    const { files, verified } = await writeBackup(database.adminUrl, place, bucket);
    expect(verified?.faults.length).toBeGreaterThan(0);
    expect(files).toMatchObject({ kept: 'bucket', count: 3, bytes: 0, lost: [] });
    expect((await filesIn(place)).filter((file) => file.startsWith('files/'))).toEqual([]);
    expect(await readFile(path.join(place, MANIFEST), 'utf8')).not.toContain('a-secret-of-the-bucket');
    const nowhere = { photos: photosIn(path.join(folder, 'nowhere')) };
    await expect(restoreBackup(empty.adminUrl, place, nowhere)).rejects.toThrow(
      'is not in the store of photos',
    );
    expect(await rowsIn(empty.adminUrl)).toBe(0);
    const restored = await restoreBackup(empty.adminUrl, place, { ...nowhere, withoutFiles: true });
    expect(restored).toMatchObject({ filesVerified: 0, verified });
  });
});
