/** Holds the database against what was acknowledged. Reads as the owner, past the application, by plain SQL. */
import { isDeepStrictEqual } from 'node:util';
import { verifyAudit } from '@/lib/operate/audit-verify';
import type { AppProcess } from './app-process';
import { ASKED_DAYS_AHEAD, inShort, type Acked, type AircraftLedger } from './ledger';
import { lessonOn } from './school-today';
import type { Site } from './site';

/** What went wrong, each named. All empty when all is well. */
export interface Faulty {
  /** Acknowledged, and not in the database as it was acknowledged. */
  readonly lost: string[];
  /** One act with two effects, or with half of one. */
  readonly doubled: string[];
  /** What `audit:verify` finds. */
  readonly chain: string[];
  /** Go where the acknowledged acts say no go, or a release that stands on facts that are gone. */
  readonly wrongGo: string[];
  /** Any other answer than the acknowledged acts give. */
  readonly otherAnswer: string[];
}

/** The verb of the audit row and the table of the effect, for each act that has one. */
const KEPT = {
  reportFinding: { verb: 'finding.report', table: 'finding', by: 'id' },
  startWork: { verb: 'work.start', table: 'maintenance_action', by: 'id' },
  enterWork: { verb: 'work.enter', table: 'maintenance_action', by: null },
  signWork: { verb: 'work.sign', table: 'sign_off', by: null },
  releaseFlight: { verb: 'flight.release', table: 'release', by: 'id' },
  startWalkaround: { verb: 'walkaround.start', table: 'walkaround', by: 'id' },
  finishWalkaround: { verb: 'walkaround.finish', table: 'walkaround', by: null },
} as const;

type Kept = keyof typeof KEPT;
type Rows = { id: string }[];

/** Every acknowledged act is there once, as it was acknowledged. May be asked while others are still in doubt. */
export async function acknowledged(
  site: Site,
  acked: readonly Acked[],
): Promise<Pick<Faulty, 'lost' | 'doubled'>> {
  const lost: string[] = [];
  const doubled: string[] = [];
  const ids = acked.map(({ call }) => call.input['requestId']);
  const requests = await site.sql<{ id: string; result: { value: unknown } }>(
    'SELECT id, result FROM request WHERE id = ANY($1)',
    [ids],
  );
  const results = new Map(requests.map(({ id, result }) => [id, result.value]));
  const audits = await counted(
    site,
    'SELECT request_id::text || verb AS id FROM audit_row WHERE request_id = ANY($1)',
    ids,
  );
  const effects = new Map<string, Map<string, number>>();
  for (const table of ['finding', 'maintenance_action', 'release', 'walkaround']) {
    effects.set(table, await counted(site, `SELECT id FROM ${table} WHERE id = ANY($1)`, ids));
  }
  const works = acked.flatMap(({ call }) => (call.act === 'signWork' ? [call.input['workId']] : []));
  const signed = await counted(site, 'SELECT work_id AS id FROM sign_off WHERE work_id = ANY($1)', works);
  for (const { call, value } of acked) {
    const id = String(call.input['requestId']);
    const name = `${call.act} ${id}`;
    const { verb, table, by } = KEPT[call.act as Kept];
    const counts = [
      audits.get(id + verb) ?? 0,
      ...(by === 'id' ? [effects.get(table)?.get(id) ?? 0] : []),
      ...(call.act === 'signWork' ? [signed.get(String(call.input['workId'])) ?? 0] : []),
    ];
    if (!results.has(id) || counts.includes(0)) lost.push(name);
    else if (!isDeepStrictEqual(results.get(id), value)) lost.push(`${name}: kept with another answer`);
    if (counts.some((count) => count > 1)) doubled.push(name);
  }
  return { lost, doubled };
}

async function counted(site: Site, text: string, ids: readonly unknown[]): Promise<Map<string, number>> {
  const rows: Rows = await site.sql(text, [ids]);
  const counts = new Map<string, number>();
  for (const { id } of rows) counts.set(id, (counts.get(id) ?? 0) + 1);
  return counts;
}

/** Nothing is there twice, and nothing half: as many effects as requests, and as many audit rows. Asked when nothing is in doubt. */
const WHOLE: readonly (readonly [what: string, sql: string])[] = [
  ['a finding without its request, or the other way round', halves('finding', 'finding.report')],
  ['a release without its request, or the other way round', halves('release', 'flight.release')],
  ['a walkaround without its request, or the other way round', halves('walkaround', 'walkaround.start')],
  [
    'a request without its audit row',
    `SELECT r.id FROM request r WHERE NOT EXISTS
       (SELECT 1 FROM audit_row a WHERE a.request_id = r.id AND a.verb = r.verb)`,
  ],
  [
    'an act with two audit rows',
    `SELECT min(request_id::text) AS id FROM audit_row WHERE verb NOT LIKE '%:refused' AND verb <> 'flight.recall'
       GROUP BY request_id, verb HAVING count(*) > 1`,
  ],
  [
    'an act of the audit chain without its request',
    `SELECT a.request_id AS id FROM audit_row a WHERE a.verb NOT LIKE '%:refused' AND a.verb <> 'flight.recall'
       AND NOT EXISTS (SELECT 1 FROM request r WHERE r.id = a.request_id)`,
  ],
  [
    'a finding without a write-up',
    'SELECT id FROM finding f WHERE NOT EXISTS (SELECT 1 FROM discrepancy d WHERE d.finding_id = f.id)',
  ],
  [
    'a finding with two write-ups',
    'SELECT min(id::text) AS id FROM discrepancy GROUP BY finding_id HAVING count(*) > 1',
  ],
  [
    'two write-ups of one number',
    'SELECT min(id::text) AS id FROM discrepancy GROUP BY operator_id, number HAVING count(*) > 1',
  ],
  ['work signed twice', 'SELECT work_id AS id FROM sign_off GROUP BY work_id HAVING count(*) > 1'],
  [
    'work signed without a signature, or the other way round',
    `SELECT m.id FROM maintenance_action m WHERE (m.state = 'signed') <> EXISTS (SELECT 1 FROM sign_off s WHERE s.work_id = m.id)`,
  ],
  [
    'a release void twice',
    `SELECT release_id AS id FROM flight_event WHERE what = 'void' GROUP BY release_id HAVING count(*) > 1`,
  ],
];

function halves(table: string, verb: string): string {
  return `SELECT coalesce(e.id, r.id) AS id FROM ${table} e
    FULL JOIN (SELECT id FROM request WHERE verb = '${verb}') r ON r.id = e.id WHERE e.id IS NULL OR r.id IS NULL`;
}

/** Releases that stand although their aircraft has an open write-up that grounds. */
const STANDING = `SELECT r.id FROM release r
  WHERE NOT EXISTS (SELECT 1 FROM flight_event e WHERE e.release_id = r.id AND e.what IN ('void', 'withdrawn', 'closed'))
    AND EXISTS (SELECT 1 FROM discrepancy d WHERE d.aircraft_id = r.aircraft_id AND d.state = 'open'
      AND (d.severity = 'grounding' OR d.severity IS NULL))`;

/** The whole check, when nothing is in doubt: everything acknowledged, nothing else, the chain, and every aircraft's answer. */
export async function checkAll(
  site: Site,
  app: AppProcess,
  acked: readonly Acked[],
  ledgers: readonly AircraftLedger[],
): Promise<Faulty> {
  const { lost, doubled } = await acknowledged(site, acked);
  for (const [what, sql] of WHOLE) {
    for (const { id } of await site.sql<{ id: string }>(sql)) doubled.push(`${what}: ${id}`);
  }
  const chain = (await verifyAudit(site.adminUrl)).flatMap(({ faults }) => faults);
  const wrongGo = (await site.sql<{ id: string }>(STANDING)).map(
    ({ id }) => `release ${id} stands on facts that are gone`,
  );
  const otherAnswer: string[] = [];
  for (const ledger of ledgers) {
    const expected = ledger.expected();
    const given = await answered(app, ledger);
    if (given === expected) continue;
    const said = `${ledger.registration}: ${given}; the acknowledged acts give ${expected}`;
    if (expected.startsWith('no-go') && !given.startsWith('no-go')) wrongGo.push(said);
    else otherAnswer.push(said);
  }
  return { lost, doubled, chain, wrongGo, otherAnswer };
}

async function answered(app: AppProcess, { school }: AircraftLedger): Promise<string> {
  const call = {
    act: 'answerFlight',
    ref: school.people.dispatcher,
    input: lessonOn(school, ASKED_DAYS_AHEAD),
  } as const;
  const result = await app.ask(call);
  if (!result.ok) return `refused: ${result.problem.code}`;
  return inShort((result.value as { answer: Parameters<typeof inShort>[0] }).answer);
}
