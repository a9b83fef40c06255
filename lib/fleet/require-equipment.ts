import type { Tx } from '../db/client';
import { fieldRefusal } from '../problems';
import { said } from '../words/said';

/**
 * A line of this aircraft's equipment list; refuses the field `equipmentId` when it stands on none of its lines. A line that was taken off
 * the list counts only where what was seen of it may not be lost.
 */
export async function requireEquipment(
  tx: Tx,
  operatorId: string,
  aircraftId: string,
  id: string,
  which: 'on-the-list' | 'also-removed' = 'on-the-list',
) {
  const item = await tx.equipment.findUnique({ where: { operatorId_id: { operatorId, id } } });
  if (!item || item.aircraftId !== aircraftId || (item.removedOn && which === 'on-the-list')) {
    throw fieldRefusal('equipmentId', said('This is not on the equipment list of this aircraft.'));
  }
  return item;
}
