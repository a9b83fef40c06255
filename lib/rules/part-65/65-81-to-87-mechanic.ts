import { dayInWords } from '../in-words';
import type { CalendarDate } from '../facts';
import type { SignerFacts } from '../people';
import { barsForMissing, type Line } from '../verdict';
import type { WorkToSign } from '../work-to-sign';

/**
 * 14 CFR 65.81 to 65.87: what a mechanic may do and approve.
 * 65.81(a) Works or supervises within the ratings held. Excluded: major repairs and alterations of propellers, and any
 *          repair or alteration of instruments. Must have done the job before, or be shown or supervised.
 * 65.81(b) Must understand the maker's current instructions.
 * 65.83    Within the preceding 24 months: found able by the FAA, or six months as mechanic or supervisor.
 * 65.85(a) Airframe rating: approves airframes and related parts and appliances, not major work; the 100-hour on
 *          the airframe.
 * 65.87(a) Powerplant rating: the same for engines and propellers.
 * Read in eCFR copies of 24 August and 3 September 2026.
 */

type Mechanic = NonNullable<SignerFacts['mechanic']>;
type Rating = Mechanic['ratings'][number];

const carries = (mechanic: Mechanic): string =>
  mechanic.ratings.length === 0
    ? 'no rating'
    : mechanic.ratings.length === 1
      ? `${mechanic.ratings[0]} only`
      : 'airframe and powerplant';

/** The rating that part 65 ties to a part of the aircraft. Fitting instruments and radios is airframe work. */
export const ratingForPart = (part: WorkToSign['part']): Rating =>
  part === 'powerplant' || part === 'propeller' ? 'powerplant' : 'airframe';

/** 65.81(a) The two exclusions no rating lifts. Null when neither applies. */
export function excluded65_81a(work: WorkToSign): Line | null {
  if (work.part === 'propeller' && work.kind === 'major')
    return {
      effect: 'bars',
      cite: '14cfr65.81(a)',
      because: 'A major repair of a propeller is outside every mechanic certificate.',
      strictReading:
        '65.95(a)(1) might let an inspection authorization approve it; no mechanic may do it, so we refuse both.',
    };
  const repair = work.kind === 'preventive' || work.kind === 'minor' || work.kind === 'major';
  if (work.part === 'instrument' && repair && !work.swapOnly)
    return {
      effect: 'bars',
      cite: '14cfr65.81(a)',
      because:
        'Any repair of an instrument is outside every mechanic certificate. A mechanic may only take it out and put one in.',
    };
  return null;
}

/** 65.81(a) and (b) What the signer vouches for by signing; nothing here can be looked up in a record. */
export const vouches65_81: readonly Line[] = [
  {
    effect: 'notes',
    cite: '14cfr65.81(a)',
    because: 'You have done this kind of work before, or were shown it or supervised.',
  },
  {
    effect: 'notes',
    cite: '14cfr65.81(b)',
    because: 'You have the maker’s current instructions for it and understand them.',
  },
];

/** 65.83 Recent experience. The last day vouched for is good, the day after is not; unknown bars. */
export function recent65_83(mechanic: Mechanic, on: CalendarDate): Line {
  if (!mechanic.recentExperienceThrough.known)
    return barsForMissing('14cfr65.83', mechanic.recentExperienceThrough.missing);
  const through = mechanic.recentExperienceThrough.value;
  return on <= through
    ? {
        effect: 'supports',
        cite: '14cfr65.83',
        because: `Six months of experience in the last 24 is vouched for through ${dayInWords(through)}.`,
      }
    : {
        effect: 'bars',
        cite: '14cfr65.83',
        because: `Recent experience is vouched for only through ${dayInWords(through)}.`,
      };
}

/** 65.85(a) and 65.87(a) The rating for the part worked on. */
export function rated65_85and65_87(mechanic: Mechanic, part: WorkToSign['part']): Line {
  const rating = ratingForPart(part);
  const cite = rating === 'airframe' ? '14cfr65.85(a)' : '14cfr65.87(a)';
  const subject = {
    airframe: 'The airframe',
    powerplant: 'The engine',
    propeller: 'A propeller',
    instrument: 'Fitting an instrument',
    avionics: 'Fitting a radio',
  }[part];
  const what = `${subject} is ${rating} work`;
  return mechanic.ratings.includes(rating)
    ? { effect: 'supports', cite, because: `${what}, and your certificate carries that rating.` }
    : { effect: 'bars', cite, because: `${what}. Your certificate carries ${carries(mechanic)}.` };
}

/** 65.85(a) and 65.87(a) Neither rating approves major work. */
export function majorNotApproved65_85and65_87(mechanic: Mechanic, work: WorkToSign): Line {
  const rating = ratingForPart(work.part);
  return {
    effect: 'bars',
    cite: rating === 'airframe' ? '14cfr65.85(a)' : '14cfr65.87(a)',
    because: mechanic.ratings.includes(rating)
      ? 'You may do this major repair, but not approve it: that needs an inspection authorization or a repair station.'
      : `A mechanic rating approves no major repair, and your certificate carries ${carries(mechanic)}.`,
  };
}
