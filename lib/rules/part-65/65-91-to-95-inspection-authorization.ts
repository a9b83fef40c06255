import { dayInWords } from '../in-words';
import type { CalendarDate } from '../facts';
import type { SignerFacts } from '../people';
import { barsForMissing, type Line } from '../verdict';
import type { WorkToSign } from '../work-to-sign';

/**
 * 14 CFR 65.91 to 65.95: the inspection authorization.
 * 65.91(c) Needs airframe and powerplant ratings held for years: looked at when it is issued, not coded here.
 * 65.92(a) Expires on 31 March of each odd year; usable only while both mechanic ratings are effective.
 * 65.92(b) Ceases when surrendered or suspended, or without a base or facilities: not coded, no record tells us; the
 *          operator must take the authorization off the person's file.
 * 65.93(a) Activity asked for each year: counted by the holder, not coded.
 * 65.93(c) Without that activity by 31 March of the first (even) year the privileges stop after that day, until an oral
 *          test is passed.
 * 65.95(a)(1) Approves aircraft and related parts and appliances after major repairs done on approved data.
 * 65.95(a)(2) Performs an annual inspection; performs or supervises a progressive one.
 * Read in eCFR copies of 24 August and 3 September 2026.
 */

type Authorization = NonNullable<SignerFacts['inspectionAuthorization']>;

/** 65.92(a) The day itself is good, the next is not. A stored date that is no 31 March of an odd year is not believed. */
export function expires65_92a(authorization: Authorization, on: CalendarDate): Line {
  const cite = '14cfr65.92(a)';
  const expires = authorization.expiresOn;
  if (!/^\d{3}[13579]-03-31$/.test(expires))
    return {
      effect: 'bars',
      cite,
      because: `The stored expiry ${expires} cannot be right: an inspection authorization expires on 31 March of an odd year.`,
    };
  return on <= expires
    ? { effect: 'supports', cite, because: `The inspection authorization runs to ${dayInWords(expires)}.` }
    : { effect: 'bars', cite, because: `The inspection authorization expired on ${dayInWords(expires)}.` };
}

/** 65.92(a) Both mechanic ratings must be in effect. */
export function bothRatings65_92a(signer: SignerFacts): Line {
  const ratings = signer.mechanic?.ratings ?? [];
  return ratings.includes('airframe') && ratings.includes('powerplant')
    ? { effect: 'supports', cite: '14cfr65.92(a)', because: 'Airframe and powerplant ratings are both held.' }
    : {
        effect: 'bars',
        cite: '14cfr65.92(a)',
        because: 'An inspection authorization counts only with airframe and powerplant ratings both held.',
      };
}

/** 65.93(c) Through 31 March of the even year nothing is asked; after it the first year's activity must be known. */
export function firstYear65_93c(authorization: Authorization, on: CalendarDate): Line {
  const cite = '14cfr65.93(c)';
  const firstYear = String(Number(authorization.expiresOn.slice(0, 4)) - 1).padStart(4, '0');
  const firstYearEnds = `${firstYear}-03-31`;
  // Not read as a date: a stored expiry that is none is refused by 65.92(a), not thrown at.
  const inWords = `31 Mar ${firstYear}`;
  if (on <= firstYearEnds)
    return {
      effect: 'supports',
      cite,
      because: `First-year activity is due by ${inWords}.`,
    };
  if (!authorization.firstYearActivityMet.known)
    return barsForMissing(cite, authorization.firstYearActivityMet.missing);
  return authorization.firstYearActivityMet.value
    ? { effect: 'supports', cite, because: `First-year activity was met by ${inWords}.` }
    : {
        effect: 'bars',
        cite,
        because: `First-year activity was not met by ${inWords}; an oral test must be passed first.`,
      };
}

/** 65.95(a) What the authorization adds to the ratings: major repairs outside propellers and instruments, and the annual. */
export function privileges65_95a(work: WorkToSign): readonly Line[] {
  if (work.kind === 'annual')
    return [
      {
        effect: 'supports',
        cite: '14cfr65.95(a)(2)',
        because: 'The holder of an inspection authorization may perform an annual inspection.',
      },
    ];
  if (work.kind !== 'major') return [];
  if (work.part === 'airframe' || work.part === 'powerplant' || work.part === 'avionics')
    return [
      {
        effect: 'supports',
        cite: '14cfr65.95(a)(1)',
        because: 'The holder of an inspection authorization may approve a major repair.',
      },
      {
        effect: 'limits',
        cite: '14cfr43appB(a)',
        because: 'Only on approved data, and with the major repair form (337) completed.',
      },
    ];
  return [
    {
      effect: 'bars',
      cite: '14cfr65.95(a)(1)',
      because: 'No inspection authorization is taken for a major repair of a propeller or an instrument.',
      strictReading:
        '65.95(a)(1) might reach that far; 65.81(a) keeps mechanics from the work, so a rated repair station must sign.',
    },
  ];
}
