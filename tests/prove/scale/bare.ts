/**
 * The same questions asked of the same database without the program: one statement a read, typed by hand, as the web's
 * account and so through row security. Rows come out as JSON, so that both sides carry the same facts.
 */
import { createHash, randomUUID } from 'node:crypto';
import pg from 'pg';
import { MEASURED_WORDS, nextAircraft, type Desk } from './asked';

/** Aircraft with what decides their answer: write-ups not closed, deferrals, what falls due, equipment, papers, open work. */
const FACTS = `
SELECT a.id, a.registration, a.ttis_tenths, a.facts_version, to_jsonb(t) AS type, to_jsonb(b) AS base, w.up, r.due, e.items,
       p.papers, k.work
  FROM aircraft a
  JOIN aircraft_type t ON t.operator_id = a.operator_id AND t.id = a.type_id
  JOIN base b ON b.operator_id = a.operator_id AND b.id = a.base_id
  LEFT JOIN LATERAL (SELECT jsonb_agg(to_jsonb(d) || jsonb_build_object('judged', j.judged, 'deferred', f.deferred)
                       ORDER BY d.number) AS up
         FROM discrepancy d
         LEFT JOIN LATERAL (SELECT jsonb_agg(x ORDER BY x.signed_at DESC) AS judged FROM determination x
                WHERE x.operator_id = d.operator_id AND x.discrepancy_id = d.id) j ON true
         LEFT JOIN LATERAL (SELECT jsonb_agg(to_jsonb(x) || jsonb_build_object('placard', to_jsonb(y))) AS deferred
                FROM deferral x LEFT JOIN placard y ON y.operator_id = x.operator_id AND y.deferral_id = x.id
               WHERE x.operator_id = d.operator_id AND x.discrepancy_id = d.id AND NOT EXISTS
                     (SELECT 1 FROM deferral_end z WHERE z.operator_id = x.operator_id AND z.deferral_id = x.id)) f ON true
        WHERE d.operator_id = a.operator_id AND d.aircraft_id = a.id AND d.state <> 'closed') w ON true
  LEFT JOIN LATERAL (SELECT jsonb_agg(to_jsonb(q) || jsonb_build_object('done', c.done)) AS due FROM requirement q
         LEFT JOIN LATERAL (SELECT jsonb_agg(x ORDER BY x.recorded_at DESC) AS done FROM compliance x
                WHERE x.operator_id = q.operator_id AND x.requirement_id = q.id) c ON true
        WHERE q.operator_id = a.operator_id AND q.aircraft_id = a.id AND q.ended_on IS NULL) r ON true
  LEFT JOIN LATERAL (SELECT jsonb_agg(x) AS items FROM equipment x
        WHERE x.operator_id = a.operator_id AND x.aircraft_id = a.id AND x.removed_on IS NULL) e ON true
  LEFT JOIN LATERAL (SELECT jsonb_agg(x) AS papers FROM paper x
        WHERE x.operator_id = a.operator_id AND x.aircraft_id = a.id) p ON true
  LEFT JOIN LATERAL (SELECT jsonb_agg(x) AS work FROM maintenance_action x
        WHERE x.operator_id = a.operator_id AND x.aircraft_id = a.id AND x.state IN ('started', 'entered')) k ON true
 WHERE a.retired_on IS NULL`;

/** All aircraft of the operator. */
export const BOARD_SQL = `${FACTS} ORDER BY a.registration`;

/** One aircraft and the others of its type: a no go proposes them. */
export const ANSWER_SQL = `${FACTS} AND a.type_id = $1`;

/** A connection as the web's account that sees one operator. */
export async function openBare(appUrl: string, operatorId: string): Promise<pg.Client> {
  const client = new pg.Client({ connectionString: appUrl, options: '-c TimeZone=UTC' });
  await client.connect();
  await client.query(`SELECT set_config('app.operator_id', $1, false)`, [operatorId]);
  return client;
}

const timed = async (work: () => Promise<unknown>): Promise<number> => {
  const began = performance.now();
  await work();
  return performance.now() - began;
};

export const bareBoard = (client: pg.Client): Promise<number> => timed(() => client.query(BOARD_SQL));

export const bareAnswer = (client: pg.Client, desk: Desk): Promise<number> =>
  timed(() => client.query(ANSWER_SQL, [nextAircraft(desk).typeId]));

/** The rows that a write-up leaves, in one transaction behind the operator's lock. */
export const bareWrite = (client: pg.Client, desk: Desk): Promise<number> => {
  const aircraft = nextAircraft(desk);
  const [finding, writeUp, operator] = [randomUUID(), randomUUID(), desk.operatorId];
  return timed(async () => {
    await client.query('BEGIN');
    await client.query('SELECT pg_advisory_xact_lock(hashtextextended($1, 0))', [operator]);
    await client.query(
      `INSERT INTO finding (id, operator_id, aircraft_id, person_id, station, kind, place, words, measurements, found_at, received_at)
       VALUES ($1, $2, $3, $4, 'left-wing', 'cosmetic', 'Left wing', $5, '{}', now(), now())`,
      [finding, operator, aircraft.id, desk.personId, MEASURED_WORDS],
    );
    const { rows } = await client.query<{ n: number }>(
      'UPDATE operator SET next_write_up_number = next_write_up_number + 1 WHERE id = $1 RETURNING next_write_up_number - 1 AS n',
      [operator],
    );
    await client.query(
      `INSERT INTO discrepancy (id, operator_id, aircraft_id, finding_id, number, title, jasc, kind, state, severity, reasons, opened_at)
       VALUES ($1, $2, $3, $4, $5, 'Paint chipped', '', 'cosmetic', 'open', 'note', '[]', now())`,
      [writeUp, operator, aircraft.id, finding, `W-${String(rows[0]!.n).padStart(4, '0')}`],
    );
    await client.query(
      'UPDATE aircraft SET facts_version = facts_version + 1 WHERE operator_id = $1 AND id = $2',
      [operator, aircraft.id],
    );
    await client.query(
      `INSERT INTO request (id, operator_id, person_id, verb, input_hash, result) VALUES ($1, $2, $3, 'finding.report', '-', '{}')`,
      [finding, operator, desk.personId],
    );
    await linkAudit(client, desk, finding, writeUp);
    await client.query('COMMIT');
  });
};

async function linkAudit(client: pg.Client, desk: Desk, finding: string, writeUp: string): Promise<void> {
  const { rows } = await client.query<{ seq: number; hash: string }>(
    'SELECT seq, hash FROM audit_head WHERE operator_id = $1',
    [desk.operatorId],
  );
  const { seq, hash } = rows[0]!;
  const next = createHash('sha256').update(`${hash}${finding}`).digest('hex');
  await client.query(
    `INSERT INTO audit_row (operator_id, seq, "at", person_id, verb, subject_kind, subject_id, request_id, detail, previous_hash, hash)
     VALUES ($1, $2, now(), $3, 'finding.report', 'discrepancy', $4, $5, '{}', $6, $7)`,
    [desk.operatorId, seq + 1, desk.personId, writeUp, finding, hash, next],
  );
  await client.query('UPDATE audit_head SET seq = $2, hash = $3 WHERE operator_id = $1', [
    desk.operatorId,
    seq + 1,
    next,
  ]);
}
