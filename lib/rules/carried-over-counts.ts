/**
 * Whether a deferral taken over from a paper counts. One that does not may be deferred anew; one that counts is never put aside.
 * Only what nobody can settle afterwards is asked: a placard is still placed, and a record still signed, on the old one. A repair
 * interval that is over, or the 90 days of a removed transmitter, is not asked either: both run from the write-up and from the
 * removal, so that no new deferral gains time.
 */
import type { AircraftFacts, DiscrepancyFacts } from './aircraft';
import { basisFits } from './judge-discrepancy';
import { melItemFor, melStanding } from './part-91/91-213-a-with-mel';
import { aboutDiscrepancy, inoperativeItem } from './part-91/91-213-item';
import { linesOfSteps, stepsWithMel, stepsWithoutMel, type StepId } from './part-91/91-213-steps';
import { dispositionAtInspections } from './part-91/91-405-maintenance-required';
import type { Line } from './verdict';

/** Steps that are taken on a deferral that stands. */
const SETTLED_LATER: readonly StepId[] = ['placard', 'part-43-record'];

/**
 * Why the deferral of `d` does not count: 91.213(d)(4) (who determined, when, with what else), (a)(5) (procedures of the list),
 * 91.207(f)(10)(i) (record of a removed transmitter), a basis that the aircraft does not have (any more), and 91.405(c) (an
 * inspection passed over it). Empty: it counts, or nothing of this kind is against it. Empty without a deferral too.
 */
export function whyCarriedOverDoesNotCount(aircraft: AircraftFacts, d: DiscrepancyFacts): readonly Line[] {
  const { deferral } = d;
  if (deferral === null) return [];
  const found = inoperativeItem(aircraft, d);
  if (!found.ok) return [];
  const about = aboutDiscrepancy(d);
  const standing = melStanding(aircraft, about);
  if (standing.path === 'closed') return [];
  const { name } = found.inoperative.item;
  const listed = standing.path === 'mel' ? melItemFor(standing.mel, found.inoperative) : null;
  const steps =
    standing.path === 'paragraph-d'
      ? stepsWithoutMel(name, deferral)
      : listed?.ok
        ? stepsWithMel(name, listed.entry, deferral)
        : [];
  return [
    ...basisFits(standing, deferral, about),
    ...linesOfSteps(
      steps.filter(({ id }) => !SETTLED_LATER.includes(id)),
      about,
    ),
    ...dispositionAtInspections(d, deferral).filter(({ effect }) => effect === 'bars'),
  ];
}
