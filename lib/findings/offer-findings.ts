import type { PackAircraft, PackFinding } from '../walkarounds/pack';
import { isArea, usualStationOf } from '../rules/walkaround/areas';
import type { FindingOffered, ItemOnList } from './compose-finding';

type EquipmentLine = PackAircraft['equipment'][number];

/**
 * The likely findings at an area as a form offers them, each with the items of this aircraft it can be about: first those
 * at home there, then those that also fit. An area nobody knows has none; "something else" is the screen's.
 */
export function offerFindings(
  findings: readonly PackFinding[],
  area: string,
  equipment: readonly EquipmentLine[],
): readonly FindingOffered[] {
  if (!isArea(area)) return [];
  const station = usualStationOf(area);
  const fitting = [
    ...findings.filter((finding) => finding.station === station),
    ...findings.filter((finding) => finding.alsoAt.includes(station)),
  ];
  return fitting.map((finding) => ({
    key: finding.key,
    title: finding.title,
    usualAction: finding.usualAction,
    choices: finding.choices.map(({ label, jasc, equipmentFunction }) => ({
      label,
      jasc,
      items: itemsOf(finding, equipmentFunction, equipment),
    })),
    items: finding.choices.length > 0 ? [] : itemsOf(finding, finding.equipmentFunction, equipment),
    measurements: finding.measurements,
  }));
}

/** Only equipment that does not work is counted against the equipment list; damage to it is another matter. */
const itemsOf = (
  finding: PackFinding,
  what: string | null,
  equipment: readonly EquipmentLine[],
): readonly ItemOnList[] =>
  finding.kind !== 'inoperative' || what === null
    ? []
    : equipment
        .filter((line) => line.function === what)
        .map(({ id, name, installed }) => ({ id, name, installed }));
