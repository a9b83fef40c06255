import type pg from 'pg';

/**
 * Which objects the migrations made, written down as they are made, so that starting anew takes away those and
 * nothing that somebody else keeps in the same database.
 */

/** What stands in the user's schemas now, as `kind name` in SQL spelling; what an extension brought is left out. */
const STANDING = `
  SELECT CASE c.relkind WHEN 'v' THEN 'VIEW' WHEN 'm' THEN 'MATERIALIZED VIEW' WHEN 'S' THEN 'SEQUENCE' ELSE 'TABLE' END
           AS kind, format('%I.%I', n.nspname, c.relname) AS name
    FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
   WHERE c.relkind IN ('r', 'p', 'v', 'm', 'S') AND NOT c.relispartition AND ${userSchema('pg_class', 'c.oid')}
  UNION ALL
  SELECT CASE p.prokind WHEN 'p' THEN 'PROCEDURE' WHEN 'a' THEN 'AGGREGATE' ELSE 'FUNCTION' END,
         format('%I.%I(%s)', n.nspname, p.proname, pg_get_function_identity_arguments(p.oid))
    FROM pg_proc p JOIN pg_namespace n ON n.oid = p.pronamespace
   WHERE ${userSchema('pg_proc', 'p.oid')}
  UNION ALL
  SELECT CASE t.typtype WHEN 'd' THEN 'DOMAIN' ELSE 'TYPE' END, format('%I.%I', n.nspname, t.typname)
    FROM pg_type t JOIN pg_namespace n ON n.oid = t.typnamespace
   WHERE t.typtype IN ('e', 'd', 'r') AND ${userSchema('pg_type', 't.oid')}
  UNION ALL
  SELECT 'SCHEMA', format('%I', n.nspname) FROM pg_namespace n
   WHERE n.nspname <> 'public' AND ${userSchema('pg_namespace', 'n.oid')}`;

function userSchema(catalog: string, oid: string): string {
  return `n.nspname <> 'information_schema' AND n.nspname <> 'operate' AND n.nspname NOT LIKE 'pg\\_%'
    AND NOT EXISTS (SELECT 1 FROM pg_depend d
                     WHERE d.classid = '${catalog}'::regclass AND d.objid = ${oid} AND d.deptype = 'e')`;
}

/** Runs `work` and writes down what it made. Must be called inside a transaction. */
export async function recordingMadeObjects(client: pg.Client, work: () => Promise<void>): Promise<void> {
  await client.query(`CREATE TEMPORARY TABLE stood_before ON COMMIT DROP AS ${STANDING}`);
  await work();
  await client.query(
    `INSERT INTO operate.made_object (kind, name)
     SELECT kind, name FROM (${STANDING} EXCEPT SELECT kind, name FROM stood_before) made
     ON CONFLICT DO NOTHING`,
  );
}

/** Tables first (their triggers and defaults hang on the rest), schemas last. */
const ORDER = [
  'TABLE',
  'VIEW',
  'MATERIALIZED VIEW',
  'SEQUENCE',
  'FUNCTION',
  'PROCEDURE',
  'AGGREGATE',
  'TYPE',
  'DOMAIN',
];

/** Takes away every object the migrations made, and the record of them. Roles stay: they belong to the server. */
export async function dropMadeObjects(client: pg.Client): Promise<number> {
  const { rows: known } = await client.query(`SELECT 1 FROM pg_namespace WHERE nspname = 'operate'`);
  if (known.length === 0) {
    return 0;
  }
  const { rows } = await client.query<{ kind: string; name: string }>(
    'SELECT kind, name FROM operate.made_object',
  );
  const place = (kind: string) => (ORDER.includes(kind) ? ORDER.indexOf(kind) : ORDER.length);
  rows.sort((a, b) => place(a.kind) - place(b.kind));
  await client.query('BEGIN');
  try {
    for (const { kind, name } of rows) {
      // Names were quoted by the server itself when they were written down.
      await client.query(`DROP ${kind} IF EXISTS ${name}${kind === 'SCHEMA' ? '' : ' CASCADE'}`);
    }
    await client.query('DROP SCHEMA operate CASCADE');
    await client.query('DROP TABLE public.applied_migration');
    await client.query('COMMIT');
  } catch (error) {
    await client.query('ROLLBACK');
    throw error;
  }
  return rows.length;
}
