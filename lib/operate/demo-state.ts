import type pg from 'pg';
import { withClient } from './connection';

/**
 * How far the demo data got: `none` in an empty database, `cut short` when a run ended while loading, `loaded`, or
 * `other` when the database holds operators that no demo brought.
 */
export type DemoState = 'none' | 'cut short' | 'loaded' | 'other';

/** The line after which the loading program prints the log-ins. */
export const LOGINS_FOLLOW = 'Demo log-ins:';

/** Looks, in a migrated or an empty database. */
export function demoState(adminUrl: string): Promise<DemoState> {
  return withClient(adminUrl, async (client) => {
    if (!(await stands(client, 'operate.note'))) {
      return 'none';
    }
    const { rows } = await client.query<{ value: string }>(
      `SELECT value FROM operate.note WHERE name = 'demo'`,
    );
    const note = rows[0]?.value;
    if (note !== undefined) {
      return note === 'loaded' ? 'loaded' : 'cut short';
    }
    if (!(await stands(client, 'public.operator'))) {
      return 'none';
    }
    const { rowCount } = await client.query('SELECT 1 FROM public.operator LIMIT 1');
    return rowCount === 0 ? 'none' : 'other';
  });
}

/** Notes how far the loading got. */
export async function noteDemo(adminUrl: string, value: 'loading' | 'loaded'): Promise<void> {
  await withClient(adminUrl, (client) =>
    client.query(
      `INSERT INTO operate.note (name, value) VALUES ('demo', $1)
       ON CONFLICT (name) DO UPDATE SET value = EXCLUDED.value, noted_at = now()`,
      [value],
    ),
  );
}

async function stands(client: pg.Client, table: string): Promise<boolean> {
  const { rows } = await client.query<{ stands: boolean }>('SELECT to_regclass($1) IS NOT NULL AS stands', [
    table,
  ]);
  return rows[0]?.stands === true;
}
