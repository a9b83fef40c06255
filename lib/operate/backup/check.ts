/** Looks a backup over without a database: every file whole, every row there once, in the numbers the manifest says. */
import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { Trouble } from '../say.mjs';
import { listedFiles, placeInBackup } from './files';
import { FILE_LIST, MANIFEST, SUMS, readManifest, readSums, type Manifest } from './manifest';
import { contentOf, sumOf } from './packed';

/** What a backup was found to hold. */
export interface Checked {
  readonly manifest: Manifest;
  readonly rows: number;
  /** Bytes of photos and proofs that are in the backup. */
  readonly files: number;
  /** Sum of SHA256SUMS: one number for all of it, to be written down elsewhere. */
  readonly sum: string;
}

/**
 * Refuses, naming the file, what was cut off, changed, doubled, taken away or is not whole. It cannot know a backup that
 * somebody changed together with all its sums; the audit chain, at the restore, and the number written down elsewhere do.
 */
export async function checkBackup(folder: string): Promise<Checked> {
  const sums = await readSums(folder);
  if (!sums.has(MANIFEST)) throw new Trouble(`${SUMS} does not name ${MANIFEST}: it was changed.`);
  // The manifest first: everything else is read by its word. A newer one is refused for being newer, whatever its sum.
  const manifest = await readManifest(folder);
  for (const [file, sum] of sums) await requireFile(folder, file, sum);
  for (const table of manifest.tables) {
    if (!sums.has(table.file)) throw new Trouble(`${SUMS} does not name ${table.file}: it was changed.`);
    const content = await unpacked(folder, table.file);
    if (content.lines !== table.rows) {
      throw new Trouble(
        `${table.file} holds ${content.lines} rows of ${table.name}; the manifest says ${table.rows}.`,
      );
    }
    if (content.sha256 !== table.sha256) {
      throw new Trouble(`${table.file}: the rows of ${table.name} are not those that were backed up.`);
    }
  }
  return {
    manifest,
    rows: manifest.tables.reduce((all, { rows }) => all + rows, 0),
    files: await checkFiles(folder, manifest, sums),
    sum: createHash('sha256')
      .update(await readFile(path.join(folder, SUMS)))
      .digest('hex'),
  };
}

async function requireFile(folder: string, file: string, sum: string): Promise<void> {
  if (path.isAbsolute(file) || file.split('/').includes('..')) throw new Trouble(`${SUMS} was changed.`);
  let found: string;
  try {
    found = await sumOf(path.join(folder, file));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
    throw new Trouble(`${file} is missing in ${folder}.`, { cause: error });
  }
  if (found !== sum)
    throw new Trouble(`${file} is not the file that was backed up: it was cut off or changed.`);
}

async function unpacked(folder: string, file: string): Promise<{ lines: number; sha256: string }> {
  try {
    return await contentOf(path.join(folder, file));
  } catch (error) {
    throw new Trouble(`${file} cannot be unpacked: it was cut off or changed.`, { cause: error });
  }
}

/** The list against the manifest, and each file on it against the sums. Gives how many files have their bytes here. */
async function checkFiles(
  folder: string,
  { files }: Manifest,
  sums: ReadonlyMap<string, string>,
): Promise<number> {
  if (!sums.has(FILE_LIST)) throw new Trouble(`${SUMS} does not name ${FILE_LIST}: it was changed.`);
  const list = await unpacked(folder, FILE_LIST);
  if (list.lines !== files.count || list.sha256 !== files.sha256) {
    throw new Trouble(`${FILE_LIST} is not the list that the manifest speaks of.`);
  }
  if (files.kept === 'bucket') return 0;
  const lost = new Set(files.lost.map(({ key }) => key));
  let here = 0;
  for await (const { key, sha256 } of listedFiles(path.join(folder, FILE_LIST))) {
    if (lost.has(key)) continue;
    if (sums.get(placeInBackup(key)) !== sha256) {
      throw new Trouble(`${placeInBackup(key)} is missing, or its sum is not the one its row keeps.`);
    }
    here += 1;
  }
  return here;
}
