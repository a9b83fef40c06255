/**
 * What stood on paper before this tool, taken over with a signature by somebody who vouches for the paper. A record carried over
 * never says more than the same record made here would: whoever determined on paper is asked what the law asks of a person
 * here (91.213(d)(4), 65.83), and what the paper does not say is not known, and bars.
 */
import type { DeterminerFacts, FindingKind, Severity } from './aircraft';
import { known, unknown, type CalendarDate, type Fact } from './facts';
import type { PilotGrade } from './operations';
import type { SignerFacts } from './people';
import type { Line } from './verdict';
import { mayDetermineNoHazard, mayPlacePlacard, toDeterminer } from './who-may-determine';

/** An answer read from a paper. */
export type OnPaper = 'yes' | 'no' | 'not-known';

/** Null where the paper does not say. */
export const answered = (answer: OnPaper): boolean | null =>
  answer === 'not-known' ? null : answer === 'yes';

/** Who determined that an item is no hazard, as far as the paper tells. */
export interface DeterminerOnPaper {
  readonly name: string;
  readonly certificate: 'mechanic' | 'repair-station' | 'pilot' | 'other' | 'not-known';
  readonly number: string;
  /** Of a mechanic. Empty: none is told. */
  readonly ratings: readonly ('airframe' | 'powerplant')[];
  /** Of a mechanic: had recent experience on that day (65.83). */
  readonly recent: OnPaper;
  /** Of a repair station: it was rated for the aircraft, and the person authorized to sign for it. */
  readonly authorised: OnPaper;
  /** Of a pilot. Null: not told. */
  readonly grade: PilotGrade | null;
  /** Of a pilot: rated for the category and class of the aircraft. */
  readonly rated: OnPaper;
}

/**
 * The person of the paper as the rules judge a person of ours, on the day of the paper.
 * @param rating category and class of the aircraft, for example `airplane-single-engine-land`
 * @param on the day on which the person acted
 */
export function signerOnPaper(paper: DeterminerOnPaper, rating: string, on: CalendarDate): SignerFacts {
  const { name, number, certificate } = paper;
  const asked = (answer: OnPaper, missing: string): Fact<boolean> =>
    answer === 'not-known' ? unknown(missing) : known(answer === 'yes');
  const recent = asked(paper.recent, `whether ${name} had recent experience on that day (65.83)`);
  return {
    id: 'on-paper',
    name,
    pilot:
      certificate === 'pilot' && paper.grade !== null
        ? { number, grade: paper.grade, ratings: paper.rated === 'yes' ? [rating] : [] }
        : null,
    mechanic:
      certificate === 'mechanic'
        ? {
            number,
            ratings: paper.ratings,
            // Known to have had none: vouched for through no day at all.
            recentExperienceThrough: recent.known ? known(recent.value ? on : '0001-01-01') : recent,
          }
        : null,
    inspectionAuthorization: null,
    repairStation:
      certificate === 'repair-station'
        ? {
            number,
            // Rated and authorized are one question of the paper: either of them unanswered answers neither.
            ratings: ['airframe'],
            authorisedToSign: asked(
              paper.authorised,
              `whether the repair station was rated for this aircraft and ${name} could sign for it`,
            ),
          }
        : null,
    namedForPreventiveMaintenance: false,
    leftOn: null,
  };
}

export interface JudgedOnPaper {
  /** As the deferral rules want the person: without any certificate where the paper does not carry the determination. */
  readonly determiner: DeterminerFacts;
  /** 91.213(d)(4): the paper's person could determine, by what the paper says. */
  readonly allowed: boolean;
  /** What is not known, where that alone is against it; else null. */
  readonly missing: string | null;
  readonly lines: readonly Line[];
  /** The person is of the circle that may place a placard here. */
  readonly mayPlacard: boolean;
}

/**
 * Whether the determination on paper counts, by the very rule that is asked when one is made here (91.213(d)(4)).
 * @param on the day of the determination; null: the paper does not say
 */
export function judgeDeterminerOnPaper(
  paper: DeterminerOnPaper,
  rating: string,
  on: CalendarDate | null,
): JudgedOnPaper {
  const nobody: DeterminerFacts = {
    name: paper.name,
    pilotGrade: null,
    pilotRatedForAircraft: false,
    mechanicRatings: [],
    repairStation: false,
  };
  const refused = (missing: string | null, lines: readonly Line[] = []): JudgedOnPaper => ({
    determiner: nobody,
    allowed: false,
    missing,
    lines,
    mayPlacard: false,
  });
  if (paper.name === '') return refused('who determined that it is no hazard');
  if (on === null) return refused(`when ${paper.name} determined that it is no hazard`);
  if (paper.certificate === 'not-known') return refused(`which certificate ${paper.name} held`);
  if (paper.number === '') return refused(`the certificate number of ${paper.name}`);
  if (paper.certificate === 'pilot' && paper.grade === null) {
    return refused(`the grade of pilot certificate of ${paper.name}`);
  }
  if (paper.certificate === 'pilot' && paper.rated === 'not-known') {
    return refused(`whether ${paper.name} was rated for this aircraft`);
  }
  const signer = signerOnPaper(paper, rating, on);
  const ruling = mayDetermineNoHazard(signer, rating, on);
  if (ruling.allowed) {
    const mayPlacard = mayPlacePlacard(signer, on).allowed;
    return {
      determiner: toDeterminer(signer, rating),
      allowed: true,
      missing: null,
      lines: ruling.lines,
      mayPlacard,
    };
  }
  const missing = ruling.lines.find((line) => line.missing !== undefined)?.missing ?? null;
  return refused(missing, ruling.lines);
}

/** What somebody has decided, from the strictest. */
const STRICTNESS: readonly Severity[] = ['grounding', 'limiting', 'watch', 'note'];

/**
 * The severity that counts of a write-up carried over: the stricter of what the paper says and of what a finding reported here with
 * the same words would have at once. Null: undecided, and undecided grounds as well (91.7(a)). A mechanic's judgement of a kind
 * that needs one is not carried over; it is made here, with a signature.
 */
export function severityCarriedOver(
  onPaper: Severity | null,
  reportedHere: Severity | null,
): Severity | null {
  if (onPaper === 'grounding' || reportedHere === 'grounding') return 'grounding';
  if (onPaper === null || reportedHere === null) return null;
  return STRICTNESS.indexOf(onPaper) <= STRICTNESS.indexOf(reportedHere) ? onPaper : reportedHere;
}

/** Kinds that 91.213 speaks of: a deferral is of equipment that does not work, and of nothing else. */
export const canBeDeferredKind = (kind: FindingKind): boolean => kind === 'inoperative';
