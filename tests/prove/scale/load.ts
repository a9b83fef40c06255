/** Databases of the sizes on one server: each made from one that the services filled, then filled further set by set. */
import type pg from 'pg';
import { withClient, withDatabase } from '@/lib/operate/connection';
import { migrate } from '@/lib/operate/migrate';
import { prepareDatabase } from '@/lib/operate/prepare-database';
import { QUILLBACK } from '../../../seed/operators';
import { operatorId } from '../../../seed/load/ids';
import { MEASURED_WORDS } from './asked';
import { copyOperator, makeReady } from './copy';
import type { Size } from './sizes';
import { layOut } from './template';

const SCHOOL = 'scale_school';

/** Operators that are copied at the same time. */
const AT_ONCE = 2;

export interface Loaded {
  readonly adminUrl: string;
  readonly appUrl: string;
  /** Ids of the operators, by their numbers. */
  readonly operators: ReadonlyMap<number, string>;
}

/** The demo, loaded once through the services. */
export async function loadSchool(
  serverUrl: string,
  photos: Record<string, string | undefined>,
): Promise<void> {
  const url = withDatabase(serverUrl, SCHOOL);
  await prepareDatabase(url, {}, photos);
}

/** Makes the database of a size where it is not there, loads what is missing of it, and counts what the planner knows. */
export async function loadSize(serverUrl: string, size: Size): Promise<Loaded> {
  const name = `scale_${size.name}`;
  const adminUrl = withDatabase(serverUrl, name);
  await withClient(serverUrl, async (client) => {
    const { rowCount } = await client.query('SELECT 1 FROM pg_database WHERE datname = $1', [name]);
    if (rowCount === 0) await client.query(`CREATE DATABASE ${name} TEMPLATE ${SCHOOL}`);
  });
  const { appUrl } = await migrate(adminUrl);
  await withClient(adminUrl, takeOutMeasured);
  const operators = await loadOperators(adminUrl, size);
  return { adminUrl, appUrl, operators };
}

/**
 * What an earlier measurement wrote up stands open, and would be judged by the next. Only in a database made for measuring, and
 * only as the server's master: nobody who uses the program may delete a record.
 */
async function takeOutMeasured(client: pg.Client): Promise<void> {
  await client.query('SET session_replication_role = replica');
  await client.query(
    'DELETE FROM discrepancy d USING finding f WHERE f.operator_id = d.operator_id AND f.id = d.finding_id AND f.words = $1',
    [MEASURED_WORDS],
  );
  await client.query('DELETE FROM finding WHERE words = $1', [MEASURED_WORDS]);
}

async function loadOperators(adminUrl: string, size: Size): Promise<Map<number, string>> {
  const template = operatorId(QUILLBACK.key);
  return withClient(adminUrl, async (client) => {
    const templates = await layOut(client, template);
    await makeReady(client, template);
    const operators = new Map<number, string>();
    const { rows } = await client.query<{ id: string; number: number }>(
      `SELECT id, substr(name, 8, strpos(name, ' of') - 8)::int AS number FROM operator WHERE name LIKE 'School % of the proof'`,
    );
    for (const { id, number } of rows) operators.set(number, id);
    const missing = size.operators.filter(({ number }) => !operators.has(number));
    const copyInTurn = async (own: pg.Client) => {
      await own.query('SET synchronous_commit = off');
      for (let one = missing.shift(); one; one = missing.shift()) {
        operators.set(one.number, await copyOperator(own, templates, template, one));
      }
    };
    const isNew = missing.length > 0;
    await Promise.all(Array.from({ length: AT_ONCE }, () => withClient(adminUrl, copyInTurn)));
    // What autovacuum would have done meanwhile: index-only scans want the map of what is visible.
    if (isNew) await client.query('VACUUM (ANALYZE)');
    return operators;
  });
}
