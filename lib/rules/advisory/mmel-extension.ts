/**
 * Extension of the repair interval of an item deferred under a minimum equipment list. Advisory, not regulation, and
 * from memory: no copy of the FAA's inspector guidance on it (8900.1, authorization D095 and its like for part 91
 * letters) was found. Where the letter of authorization gives the authority, an operator may lengthen an interval:
 *
 * - only in the categories the letter names, B and C; never A or D;
 * - once for one deferral;
 * - by at most the same interval again;
 * - asked for before the interval has ended: on its last day still, on the day after no more;
 * - 91.405(c): never past the next required inspection, which ends the deferral by itself.
 *
 * What was extended counts only as long as the letter in force gives the authority: a strict reading of our own.
 */
import type { AircraftFacts, DeferralFacts, MelFacts, MelItemFacts } from '../aircraft';
import { known, type CalendarDate, type Fact } from '../facts';
import { formatTenths } from '../hours';
import { dayInWords } from '../in-words';
import { midnightEndAfterDays } from '../months';
import { nextRequiredInspection } from '../part-91/91-405-maintenance-required';
import { rulingOf, type Ruling } from '../ruling';
import { barsForMissing, type Line, type Subject } from '../verdict';
import { REPAIR_DAYS, repairDeadline } from './mmel-repair-categories';

/** Categories that can be extended at all, whatever a letter says. */
const EXTENDABLE: readonly MelItemFacts['category'][] = ['B', 'C'];

const CITE = 'mmel-extension';

/** Whether the interval may be extended when asked on one day, and how far. */
export interface ExtensionRuling extends Ruling {
  /** Last day of the interval as the category sets it; null while it is not known. */
  readonly endsOn: CalendarDate | null;
  /** The last day that an extension may reach; null when there is none to give. */
  readonly latest: CalendarDate | null;
}

interface Extending {
  readonly aircraft: AircraftFacts;
  readonly mel: MelFacts;
  readonly entry: MelItemFacts;
  readonly deferral: DeferralFacts;
  readonly about: Subject;
}

/** The ruling for an item under an entry of the list, asked on the local date `on`. */
export function mayExtend(given: Extending, on: CalendarDate): ExtensionRuling {
  const { entry, deferral, about } = given;
  const authority = [...authorityOf(given), ...onlyOnce(given)];
  const end = repairDeadline(entry.category, deferral.recordedOn, entry.categoryADays);
  if (!end.known) {
    return {
      ...rulingOf([...authority, barsForMissing(CITE, end.missing, about)]),
      endsOn: null,
      latest: null,
    };
  }
  const endsOn = end.value;
  const before = askedBeforeTheEnd(endsOn, on, about);
  const inspection = untilInspection(given, endsOn);
  const ruling = rulingOf([...authority, before, ...inspection]);
  return { ...ruling, endsOn, latest: ruling.allowed ? latestDay(given, endsOn) : null };
}

/** The same for an extension through `until`: later than the interval, and not later than the ruling allows. */
export function mayExtendThrough(ruling: ExtensionRuling, until: CalendarDate, about: Subject): Ruling {
  const { endsOn, latest, lines } = ruling;
  if (!ruling.allowed || endsOn === null || latest === null) return { allowed: false, lines };
  if (until <= endsOn) {
    const because = `The interval runs through ${dayInWords(endsOn)} already; an extension ends later.`;
    return rulingOf([...lines, { effect: 'bars', cite: CITE, because, about }]);
  }
  if (until > latest) {
    const because = `At most through ${dayInWords(latest)}: the same interval again, and not past the next required inspection.`;
    return rulingOf([...lines, { effect: 'bars', cite: CITE, because, about }]);
  }
  const because = `Extended through ${dayInWords(until)}, at most through ${dayInWords(latest)}.`;
  return rulingOf([...lines, { effect: 'supports', cite: CITE, because, about }]);
}

/**
 * Last day on which the item may still be inoperative, an extension counted as far as the letter in force carries it.
 * Unknown where the interval itself is.
 */
export function standingDeadline(
  mel: MelFacts,
  entry: MelItemFacts,
  deferral: Pick<DeferralFacts, 'recordedOn' | 'extendedThrough'>,
): { readonly lastDay: Fact<CalendarDate>; readonly extended: boolean } {
  const end = repairDeadline(entry.category, deferral.recordedOn, entry.categoryADays);
  const { extendedThrough } = deferral;
  if (!end.known || extendedThrough === null || !lettersAuthority(mel, entry)) {
    return { lastDay: end, extended: false };
  }
  const most = sameIntervalAgain(entry, end.value);
  const through = most !== null && extendedThrough > most ? most : extendedThrough;
  return through > end.value
    ? { lastDay: known(through), extended: true }
    : { lastDay: end, extended: false };
}

/** The letter gives the authority for this category. */
const lettersAuthority = ({ extension }: MelFacts, { category }: MelItemFacts): boolean =>
  extension !== null && EXTENDABLE.includes(category) && extension.categories.includes(category);

function authorityOf({ mel, entry, about }: Extending): readonly Line[] {
  const bars = (because: string): readonly Line[] => [{ effect: 'bars', cite: CITE, because, about }];
  if (!mel.enforceCategories)
    return bars('This operator is not held to intervals: there is nothing to extend.');
  if (mel.extension === null) {
    return bars(`The letter of ${mel.reference} gives no authority to extend a repair interval.`);
  }
  if (!EXTENDABLE.includes(entry.category)) {
    return bars(`Category ${entry.category} is never extended.`);
  }
  if (!lettersAuthority(mel, entry)) {
    const named = mel.extension.categories.join(', ');
    return bars(`${mel.extension.reference} names category ${named}, and this item is in ${entry.category}.`);
  }
  const because = `${mel.extension.reference} lets the operator extend category ${entry.category} once.`;
  return [{ effect: 'supports', cite: CITE, because, about }];
}

function onlyOnce({ deferral, about }: Extending): readonly Line[] {
  if (deferral.extendedThrough === null) return [];
  const because = `Extended once already, through ${dayInWords(deferral.extendedThrough)}. There is no second time.`;
  return [{ effect: 'bars', cite: CITE, because, about }];
}

function askedBeforeTheEnd(endsOn: CalendarDate, on: CalendarDate, about: Subject): Line {
  return on <= endsOn
    ? { effect: 'supports', cite: CITE, because: `The interval runs through ${dayInWords(endsOn)}.`, about }
    : {
        effect: 'bars',
        cite: CITE,
        because: `The interval ended with ${dayInWords(endsOn)}. An extension is asked for before it ends.`,
        about,
      };
}

/** 91.405(c): the inspection has to lie after the interval, or there is nothing to give. */
function untilInspection({ aircraft, about }: Extending, endsOn: CalendarDate): readonly Line[] {
  const cite = '14cfr91.405(c)';
  const next = nextRequiredInspection(aircraft, 'any');
  if (next.missing !== null) return [barsForMissing(cite, next.missing, about)];
  if (next.dueOn !== null && next.dueOn <= endsOn) {
    const because = `The ${next.name} is due by ${dayInWords(next.dueOn)} and ends the deferral; no extension reaches past it.`;
    return [{ effect: 'bars', cite, because, about }];
  }
  const hours = next.dueTenths === null ? '' : ` or at ${formatTenths(next.dueTenths)} h`;
  const because = `The ${next.name}${next.dueOn === null ? '' : ` by ${dayInWords(next.dueOn)}`}${hours} ends the deferral, extended or not.`;
  return [{ effect: 'notes', cite, because, about }];
}

function latestDay({ aircraft, entry }: Extending, endsOn: CalendarDate): CalendarDate | null {
  const most = sameIntervalAgain(entry, endsOn);
  const { dueOn } = nextRequiredInspection(aircraft, 'any');
  return most !== null && dueOn !== null && dueOn < most ? dueOn : most;
}

const sameIntervalAgain = ({ category }: MelItemFacts, endsOn: CalendarDate): CalendarDate | null =>
  category === 'B' || category === 'C' ? midnightEndAfterDays(endsOn, REPAIR_DAYS[category]) : null;
