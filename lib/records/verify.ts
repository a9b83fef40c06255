import type { Prisma, Tx } from '../db/client';
import { auditRowHash, CHAIN_START } from './audit';
import { releaseHash } from './release-hash';
import { changesIn, saidIn, type SignedRow } from './signed-row';
import { readSigned } from './signed-tables';

/** What verifying one operator's records found. Empty faults: every row is as it was written. */
export interface AuditReport {
  readonly operatorId: string;
  readonly rows: number;
  readonly signatures: number;
  readonly faults: readonly string[];
}

const PAGE = 500;

const RELEASE = { permit: { select: { reference: true } } } as const satisfies Prisma.ReleaseInclude;
type Release = Prisma.ReleaseGetPayload<{ include: typeof RELEASE }>;

/** Hash of something signed -> the audit row that keeps it. */
type Chained = ReadonlyMap<string, { readonly personId: string; readonly at: Date }>;

/** SHA-256 in hex, wherever in an audit row's detail it stands. */
const HASHES = /"([0-9a-f]{64})"/g;

/**
 * Walks an operator's audit chain from the first row to the head and recomputes every hash, then does the same for
 * every signed row and holds its columns against what was signed. Names each row that was changed, with the column, and
 * each link that was taken out, put in or cut off the end. `tx` must see all rows of this operator.
 */
export async function verifyOperator(tx: Tx, operatorId: string): Promise<AuditReport> {
  const chain = await verifyChain(tx, operatorId);
  const signed = await verifySignatures(tx, operatorId, chain.chained);
  return {
    operatorId,
    rows: chain.rows,
    signatures: signed.count,
    faults: [...chain.faults, ...signed.faults],
  };
}

async function verifyChain(
  tx: Tx,
  operatorId: string,
): Promise<{ rows: number; faults: string[]; chained: Chained }> {
  const faults: string[] = [];
  const chained = new Map<string, { personId: string; at: Date }>();
  let previousHash = CHAIN_START;
  let seq = 0;
  for (;;) {
    const page = await tx.auditRow.findMany({
      where: { operatorId, seq: { gt: seq } },
      orderBy: { seq: 'asc' },
      take: PAGE,
    });
    for (const row of page) {
      if (row.seq !== seq + 1) faults.push(`audit rows ${seq + 1} to ${row.seq - 1} are missing`);
      if (row.previousHash !== previousHash)
        faults.push(`audit row ${row.seq} does not follow the row before it`);
      const detail = row.detail as Record<string, unknown>;
      if (auditRowHash({ ...row, detail }) !== row.hash) faults.push(`audit row ${row.seq} was changed`);
      for (const [, hash = ''] of JSON.stringify(detail).matchAll(HASHES)) {
        if (!chained.has(hash)) chained.set(hash, { personId: row.personId, at: row.at });
      }
      seq = row.seq;
      previousHash = row.hash;
    }
    if (page.length < PAGE) break;
  }
  const head = await tx.auditHead.findUnique({ where: { operatorId } });
  if (head ? head.seq !== seq || head.hash !== previousHash : seq > 0) {
    faults.push(`the chain ends at row ${seq}, its head says ${head?.seq ?? 'nothing'}`);
  }
  return { rows: seq, faults, chained };
}

/**
 * Every signed row: its content against its hash, its columns against its content, and its hash, signer and moment against
 * the audit chain, so that content and hash changed together are noticed as well.
 */
async function verifySignatures(
  tx: Tx,
  operatorId: string,
  chained: Chained,
): Promise<{ count: number; faults: string[] }> {
  const faults: string[] = [];
  const signed = await readSigned(tx, { operatorId });
  for (const row of signed) {
    const name = `${row.table} ${row.id}`;
    const changes = changesIn(row);
    faults.push(...changes.map((change) => `${name} ${change}`));
    if (changes.length === 0) faults.push(...unlike(row, chained).map((what) => `${name} ${what}`));
  }
  const releases = await tx.release.findMany({ where: { operatorId }, include: RELEASE });
  for (const row of releases) {
    const name = `release ${row.id} was changed after it was given`;
    if (releaseHash({ ...row, by: row.dispatcherId }) !== row.hash) faults.push(name);
    else faults.push(...releaseColumns(row).map((column) => `${name}: ${column} is not what was given`));
  }
  return { count: signed.length + releases.length, faults };
}

/** Columns of a release that repeat what its hash covers. */
function releaseColumns(row: Release): string[] {
  const pairs: readonly (readonly [string, unknown, unknown])[] = [
    ['outcome', row.outcome, saidIn(row.answer, 'outcome')],
    ['depart_at', row.departAt.getTime(), moment(saidIn(row.flight, 'departAt'))],
    ['arrive_at', row.arriveAt.getTime(), moment(saidIn(row.flight, 'arriveAt'))],
    ['aircraft_id', row.aircraftId, saidIn(row.facts, 'id')],
    ['permit_id', row.permit?.reference ?? null, permitGiven(row.flight)],
  ];
  return pairs.filter(([, now, given]) => given !== undefined && now !== given).map(([name]) => name);
}

/** The permit a flight was composed under, by its reference; null: under none; undefined: a flight from before permits. */
function permitGiven(flight: unknown): unknown {
  const permit = saidIn(flight, 'specialFlightPermit');
  return permit === undefined || permit === null ? permit : saidIn(permit, 'reference');
}

const moment = (given: unknown): number | undefined =>
  typeof given === 'string' ? Date.parse(given) : undefined;

/** What the audit chain says about a signed row otherwise than the row itself. */
function unlike(row: SignedRow, chained: Chained): string[] {
  const link = chained.get(row.hash);
  if (!link) return ['is not in the audit chain with this content'];
  return [
    ...(row.personId === null || link.personId === row.personId
      ? []
      : ['was changed after it was signed: person_id is not who signed']),
    ...(link.at.getTime() === row.signedAt.getTime()
      ? []
      : ['was changed after it was signed: its moment is not that of the audit chain']),
  ];
}
