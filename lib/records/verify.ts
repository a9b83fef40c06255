import type { Tx } from '../db/client';
import { auditRowHash, CHAIN_START } from './audit';
import { contentHash } from './canonical';

/** What verifying one operator's records found. Empty faults: every row is as it was written. */
export interface AuditReport {
  readonly operatorId: string;
  readonly rows: number;
  readonly signatures: number;
  readonly faults: readonly string[];
}

const PAGE = 500;

/**
 * Walks an operator's audit chain from the first row to the head and recomputes every hash, then does the same for
 * every signed entry (determinations, sign-offs, check flights, releases). Names each row that was changed, taken out,
 * put in or cut off the end. `tx` must see all rows of this operator.
 */
export async function verifyOperator(tx: Tx, operatorId: string): Promise<AuditReport> {
  const chain = await verifyChain(tx, operatorId);
  const signed = await verifySignatures(tx, operatorId);
  return {
    operatorId,
    rows: chain.rows,
    signatures: signed.count,
    faults: [...chain.faults, ...signed.faults],
  };
}

async function verifyChain(tx: Tx, operatorId: string): Promise<{ rows: number; faults: string[] }> {
  const faults: string[] = [];
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
      seq = row.seq;
      previousHash = row.hash;
    }
    if (page.length < PAGE) break;
  }
  const head = await tx.auditHead.findUnique({ where: { operatorId } });
  if (head ? head.seq !== seq || head.hash !== previousHash : seq > 0) {
    faults.push(`the chain ends at row ${seq}, its head says ${head?.seq ?? 'nothing'}`);
  }
  return { rows: seq, faults };
}

async function verifySignatures(tx: Tx, operatorId: string): Promise<{ count: number; faults: string[] }> {
  const where = { operatorId };
  const select = { id: true, content: true, hash: true } as const;
  const tables = {
    determination: await tx.determination.findMany({ where, select }),
    'sign-off': await tx.signOff.findMany({ where, select }),
    'check flight': await tx.checkFlight.findMany({ where, select }),
  };
  const faults: string[] = [];
  let count = 0;
  for (const [name, rows] of Object.entries(tables)) {
    for (const row of rows) {
      count += 1;
      if (contentHash(row.content) !== row.hash)
        faults.push(`${name} ${row.id} was changed after it was signed`);
    }
  }
  for (const row of await tx.release.findMany({ where })) {
    count += 1;
    const { flight, facts, answer, rulesVersion, factsVersion, dispatcherId } = row;
    const hash = contentHash({ flight, facts, answer, rulesVersion, factsVersion, by: dispatcherId });
    if (hash !== row.hash) faults.push(`release ${row.id} was changed after it was given`);
  }
  return { count, faults };
}
