/**
 * Rows of a backup into empty tables, as the tables' owner and nothing more. Foreign keys are taken off and put back, which
 * checks every row anew; the triggers that keep records append-only sleep meanwhile. All in the caller's transaction: either
 * everything stands as it stood before, with the rows in it, or nothing happened.
 */
import { createHash } from 'node:crypto';
import path from 'node:path';
import type { Tx } from '../../db/client';
import { Trouble } from '../say.mjs';
import type { Manifest, TableInBackup } from './manifest';
import { readLines } from './packed';
import { linesOf, quoted, readTables, rowNamed, type Table } from './tables';

interface ForeignKey {
  readonly table: string;
  readonly name: string;
  readonly definition: string;
}

/** Loads all tables and the sequences, and puts every constraint and trigger back. */
export async function loadRows(tx: Tx, folder: string, manifest: Manifest): Promise<void> {
  const tables = await readTables(tx);
  requireSameTables(tables, manifest.tables);
  const before = await guards(tx);
  const keys = await foreignKeys(tx);
  await runAll(tx, [
    ...keys.map(({ table, name }) => `ALTER TABLE ${table} DROP CONSTRAINT ${quoted(name)}`),
    ...tables.map(({ name }) => `ALTER TABLE ${name} DISABLE TRIGGER USER`),
    // What a migration or a start puts into a database without anybody's data: queues, the token of the set-up page.
    ...tables.map(({ name }) => `DELETE FROM ${name}`),
  ]);
  for (const table of manifest.tables) {
    const types = new Map(
      tables.find(({ name }) => name === table.name)?.columns.map((c) => [c.name, c.type]),
    );
    for await (const lines of readLines(path.join(folder, table.file))) await insert(tx, table, types, lines);
  }
  for (const { name, value } of manifest.sequences) {
    await tx.$executeRawUnsafe(`SELECT setval($1::regclass, $2::bigint)`, name, value);
  }
  await runAll(
    tx,
    tables.map(({ name }) => `ALTER TABLE ${name} ENABLE TRIGGER USER`),
  );
  await putBack(tx, keys);
  if ((await guards(tx)) !== before) {
    throw new Trouble('Constraints and triggers did not come back as they were; nothing was kept.');
  }
}

/** The columns by name and type; their order may differ. */
function requireSameTables(now: readonly Table[], kept: Manifest['tables']): void {
  const told = (tables: readonly { name: string; columns: Table['columns'] }[]) =>
    new Map(
      tables.map(({ name, columns }) => [
        name,
        columns
          .map((column) => `${column.name} ${column.type}`)
          .toSorted()
          .join(', '),
      ]),
    );
  const here = told(now);
  const there = told(kept);
  const other = [...new Set([...here.keys(), ...there.keys()])].find(
    (name) => here.get(name) !== there.get(name),
  );
  if (other !== undefined) {
    throw new Trouble(`The table ${other} has other columns here than in the backup; nothing was restored.`);
  }
}

/** Each value goes the way back from its text; the server reads the lines as they stand in the file. */
async function insert(
  tx: Tx,
  table: TableInBackup,
  types: ReadonlyMap<string, string>,
  lines: readonly string[],
) {
  const names = table.columns.map(({ name }) => quoted(name)).join(', ');
  const values = table.columns.map(({ name }, at) => `(r->>${at})::${types.get(name) ?? 'text'}`).join(', ');
  try {
    await tx.$executeRawUnsafe(
      `INSERT INTO ${table.name} (${names}) OVERRIDING SYSTEM VALUE
       SELECT ${values} FROM jsonb_array_elements($1::jsonb) AS rows (r)`,
      `[${lines.join(',')}]`,
    );
  } catch (error) {
    throw new Trouble(`Rows of ${table.name} (${table.file}) do not go in: ${wordsOf(error)}`, {
      cause: error,
    });
  }
}

async function putBack(tx: Tx, keys: readonly ForeignKey[]): Promise<void> {
  try {
    await runAll(
      tx,
      keys.map(
        ({ table, name, definition }) => `ALTER TABLE ${table} ADD CONSTRAINT ${quoted(name)} ${definition}`,
      ),
    );
  } catch (error) {
    throw new Trouble(`A row names one that is not in the backup: ${wordsOf(error)}`, { cause: error });
  }
}

/** One after the other in one go: there are hundreds, and each alone would be a journey to the server and back. */
async function runAll(tx: Tx, statements: readonly string[]): Promise<void> {
  await tx.$executeRawUnsafe(`DO $all$ BEGIN ${statements.map((one) => `${one};`).join('\n')} END $all$`);
}

const foreignKeys = (tx: Tx): Promise<ForeignKey[]> =>
  tx.$queryRawUnsafe(`
    SELECT format('%I.%I', n.nspname, c.relname) AS table, k.conname::text AS name, pg_get_constraintdef(k.oid) AS definition
    FROM pg_constraint k JOIN pg_class c ON c.oid = k.conrelid JOIN pg_namespace n ON n.oid = c.relnamespace
    WHERE k.contype = 'f' AND k.conparentid = 0 AND n.nspname IN ('public', 'pgboss') ORDER BY 1, 2`);

/** Every constraint and trigger with its state, as one text. */
async function guards(tx: Tx): Promise<string> {
  const rows = await tx.$queryRawUnsafe<{ told: string }[]>(`
    SELECT concat_ws(' ', conrelid::regclass, conname, convalidated, pg_get_constraintdef(oid)) AS told
      FROM pg_constraint WHERE connamespace IN ('public'::regnamespace, to_regnamespace('pgboss'))
    UNION ALL
    SELECT concat_ws(' ', tgenabled, pg_get_triggerdef(t.oid)) FROM pg_trigger t JOIN pg_class c ON c.oid = t.tgrelid
     WHERE NOT tgisinternal AND c.relnamespace IN ('public'::regnamespace, to_regnamespace('pgboss'))
    ORDER BY 1`);
  return rows.map(({ told }) => told).join('\n');
}

/** Reads all tables back. Refuses, naming table and row, whatever is not as the backup holds it. */
export async function requireSameRows(tx: Tx, folder: string, manifest: Manifest): Promise<void> {
  for (const table of manifest.tables) {
    const hash = createHash('sha256');
    let rows = 0;
    for await (const lines of linesOf(tx, table)) {
      rows += lines.length;
      hash.update(`${lines.join('\n')}\n`);
    }
    if (hash.digest('hex') === table.sha256 && rows === table.rows) continue;
    throw new Trouble(
      `After loading, ${table.name} is not what the backup holds: ${await firstDifference(tx, folder, table)}`,
    );
  }
}

async function firstDifference(tx: Tx, folder: string, table: TableInBackup): Promise<string> {
  const kept = oneByOne(readLines(path.join(folder, table.file)));
  const loaded = oneByOne(linesOf(tx, table));
  for (;;) {
    const [a, b] = [await kept.next(), await loaded.next()];
    if (a.done === true && b.done === true) return 'its sum differs.';
    if (a.done === true) return `there is a row too many, ${rowNamed(table, b.value ?? '')}.`;
    const named = rowNamed(table, a.value);
    if (b.done === true || rowNamed(table, b.value) !== named) return `row ${named} is missing.`;
    if (a.value !== b.value) return `row ${named} is different.`;
  }
}

async function* oneByOne(batches: AsyncIterable<readonly string[]>): AsyncGenerator<string, undefined> {
  for await (const batch of batches) yield* batch;
  return undefined;
}

const wordsOf = (error: unknown): string => {
  const text = error instanceof Error ? error.message : String(error);
  return text.split('\n').filter(Boolean).at(-1) ?? text;
};
