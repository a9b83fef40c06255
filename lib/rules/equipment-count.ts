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

/** What the list and the open write-ups say, sorted once: every demand and every deferral of an answer asks for it again. */
interface Sorted {
  readonly rows: ReadonlyMap<EquipmentFunction, readonly EquipmentFacts[]>;
  /** Inoperative write-ups by the row they name. */
  readonly writeUps: ReadonlyMap<string, readonly DiscrepancyFacts[]>;
  /** Inoperative write-ups that name no row of the list, in their order. */
  readonly unplaced: readonly DiscrepancyFacts[];
  /** Counts that were asked for already. */
  readonly counts: Map<EquipmentFunction, OperativeCount>;
}

/** Facts never change once they are made, so what was sorted out of them holds as long as they do. */
const SORTED = new WeakMap<AircraftFacts, Sorted>();

function sortedOf(aircraft: AircraftFacts): Sorted {
  const known = SORTED.get(aircraft);
  if (known !== undefined) return known;
  const inoperative = aircraft.discrepancies.filter(({ kind }) => kind === 'inoperative');
  const listed = new Set(aircraft.equipment.map(({ id }) => id));
  const isPlaced = ({ equipmentId }: DiscrepancyFacts) => equipmentId !== null && listed.has(equipmentId);
  const sorted: Sorted = {
    rows: groupedBy(aircraft.equipment, (row) => row.function),
    writeUps: groupedBy(inoperative.filter(isPlaced), ({ equipmentId }) => equipmentId ?? ''),
    unplaced: inoperative.filter((d) => !isPlaced(d)),
    counts: new Map(),
  };
  SORTED.set(aircraft, sorted);
  return sorted;
}

function groupedBy<T, K>(all: readonly T[], keyOf: (one: T) => K): Map<K, T[]> {
  const groups = new Map<K, T[]>();
  for (const one of all) {
    const group = groups.get(keyOf(one));
    if (group === undefined) groups.set(keyOf(one), [one]);
    else group.push(one);
  }
  return groups;
}

/** The rows of the equipment list with this function. */
export const rowsOf = (aircraft: AircraftFacts, fn: EquipmentFunction): readonly EquipmentFacts[] =>
  sortedOf(aircraft).rows.get(fn) ?? [];

/** The open write-ups that put items of this row out of action. */
export const writeUpsOfRow = (aircraft: AircraftFacts, id: string): readonly DiscrepancyFacts[] =>
  sortedOf(aircraft).writeUps.get(id) ?? [];

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
  const { counts } = sortedOf(aircraft);
  const counted = counts.get(fn) ?? countOperative(aircraft, fn);
  counts.set(fn, counted);
  return counted;
}

function countOperative(aircraft: AircraftFacts, fn: EquipmentFunction): OperativeCount {
  const rows = rowsOf(aircraft, fn);
  const unplaced = sortedOf(aircraft).unplaced.find((d) => isOfRows(d, rows));
  const operative = unplaced
    ? unknown(`which item of equipment ${unplaced.number} (${unplaced.title}) is about`)
    : known(
        rows
          .filter((row) => row.confirmed.known)
          .reduce((sum, row) => sum + row.installed - inoperativeOf(aircraft, row), 0),
      );
  const unconfirmed = rows.find((row) => !row.confirmed.known) ?? null;
  return { installed: installedCount(aircraft, fn), operative, rows, unconfirmed };
}

/** The write-ups that put items of this function out of action, in their order. */
export function inoperativeWriteUps(
  aircraft: AircraftFacts,
  fn: EquipmentFunction,
): readonly DiscrepancyFacts[] {
  const rows = rowsOf(aircraft, fn);
  if (rows.length === 1 && rows[0] !== undefined) return writeUpsOfRow(aircraft, rows[0].id);
  const ids = new Set(rows.map(({ id }) => id));
  return aircraft.discrepancies.filter(
    (d) => d.kind === 'inoperative' && d.equipmentId !== null && ids.has(d.equipmentId),
  );
}

/** Two write-ups on one row may be about the same item or not; they add up, to at most the whole row. */
function inoperativeOf(aircraft: AircraftFacts, row: EquipmentFacts): number {
  const out = writeUpsOfRow(aircraft, row.id).reduce((sum, d) => sum + outOf(d, row), 0);
  return Math.min(out, row.installed);
}

/** A number that cannot be (none, a part, or below none) says as little as no number: the whole row is out. */
function outOf(discrepancy: DiscrepancyFacts, row: EquipmentFacts): number {
  const count = discrepancy.inoperativeCount;
  return count.known && Number.isSafeInteger(count.value) && count.value >= 1 ? count.value : row.installed;
}

/** Only the code says where it belongs; every row of that code may be the one. */
const isOfRows = (d: DiscrepancyFacts, rows: readonly EquipmentFacts[]): boolean =>
  rows.some((row) => row.jasc === d.jasc);
