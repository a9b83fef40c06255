/**
 * 14 CFR 91.213(a)(3) to (a)(5): the entry of a minimum equipment list for one item as a person reads it before and
 * while it is deferred: numbers, conditions, procedures, and the clock of its repair category.
 */
import { mayExtend, standingDeadline, type ExtensionRuling } from '../advisory/mmel-extension';
import type { AircraftFacts, DiscrepancyFacts, MelFacts, MelItemFacts } from '../aircraft';
import type { CalendarDate, Fact } from '../facts';
import { parseCalendarDate } from '../months';
import { melItemFor, melStanding } from './91-213-a-with-mel';
import { aboutDiscrepancy, inoperativeItem, remainingOfItem, type InoperativeItem } from './91-213-item';

export interface ListEntry {
  readonly reference: string;
  readonly title: string;
  readonly category: MelItemFacts['category'];
  readonly installed: number;
  readonly requiredForDispatch: number;
  /** How many work now, every open write-up on the item counted. */
  readonly working: Fact<number>;
  readonly allowed: MelItemFacts['allowed'];
  readonly proviso: string;
  readonly operatingProcedure: string | null;
  readonly maintenanceProcedure: string | null;
  readonly clock: {
    /** Local date of the write-up, from which the category counts. */
    readonly recordedOn: CalendarDate;
    readonly lastDay: Fact<CalendarDate>;
    /** Whole days left after today: 0 on the last day, negative once it is over; null while the day is not known. */
    readonly daysLeft: number | null;
    /** False where the operator is not held to intervals. */
    readonly binds: boolean;
    readonly extended: boolean;
  };
}

/** The entry for an item under its list, with the clock as it stands on `on`. `recordedOn`: local date of the write-up. */
export function listEntryOf(
  mel: MelFacts,
  entry: MelItemFacts,
  inoperative: InoperativeItem,
  recordedOn: CalendarDate,
  on: CalendarDate,
): ListEntry {
  // Before there is a deferral the clock runs already: it starts at the write-up.
  const deferral = inoperative.discrepancy.deferral ?? { recordedOn, extendedThrough: null };
  const { lastDay, extended } = standingDeadline(mel, entry, deferral);
  const { title, category, installed, requiredForDispatch, allowed, proviso } = entry;
  return {
    reference: mel.reference,
    title,
    category,
    installed,
    requiredForDispatch,
    working: remainingOfItem(inoperative),
    allowed,
    proviso,
    operatingProcedure: entry.operatingProcedure,
    maintenanceProcedure: entry.maintenanceProcedure,
    clock: {
      recordedOn: deferral.recordedOn,
      lastDay,
      daysLeft: lastDay.known ? daysFrom(on, lastDay.value) : null,
      binds: mel.enforceCategories,
      extended,
    },
  };
}

const daysFrom = (on: CalendarDate, lastDay: CalendarDate): number =>
  parseCalendarDate(on).until(parseCalendarDate(lastDay), { largestUnit: 'days' }).days;

/**
 * Whether the interval of a deferred item may be extended when asked on `on`. Null where the question does not arise:
 * not deferred under a list that is in force, or its entry not found.
 */
export function extensionOf(
  aircraft: AircraftFacts,
  d: DiscrepancyFacts,
  on: CalendarDate,
): ExtensionRuling | null {
  if (d.deferral === null || d.deferral.basis !== 'mel') return null;
  const found = inoperativeItem(aircraft, d);
  if (!found.ok) return null;
  const about = aboutDiscrepancy(d);
  const standing = melStanding(aircraft, about);
  if (standing.path !== 'mel') return null;
  const listed = melItemFor(standing.mel, found.inoperative);
  if (!listed.ok) return null;
  return mayExtend({ aircraft, mel: standing.mel, entry: listed.entry, deferral: d.deferral, about }, on);
}
