import type { Tx } from '../db/client';
import { Refusal } from '../problems';
import { said } from '../words/said';

/** The list in force of an aircraft, by its reference; null: none is. */
export const melInForce = (
  tx: Tx,
  operatorId: string,
  aircraftId: string,
): Promise<{ readonly reference: string } | null> =>
  tx.mel.findFirst({ where: { operatorId, aircraftId, endedAt: null }, select: { reference: true } });

/** A list in force of an aircraft in use, or a refusal. */
export async function requireMel(tx: Tx, operatorId: string, id: string) {
  const mel = await tx.mel.findUnique({
    where: { operatorId_id: { operatorId, id } },
    include: { aircraft: { include: { base: true } } },
  });
  if (!mel || mel.aircraft.retiredOn) {
    throw new Refusal('not_found', { say: said('There is no such minimum equipment list here.') });
  }
  if (mel.endedAt) {
    throw new Refusal('conflict', {
      say: said('This minimum equipment list was ended already. Look again.'),
    });
  }
  return mel;
}
