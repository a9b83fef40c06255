/** What is installed, what works and what is out of use: counted for the facts of the library. */
import type {
  AircraftFacts,
  DiscrepancyFacts,
  EquipmentFacts,
  EquipmentFunction,
} from '@/lib/rules/aircraft';
import type { Fact } from '@/lib/rules/facts';

export const valueOf = <T>(fact: Fact<T>): T | null => (fact.known ? fact.value : null);

export interface Counted {
  installed: number;
  /** Null: a write-up without an item may be about one of these. */
  working: number | null;
  unconfirmed: boolean;
  /** Installed items that are not out of use under a deferral. */
  items: number;
  inUse: number;
}

export interface Counts {
  readonly of: (fn: EquipmentFunction) => Counted;
  readonly row: (id: string | null) => EquipmentFacts | undefined;
  readonly outOfRow: (id: string) => readonly DiscrepancyFacts[];
}

const NONE: Counted = { installed: 0, working: 0, unconfirmed: false, items: 0, inUse: 0 };
const isCount = (value: number | null): value is number =>
  value !== null && Number.isSafeInteger(value) && value >= 1;

/** What is installed, what works and what is out of use, in one pass over the list and the write-ups. */
export function countEquipment({ equipment, discrepancies }: AircraftFacts): Counts {
  const rows = new Map(equipment.map((row) => [row.id, row]));
  const writeUps = new Map<string, DiscrepancyFacts[]>();
  const nameless = new Set<string>();
  for (const d of discrepancies) {
    if (d.kind !== 'inoperative') continue;
    if (d.equipmentId === null || !rows.has(d.equipmentId)) nameless.add(d.jasc);
    else writeUps.set(d.equipmentId, [...(writeUps.get(d.equipmentId) ?? []), d]);
  }
  const counted = new Map<EquipmentFunction, Counted>();
  for (const row of equipment) {
    const one = counted.get(row.function) ?? { ...NONE };
    const out = writeUps.get(row.id) ?? [];
    const numbers = out.map((d) => valueOf(d.inoperativeCount));
    const broken = numbers.reduce<number>((sum, count) => sum + (isCount(count) ? count : row.installed), 0);
    const deferredWhole = out.some(
      (d, at) => d.deferral !== null && (numbers[at] ?? Number.NEGATIVE_INFINITY) >= row.installed,
    );
    one.installed += row.installed;
    if (nameless.has(row.jasc)) one.working = null;
    if (one.working !== null && row.confirmed.known)
      one.working += row.installed - Math.min(broken, row.installed);
    one.unconfirmed ||= !row.confirmed.known;
    if (row.installed > 0) one.items += 1;
    if (row.installed > 0 && !(row.confirmed.known && deferredWhole)) one.inUse += 1;
    counted.set(row.function, one);
  }
  return {
    of: (fn) => counted.get(fn) ?? NONE,
    row: (id) => (id === null ? undefined : rows.get(id)),
    outOfRow: (id) => writeUps.get(id) ?? [],
  };
}
