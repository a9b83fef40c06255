import type { Tx } from '../../db/client';
import { endRecoveryCodes } from './recovery-codes';

interface Ending {
  readonly operatorId: string;
  readonly personId: string;
  readonly byId: string;
  readonly now: Date;
}

/** Ends everything somebody has beside the password: apps, passkeys and recovery codes. Gives how many factors there were. */
export async function endAllFactors(tx: Tx, { operatorId, personId, byId, now }: Ending): Promise<number> {
  const { count } = await tx.secondFactor.updateMany({
    where: { operatorId, personId, endedAt: null },
    data: { endedAt: now, endedById: byId },
  });
  await endRecoveryCodes(tx, { operatorId, personId, now });
  return count;
}
