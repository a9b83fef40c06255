/**
 * Whether equipment is removed or deactivated under a deferral, so that a rule about using it has nothing to bite on.
 * Whether the deferral is in order is judged with its discrepancy, not here.
 */
import type { AircraftFacts, EquipmentFunction } from './aircraft';

/** True when every installed item of this function is known to be out of use under a deferral; an unconfirmed one never is. */
export function isOutOfUse(aircraft: AircraftFacts, what: EquipmentFunction): boolean {
  const items = aircraft.equipment.filter((item) => item.function === what && item.installed > 0);
  return (
    items.length > 0 &&
    items.every(
      (item) =>
        item.confirmed.known &&
        aircraft.discrepancies.some(
          ({ kind, equipmentId, deferral, inoperativeCount }) =>
            kind === 'inoperative' &&
            equipmentId === item.id &&
            deferral !== null &&
            inoperativeCount.known &&
            inoperativeCount.value >= item.installed,
        ),
    )
  );
}
