import type { CalendarDate } from './facts';
import { dayInWords } from './in-words';
import type { CiteId } from './law';
import { parseCalendarDate } from './months';

/**
 * Which certificates run out soon, for the list of people. It warns and bars nothing: whether a signature counts is asked
 * of lib/rules/who-may-sign.ts each time, by the same dates.
 * Mechanic: the last day for which the recent experience of 65.83 is vouched. Inspection authorization: 31 March of odd
 * years, 65.92(a), and before that the activity of the first year, 65.93(c). Pilot and repair station: only where the
 * certificate itself names a day.
 */

/** Days before the last good day from which on the list warns (common practice, no source). */
export const WARN_DAYS = 60;

/** A certificate that stands, as far as time can take it away. Dates are dates at the base; null: not known. */
export interface HeldCertificate {
  readonly kind: string;
  readonly expiresOn: CalendarDate | null;
  readonly recentExperienceThrough: CalendarDate | null;
  readonly firstYearActivityMet: boolean | null;
}

export interface CertificateStanding {
  /** no-end: nothing that is stored ends it. */
  readonly state: 'good' | 'soon' | 'over' | 'not-known' | 'no-end';
  /** Last good day. */
  readonly through: CalendarDate | null;
  readonly because: string;
  readonly cite: CiteId | null;
}

/** How a certificate stands on this day. Of several ends the nearest counts. */
export function standingOn(held: HeldCertificate, on: CalendarDate): CertificateStanding {
  switch (held.kind) {
    case 'mechanic':
      return held.recentExperienceThrough === null
        ? notKnown(
            '14cfr65.83',
            'Not known: how far the recent experience is vouched for. Nothing can be signed under it.',
          )
        : ends(held.recentExperienceThrough, on, '14cfr65.83', 'Recent experience is vouched for through');
    case 'inspection-authorization':
      return inspectionAuthorization(held, on);
    default:
      return held.expiresOn === null
        ? { state: 'no-end', through: null, because: 'No day of expiry is entered.', cite: null }
        : ends(held.expiresOn, on, null, 'Good through');
  }
}

/** 65.92(a) and 65.93(c): unless the first year's activity was met, 31 March of the even year before counts. */
function inspectionAuthorization(held: HeldCertificate, on: CalendarDate): CertificateStanding {
  if (held.expiresOn === null)
    return notKnown('14cfr65.92(a)', 'Not known: when it expires. Nothing can be signed under it.');
  const whole = ends(held.expiresOn, on, '14cfr65.92(a)', 'Good through');
  if (held.firstYearActivityMet === true || whole.state === 'over') return whole;
  const firstYearEnds = parseCalendarDate(held.expiresOn).subtract({ years: 1 }).toString();
  if (on > firstYearEnds && held.firstYearActivityMet === null)
    return notKnown(
      '14cfr65.93(c)',
      "Not known: whether the first year's activity was met. Nothing can be signed under it.",
    );
  return ends(firstYearEnds, on, '14cfr65.93(c)', "Without the first year's activity good only through");
}

function ends(
  through: CalendarDate,
  on: CalendarDate,
  cite: CiteId | null,
  words: string,
): CertificateStanding {
  const left = parseCalendarDate(on).until(parseCalendarDate(through), { largestUnit: 'days' }).days;
  const state = left < 0 ? 'over' : left <= WARN_DAYS ? 'soon' : 'good';
  return { state, through, because: `${words} ${dayInWords(through)}.`, cite };
}

const notKnown = (cite: CiteId, because: string): CertificateStanding => ({
  state: 'not-known',
  through: null,
  because,
  cite,
});

/** Wants a look on the list: soon over, over, or not known. */
export const wantsALook = ({ state }: CertificateStanding): boolean =>
  state === 'soon' || state === 'over' || state === 'not-known';
