/** Writes a backup: everything as it was at one moment, while others go on writing. */
import { randomUUID } from 'node:crypto';
import { mkdir, open, readFile, readdir, rename, rm, rmdir } from 'node:fs/promises';
import path from 'node:path';
import { Readable } from 'node:stream';
import type { Tx } from '../../db/client';
import { NEEDED_MIGRATIONS } from '../../db/needed-migrations';
import { photoStore } from '../../photos/chosen-store';
import { verifyOperator } from '../../records/verify';
import { inRepository } from '../places.mjs';
import { Trouble } from '../say.mjs';
import { copyOut, expectedFiles, fileLine, placeInBackup } from './files';
import { FILE_LIST, FORM_NOW, KEPT_APART, MANIFEST, SUMS, sumsText, type Manifest } from './manifest';
import { writeLines, writeThrough } from './packed';
import { linesOf, readTables, requireWholeSight, type Table } from './tables';
import { longTransaction } from './transaction';

type Environment = Readonly<Record<string, string | undefined>>;

/**
 * Backs up the owner's database into `folder`, which must not be there or must be empty. It is written beside and gets its
 * name when it is whole, so a folder of that name is always a finished backup. `photos` are the settings of the photo store.
 */
export async function writeBackup(
  ownerUrl: string,
  folder: string,
  photos: Environment = process.env,
): Promise<Manifest> {
  const target = path.resolve(folder);
  await requireEmpty(target);
  const beside = `${target}.${randomUUID().slice(0, 8)}.part`;
  await mkdir(path.dirname(target), { recursive: true });
  await mkdir(beside, { mode: 0o700 });
  try {
    const manifest = await longTransaction(ownerUrl, 'reading', (tx) => writeAll(tx, beside, photos));
    await requireEmpty(target);
    await rmdir(target).catch(() => undefined);
    await rename(beside, target);
    await syncFolder(path.dirname(target));
    return manifest;
  } catch (error) {
    await rm(beside, { recursive: true, force: true });
    throw error;
  }
}

async function requireEmpty(folder: string): Promise<void> {
  const inside = await readdir(folder).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return [];
    throw error.code === 'ENOTDIR' ? new Trouble(`${folder} is a file, no folder.`) : error;
  });
  if (inside.length > 0) {
    throw new Trouble(`${folder} is not empty. A backup goes into a folder of its own; name a new one.`);
  }
}

async function writeAll(tx: Tx, folder: string, photos: Environment): Promise<Manifest> {
  await requireWholeSight(tx);
  const migrations = await tx.$queryRawUnsafe<{ name: string; sha256: string }[]>(
    'SELECT name, sha256 FROM public.applied_migration ORDER BY name',
  );
  const known = new Set<string>(NEEDED_MIGRATIONS);
  const newer = migrations.find(({ name }) => !known.has(name));
  if (newer) {
    throw new Trouble(
      `The database has the migration ${newer.name}, which this program does not know. Use the newer program.`,
    );
  }
  const [moment] = await tx.$queryRawUnsafe<{ at: Date; postgres: string }[]>(
    `SELECT now() AS at, current_setting('server_version') AS postgres`,
  );
  const sums = new Map<string, string>();
  const tables: Manifest['tables'] = [];
  for (const table of await readTables(tx)) tables.push(await writeTable(tx, folder, table, sums));
  const operators = await readOperators(tx);
  const isCurrent = migrations.length === NEEDED_MIGRATIONS.length;
  const manifest: Manifest = {
    form: FORM_NOW,
    takenAt: (moment?.at ?? new Date()).toISOString(),
    program: await ownVersion(),
    postgres: moment?.postgres ?? '',
    migrations,
    tables,
    sequences: await readSequences(tx),
    operators,
    // The readers know the tables of their own version only.
    verified: isCurrent ? await verifiedNow(tx, operators) : null,
    files: await writeFiles(tx, folder, photos, sums),
    keptApart: [...KEPT_APART],
  };
  const put = async (file: string, text: string) =>
    sums.set(file, (await writeThrough(path.join(folder, file), Readable.from([text]))).sha256);
  await put(MANIFEST, `${JSON.stringify(manifest, null, 1)}\n`);
  await put(SUMS, sumsText(sums));
  return manifest;
}

async function writeTable(tx: Tx, folder: string, table: Table, sums: Map<string, string>) {
  const file = `tables/${table.name}.ndjson.gz`;
  const written = await writeLines(path.join(folder, file), linesOf(tx, table));
  sums.set(file, written.fileSha256);
  const { name, columns, key } = table;
  return { name, file, columns: [...columns], key: [...key], rows: written.lines, sha256: written.sha256 };
}

/** The head as its own table says it, and how many rows there are: a restore holds both against the chain itself. */
export const readOperators = (tx: Tx): Promise<Manifest['operators']> =>
  tx.$queryRawUnsafe(`
    SELECT o.id::text AS id, coalesce(h.hash, '') AS head,
      (SELECT count(*)::int FROM audit_row a WHERE a.operator_id = o.id) AS "auditRows"
    FROM operator o LEFT JOIN audit_head h ON h.operator_id = o.id ORDER BY o.id`);

/** Verifies every operator's chain and signatures in this very state. */
export async function verifiedNow(
  tx: Tx,
  operators: Manifest['operators'],
): Promise<NonNullable<Manifest['verified']>> {
  let signatures = 0;
  const faults: string[] = [];
  for (const { id } of operators) {
    const report = await verifyOperator(tx, id);
    signatures += report.signatures;
    faults.push(...report.faults.map((fault) => `operator ${id}: ${fault}`));
  }
  return { signatures, faults };
}

const readSequences = (tx: Tx): Promise<Manifest['sequences']> =>
  tx.$queryRawUnsafe(`
    SELECT format('%I.%I', schemaname, sequencename) AS name, last_value::text AS value FROM pg_sequences
    WHERE last_value IS NOT NULL AND format('%I.%I', schemaname, sequencename) IN (SELECT name FROM operate.made_object)
    ORDER BY 1`);

/** After the rows: bytes go into the store before their row, so every row seen has its bytes. */
async function writeFiles(
  tx: Tx,
  folder: string,
  photos: Environment,
  sums: Map<string, string>,
): Promise<Manifest['files']> {
  const files = await expectedFiles(tx);
  const list = await writeLines(
    path.join(folder, FILE_LIST),
    (async function* () {
      yield files.map(fileLine);
    })(),
  );
  sums.set(FILE_LIST, list.fileSha256);
  const kept = photos['PHOTO_S3_BUCKET']?.trim() ? 'bucket' : 'folder';
  const lost: { key: string; why: string }[] = [];
  let bytes = 0;
  const store = photoStore(photos);
  for (const file of kept === 'folder' ? files : []) {
    const copied = await copyOut(store, folder, file);
    if (typeof copied === 'string') lost.push({ key: file.key, why: copied });
    else {
      bytes += copied;
      sums.set(placeInBackup(file.key), file.sha256);
    }
  }
  return { kept, count: list.lines, bytes, sha256: list.sha256, lost };
}

const ownVersion = async (): Promise<string> =>
  (JSON.parse(await readFile(inRepository('package.json'), 'utf8')) as { version: string }).version;

/** The new name has to reach the disk too. Some systems open no folders. */
async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r').catch(() => null);
  await handle?.sync().catch(() => undefined);
  await handle?.close();
}
