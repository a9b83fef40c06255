import type { CalendarDate } from '../rules/facts';

/** Our own bound, no law's: a date further off is a slip of a digit, and would hide an expired battery for years. */
const MOST_YEARS = 15;

/**
 * Why a new date marked on a part is not taken, in words; null when it is, or when none is given. It takes the place of a
 * fixed date, so only a battery (91.207(c)(2)) or something with a fixed date may have one.
 * @param doneOn the day on which the part was fitted
 */
export function newExpiryRefused(
  requirement: { readonly kind: string; readonly fixedExpiry: Date | null },
  doneOn: CalendarDate,
  newExpiry: CalendarDate | null | undefined,
): string | null {
  if (!newExpiry) return null;
  if (requirement.kind !== 'elt-battery' && requirement.fixedExpiry === null) {
    return 'Nothing here ends on a fixed date, so there is no new date to mark.';
  }
  if (newExpiry <= doneOn) return 'The new date must be later than the day it was done.';
  const latest = `${Number(doneOn.slice(0, 4)) + MOST_YEARS}${doneOn.slice(4)}`;
  return newExpiry > latest
    ? `More than ${MOST_YEARS} years after it was done. Look at the date again (our own bound, not the law's).`
    : null;
}
