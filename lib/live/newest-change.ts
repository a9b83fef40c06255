import { z } from 'zod';
import { query } from '../access/service';
import type { Tx } from '../db/client';

/** The newest row of the operator's audit chain that this transaction sees; 0 for a chain without any. */
export async function newestSeq(tx: Tx, operatorId: string): Promise<number> {
  const { _max } = await tx.auditRow.aggregate({ where: { operatorId }, _max: { seq: true } });
  return _max.seq ?? 0;
}

/**
 * How far the operator's records have come. A screen drawn at an older `seq` shows old things, whatever it was told.
 * Refuses `not_signed_in` for an ended session.
 */
export const readNewestChange = query({
  verb: 'fleet.read',
  input: z.object({}),
  run: async ({ tx, operatorId, now }) => ({
    at: now.toISOString(),
    seq: await newestSeq(tx, operatorId),
  }),
});
