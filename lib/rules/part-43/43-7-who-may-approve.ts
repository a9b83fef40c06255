import { barsForMissing, type Line } from '../verdict';
import type { PilotGrade } from '../operations';
import type { SignerFacts } from '../people';
import type { WorkToSign } from '../work-to-sign';

/**
 * 14 CFR 43.7: who may approve return to service.
 * (b) A mechanic or the holder of an inspection authorization, as part 65 allows (see part-65).
 * (c) A repair station, as part 145 and its ratings allow.
 * (d) The manufacturer, (e) an air carrier: not coded, schools under part 91 meet neither.
 * (f) A pilot, private or higher, after preventive maintenance done under 43.3(g).
 * (g), (h) Light-sport repairmen and sport pilots on light-sport category aircraft: not coded, other aircraft are held.
 * Read in an eCFR copy of 24 August 2026.
 */

const RANK: Readonly<Record<PilotGrade, number>> = {
  student: 0,
  sport: 1,
  recreational: 2,
  private: 3,
  commercial: 4,
  'airline-transport': 5,
};

/** Private, commercial or airline transport. */
export const isPrivateOrHigher = (grade: PilotGrade): boolean => RANK[grade] >= RANK.private;

type Station = NonNullable<SignerFacts['repairStation']>;
type StationRating = Station['ratings'][number];

/**
 * Sets of ratings, any one of which is enough for this work; a set asks for all its members. Ratings are those of
 * part 145 by name (145.59 divides them into classes, which a person's file does not hold). An annual asks for
 * airframe and powerplant both (strict: how part 145 joins inspections to ratings was not looked up). Altimeter and
 * altitude reporter: instrument class 1 or airframe, 91.411(b)(2); transponder: radio class 3, 91.413(c)(1).
 */
export function stationRatingsNeeded(work: WorkToSign): readonly (readonly StationRating[])[] {
  switch (work.kind) {
    case 'annual':
      return [['airframe', 'powerplant']];
    case 'hundred-hour':
      return work.part === 'powerplant' || work.part === 'propeller' ? [['powerplant']] : [['airframe']];
    case 'static-test':
      return [['instrument'], ['airframe']];
    case 'altimeter-transponder-test':
      return work.part === 'instrument'
        ? [['instrument'], ['airframe']]
        : work.part === 'avionics'
          ? [['radio']]
          : [];
    case 'preventive':
    case 'minor':
    case 'major': {
      const own: StationRating = work.part === 'avionics' ? 'radio' : work.part;
      const unitSwap = work.swapOnly && (work.part === 'instrument' || work.part === 'avionics');
      return unitSwap && work.kind !== 'major' ? [[own], ['airframe']] : [[own]];
    }
  }
}

/** (c) A repair station: rated for the work, and this person authorised to sign for it. */
export function repairStation43_7c(station: Station, work: WorkToSign): readonly Line[] {
  const lines: Line[] = [];
  const needed = stationRatingsNeeded(work);
  const holds = needed.some((set) => set.every((rating) => station.ratings.includes(rating)));
  const held = station.ratings.length > 0 ? station.ratings.join(', ') : 'no rating';
  if (needed.length === 0) {
    lines.push({
      effect: 'bars',
      cite: '14cfr43.7(c)',
      because: 'Say whether the altimeter (instrument) or the transponder (avionics) was tested.',
    });
  } else if (holds) {
    lines.push({
      effect: 'supports',
      cite: '14cfr43.7(c)',
      because: `Repair station ${station.number} holds the rating for this work (${held}).`,
    });
  } else {
    const asks = needed.map((set) => set.join(' and ')).join(', or ');
    lines.push({
      effect: 'bars',
      cite: '14cfr43.7(c)',
      because: `The repair station needs a rating for ${asks}; its certificate carries ${held}.`,
    });
  }
  if (holds)
    lines.push({
      effect: 'notes',
      cite: '14cfr43.7(c)',
      because:
        'The class or limits of the rating must fit this make and test; our file holds the rating only.',
    });
  lines.push(authorisedByStation(station));
  return lines;
}

/** The station has authorised this person to sign. Shared with rulings that need no rating. */
export function authorisedByStation(station: Station): Line {
  if (!station.authorisedToSign.known)
    return barsForMissing('14cfr43.7(c)', station.authorisedToSign.missing);
  return station.authorisedToSign.value
    ? {
        effect: 'supports',
        cite: '14cfr43.7(c)',
        because: `Repair station ${station.number} has authorised this person to sign.`,
      }
    : {
        effect: 'bars',
        cite: '14cfr43.7(c)',
        because: 'The repair station has not authorised this person to sign for it.',
      };
}

/** (f) A pilot's grade, after preventive maintenance under 43.3(g). */
export function pilotApproves43_7f(grade: PilotGrade): Line {
  return isPrivateOrHigher(grade)
    ? {
        effect: 'supports',
        cite: '14cfr43.7(f)',
        because: 'A private pilot or higher may approve their own preventive maintenance.',
      }
    : {
        effect: 'bars',
        cite: '14cfr43.7(f)',
        because: `A private pilot certificate or higher is needed; this one is ${grade.replace('-', ' ')}.`,
      };
}
