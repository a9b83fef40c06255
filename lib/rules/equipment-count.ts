/**
 * How many of a function an aircraft has and how many of them work: the counting behind 91.205(a), "contains the
 * instruments and equipment ... and those are in operable condition".
 */
import type { AircraftFacts, DiscrepancyFacts, EquipmentFacts, EquipmentFunction } from './aircraft';
import { known, unknown, type Fact } from './facts';

export interface OperativeCount {
  readonly installed: number;
  /** Unknown when an inoperative item is written up and nobody has said which row of the list it is. */
  readonly operative: Fact<number>;
  readonly rows: readonly EquipmentFacts[];
  /** The first row that nobody has confirmed: with it there may be more than `operative`, and there may not. */
  readonly unconfirmed: EquipmentFacts | null;
}

/** The rows of the equipment list with this function. */
export const rowsOf = (aircraft: AircraftFacts, fn: EquipmentFunction): readonly EquipmentFacts[] =>
  aircraft.equipment.filter((row) => row.function === fn);

/** How many the equipment list names, working or not. */
export const installedCount = (aircraft: AircraftFacts, fn: EquipmentFunction): number =>
  rowsOf(aircraft, fn).reduce((sum, row) => sum + row.installed, 0);

/**
 * Installed less inoperative. Every discrepancy of kind `inoperative` counts, deferred or not: a deferral does not
 * make the item work. Discrepancies of other kinds do not count here, other rules bar them. Where a write-up does
 * not say how many are out, all of its row are. A row that nobody has confirmed never counts as present: `installed`, from
 * which some demands take how many must work, still has it.
 */
export function operativeCount(aircraft: AircraftFacts, fn: EquipmentFunction): OperativeCount {
  const rows = rowsOf(aircraft, fn);
  const installed = installedCount(aircraft, fn);
  const unplaced = aircraft.discrepancies.find((d) => isUnplaced(aircraft, d) && isOfRows(d, rows));
  const operative = unplaced
    ? unknown(`which item of equipment ${unplaced.number} (${unplaced.title}) is about`)
    : known(
        rows
          .filter((row) => row.confirmed.known)
          .reduce((sum, row) => sum + row.installed - inoperativeOf(aircraft, row), 0),
      );
  return { installed, operative, rows, unconfirmed: rows.find((row) => !row.confirmed.known) ?? null };
}

/** The write-ups that put items of this function out of action. */
export const inoperativeWriteUps = (
  aircraft: AircraftFacts,
  fn: EquipmentFunction,
): readonly DiscrepancyFacts[] =>
  aircraft.discrepancies.filter(
    (d) => d.kind === 'inoperative' && rowsOf(aircraft, fn).some((row) => row.id === d.equipmentId),
  );

/** Two write-ups on one row may be about the same item or not; they add up, to at most the whole row. */
function inoperativeOf(aircraft: AircraftFacts, row: EquipmentFacts): number {
  const out = aircraft.discrepancies
    .filter((d) => d.kind === 'inoperative' && d.equipmentId === row.id)
    .reduce((sum, d) => sum + outOf(d, row), 0);
  return Math.min(out, row.installed);
}

/** A number that cannot be (none, a part, or below none) says as little as no number: the whole row is out. */
function outOf(discrepancy: DiscrepancyFacts, row: EquipmentFacts): number {
  const count = discrepancy.inoperativeCount;
  return count.known && Number.isSafeInteger(count.value) && count.value >= 1 ? count.value : row.installed;
}

const isUnplaced = (aircraft: AircraftFacts, d: DiscrepancyFacts): boolean =>
  d.kind === 'inoperative' && !aircraft.equipment.some((row) => row.id === d.equipmentId);

/** Only the code says where it belongs; every row of that code may be the one. */
const isOfRows = (d: DiscrepancyFacts, rows: readonly EquipmentFacts[]): boolean =>
  rows.some((row) => row.jasc === d.jasc);
