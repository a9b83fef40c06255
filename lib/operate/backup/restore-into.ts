/** Restores a backup into an empty database, and keeps nothing of it unless all of it is as it was. */
import path from 'node:path';
import type { Tx } from '../../db/client';
import { photoStore } from '../../photos/chosen-store';
import { ensureDatabase, withClient } from '../connection';
import { dropMadeObjects } from '../made-objects';
import { migrate, readMigrations, type MigrateOptions } from '../migrate';
import { Trouble } from '../say.mjs';
import { checkBackup, type Checked } from './check';
import { bringBack, listedFiles } from './files';
import { loadRows, requireSameRows } from './load';
import { FILE_LIST, type Manifest } from './manifest';
import { requireWholeSight } from './tables';
import { longTransaction } from './transaction';
import { readOperators, verifiedNow } from './write';

type Environment = Readonly<Record<string, string | undefined>>;

export interface RestoreOptions extends Pick<MigrateOptions, 'appUrl' | 'appPassword'> {
  /** Settings of the photo store. */
  readonly photos?: Environment;
  /** Leave photos and proofs for later: neither put back nor looked for. */
  readonly withoutFiles?: boolean;
}

/** What was restored and found to be as it was. */
export interface Restored extends Checked {
  readonly appUrl: string;
  /** Migrations applied after the rows, because the backup was older than the program. */
  readonly migrated: readonly string[];
  readonly auditRows: number;
  readonly verified: NonNullable<Manifest['verified']>;
  readonly filesVerified: number;
}

/**
 * The database has to be empty: without tables, or migrated and without anybody's data. Refuses a backup of a newer
 * program, and everything checkBackup refuses. All rows go in, in one transaction that is only kept when counts, sums,
 * chains, signatures and files are those of the backup.
 */
export async function restoreBackup(
  ownerUrl: string,
  folder: string,
  options: RestoreOptions = {},
): Promise<Restored> {
  const checked = await checkBackup(folder);
  const { manifest } = checked;
  const upTo = await lastMigration(manifest);
  await ensureDatabase(ownerUrl);
  await makeReady(ownerUrl, manifest);
  const { appUrl } = await migrate(ownerUrl, {
    appUrl: options.appUrl,
    appPassword: options.appPassword,
    upTo,
  });
  const isCurrent = (await readMigrations()).at(-1)?.name === upTo;

  let verified = { signatures: 0, faults: [] as string[] };
  const filesVerified = await longTransaction(ownerUrl, 'writing', async (tx) => {
    await requireWholeSight(tx);
    await requireNobodysData(tx);
    await loadRows(tx, folder, manifest);
    await requireSameRows(tx, folder, manifest);
    if (isCurrent) verified = await requireSameRecords(tx, manifest);
    return options.withoutFiles ? 0 : bringFilesBack(folder, manifest, options.photos ?? process.env);
  });
  const migrated = isCurrent ? [] : (await migrate(ownerUrl, { appUrl })).applied;
  if (!isCurrent) verified = await verifyAfterMigrating(ownerUrl, manifest);
  await withClient(ownerUrl, (client) => client.query('ANALYZE'));
  const auditRows = manifest.operators.reduce((all, one) => all + one.auditRows, 0);
  return { ...checked, appUrl, migrated, auditRows, verified, filesVerified };
}

/** The backup's last migration. Refuses one this program does not know, or knows otherwise. */
async function lastMigration(manifest: Manifest): Promise<string> {
  const ours = await readMigrations();
  manifest.migrations.forEach(({ name, sha256 }, at) => {
    const known = ours.find((one) => one.name === name);
    if (!known) {
      throw new Trouble(
        `This backup was made by a newer program: it has the migration ${name}, which this program does not know. Use ` +
          'the newer program.',
      );
    }
    if (known.sha256 !== sha256 || ours[at]?.name !== name) {
      throw new Trouble(
        `The migration ${name} of the backup is not the one of this program. Use the program it was made with.`,
      );
    }
  });
  return manifest.migrations.at(-1)?.name ?? '';
}

/** Looks before anything is changed. Tables further on than the backup, with nobody's data in them, are made anew. */
async function makeReady(ownerUrl: string, manifest: Manifest): Promise<void> {
  const ahead = await longTransaction(ownerUrl, 'reading', async (tx) => {
    const [has] = await tx.$queryRawUnsafe<{ ledger: boolean }[]>(
      `SELECT to_regclass('public.applied_migration') IS NOT NULL AS ledger`,
    );
    if (has?.ledger !== true) return false;
    await requireWholeSight(tx);
    await requireNobodysData(tx);
    const applied = await tx.$queryRawUnsafe<{ name: string }[]>('SELECT name FROM public.applied_migration');
    return applied.length > manifest.migrations.length;
  });
  if (ahead) await withClient(ownerUrl, dropMadeObjects);
}

/** Refuses as soon as one table holds a row that somebody's use of the program put there. */
async function requireNobodysData(tx: Tx): Promise<void> {
  const tables = await tx.$queryRawUnsafe<{ name: string }[]>(`
    SELECT name FROM operate.made_object
    WHERE kind = 'TABLE' AND name LIKE 'public.%' AND name NOT IN ('public.applied_migration', 'public.set_up_token', 'public.sign_in_knock')`);
  for (const { name } of tables) {
    if ((await tx.$queryRawUnsafe<unknown[]>(`SELECT 1 FROM ${name} LIMIT 1`)).length > 0) {
      throw new Trouble(
        `The database is not empty: ${name} holds rows. A restore goes into an empty one; make one beside it.`,
      );
    }
  }
}

/** Chains and signatures as they were; faults that the database had when it was backed up are still those and no more. */
async function requireSameRecords(tx: Tx, manifest: Manifest): Promise<NonNullable<Manifest['verified']>> {
  const operators = await readOperators(tx);
  for (const kept of manifest.operators) {
    const now = operators.find(({ id }) => id === kept.id);
    if (now?.head !== kept.head || now.auditRows !== kept.auditRows) {
      throw new Trouble(`The audit chain of operator ${kept.id} does not end where the backup says.`);
    }
  }
  if (operators.length !== manifest.operators.length)
    throw new Trouble('There are other operators than in the backup.');
  const verified = await verifiedNow(tx, operators);
  // Of a database that was older than its program nothing is known beforehand: then every fault counts.
  const before = new Set(manifest.verified?.faults ?? []);
  const newFault = verified.faults.find((fault) => !before.has(fault));
  if (newFault !== undefined) throw new Trouble(`The records do not verify: ${newFault}`);
  if (verified.faults.length !== (manifest.verified?.faults.length ?? 0)) {
    throw new Trouble('The records verify otherwise than when they were backed up.');
  }
  if (manifest.verified !== null && verified.signatures !== manifest.verified.signatures) {
    throw new Trouble(
      `There are ${verified.signatures} signatures; the backup speaks of ${manifest.verified.signatures}.`,
    );
  }
  return verified;
}

/** The rows were kept already, as equal to the backup; records that do not verify after the migrations still undo it all. */
async function verifyAfterMigrating(ownerUrl: string, manifest: Manifest) {
  try {
    return await longTransaction(ownerUrl, 'reading', (tx) => requireSameRecords(tx, manifest));
  } catch (error) {
    await withClient(ownerUrl, dropMadeObjects);
    throw error;
  }
}

async function bringFilesBack(folder: string, { files }: Manifest, photos: Environment): Promise<number> {
  const lost = new Set(files.lost.map(({ key }) => key));
  const store = photoStore(photos);
  let verified = 0;
  for await (const file of listedFiles(path.join(folder, FILE_LIST))) {
    if (lost.has(file.key)) continue;
    await bringBack(store, files.kept === 'folder' ? folder : null, file);
    verified += 1;
  }
  return verified;
}
