import type { RequirementKind } from '../rules/aircraft';
import type { PartOfAircraft } from '../rules/jasc';
import type { CalendarDate } from '../rules/facts';
import type { SignerFacts } from '../rules/people';
import { rulingOf } from '../rules/ruling';
import {
  mayApproveReturnToService,
  rulingsByCapacity,
  signersFor,
  whoCanSentence,
  type CapacityRuling,
  type SigningRuling,
  type WorkKind,
  type WorkToSign,
} from '../rules/who-may-sign';

/** Work that answers a requirement of some kind, where the law says what it is. */
export interface FixedWork {
  readonly workKind: WorkKind;
  readonly part: PartOfAircraft;
  readonly jasc: string;
  readonly swapOnly: boolean;
}

/**
 * How something due is answered: `fixed` by work whose kind follows from the paragraph, `chosen` by work on whatever system
 * it names, `inspection` by an inspection of 43.11, `check` by the VOR check of 91.171.
 */
export type WayToAnswer =
  | { readonly by: 'fixed'; readonly work: FixedWork }
  | { readonly by: 'chosen'; readonly preventive: boolean }
  | { readonly by: 'inspection' }
  | { readonly by: 'check' };

const fixed = (workKind: WorkKind, part: PartOfAircraft, jasc: string): WayToAnswer => ({
  by: 'fixed',
  work: { workKind, part, jasc, swapOnly: false },
});

/**
 * 91.411(b): the whole test of altimeter and static system, so never a mechanic's static test alone. 91.413(c). 91.207(c)
 * and (d): work on the airframe. Preventive maintenance only where the maker asks for it: what a directive or a limit
 * requires is read as more than the list of Appendix A(c) means (strict reading).
 */
export const WAYS: Readonly<Record<RequirementKind, WayToAnswer>> = {
  annual: { by: 'inspection' },
  'hundred-hour': { by: 'inspection' },
  'static-and-altimeter': fixed('altimeter-transponder-test', 'instrument', '3416'),
  transponder: fixed('altimeter-transponder-test', 'avionics', '3452'),
  'elt-inspection': fixed('minor', 'airframe', '2562'),
  'elt-battery': fixed('minor', 'airframe', '2562'),
  'vor-check': { by: 'check' },
  directive: { by: 'chosen', preventive: false },
  'life-limit': { by: 'chosen', preventive: false },
  'maker-interval': { by: 'chosen', preventive: true },
};

/**
 * Whether work on it may be entered as preventive maintenance: only what a maker recommends and nobody is bound to. Whoever
 * starts the work names its item, and the item opens the signature to a pilot (43.7(f)); what binds is not left to that.
 */
export const mayBePreventive = (way: WayToAnswer, binding: boolean): boolean =>
  way.by === 'chosen' && way.preventive && !binding;

/** What the record does not say of a directive and a life limit: which part it is about. */
export const asksBothRatings = (kind: string | null): boolean =>
  kind === 'directive' || kind === 'life-limit';

/** Said wherever both ratings are asked. */
export const BOTH_RATINGS_WHY =
  'The record does not say which part of the aircraft this is about, so a mechanic signs it with both ratings, airframe and powerplant; or a rated repair station does.';

/**
 * Who may sign work that answers something due. The part stands in the entry because somebody chose it when the work was
 * started; for a directive or a life limit that choice does not decide. A mechanic's signature must hold for the airframe
 * and for the powerplant (65.85(a), 65.87(a)) beside the part that was named; a repair station's for the part it names,
 * since it answers for its own ratings (43.7(c)). Everything else is signed as any work is.
 * @param requirementKind null for work that answers nothing due
 * @param on the day of signing, at the base
 */
export function rulingsForRequirementWork(
  signer: SignerFacts,
  work: WorkToSign,
  requirementKind: string | null,
  on: CalendarDate,
): SigningRuling {
  const plain = mayApproveReturnToService(signer, work, on);
  if (!asksBothRatings(requirementKind) || !plain.allowed) return plain;
  const halves = (['airframe', 'powerplant'] as const).map((part) => ({ ...work, part }));
  const rulings = rulingsByCapacity(signer, work, on)
    .filter(({ allowed }) => allowed)
    .map((ruling): CapacityRuling => {
      if (ruling.capacity === 'repair-station') return ruling;
      const against = halves.flatMap((half) => barsOf(ruling, rulingsByCapacity(signer, half, on)));
      return against.length === 0 ? ruling : { ...ruling, ...rulingOf(against) };
    });
  const good = rulings.find(({ allowed }) => allowed);
  if (good) {
    const { capacity, certificate } = good;
    return { allowed: true, lines: good.lines, under: { capacity, certificate } };
  }
  return { ...rulingOf(rulings.flatMap(({ lines }) => lines)), under: null };
}

/** What bars the same certificate from one half of the aircraft, with why the half is asked at all. */
const barsOf = ({ capacity }: CapacityRuling, half: readonly CapacityRuling[]) =>
  half
    .filter((ruling) => ruling.capacity === capacity)
    .flatMap(({ lines }) => lines)
    .filter(({ effect }) => effect === 'bars')
    .map((line) => ({ ...line, strictReading: BOTH_RATINGS_WHY }));

/** One sentence for the refusal screen, as `whoCanSentence`, with both ratings where both are asked. */
export const whoCanSignRequirementWork = (work: WorkToSign, requirementKind: string | null): string =>
  asksBothRatings(requirementKind)
    ? `Who can: ${signersFor(work)
        .map((who) => who.replace(/^a mechanic with (airframe|powerplant) rating$/, BOTH_RATINGS))
        .join('; ')}.`
    : whoCanSentence(work);

const BOTH_RATINGS = 'a mechanic with airframe and powerplant ratings';
