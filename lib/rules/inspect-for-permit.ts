/**
 * 14 CFR 21.199(b): the inspections a special flight permit asks for before its flight. The paragraph does not say who
 * makes them. From memory, permits ask for a certificated mechanic or repair station to find and record that the
 * aircraft is safe for the intended flight. Strict reading of our own:
 *
 * - a mechanic with the rating for the part (65.85(a), 65.87(a)) and recent experience (65.83) where everything that is
 *   covered lies in one part; both ratings where it does not, or where the part is not known (an inspection, a directive);
 * - or a repair station with any rating, by a person it has authorised to sign (43.7(c));
 * - never a pilot.
 */
import type { CalendarDate, Fact } from './facts';
import type { PartOfAircraft } from './jasc';
import { authorisedByStation } from './part-43/43-7-who-may-approve';
import { rated65_85and65_87, ratingForPart, recent65_83 } from './part-65/65-81-to-87-mechanic';
import type { SignerFacts } from './people';
import { rulingOf, type Ruling } from './ruling';
import type { Line } from './verdict';
import type { DeterminingCertificate } from './who-may-determine';
import { expiredBars, leftBars } from './who-may-sign';

export interface PermitInspectionRuling extends Ruling {
  /** The certificate it is signed under; null when refused. */
  readonly under: Exclude<DeterminingCertificate, 'pilot'> | null;
}

const strictReading =
  'No paragraph says who inspects for a permit; we ask for the rating of the part, or both ratings.';

/** @param parts the part of every thing the permit covers, unknown where it has none of its own */
export function mayInspectForPermit(
  signer: SignerFacts,
  parts: readonly Fact<PartOfAircraft>[],
  on: CalendarDate,
): PermitInspectionRuling {
  const left = leftBars(signer, on);
  if (left.length > 0) return { ...rulingOf(left), under: null };
  const { mechanic, repairStation } = signer;
  const asMechanic = mechanic
    ? rulingOf([
        ...partsToBeRatedFor(parts).map((part): Line => ({
          ...rated65_85and65_87(mechanic, part),
          strictReading,
        })),
        recent65_83(mechanic, on),
      ])
    : null;
  if (asMechanic?.allowed) return { ...asMechanic, under: 'mechanic' };
  const asStation = repairStation
    ? rulingOf([
        repairStation.ratings.length > 0
          ? { effect: 'supports', cite: '14cfr43.7(c)', because: 'A rated repair station may inspect it.' }
          : {
              effect: 'bars',
              cite: '14cfr43.7(c)',
              because: 'The repair station certificate carries no rating.',
            },
        authorisedByStation(repairStation),
        ...expiredBars('repair station certificate', repairStation, on, '14cfr43.7(c)'),
      ])
    : null;
  if (asStation?.allowed) return { ...asStation, under: 'repair-station' };
  const against = [...(asMechanic?.lines ?? []), ...(asStation?.lines ?? [])].filter(
    ({ effect }) => effect === 'bars',
  );
  return { ...rulingOf(against.length > 0 ? against : [NOBODY]), under: null };
}

const NOBODY: Line = {
  effect: 'bars',
  cite: '14cfr21.199(b)',
  because: 'A mechanic or a repair station inspects for a permit; no such certificate is on file.',
  strictReading,
};

/** One part where everything lies under one rating; else one of each rating. */
function partsToBeRatedFor(parts: readonly Fact<PartOfAircraft>[]): readonly PartOfAircraft[] {
  const ratings = new Set(parts.map((part) => (part.known ? ratingForPart(part.value) : null)));
  const [first] = parts;
  return ratings.size === 1 && first?.known ? [first.value] : ['airframe', 'powerplant'];
}
