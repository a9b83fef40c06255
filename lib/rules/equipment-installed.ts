/**
 * Whether the aircraft has what its own list asks for. 14 CFR 91.7(a): nobody may operate a civil aircraft unless it is airworthy, and an
 * aircraft that lacks what its type design, its equipment list or its kinds-of-operations list requires for a flight is not as it was
 * certificated. 91.213(d)(2) asks the same of an item that is there and does not work; an item that was taken out must not be judged
 * more kindly. Only lines somebody confirmed are judged here: the others bar already. Unknown is never go: while nobody knows how many the
 * list requires, nobody can say that there are enough, and of an item that is not there, whether it is type design has to be known too.
 */
import type { AircraftFacts, EquipmentFacts } from './aircraft';
import { listDemand } from './equipment-check';
import type { UseOfAircraft } from './operations';
import { barsForMissing, type Line, type Subject } from './verdict';

/** A barring line for every confirmed line of the list that requires, or may require, more for this use than the aircraft has. */
export const checkEquipmentInstalled = ({ equipment }: AircraftFacts, use: UseOfAircraft): Line[] =>
  equipment.filter(({ confirmed }) => confirmed.known).flatMap((row) => lacksOf(row, use));

function lacksOf(row: EquipmentFacts, use: UseOfAircraft): Line[] {
  const { id, name, installed, vfrDayTypeDesign } = row;
  const about = { kind: 'equipment', id, label: name } as const;
  const demand = listDemand(row, use);
  if (demand.known && demand.value > installed) {
    return [
      lacking(
        `The equipment list requires ${demand.value} of ${name} for this flight; installed: ${installed}.`,
        about,
      ),
    ];
  }
  if (installed === 0 && vfrDayTypeDesign.known && vfrDayTypeDesign.value) {
    return [
      lacking(`${name} is VFR-day equipment of the type’s certification, and none is installed.`, about),
    ];
  }
  return [demand, ...(installed === 0 ? [vfrDayTypeDesign] : [])].flatMap((fact) =>
    fact.known ? [] : [barsForMissing('14cfr91.7(a)', fact.missing, about)],
  );
}

const lacking = (because: string, about: Subject): Line => ({
  effect: 'bars',
  cite: '14cfr91.7(a)',
  because,
  about,
  strictReading: 'No paragraph says it in these words; we read a list that is not met as not airworthy.',
});
