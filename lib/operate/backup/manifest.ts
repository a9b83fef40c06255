/** What stands beside the rows of a backup: what it holds, and the sums by which that is known again. */
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { z } from 'zod';
import { Trouble } from '../say.mjs';

/** The form of the folder. A program refuses a higher number than its own. */
const FORM = 1;

export const MANIFEST = 'manifest.json';
/** In the form of `sha256sum --check`, so that a backup can be looked at without this program. */
export const SUMS = 'SHA256SUMS';
export const FILE_LIST = 'files.ndjson.gz';

const sum = z.string().regex(/^[0-9a-f]{64}$/);
const count = z.int().nonnegative();

const manifest = z.object({
  form: z.literal(FORM),
  /** When the state was taken, UTC. */
  takenAt: z.iso.datetime(),
  program: z.string(),
  postgres: z.string(),
  migrations: z.array(z.object({ name: z.string(), sha256: sum })).min(1),
  tables: z
    .array(
      z.object({
        name: z.string(),
        file: z.string().regex(/^tables\/[\w."-]+\.ndjson\.gz$/),
        columns: z.array(z.object({ name: z.string(), type: z.string() })).min(1),
        key: z.array(z.string()),
        rows: count,
        /** Of the rows as lines, in the order of the key. */
        sha256: sum,
      }),
    )
    .min(1),
  sequences: z.array(z.object({ name: z.string(), value: z.string() })),
  /** The end of each operator's audit chain. */
  operators: z.array(z.object({ id: z.string(), auditRows: count, head: z.string() })),
  /** What verifying chain and signatures found; null where the database was older than the program that made the backup. */
  verified: z.object({ signatures: count, faults: z.array(z.string()) }).nullable(),
  files: z.object({
    /** `folder`: their bytes are in this backup. `bucket`: they are not, the list says which ones the rows expect. */
    kept: z.enum(['folder', 'bucket']),
    count,
    bytes: count,
    /** Of the list, unpacked. */
    sha256: sum,
    /** Those whose bytes were not there, or were others, when the backup was made. */
    lost: z.array(z.object({ key: z.string(), why: z.string() })),
  }),
  keptApart: z.array(z.string()),
});

export type Manifest = z.infer<typeof manifest>;
export type TableInBackup = Manifest['tables'][number];

export const FORM_NOW = FORM;

/** Settings without which a restored system is not whole. They are in no backup. */
export const KEPT_APART = [
  'NEXTAUTH_SECRET (or .data/secrets.json, or the secret file session_secret): seals second factors, invitations and secrets of webhooks',
  'DATABASE_URL and APP_DATABASE_URL: addresses with passwords; a restore makes the accounts anew',
  'SMTP_URL and MAIL_FROM: the way letters go',
  'PHOTO_S3_...: the account of the bucket, where there is one',
] as const;

/** Reads it. Refuses a newer form with words, and what is no manifest. */
export async function readManifest(folder: string): Promise<Manifest> {
  const text = await readFile(path.join(folder, MANIFEST), 'utf8').catch(() => null);
  if (text === null) {
    throw new Trouble(
      `There is no ${MANIFEST} in ${folder}: that is no backup, or one that was not finished.`,
    );
  }
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch {
    throw new Trouble(`${MANIFEST} cannot be read: it was cut off or changed.`);
  }
  const form = (raw as { form?: unknown } | null)?.form;
  if (typeof form === 'number' && form > FORM) {
    throw new Trouble(
      `This backup was made by a newer program (form ${form}; this program knows ${FORM}). Use the newer program.`,
    );
  }
  const read = manifest.safeParse(raw);
  if (!read.success) {
    throw new Trouble(`${MANIFEST} is not one of a backup: ${z.prettifyError(read.error)}`);
  }
  return read.data;
}

/** File -> its sum. */
export async function readSums(folder: string): Promise<Map<string, string>> {
  const text = await readFile(path.join(folder, SUMS), 'utf8').catch(() => null);
  if (text === null) {
    throw new Trouble(`There is no ${SUMS} in ${folder}: that is no backup, or one that was not finished.`);
  }
  const sums = new Map<string, string>();
  for (const line of text.split('\n').slice(0, -1)) {
    const [, hash, file] = /^([0-9a-f]{64}) {2}(.+)$/.exec(line) ?? [];
    if (hash === undefined || file === undefined || sums.has(file)) throw new Trouble(`${SUMS} was changed.`);
    sums.set(file, hash);
  }
  if (!text.endsWith('\n')) throw new Trouble(`${SUMS} was cut off or changed.`);
  return sums;
}

export const sumsText = (sums: ReadonlyMap<string, string>): string =>
  [...sums]
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([file, hash]) => `${hash}  ${file}\n`)
    .join('');
