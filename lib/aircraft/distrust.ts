import type { Tx } from '../db/client';

/**
 * Takes the confirmation from every line of an aircraft's equipment list: nothing is judged by a line until somebody holds it against the
 * documents again (lib/rules/equipment-confirmed.ts). The signed records stay. A line older than the question, which counted without a
 * confirmation, counts from now on as typed in. Gives how many there were.
 */
export async function distrustLines(tx: Tx, operatorId: string, aircraftId: string): Promise<number> {
  const held = { operatorId, aircraftId, removedOn: null };
  const confirmed = await tx.equipment.updateMany({
    where: { ...held, vouchingId: { not: null } },
    data: { vouchingId: null },
  });
  const older = await tx.equipment.updateMany({
    where: { ...held, origin: null },
    data: { origin: 'typed' },
  });
  return confirmed.count + older.count;
}

/** Which directives apply is not known again, until somebody has gone through them (`directives.review`). */
export async function distrustDirectives(tx: Tx, operatorId: string, aircraftId: string): Promise<void> {
  await tx.aircraft.update({
    where: { operatorId_id: { operatorId, id: aircraftId } },
    data: { directivesReviewedOn: null },
  });
}
