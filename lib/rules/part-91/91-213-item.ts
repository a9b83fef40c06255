/**
 * 14 CFR 91.213(a): what the section speaks of, "inoperative instruments or equipment installed", found in the
 * facts of one aircraft: which item it is and how many of it still work. Everything else about 91.213 builds on it.
 */
import type { AircraftFacts, DiscrepancyFacts, EquipmentFacts } from '../aircraft';
import { writeUpsOfRow } from '../equipment-count';
import { known, type Fact } from '../facts';
import { barsForMissing, type Line, type Subject } from '../verdict';

/** A discrepancy known to be an inoperative item, with the item, on an aircraft whose list holds the discrepancy. */
export interface InoperativeItem {
  readonly aircraft: AircraftFacts;
  readonly discrepancy: DiscrepancyFacts;
  readonly item: EquipmentFacts;
}

/** The discrepancy as a line points at it. */
export const aboutDiscrepancy = (d: DiscrepancyFacts): Subject => ({
  kind: 'discrepancy',
  id: d.id,
  label: `${d.number} ${d.title}`,
});

/**
 * The same aircraft with `d` among its open discrepancies, in place of any older state of it. Where it stands there already, the very
 * same facts: what was counted of them holds.
 */
export function withDiscrepancy(aircraft: AircraftFacts, d: DiscrepancyFacts): AircraftFacts {
  const others = aircraft.discrepancies.filter((other) => other.id !== d.id);
  const alone = others.length === aircraft.discrepancies.length - 1;
  if (alone && aircraft.discrepancies.includes(d)) return aircraft;
  return { ...aircraft, discrepancies: [...others, d] };
}

/**
 * Finds the inoperative item. Gives barring lines when the item is not among the installed equipment, when nobody has
 * confirmed its line against the aircraft's own documents, or when the number that does not work is unknown or makes no sense (under one, or more than are installed).
 */
export function inoperativeItem(
  aircraft: AircraftFacts,
  d: DiscrepancyFacts,
):
  | { readonly ok: true; readonly inoperative: InoperativeItem }
  | { readonly ok: false; readonly lines: readonly Line[] } {
  const about = aboutDiscrepancy(d);
  const item = aircraft.equipment.find((equipment) => equipment.id === d.equipmentId);
  const refuse = (missing: string) => ({
    ok: false as const,
    lines: [barsForMissing('14cfr91.213(a)', missing, about)],
  });
  if (item === undefined) return refuse('which installed item of equipment does not work');
  // Nobody has held its line against the aircraft's documents: neither that it is not required nor how many there are.
  if (!item.confirmed.known) return refuse(item.confirmed.missing);
  if (!d.inoperativeCount.known) return refuse(d.inoperativeCount.missing);
  const count = d.inoperativeCount.value;
  if (!Number.isSafeInteger(count) || count < 1 || count > item.installed) {
    return refuse(
      `how many of the ${item.installed} installed (${item.name}) do not work; ${count} is written`,
    );
  }
  return { ok: true, inoperative: { aircraft: withDiscrepancy(aircraft, d), discrepancy: d, item } };
}

/**
 * How many of the item still work, all open inoperative discrepancies on it counted, this one and every other: two
 * deferrals that are harmless alone may not be harmless together.
 */
export function remainingOfItem({ aircraft, item }: InoperativeItem): Fact<number> {
  let remaining = item.installed;
  for (const { inoperativeCount } of writeUpsOfRow(aircraft, item.id)) {
    if (!inoperativeCount.known) return inoperativeCount;
    remaining -= inoperativeCount.value;
  }
  return known(Math.max(0, remaining));
}

/** The other deferrals that are in force on the aircraft beside this discrepancy. */
export const otherDeferrals = ({ aircraft, discrepancy }: InoperativeItem): readonly DiscrepancyFacts[] =>
  aircraft.discrepancies.filter((other) => other.id !== discrepancy.id && other.deferral !== null);
