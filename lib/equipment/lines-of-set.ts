/** The lines a starting set gives an aircraft of a type. Pure. */
import type { AircraftTypeFacts } from '../rules/aircraft';
import { nameKey, type LineColumns } from './line';
import { STARTING_SETS, type SetCondition, type SetCount, type SetItem, type SetName } from './starting-sets';

/** The facts of the type that a set asks for; null: not known. */
export interface TypeForSet {
  readonly engines: number;
  readonly fuelTanks: number | null;
  readonly seats: number | null;
  readonly cooling: 'air' | 'liquid' | null;
  readonly altitudeEngine: boolean | null;
  readonly retractableGear: boolean | null;
  readonly usesFuses: boolean | null;
}

/** What stands on the list already. */
export type OnList = readonly { readonly name: string; readonly function: string }[];

/**
 * The lines of the sets, each once, without those whose name or function is on the list already, and without what the type is known not to
 * have. A count that hangs on an unknown fact is one, for the person to put right.
 */
export function linesOfSets(sets: readonly SetName[], type: TypeForSet, onList: OnList): LineColumns[] {
  const names = new Set(onList.map(({ name }) => nameKey(name)));
  const functions = new Set(onList.map((row) => row.function).filter((fn) => fn !== 'other'));
  const lines: LineColumns[] = [];
  for (const item of sets.flatMap((name) => STARTING_SETS[name])) {
    if (!mayHave(item.when, type) || functions.has(item.function) || names.has(nameKey(item.name))) continue;
    names.add(nameKey(item.name));
    if (item.function !== 'other') functions.add(item.function);
    lines.push(lineOf(item, type));
  }
  return lines;
}

function lineOf(item: SetItem, type: TypeForSet): LineColumns {
  const installed = countOf(item.installed, type);
  const { dayVfr, nightVfr, dayIfr, nightIfr } = item.required;
  const all = (asked: boolean): number => (asked ? installed : 0);
  return {
    name: item.name,
    function: item.function,
    jasc: item.jasc,
    installed,
    vfrDayTypeDesign: item.vfrDayTypeDesign,
    requiredDayVfr: all(dayVfr),
    requiredNightVfr: all(nightVfr),
    requiredDayIfr: all(dayIfr),
    requiredNightIfr: all(nightIfr),
    authority: [...item.authority],
  };
}

const countOf = (count: SetCount, type: TypeForSet): number =>
  typeof count === 'number' ? count : Math.max(1, type[count] ?? 1);

/** Not known counts as may: the person takes off the list what is not installed. */
function mayHave(when: SetCondition | undefined, type: TypeForSet): boolean {
  switch (when) {
    case undefined:
      return true;
    case 'air-cooled':
      return type.cooling !== 'liquid';
    case 'liquid-cooled':
      return type.cooling !== 'air';
    case 'altitude-engine':
      return type.altitudeEngine !== false;
    case 'retractable-gear':
      return type.retractableGear !== false;
    case 'fuses':
      return type.usesFuses !== false;
  }
}

/** The same from the rules' facts, for tests that ask what a set demands. */
export const typeForSet = (type: AircraftTypeFacts): TypeForSet => {
  const value = <T>(fact: { known: true; value: T } | { known: false; missing: string }): T | null =>
    fact.known ? fact.value : null;
  return {
    engines: type.engines,
    fuelTanks: value(type.fuelTanks),
    seats: value(type.seats),
    cooling: value(type.cooling),
    altitudeEngine: value(type.altitudeEngine),
    retractableGear: value(type.retractableGear),
    usesFuses: value(type.usesFuses),
  };
};
