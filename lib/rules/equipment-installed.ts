/**
 * Whether the aircraft has what its own list asks for. 14 CFR 91.7(a): nobody may operate a civil aircraft unless it is airworthy, and an
 * aircraft that lacks what its type design, its equipment list or its kinds-of-operations list requires for a flight is not as it was
 * certificated. 91.213(d)(2) asks the same of an item that is there and does not work; an item that was taken out must not be judged
 * more kindly. Only lines somebody confirmed are judged here: the others bar already. What the list requires and nobody knows is asked where
 * something is deferred.
 */
import type { AircraftFacts, EquipmentFacts } from './aircraft';
import { listDemand } from './equipment-check';
import type { UseOfAircraft } from './operations';
import type { Line } from './verdict';

/** A barring line for every confirmed line of the list that requires more for this use than the aircraft has. */
export const checkEquipmentInstalled = ({ equipment }: AircraftFacts, use: UseOfAircraft): Line[] =>
  equipment.filter(({ confirmed }) => confirmed.known).flatMap((row) => lacksOf(row, use));

function lacksOf(row: EquipmentFacts, use: UseOfAircraft): Line[] {
  const { id, name, installed, vfrDayTypeDesign } = row;
  const demand = listDemand(row, use);
  const asked = demand.known ? demand.value : 0;
  const byDesign = vfrDayTypeDesign.known && vfrDayTypeDesign.value && installed === 0;
  if (asked <= installed && !byDesign) return [];
  const because =
    asked > installed
      ? `The equipment list requires ${asked} of ${name} for this flight; installed: ${installed}.`
      : `${name} is VFR-day equipment of the type’s certification, and none is installed.`;
  return [
    {
      effect: 'bars',
      cite: '14cfr91.7(a)',
      because,
      about: { kind: 'equipment', id, label: name },
      strictReading: 'No paragraph says it in these words; we read a list that is not met as not airworthy.',
    },
  ];
}
