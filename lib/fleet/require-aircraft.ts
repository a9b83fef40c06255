import type { Tx } from '../db/client';
import { Refusal } from '../problems';

/** The aircraft with its base, or `not_found`: also for another operator's aircraft, which is not there for us. */
export async function requireAircraft(tx: Tx, operatorId: string, id: string) {
  const aircraft = await tx.aircraft.findUnique({
    where: { operatorId_id: { operatorId, id } },
    include: { base: true, type: true },
  });
  if (!aircraft || aircraft.retiredOn)
    throw new Refusal('not_found', { say: 'There is no such aircraft here.' });
  return aircraft;
}

/**
 * Marks that facts which can change an answer have changed. A release names the version it stood on, so that a
 * dispatcher who looked before a write-up came in is told to look again.
 */
export const factsChanged = (tx: Tx, operatorId: string, aircraftId: string) =>
  tx.aircraft.update({
    where: { operatorId_id: { operatorId, id: aircraftId } },
    data: { factsVersion: { increment: 1 } },
    select: { factsVersion: true },
  });
