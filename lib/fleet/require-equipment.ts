import type { Tx } from '../db/client';
import { fieldRefusal } from '../problems';

/** A line of this aircraft's equipment list; refuses the field `equipmentId` when it stands on none of its lines. */
export async function requireEquipment(tx: Tx, operatorId: string, aircraftId: string, id: string) {
  const item = await tx.equipment.findUnique({ where: { operatorId_id: { operatorId, id } } });
  if (!item || item.aircraftId !== aircraftId) {
    throw fieldRefusal('equipmentId', 'This is not on the equipment list of this aircraft.');
  }
  return item;
}
