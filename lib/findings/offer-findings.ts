import type { EquipmentFunction } from '../rules/aircraft';
import { findingsAt } from '../rules/findings/catalogue';
import type { CatalogueFinding } from '../rules/findings/finding';
import { measurementOf } from '../rules/findings/measurements';
import type { StationKey } from '../rules/findings/stations';
import type { FindingOffered, ItemOnList } from './compose-finding';

interface EquipmentLine extends ItemOnList {
  readonly function: string;
}

/** The likely findings of a station as a form offers them, each with the items of this aircraft it can be about. */
export function offerFindings(
  station: StationKey,
  equipment: readonly EquipmentLine[],
): readonly FindingOffered[] {
  return findingsAt(station).map((finding) => ({
    key: finding.key,
    title: finding.title,
    usualAction: finding.usualAction,
    choices: finding.choices.map(({ label, jasc, equipmentFunction }) => ({
      label,
      jasc,
      items: itemsOf(finding, equipmentFunction, equipment),
    })),
    items: finding.choices.length > 0 ? [] : itemsOf(finding, finding.equipmentFunction, equipment),
    measurements: finding.measurements.flatMap(({ key, role }) => {
      const measurement = measurementOf(key);
      return measurement
        ? [{ key, label: measurement.label, unit: measurement.unit, needed: role === 'needed' }]
        : [];
    }),
  }));
}

/** Only equipment that does not work is counted against the equipment list; damage to it is another matter. */
const itemsOf = (
  finding: CatalogueFinding,
  what: EquipmentFunction | null,
  equipment: readonly EquipmentLine[],
): readonly ItemOnList[] =>
  finding.kind !== 'inoperative' || what === null
    ? []
    : equipment
        .filter((line) => line.function === what)
        .map(({ id, name, installed }) => ({ id, name, installed }));
