import type { Tx } from '../db/client';
import { Refusal } from '../problems';
import { filled, said } from '../words/said';

/**
 * Refuses an act that would clear, or make light of, what a signed list of 43.11(b) names as unairworthy and an inspection
 * was completed over. Such an item is cleared by an entry of 43.9 alone (43.11(a)(5)): neither a judgement, nor a finding
 * within limits, nor a deferral does it. The list stands in the record as a determination that names its hash.
 */
export async function refuseListedUnairworthy(
  tx: Tx,
  operatorId: string,
  writeUp: { readonly id: string; readonly number: string },
): Promise<void> {
  const judged = await tx.determination.findMany({
    where: { operatorId, discrepancyId: writeUp.id, kind: 'severity' },
    select: { content: true },
  });
  if (!judged.some(({ content }) => namesList(content))) return;
  throw new Refusal('conflict', {
    say: filled(
      said(
        '{number} stands on an inspector’s signed list as unairworthy (14 CFR 43.11(b)). Only work with its signed entry clears it.',
      ),
      { number: writeUp.number },
    ),
  });
}

const namesList = (content: unknown): boolean =>
  typeof content === 'object' && content !== null && 'list' in content;
