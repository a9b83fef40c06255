/**
 * 14 CFR 47.40: how long an aircraft registration lasts.
 *
 * - (a): a certificate expires seven years after the last day of the month in which it was issued.
 * - Transition (87 FR 71210, effective 23 January 2023): until then it was three years. Certificates that were
 *   still in force that day were stretched to seven years in all: the printed date plus four. One that had already
 *   expired stayed expired.
 * - (b): renewal is applied for within the six months before. Not decided here: a renewal is a new certificate.
 *
 * Not covered: certificates issued before October 2010 (re-registration dates of their own), and the temporary
 * authority of 47.31(c) with the application copy aboard. Both are entered with the date a person reads from them.
 */
import type { CalendarDate } from '../facts';
import { addYearsEndOfMonth } from '../months';

/** The day on which seven years replaced three. */
const SEVEN_YEARS_FROM: CalendarDate = '2023-01-23';

/** Last day of validity of a certificate issued on `issuedOn`. Issued 10 Feb 2024: through 28 Feb 2031. */
export function registrationExpiry(issuedOn: CalendarDate): CalendarDate {
  if (issuedOn >= SEVEN_YEARS_FROM) return addYearsEndOfMonth(issuedOn, 7);
  const threeYears = addYearsEndOfMonth(issuedOn, 3);
  return threeYears < SEVEN_YEARS_FROM ? threeYears : addYearsEndOfMonth(issuedOn, 7);
}

/**
 * Last day of validity of a certificate of the three-year time, from the expiry date printed on it. Printed
 * 31 May 2023: through 31 May 2027.
 */
export function stretchedRegistrationExpiry(printedExpiry: CalendarDate): CalendarDate {
  return printedExpiry < SEVEN_YEARS_FROM ? printedExpiry : addYearsEndOfMonth(printedExpiry, 4);
}
