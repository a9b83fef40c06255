import type { Tx } from '../db/client';
import { contentHash, toPlain } from './canonical';

/** What one audit row says, before it is linked into the chain. */
export interface AuditEntry {
  readonly at: Date;
  readonly personId: string;
  readonly verb: string;
  readonly subjectKind: string;
  readonly subjectId: string;
  readonly requestId: string;
  readonly detail: Readonly<Record<string, unknown>>;
}

/** Hash the first row of every chain points back to. */
export const CHAIN_START = '0'.repeat(64);

interface LinkedRow extends AuditEntry {
  readonly operatorId: string;
  readonly seq: number;
  readonly previousHash: string;
}

/** Hash of one row: covers everything in it and the hash of the row before. */
export function auditRowHash(row: LinkedRow): string {
  return contentHash({
    operatorId: row.operatorId,
    seq: row.seq,
    at: row.at.toISOString(),
    personId: row.personId,
    verb: row.verb,
    subjectKind: row.subjectKind,
    subjectId: row.subjectId,
    requestId: row.requestId,
    detail: row.detail,
    previousHash: row.previousHash,
  });
}

/**
 * Adds the next row to the operator's chain and gives its number. The caller holds the operator's write lock, so there is
 * one next row.
 */
export async function appendAudit(tx: Tx, operatorId: string, entry: AuditEntry): Promise<number> {
  const head = await tx.auditHead.findUnique({ where: { operatorId } });
  const row: LinkedRow = {
    ...entry,
    detail: toPlain(entry.detail),
    operatorId,
    seq: (head?.seq ?? 0) + 1,
    previousHash: head?.hash ?? CHAIN_START,
  };
  const hash = auditRowHash(row);
  await tx.auditRow.create({ data: { ...row, detail: row.detail as object, hash } });
  if (head) await tx.auditHead.update({ where: { operatorId }, data: { seq: row.seq, hash } });
  else await tx.auditHead.create({ data: { operatorId, seq: row.seq, hash } });
  return row.seq;
}
