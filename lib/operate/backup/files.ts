/** Photos and proofs: which ones the rows expect, their way into a backup and back. */
import { createHash } from 'node:crypto';
import { chmod, mkdir, open, readFile } from 'node:fs/promises';
import path from 'node:path';
import type { Tx } from '../../db/client';
import { proofKey } from '../../people/proof-file';
import { keyOf, requireKey, type PhotoStore } from '../../photos/store';
import { Trouble } from '../say.mjs';
import { readLines } from './packed';

/** A file that a row names, and the sum the row keeps of it. */
export interface ExpectedFile {
  readonly key: string;
  readonly sha256: string;
}

/** Photos of both sizes and proofs, by key. Proofs of erased persons are not expected: their bytes are gone for good. */
export async function expectedFiles(tx: Tx): Promise<ExpectedFile[]> {
  const files: ExpectedFile[] = [];
  const has = async (table: string, column: string) =>
    (
      await tx.$queryRawUnsafe<unknown[]>(
        `SELECT 1 FROM pg_attribute WHERE attrelid = to_regclass($1) AND attname = $2`,
        table,
        column,
      )
    ).length > 0;
  // A database of an older version keeps photos in their rows, or knows no proofs yet.
  if (await has('public.photo', 'stored_as')) {
    const photos = await tx.$queryRawUnsafe<{ stored: string; sha256: string; small: string }[]>(
      'SELECT stored_as AS stored, sha256, small_sha256 AS small FROM photo WHERE stored_as IS NOT NULL',
    );
    for (const { stored, sha256, small } of photos) {
      files.push({ key: keyOf(stored, 'full'), sha256 }, { key: keyOf(stored, 'small'), sha256: small });
    }
  }
  if (await has('public.proof', 'stored_as')) {
    const proofs = await tx.$queryRawUnsafe<{ stored: string; mime: string; sha256: string }[]>(
      `SELECT p.stored_as AS stored, p.mime, p.sha256 FROM proof p
       LEFT JOIN certificate c ON c.operator_id = p.operator_id AND c.id = p.certificate_id
       LEFT JOIN person ON person.operator_id = c.operator_id AND person.id = c.person_id
       WHERE person.erased_at IS NULL`,
    );
    for (const { stored, mime, sha256 } of proofs) files.push({ key: proofKey(stored, mime), sha256 });
  }
  return files.toSorted((a, b) => (a.key < b.key ? -1 : 1));
}

/** Where a file lies in a backup. */
export const placeInBackup = (key: string): string => `files/${key}`;

export const fileLine = (file: ExpectedFile): string => JSON.stringify([file.key, file.sha256]);

/** The list of a backup. */
export async function* listedFiles(listFile: string): AsyncGenerator<ExpectedFile> {
  for await (const lines of readLines(listFile)) {
    for (const line of lines) {
      const [key = '', sha256 = ''] = JSON.parse(line) as string[];
      requireKey(key);
      yield { key, sha256 };
    }
  }
}

/** Copies one from the store into the backup's folder. Gives its length, or in words why it could not be. */
export async function copyOut(
  store: PhotoStore,
  folder: string,
  file: ExpectedFile,
): Promise<number | string> {
  const bytes = await store.get(file.key);
  if (bytes === null) return 'it is not in the store';
  if (sumOfBytes(bytes) !== file.sha256) return 'its bytes are not those that were stored';
  const place = path.join(folder, placeInBackup(file.key));
  await mkdir(path.dirname(place), { recursive: true, mode: 0o700 });
  const handle = await open(place, 'wx', 0o600);
  try {
    await handle.writeFile(bytes);
    await handle.sync();
  } finally {
    await handle.close();
  }
  await chmod(place, 0o600);
  return bytes.byteLength;
}

/**
 * Puts one back where the store does not hold it yet, and reads it again from there. Never writes over another file.
 * `folder` null: the bytes are not in the backup, so they have to be in the store already.
 */
export async function bringBack(store: PhotoStore, folder: string | null, file: ExpectedFile): Promise<void> {
  const there = await store.get(file.key);
  if (there === null && folder !== null) {
    const bytes = await readFile(path.join(folder, placeInBackup(file.key)));
    await store.put(file.key, bytes, file.key.endsWith('.pdf') ? 'application/pdf' : 'image/jpeg');
  }
  const back = there ?? (await store.get(file.key));
  if (back === null) {
    throw new Trouble(
      `The file ${file.key} is not in the store of photos, and its bytes are not in the backup.`,
    );
  }
  if (sumOfBytes(back) !== file.sha256) {
    throw new Trouble(
      `The file ${file.key} in the store of photos is not the one of the backup` +
        `${there === null ? '' : '; one of that name lay there before'}.`,
    );
  }
}

const sumOfBytes = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
