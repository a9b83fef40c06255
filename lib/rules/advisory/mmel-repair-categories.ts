/**
 * FAA MMEL Policy Letter 25: repair categories of a minimum equipment list. Advisory, not regulation: under part 91
 * the intervals are reported not to bind, so a list says whether its operator holds itself to them
 * (`enforceCategories`, on unless the operator chose otherwise, which is the stricter side).
 *
 * - A: within the time that the remarks of the item state; the day of recording is not counted.
 * - B: within 3 consecutive calendar days, the day of recording not counted.
 * - C: within 10, likewise.
 * - D: within 120, likewise.
 *
 * The interval starts at the midnight that ends the day of the write-up and ends at the midnight that ends its last
 * day. The clock starts at the write-up, not at the placard.
 */
import { known, type CalendarDate, type Fact } from '../facts';
import type { CiteId } from '../law';
import { midnightEndAfterDays } from '../months';

export type RepairCategory = 'A' | 'B' | 'C' | 'D';

/** Consecutive calendar days, the day of recording not counted. Category A has no figure of its own. */
export const REPAIR_DAYS = { B: 3, C: 10, D: 120 } as const satisfies Record<
  Exclude<RepairCategory, 'A'>,
  number
>;

const CITES = {
  A: 'mmel-category-a',
  B: 'mmel-category-b',
  C: 'mmel-category-c',
  D: 'mmel-category-d',
} as const satisfies Record<RepairCategory, CiteId>;

/** Where the category is defined. */
export const repairCategoryCite = (category: RepairCategory): CiteId => CITES[category];

/**
 * Last day on which the item may still be inoperative; the interval ends at the midnight that ends it. Recorded
 * 26 January in category B: 29 January. Unknown for category A while the days its remarks state are unknown.
 * @param recordedOn local date of the write-up
 * @param categoryADays whole days as the remarks of a category A item state them; not read for B, C and D
 */
export function repairDeadline(
  category: RepairCategory,
  recordedOn: CalendarDate,
  categoryADays: Fact<number>,
): Fact<CalendarDate> {
  if (category !== 'A') return known(midnightEndAfterDays(recordedOn, REPAIR_DAYS[category]));
  return categoryADays.known ? known(midnightEndAfterDays(recordedOn, categoryADays.value)) : categoryADays;
}
