import type { DeterminerFacts } from './aircraft';
import type { CalendarDate } from './facts';
import type { PartOfAircraft } from './jasc';
import type { CiteId } from './law';
import { authorisedByStation, isPrivateOrHigher, repairStation43_7c } from './part-43/43-7-who-may-approve';
import { rated65_85and65_87, recent65_83 } from './part-65/65-81-to-87-mechanic';
import type { SignerFacts } from './people';
import { rulingOf, type Ruling } from './ruling';
import type { Line } from './verdict';
import { expiredBars, leftBars } from './who-may-sign';

/**
 * Acts short of approving work: who may determine no hazard (91.213(d)(4)), find something within limits, fly the check
 * flight of 91.407(b), record servicing, place a placard. A category and class rating is text such as
 * `airplane-single-engine-land`, as in `SignerFacts.pilot.ratings`.
 */

/** The kind of certificate such an act is done under, and the record names. */
export type DeterminingCertificate = 'mechanic' | 'repair-station' | 'pilot';

export interface DeterminingRuling extends Ruling {
  /** Null when the ruling refuses. */
  readonly under: DeterminingCertificate | null;
}

/** The first certificate whose lines allow; if none, every reason against; if no certificate fits, `nobody`. */
function firstGood(
  certificates: readonly (readonly [DeterminingCertificate, readonly Line[]])[],
  nobody: Line,
): DeterminingRuling {
  const rulings = certificates
    .filter(([, lines]) => lines.length > 0)
    .map(([under, lines]) => ({ under, ...rulingOf(lines) }));
  const good = rulings.find((ruling) => ruling.allowed);
  if (good) return good;
  const against = rulings.flatMap((ruling) => ruling.lines.filter((line) => line.effect === 'bars'));
  return refused(against.length > 0 ? against : [nobody]);
}

const refused = (lines: readonly Line[]): DeterminingRuling => ({ ...rulingOf(lines), under: null });

const bars = (cite: CiteId, because: string): Line => ({ effect: 'bars', cite, because });
const supports = (cite: CiteId, because: string): Line => ({ effect: 'supports', cite, because });

function ratedPilot(signer: SignerFacts, rating: string, cite: CiteId): Line {
  return signer.pilot?.ratings.includes(rating)
    ? supports(cite, `Rated for ${rating.replaceAll('-', ' ')}.`)
    : bars(cite, `This needs a pilot rated for ${rating.replaceAll('-', ' ')}.`);
}

/**
 * 91.213(d)(4): a pilot certificated and appropriately rated under part 61 (a student certificate is no such thing),
 * or a person certificated and rated to maintain the aircraft (a mechanic with any rating and recent experience, or
 * somebody a repair station has authorised).
 */
export function mayDetermineNoHazard(
  signer: SignerFacts,
  aircraftCategoryClassRating: string,
  on: CalendarDate,
): DeterminingRuling {
  const cite = '14cfr91.213(d)(4)';
  const left = leftBars(signer, on);
  if (left.length > 0) return refused(left);
  const { pilot, mechanic, repairStation } = signer;
  const asMechanic: readonly Line[] = mechanic
    ? [
        mechanic.ratings.length > 0
          ? supports(cite, `A mechanic rated ${mechanic.ratings.join(' and ')} may decide this.`)
          : bars(cite, 'The mechanic certificate carries no rating.'),
        recent65_83(mechanic, on),
      ]
    : [];
  const asStation: readonly Line[] = repairStation
    ? [
        repairStation.ratings.length > 0
          ? supports(cite, 'A rated repair station may decide this.')
          : bars(cite, 'The repair station certificate carries no rating.'),
        authorisedByStation(repairStation),
        ...expiredBars('repair station certificate', repairStation, on, cite),
      ]
    : [];
  const asPilot: readonly Line[] = pilot
    ? pilot.grade === 'student'
      ? [bars(cite, 'A student pilot may not decide this; a rated pilot or a mechanic must.')]
      : [
          ratedPilot(signer, aircraftCategoryClassRating, cite),
          ...expiredBars('pilot certificate', pilot, on, cite),
        ]
    : [];
  return firstGood(
    [
      ['mechanic', asMechanic],
      ['repair-station', asStation],
      ['pilot', asPilot],
    ],
    bars(cite, 'Only a rated pilot, or somebody certificated to maintain the aircraft, may decide this.'),
  );
}

/**
 * Who may find a measured condition within limits, so that nothing need be repaired: a mechanic with the matching
 * rating and recent experience (an inspection authorization stands on both ratings), or a repair station rated for the
 * part. Never a pilot. An instrument's own condition is a repair station's matter.
 */
export function mayFindWithinLimits(
  signer: SignerFacts,
  part: PartOfAircraft,
  on: CalendarDate,
): DeterminingRuling {
  const left = leftBars(signer, on);
  if (left.length > 0) return refused(left);
  const { mechanic, repairStation } = signer;
  const strictReading =
    'No paragraph says who may find a condition within limits; we ask for who may approve its repair.';
  const asMechanic: readonly Line[] = mechanic
    ? part === 'instrument'
      ? [
          {
            ...bars('14cfr65.81(a)', 'The inside of an instrument is outside every mechanic certificate.'),
            strictReading,
          },
        ]
      : [{ ...rated65_85and65_87(mechanic, part), strictReading }, recent65_83(mechanic, on)]
    : [];
  const asStation: readonly Line[] = repairStation
    ? [
        ...repairStation43_7c(repairStation, {
          part,
          kind: 'minor',
          preventiveItem: null,
          swapOnly: false,
          aircraftCategory: 'airplane',
          performedBySigner: true,
        }),
        ...expiredBars('repair station certificate', repairStation, on, '14cfr43.7(c)'),
      ]
    : [];
  return firstGood(
    [
      ['mechanic', asMechanic],
      ['repair-station', asStation],
    ],
    {
      ...bars(
        '14cfr43.7',
        'A pilot may report a measurement; whether it is within limits a mechanic must find.',
      ),
      strictReading,
    },
  );
}

/** 91.407(b): the check flight, by a pilot with a private certificate or higher, appropriately rated. */
export function mayFlyCheckFlight(signer: SignerFacts, rating: string, on: CalendarDate): Ruling {
  const cite = '14cfr91.407(b)';
  const left = leftBars(signer, on);
  if (left.length > 0) return rulingOf(left);
  if (!signer.pilot)
    return rulingOf([bars(cite, 'Only a pilot can fly the check flight; no pilot certificate is on file.')]);
  return rulingOf([
    isPrivateOrHigher(signer.pilot.grade)
      ? supports(cite, 'Private pilot or higher.')
      : bars(cite, `A private pilot certificate or higher is needed; this one is ${signer.pilot.grade}.`),
    ratedPilot(signer, rating, cite),
    ...expiredBars('pilot certificate', signer.pilot, on, cite),
  ]);
}

/** Shared by servicing and placards: acts the law gives to nobody in particular. */
function trustedHand(signer: SignerFacts, on: CalendarDate, cite: CiteId, act: string): DeterminingRuling {
  const left = leftBars(signer, on);
  if (left.length > 0) return refused(left);
  const strictReading = `No paragraph says who may ${act}; we ask for a private pilot or higher, a mechanic or a repair station.`;
  const { pilot, mechanic, repairStation } = signer;
  return firstGood(
    [
      ['mechanic', mechanic ? [{ ...supports(cite, `A mechanic may ${act}.`), strictReading }] : []],
      [
        'repair-station',
        repairStation
          ? [
              { ...supports(cite, `A repair station may ${act}.`), strictReading },
              authorisedByStation(repairStation),
              ...expiredBars('repair station certificate', repairStation, on, cite),
            ]
          : [],
      ],
      [
        'pilot',
        pilot
          ? [
              isPrivateOrHigher(pilot.grade)
                ? { ...supports(cite, `A private pilot or higher may ${act}.`), strictReading }
                : {
                    ...bars(
                      cite,
                      `A ${pilot.grade} pilot may not ${act} here; ask an instructor or a mechanic.`,
                    ),
                    strictReading,
                  },
              ...expiredBars('pilot certificate', pilot, on, cite),
            ]
          : [],
      ],
    ],
    { ...bars(cite, `A certificated person must ${act}.`), strictReading },
  );
}

/**
 * Recording servicing that is no maintenance (oil or tyre air added, water drained until clean). The law asks for
 * no certificate; common practice, no source. Kept to private pilots or higher, mechanics and repair stations.
 */
export const mayRecordServicing = (signer: SignerFacts, on: CalendarDate): DeterminingRuling =>
  trustedHand(signer, on, 'trade-practice', 'record servicing');

/** 91.213(d)(3) wants a placard and names nobody to place it. Same circle as servicing. */
export const mayPlacePlacard = (signer: SignerFacts, on: CalendarDate): DeterminingRuling =>
  trustedHand(signer, on, '14cfr91.213(d)(3)(ii)', 'place a placard');

/**
 * A person as the deferral rules want them (91.213(d)(4)). Whether the certificates were in effect on the day is asked of
 * {@link mayDetermineNoHazard} when the determination is made, and kept; it is not asked again later.
 */
export function toDeterminer(signer: SignerFacts, rating: string): DeterminerFacts {
  const station = signer.repairStation;
  return {
    name: signer.name,
    pilotGrade: signer.pilot?.grade ?? null,
    pilotRatedForAircraft: signer.pilot?.ratings.includes(rating) ?? false,
    mechanicRatings: signer.mechanic?.ratings ?? [],
    repairStation: station !== null && station.authorisedToSign.known && station.authorisedToSign.value,
  };
}
