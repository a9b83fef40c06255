/**
 * The tables a backup holds, and their rows as lines of text in one order. A line is a JSON array of the columns' values as
 * PostgreSQL writes them.
 */
import type { Tx } from '../../db/client';
import { Trouble } from '../say.mjs';

export interface Column {
  readonly name: string;
  /** As PostgreSQL spells it: `timestamp(3) with time zone`. */
  readonly type: string;
}

export interface Table {
  /** With its schema, quoted where need be: `public.person`. */
  readonly name: string;
  readonly columns: readonly Column[];
  /** Names of the primary key's columns; none where there is no such key. */
  readonly key: readonly string[];
}

/** Rows fetched at once. Few where a row may hold a whole picture. */
const AT_ONCE = 500;
const PICTURES_AT_ONCE = 4;

/**
 * What the migrations made, as they wrote it down themselves (made-objects.ts), and the runner's notes. Not the ledger of
 * migrations: a restore makes that by migrating. Other people's tables in the same database are left alone.
 */
const OURS = `
  c.relkind IN ('r', 'p') AND NOT c.relispartition AND (
    format('%I.%I', n.nspname, c.relname) IN (SELECT name FROM operate.made_object WHERE kind = 'TABLE')
    OR c.oid = to_regclass('operate.note'))
  AND c.oid <> 'public.applied_migration'::regclass`;

export async function readTables(tx: Tx): Promise<Table[]> {
  return tx.$queryRawUnsafe<Table[]>(`
    SELECT format('%I.%I', n.nspname, c.relname) AS name,
      (SELECT json_agg(json_build_object('name', a.attname, 'type', format_type(a.atttypid, a.atttypmod)) ORDER BY a.attnum)
         FROM pg_attribute a
        WHERE a.attrelid = c.oid AND a.attnum > 0 AND NOT a.attisdropped AND a.attgenerated = '') AS columns,
      coalesce((SELECT json_agg(a.attname ORDER BY place)
         FROM pg_index i, unnest(i.indkey) WITH ORDINALITY AS k (attnum, place), pg_attribute a
        WHERE i.indrelid = c.oid AND i.indisprimary AND a.attrelid = c.oid AND a.attnum = k.attnum), '[]') AS key
    FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
    WHERE ${OURS}
    ORDER BY format('%I.%I', n.nspname, c.relname) COLLATE "C"`);
}

/**
 * Refuses an account from which row security would hide rows: a backup that leaves some out without a word is worse than
 * none.
 */
export async function requireWholeSight(tx: Tx): Promise<void> {
  const [may] = await tx.$queryRawUnsafe<{ ledger: boolean; notes: boolean | null }[]>(
    `SELECT to_regclass('public.applied_migration') IS NOT NULL AS ledger,
       (SELECT has_schema_privilege(oid, 'USAGE') FROM pg_namespace WHERE nspname = 'operate') AS notes`,
  );
  if (may?.ledger !== true || may.notes === null) {
    throw new Trouble('Wheelchock never made its tables in this database: there is nothing to back up.');
  }
  const hidden = may.notes
    ? await tx.$queryRawUnsafe<{ name: string }[]>(`
        SELECT c.relname::text AS name FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
        JOIN pg_roles me ON me.rolname = current_user
        WHERE ${OURS} AND c.relrowsecurity AND NOT me.rolsuper AND NOT me.rolbypassrls
          AND (EXISTS (SELECT 1 FROM pg_policy p WHERE p.polrelid = c.oid AND NOT p.polpermissive)
            OR NOT EXISTS (SELECT 1 FROM pg_policy p WHERE p.polrelid = c.oid AND p.polpermissive AND p.polcmd IN ('*', 'r')
              AND pg_get_expr(p.polqual, p.polrelid) = 'true'
              AND EXISTS (SELECT 1 FROM unnest(p.polroles) r WHERE r = 0 OR pg_has_role(me.oid, r, 'USAGE'))))
        ORDER BY 1 LIMIT 1`)
    : [{ name: 'operate.note' }];
  if (hidden[0]) {
    throw new Trouble(
      `This database account does not see all rows (of ${hidden[0].name}, for one). Give the owner's address in ` +
        'DATABASE_URL, the one that migrates; not the web account.',
    );
  }
}

/** All rows of a table, some at a time, in the order of its key. The same rows give the same lines on every server. */
export async function* linesOf(tx: Tx, table: Table): AsyncGenerator<string[]> {
  const values = table.columns.map(({ name }) => `${quoted(name)}::text`).join(', ');
  await tx.$executeRawUnsafe(
    `DECLARE backup_lines NO SCROLL CURSOR FOR
     SELECT to_json(ARRAY[${values}])::text AS line FROM ${table.name} ORDER BY ${orderOf(table)}`,
  );
  const atOnce = table.columns.some(({ type }) => type === 'bytea') ? PICTURES_AT_ONCE : AT_ONCE;
  for (;;) {
    const rows = await tx.$queryRawUnsafe<{ line: string }[]>(`FETCH ${atOnce} FROM backup_lines`);
    if (rows.length === 0) break;
    yield rows.map(({ line }) => line);
  }
  await tx.$executeRawUnsafe('CLOSE backup_lines');
}

/** By the key; texts by their bytes, because another server may sort words in another way. */
function orderOf({ columns, key }: Table): string {
  const sorted = key.length > 0 ? columns.filter(({ name }) => key.includes(name)) : columns;
  const plain = new Set(['uuid', 'integer', 'bigint']);
  return sorted
    .map(({ name, type }) => (plain.has(type) ? quoted(name) : `${quoted(name)}::text COLLATE "C"`))
    .join(', ');
}

/** A name in SQL. */
export const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`;

/** What names this line's row for a person: its key, or the whole line where there is none. */
export function rowNamed({ columns, key }: Table, line: string): string {
  const values = JSON.parse(line) as (string | null)[];
  const named = columns.flatMap(({ name }, at) => (key.includes(name) ? [values[at] ?? 'null'] : []));
  return named.length > 0 ? named.join(', ') : line.slice(0, 200);
}
