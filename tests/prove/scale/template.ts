/**
 * The rows of one real school, laid out for copying. The school was loaded through the services, so its rows agree with one
 * another; here they are put into a schema of their own, each with the aircraft and the write-up it belongs to.
 */
import type pg from 'pg';

/** What a row hangs on, and so under which new number its copy is found. */
export type Scope = 'operator' | 'aircraft' | 'write-up';

export interface Column {
  readonly name: string;
  readonly type: string;
  /** Of a number of a row: which copy is meant; null for what is copied as it is. */
  readonly scope: Scope | null;
}

export interface Template {
  readonly table: string;
  readonly scope: Scope;
  readonly columns: readonly Column[];
}

interface Source {
  readonly table: string;
  readonly scope: Scope;
  /** Joins that find the aircraft (`a`) and the write-up (`w`), and which rows are meant. */
  readonly aircraft?: string;
  readonly writeUp?: string;
  readonly from?: string;
  readonly where?: string;
}

const of = (scope: Scope, ...tables: string[]): Source[] =>
  tables.map((table) => ({ table, scope, ...(scope === 'aircraft' && { aircraft: 'x.aircraft_id' }) }));

const writeUp = (table: string, more: Partial<Source> = {}): Source => ({
  table,
  scope: 'write-up',
  aircraft: 'd.aircraft_id',
  writeUp: 'd.id',
  from: 'JOIN discrepancy d ON d.id = x.discrepancy_id',
  ...more,
});

const BY_DEFERRAL = 'JOIN deferral f ON f.id = x.deferral_id JOIN discrepancy d ON d.id = f.discrepancy_id';
const BY_WORK = 'JOIN maintenance_action m ON m.id = x.work_id JOIN discrepancy d ON d.id = m.discrepancy_id';

/** In an order in which no row names one that comes later. */
const SOURCES: readonly Source[] = [
  ...of('operator', 'base', 'person', 'certificate', 'preventive_authorization', 'aircraft_type'),
  ...of('operator', 'walkaround_plan', 'house_rule'),
  { table: 'aircraft', scope: 'aircraft', aircraft: 'x.id' },
  ...of('aircraft', 'equipment', 'mel'),
  { table: 'mel_item', scope: 'aircraft', aircraft: 'm.aircraft_id', from: 'JOIN mel m ON m.id = x.mel_id' },
  ...of('aircraft', 'paper', 'requirement', 'directive', 'stored_limit'),
  ...of('aircraft', 'walkaround', 'planned_flight', 'release', 'meter_reading'),
  { ...of('aircraft', 'maintenance_action')[0]!, where: 'x.discrepancy_id IS NULL' },
  {
    table: 'sign_off',
    scope: 'aircraft',
    aircraft: 'm.aircraft_id',
    from: 'JOIN maintenance_action m ON m.id = x.work_id AND m.discrepancy_id IS NULL',
  },
  {
    table: 'compliance',
    scope: 'aircraft',
    aircraft: 'r.aircraft_id',
    from: 'JOIN requirement r ON r.id = x.requirement_id',
  },
  writeUp('finding', { from: 'JOIN discrepancy d ON d.finding_id = x.id' }),
  writeUp('discrepancy', { from: 'JOIN discrepancy d ON d.id = x.id' }),
  writeUp('determination'),
  writeUp('deferral'),
  writeUp('deferral_end', { from: BY_DEFERRAL }),
  writeUp('placard', { from: BY_DEFERRAL }),
  writeUp('maintenance_action'),
  writeUp('sign_off', { from: BY_WORK }),
  writeUp('check_flight', { from: BY_WORK }),
];

/** Where the laid-out rows of a source lie. */
export const laidOut = ({ table, scope }: Pick<Template, 'table' | 'scope'>): string =>
  `scale.of_${scope === 'write-up' ? 'write_up' : scope}_${table}`;

/** Lays out the rows of one operator. Throws when a column holds numbers of more than one scope: a copy could not tell them apart. */
export async function layOut(client: pg.Client, operatorId: string): Promise<Template[]> {
  await client.query('CREATE SCHEMA IF NOT EXISTS scale');
  for (const source of SOURCES) {
    const {
      table,
      aircraft = 'NULL::uuid',
      writeUp: wrote = 'NULL::uuid',
      from = '',
      where = 'true',
    } = source;
    await client.query(`DROP TABLE IF EXISTS ${laidOut(source)}`);
    await client.query(
      `CREATE TABLE ${laidOut(source)} AS SELECT x.*, ${aircraft} AS of_aircraft, ${wrote} AS of_write_up
         FROM ${table} x ${from} WHERE x.operator_id = $1 AND ${where}`,
      [operatorId],
    );
  }
  await client.query('DROP TABLE IF EXISTS scale.known');
  await client.query('CREATE TABLE scale.known (id uuid PRIMARY KEY, scope text NOT NULL)');
  for (const source of SOURCES) {
    await client.query(`INSERT INTO scale.known SELECT id, $1 FROM ${laidOut(source)}`, [source.scope]);
  }
  const templates: Template[] = [];
  for (const { table, scope } of SOURCES) {
    templates.push({ table, scope, columns: await columnsOf(client, { table, scope }) });
  }
  return templates;
}

async function columnsOf(client: pg.Client, source: Pick<Template, 'table' | 'scope'>): Promise<Column[]> {
  const { rows } = await client.query<{ name: string; type: string }>(
    `SELECT column_name AS name, udt_name AS type FROM information_schema.columns
      WHERE table_schema = 'public' AND table_name = $1 AND is_generated = 'NEVER' ORDER BY ordinal_position`,
    [source.table],
  );
  const columns: Column[] = [];
  for (const { name, type } of rows) {
    if (type !== 'uuid' || name === 'operator_id') {
      columns.push({ name, type, scope: null });
      continue;
    }
    const { rows: scopes } = await client.query<{ scope: Scope }>(
      `SELECT DISTINCT k.scope FROM ${laidOut(source)} t JOIN scale.known k ON k.id = t.${name}`,
    );
    if (scopes.length > 1) throw new Error(`${source.table}.${name} names rows of several scopes.`);
    columns.push({ name, type, scope: scopes[0]?.scope ?? null });
  }
  return columns;
}
