/**
 * Writes every row of a database to one packed file, table by table, for the test of the next upgrade:
 * `DATABASE_URL=... npx tsx lib/operate/dump-rows.ts tests/fixtures/previous-version`. Made with invented data only; it is no
 * backup (docs/operate.md says how those are made).
 */
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { gunzipSync, gzipSync } from 'node:zlib';
import type pg from 'pg';
import { withClient } from './connection';
import { Trouble, explain, say } from './say.mjs';

/** One table: its columns as that version has them, and each row's values as PostgreSQL writes them. */
export interface DumpedTable {
  readonly table: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly (string | null)[])[];
}

export interface DumpedRows {
  /** Names of the migrations that had been applied. */
  readonly migrations: readonly string[];
  readonly tables: readonly DumpedTable[];
}

const FILE = 'rows.json.gz';

/** Reads all tables of `public`; the owner's address, which sees all operators. */
export function readRows(adminUrl: string): Promise<DumpedRows> {
  return withClient(adminUrl, async (client) => {
    await client.query('BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY');
    const { rows: applied } = await client.query<{ name: string }>(
      'SELECT name FROM applied_migration ORDER BY name',
    );
    const { rows: tables } = await client.query<{ table: string; columns: string[] }>(
      `SELECT c.relname AS table, array_agg(a.attname::text ORDER BY a.attnum) AS columns
       FROM pg_class c JOIN pg_attribute a ON a.attrelid = c.oid AND a.attnum > 0 AND NOT a.attisdropped
       WHERE c.relnamespace = 'public'::regnamespace AND c.relkind = 'r' AND c.relname <> 'applied_migration'
         AND a.attgenerated = ''
       GROUP BY c.relname ORDER BY c.relname`,
    );
    const dumped: DumpedTable[] = [];
    for (const { table, columns } of tables) {
      const rows = await valuesOf(client, table, columns);
      if (rows.length > 0) dumped.push({ table, columns, rows });
    }
    return { migrations: applied.map(({ name }) => name), tables: dumped };
  });
}

async function valuesOf(client: pg.Client, table: string, columns: readonly string[]) {
  const list = columns.map((column) => `${client.escapeIdentifier(column)}::text`).join(', ');
  const { rows } = await client.query<(string | null)[]>({
    text: `SELECT ${list} FROM ${client.escapeIdentifier(table)} ORDER BY ctid`,
    rowMode: 'array',
  });
  return rows;
}

/** Writes what was read, or any other value, packed. The same content gives the same file. */
export async function writePacked(file: string, value: unknown): Promise<void> {
  await mkdir(path.dirname(file), { recursive: true });
  await writeFile(file, gzipSync(JSON.stringify(value), { level: 9 }));
}

export const readPacked = async <T>(file: string): Promise<T> =>
  JSON.parse(gunzipSync(await readFile(file)).toString('utf8')) as T;

async function command(): Promise<void> {
  const adminUrl = process.env['DATABASE_URL'];
  const folder = process.argv[2];
  if (!adminUrl || !folder) {
    throw new Trouble('Dumping rows needs DATABASE_URL (the owner) and a folder to write to.');
  }
  const dumped = await readRows(adminUrl);
  await writePacked(path.join(folder, FILE), dumped);
  const count = dumped.tables.reduce((sum, { rows }) => sum + rows.length, 0);
  say(`${count} rows of ${dumped.tables.length} tables, at ${dumped.migrations.at(-1) ?? 'no migration'}.`);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  command().catch((error: unknown) => {
    console.error(explain(error));
    process.exit(1);
  });
}
