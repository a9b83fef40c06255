/** Copies the laid-out school under new numbers, set by set: as the owner, with every constraint and trigger on. */
import type pg from 'pg';
import { laidOut, type Column, type Template } from './template';

/** One operator to be. */
export interface OperatorSize {
  /** Its place in the series; also in its people's addresses. */
  readonly number: number;
  readonly aircraft: number;
  readonly writeUps: { readonly open: number; readonly deferred: number; readonly closed: number };
}

/** How far back closed write-ups reach. */
const DAYS_BACK = 5 * 365;

/**
 * Functions that give each copy its number: from the row it was copied from and from whose it is, shaped as a random UUID,
 * because the schemas of messages ask for one.
 */
export async function makeReady(client: pg.Client, templateOperator: string): Promise<void> {
  await client.query(`
    CREATE OR REPLACE FUNCTION scale.id(old text, whose text) RETURNS uuid LANGUAGE sql IMMUTABLE PARALLEL SAFE AS
      $$ SELECT overlay(overlay(md5(old || whose) PLACING '4' FROM 13) PLACING '8' FROM 17)::uuid $$;
    DROP TABLE IF EXISTS scale.school, scale.choice, scale.same_item;
    -- The school's aircraft in order, so that the first eight copies are eight different ones.
    CREATE TABLE scale.school AS SELECT id, type_id, row_number() OVER (ORDER BY registration) - 1 AS place
      FROM aircraft WHERE operator_id = '${templateOperator}';
    -- An item of one aircraft and the same one of a sister ship.
    CREATE TABLE scale.same_item AS SELECT e.id AS item, s.id AS aircraft, o.id AS there
      FROM scale.of_aircraft_equipment e JOIN scale.school w ON w.id = e.aircraft_id JOIN scale.school s ON s.type_id = w.type_id
      JOIN scale.of_aircraft_equipment o ON o.aircraft_id = s.id AND o.name = e.name;
    -- Which write-ups an aircraft can have copies of: those of its type whose item it has too.
    CREATE TABLE scale.choice AS
      SELECT s.id AS aircraft, d.id AS write_up, d.state, i.there AS item,
             row_number() OVER (PARTITION BY s.id, d.state ORDER BY d.number) - 1 AS place,
             count(*) OVER (PARTITION BY s.id, d.state) AS choices
        FROM scale.of_write_up_discrepancy d JOIN scale.school w ON w.id = d.aircraft_id
        JOIN scale.school s ON s.type_id = w.type_id OR (d.state = 'open' AND d.equipment_id IS NULL)
        LEFT JOIN scale.same_item i ON i.item = d.equipment_id AND i.aircraft = s.id
       WHERE d.equipment_id IS NULL OR i.there IS NOT NULL;
    ANALYZE scale.school, scale.same_item, scale.choice;`);
}

/** Writes one operator whole, in one transaction. */
export async function copyOperator(
  client: pg.Client,
  templates: readonly Template[],
  templateOperator: string,
  size: OperatorSize,
): Promise<string> {
  // Foreign keys are looked up by plans made while a table was still empty; those would read it from end to end for each row.
  await client.query('SET enable_seqscan = off');
  await client.query('BEGIN');
  try {
    const operatorId = await writeOperator(client, templateOperator, size);
    await writeLists(client, operatorId, size);
    for (const template of templates) await client.query(insertOf(template, operatorId, size.number));
    await writeTraces(client, operatorId);
    await client.query('DROP TABLE fleet, pick');
    await client.query('COMMIT');
    return operatorId;
  } catch (error) {
    await client.query('ROLLBACK');
    throw error;
  }
}

async function writeOperator(client: pg.Client, templateOperator: string, size: OperatorSize) {
  const { open, deferred, closed } = size.writeUps;
  const { rows } = await client.query<{ id: string }>(
    `INSERT INTO operator (id, name, part141, next_write_up_number, units)
     SELECT scale.id(id::text, $2), $3, part141, $4, units FROM operator WHERE id = $1 RETURNING id`,
    [
      templateOperator,
      `/${size.number}`,
      `School ${size.number} of the proof`,
      size.aircraft * (open + deferred + closed) + 1,
    ],
  );
  return rows[0]!.id;
}

/** The aircraft to be, and the write-ups to be with what each is copied from. */
async function writeLists(client: pg.Client, operatorId: string, size: OperatorSize): Promise<void> {
  const { open, deferred, closed } = size.writeUps;
  const each = open + deferred + closed;
  await client.query(
    `CREATE TEMPORARY TABLE fleet AS SELECT i, s.id AS like_aircraft, '/${size.number}/' || i AS whose,
       scale.id(s.id::text, '/${size.number}/' || i) AS aircraft_id
       FROM generate_series(0, $1::int - 1) i JOIN scale.school s ON s.place = i % (SELECT count(*) FROM scale.school)`,
    [size.aircraft],
  );
  await client.query(
    `CREATE TEMPORARY TABLE pick AS SELECT f.aircraft_id, f.whose AS whose_aircraft, f.whose || '/' || g AS whose, c.write_up,
       scale.id(c.item::text, f.whose) AS item, f.i * $1::int + g AS number,
       CASE WHEN g > $2::int + $3::int THEN (g - $2::int - $3::int) * ${DAYS_BACK} / greatest($4::int, 1) ELSE 0 END AS days_back
       FROM fleet f CROSS JOIN generate_series(1, $1::int) g
       JOIN scale.choice c ON c.aircraft = f.like_aircraft AND c.place = g % c.choices
        AND c.state = CASE WHEN g <= $2::int THEN 'open' WHEN g <= $2::int + $3::int THEN 'deferred' ELSE 'closed' END`,
    [each, open, deferred, closed],
  );
  await client.query('ANALYZE fleet, pick');
  const { rows } = await client.query<{ n: number }>('SELECT count(*)::int AS n FROM pick');
  const n = rows[0]!.n;
  // N051QB's type has neither an open nor a deferred one of its own in every school; then the count would be short.
  if (n !== each * size.aircraft) throw new Error(`${n} write-ups instead of ${each * size.aircraft}.`);
  await client.query(
    `INSERT INTO audit_head (operator_id, seq, hash) VALUES ($1, $2::int, md5($2::int::text) || md5($2::int::text))`,
    [operatorId, n],
  );
}

function insertOf(template: Template, operatorId: string, number: number): string {
  const names = template.columns.map(({ name }) => `"${name}"`).join(', ');
  const values = template.columns.map((column) => valueOf(template, column, operatorId, number)).join(', ');
  const from = {
    operator: `${laidOut(template)} t`,
    aircraft: `fleet f JOIN ${laidOut(template)} t ON t.of_aircraft = f.like_aircraft`,
    'write-up': `pick p JOIN ${laidOut(template)} t ON t.of_write_up = p.write_up`,
  }[template.scope];
  return `INSERT INTO ${template.table} (${names}) SELECT ${values} FROM ${from}`;
}

function valueOf(
  { table, scope: of }: Template,
  { name, type, scope }: Column,
  operatorId: string,
  number: number,
): string {
  const column = `t."${name}"`;
  if (name === 'operator_id') return `'${operatorId}'`;
  if (table === 'person' && name === 'email') return `'s${number}.' || ${column}`;
  if (table === 'aircraft' && name === 'registration') return `'N0' || lpad(f.i::text, 4, '0')`;
  if (of === 'write-up') {
    if (table === 'discrepancy' && name === 'number')
      return `'W-' || lpad(p.number::text, greatest(4, length(p.number::text)), '0')`;
    if (name === 'aircraft_id') return 'p.aircraft_id';
    if (name === 'equipment_id') return `CASE WHEN ${column} IS NULL THEN NULL ELSE p.item END`;
    // Another aircraft's walkaround, or its stored limit: a finding needs none, a judgement keeps the limit's words.
    if (name === 'walkaround_id' || name === 'limit_id') return 'NULL';
    if (type === 'timestamptz') return `${column} - p.days_back * interval '1 day'`;
    if (type === 'date') return `${column} - p.days_back`;
  }
  if (scope === null) return column;
  const whose = {
    operator: `'/${number}'`,
    aircraft: of === 'write-up' ? 'p.whose_aircraft' : 'f.whose',
    'write-up': 'p.whose',
  }[scope];
  return `scale.id(${column}::text, ${whose})`;
}

/**
 * One answered request and one audit row a write-up. The rows of the chain point to one another, but their hashes are sums of
 * their numbers: what `npm run audit:verify` recomputes is made row by row and cannot be made set by set.
 */
async function writeTraces(client: pg.Client, operatorId: string): Promise<void> {
  // There are no statistics of this operator yet: the planner takes it for a row or two and would join row by row.
  await client.query('SET LOCAL enable_nestloop = off');
  await client.query(
    `INSERT INTO request (id, operator_id, person_id, verb, input_hash, result, "at")
     SELECT f.id, f.operator_id, f.person_id, 'finding.report', md5(f.id::text) || md5(f.words),
            jsonb_build_object('value', jsonb_build_object('findingId', f.id, 'discrepancyId', d.id, 'number', d.number,
              'title', d.title, 'severity', d.severity, 'reasons', d.reasons, 'settledBy', NULL)), f.received_at
       FROM finding f JOIN discrepancy d ON d.operator_id = f.operator_id AND d.finding_id = f.id WHERE f.operator_id = $1`,
    [operatorId],
  );
  await client.query(
    `INSERT INTO audit_row (operator_id, seq, "at", person_id, verb, subject_kind, subject_id, request_id, detail, previous_hash, hash)
     SELECT d.operator_id, n.seq, f.received_at, f.person_id, 'finding.report', 'discrepancy', d.id::text, f.id,
            jsonb_build_object('number', d.number, 'title', d.title, 'severity', d.severity, 'findingId', f.id),
            CASE WHEN n.seq = 1 THEN repeat('0', 64) ELSE md5((n.seq - 1)::text) || md5((n.seq - 1)::text) END,
            md5(n.seq::text) || md5(n.seq::text)
       FROM discrepancy d JOIN finding f ON f.operator_id = d.operator_id AND f.id = d.finding_id
       CROSS JOIN LATERAL (SELECT substr(d.number, 3)::int AS seq) n WHERE d.operator_id = $1`,
    [operatorId],
  );
}
