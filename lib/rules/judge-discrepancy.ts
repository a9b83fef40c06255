/**
 * One open discrepancy, judged for one use of the aircraft.
 *
 * - 14 CFR 91.7(a): no operation unless airworthy; what nobody has judged yet counts as grounding.
 * - 91.213(a): no takeoff with an inoperative item that is not deferred, or that may not be out for this flight.
 * - 91.213(d)(3), (d)(4), (a)(4), (a)(5): a deferral counts only once its steps are taken.
 * - 91.405(a): other findings are repaired, or found within a sourced limit, before flight.
 * - 91.405(c): a deferral has come up at every required inspection since.
 * - 91.213(e), 21.197: a special flight permit may turn what bars into its own limits: for the whole answer at once, in
 *   `special-flight-permit.ts`, not here.
 *
 * A deferral in force is never a plain go: the pilot in command has to know (91.7(b)).
 */
import type { AircraftFacts, DeferralFacts, DiscrepancyFacts } from './aircraft';
import type { CiteId } from './law';
import { kindsInWords } from './kinds-in-words';
import { OPERATION_KINDS, type OperationKind, type UseOfAircraft } from './operations';
import { melItemFor, melStanding, repairInterval, type MelStanding } from './part-91/91-213-a-with-mel';
import { isInoperativeEquipment, judgeInoperative, judgeItem } from './part-91/91-213-inoperative-equipment';
import {
  aboutDiscrepancy,
  inoperativeItem,
  otherDeferrals,
  type InoperativeItem,
} from './part-91/91-213-item';
import { linesOfSteps, recordOwed, stepsWithMel, stepsWithoutMel } from './part-91/91-213-steps';
import { dispositionAtInspections, repairBetweenInspections } from './part-91/91-405-maintenance-required';
import type { Line, Subject } from './verdict';

/** The lines of one open discrepancy for one use. Never empty: what nothing speaks for is barred. */
export function judgeDiscrepancy(
  aircraft: AircraftFacts,
  d: DiscrepancyFacts,
  use: UseOfAircraft,
): readonly Line[] {
  return [...judgeSeverity(d), ...judgeKind(aircraft, d, use)];
}

/** 91.7(a): undecided grounds, and grounding grounds whatever else may be allowed. */
function judgeSeverity(d: DiscrepancyFacts): readonly Line[] {
  const about = aboutDiscrepancy(d);
  if (!d.severity.known) {
    const because = `${d.title}: nobody has judged it yet, and undecided is grounding.`;
    return [{ effect: 'bars', cite: '14cfr91.7(a)', because, missing: d.severity.missing, about }];
  }
  if (d.severity.value !== 'grounding') return [];
  return [{ effect: 'bars', cite: '14cfr91.7(a)', because: `${d.title}: judged grounding.`, about }];
}

function judgeKind(aircraft: AircraftFacts, d: DiscrepancyFacts, use: UseOfAircraft): readonly Line[] {
  switch (d.kind) {
    case 'inoperative':
      return judgeInoperativeItem(aircraft, d, use);
    case 'damage':
    case 'wear':
    case 'leak':
    case 'contamination':
    case 'fastener':
    case 'document':
      return [...limitingAsJudged(d), ...repairBetweenInspections(d)];
    case 'servicing':
      return [
        {
          effect: 'bars',
          cite: '14cfr91.7(a)',
          because: `${d.title}: servicing is owed before flight.`,
          about: aboutDiscrepancy(d),
        },
      ];
    case 'cosmetic':
      return judgeCosmetic(d);
  }
}

/** Judged limiting: it may fly, and the pilot in command has to know. */
function limitingAsJudged(d: DiscrepancyFacts): readonly Line[] {
  if (!d.severity.known || d.severity.value !== 'limiting') return [];
  const because = `${d.title}: judged limiting. The pilot in command reads it before flight.`;
  return [{ effect: 'limits', cite: '14cfr91.7(b)', because, about: aboutDiscrepancy(d) }];
}

/** Cosmetic and judged so: a note. Undecided or grounding is barred by its severity already. */
function judgeCosmetic(d: DiscrepancyFacts): readonly Line[] {
  if (!d.severity.known || d.severity.value === 'grounding') return [];
  const because = `${d.title}: cosmetic, does not affect airworthiness.`;
  return [
    ...limitingAsJudged(d),
    { effect: 'notes', cite: '14cfr91.7(a)', because, about: aboutDiscrepancy(d) },
  ];
}

/** 91.213 for an inoperative item, deferred or not. */
function judgeInoperativeItem(
  aircraft: AircraftFacts,
  d: DiscrepancyFacts,
  use: UseOfAircraft,
): readonly Line[] {
  const equipment = isInoperativeEquipment(d);
  if (!equipment.is) return equipment.lines;
  const found = inoperativeItem(aircraft, d);
  if (!found.ok) return found.lines;
  const verdict = judgeInoperative(aircraft, d, use);
  return d.deferral === null
    ? notDeferred(d, verdict)
    : deferred(found.inoperative, d.deferral, use, verdict);
}

/** (a): not deferred is no takeoff; says whether a deferral would help for this flight. */
function notDeferred(d: DiscrepancyFacts, verdict: readonly Line[]): readonly Line[] {
  const reasons = verdict.filter((line) => line.effect === 'bars');
  const hope =
    reasons.length === 0
      ? 'It could be deferred for this flight.'
      : reasons.every((line) => line.missing !== undefined)
        ? 'Whether it could be deferred for this flight is not known.'
        : 'It could not be deferred for this flight.';
  const because = `${d.title}: inoperative and not deferred yet. ${hope}`;
  return [{ effect: 'bars', cite: '14cfr91.213(a)', because, about: aboutDiscrepancy(d) }, ...reasons];
}

/** A live deferral: the tests for this use, the steps, the time limits, and at best the limits it puts on the flight. */
function deferred(
  inoperative: InoperativeItem,
  deferral: DeferralFacts,
  use: UseOfAircraft,
  verdict: readonly Line[],
): readonly Line[] {
  const { aircraft, discrepancy } = inoperative;
  const about: Subject = { ...aboutDiscrepancy(discrepancy), kind: 'deferral', id: deferral.id };
  const standing = melStanding(aircraft, about);
  const lines = [
    ...verdict,
    ...basisFits(standing, deferral, about),
    ...stepsAndInterval(standing, inoperative, deferral, use, about),
    ...recordUnderPermit(inoperative, deferral, use, about),
    ...dispositionAtInspections(discrepancy, deferral),
    ...together(inoperative, about),
  ];
  const barred = lines.some((line) => line.effect === 'bars');
  return barred ? lines : [...lines, inWords(inoperative, deferral, use, about)];
}

/** The deferral stands on the paragraph that is open now: a list that came or went since closes the old way. */
export function basisFits(standing: MelStanding, deferral: DeferralFacts, about: Subject): readonly Line[] {
  if (standing.path === 'mel' && deferral.basis !== 'mel') {
    const because = 'Deferred under paragraph (d), but the minimum equipment list is in force and closes it.';
    return [{ effect: 'bars', cite: '14cfr91.213(a)(5)', because, about }];
  }
  if (standing.path === 'paragraph-d' && deferral.basis === 'mel') {
    const because = 'Deferred under a minimum equipment list that this aircraft does not have.';
    return [{ effect: 'bars', cite: '14cfr91.213(a)(1)', because, about }];
  }
  return [];
}

/** (d)(3), (d)(4) or (a)(4), (a)(5) with the repair interval. A closed way is barred by its verdict already. */
function stepsAndInterval(
  standing: MelStanding,
  inoperative: InoperativeItem,
  deferral: DeferralFacts,
  use: UseOfAircraft,
  about: Subject,
): readonly Line[] {
  const { name } = inoperative.item;
  if (standing.path === 'closed') return [];
  if (standing.path === 'paragraph-d') return linesOfSteps(stepsWithoutMel(name, deferral), about);
  const found = melItemFor(standing.mel, inoperative);
  if (!found.ok) return [];
  return [
    ...linesOfSteps(stepsWithMel(name, found.entry, deferral), about),
    ...repairInterval(standing.mel, found.entry, deferral, use, about),
  ];
}

/**
 * A special flight permit stands in for 91.213 (91.213(e)), with everything it says about deferrals, and not for the record of work
 * that was done to the aircraft (91.407(a)(2), 43.9): under one that record is asked for by itself.
 */
const recordUnderPermit = (
  { item }: InoperativeItem,
  deferral: DeferralFacts,
  use: UseOfAircraft,
  about: Subject,
): readonly Line[] =>
  use.specialFlightPermit === null ? [] : linesOfSteps(recordOwed(item.name, deferral), about);

/** (d)(4) for the combination: the last to determine has all the other placards before them; names them. */
function together(inoperative: InoperativeItem, about: Subject): readonly Line[] {
  const others = otherDeferrals(inoperative);
  if (others.length === 0) return [];
  const names = others.map((other) => `${other.number} ${other.title}`).join('; ');
  const because = `Deferred together with: ${names}. Whoever determines that it is no hazard counts them all.`;
  return [{ effect: 'notes', cite: '14cfr91.213(d)(4)', because, about }];
}

/** The deferral as the pilot hears it: "Deferred: Landing light, placarded. Not at night for hire." */
function inWords(
  inoperative: InoperativeItem,
  deferral: DeferralFacts,
  use: UseOfAircraft,
  about: Subject,
): Line {
  const barred = asEachKind(use)
    .filter((other) => judgeItem(inoperative, other.use).some((line) => line.effect === 'bars'))
    .map(({ kind }) => kind);
  const phrases = kindsInWords(barred).map((phrase) => `Not ${phrase}.`);
  const state = deferral.method === 'removed' ? 'removed, control placarded' : 'deactivated, placarded';
  const cite: CiteId = deferral.basis === 'mel' ? '14cfr91.213(a)(5)' : '14cfr91.213(d)';
  const because = [`Deferred: ${inoperative.item.name}, ${state}.`, ...phrases].join(' ');
  return { effect: 'limits', cite, because, about };
}

type OfKind = { readonly kind: OperationKind; readonly use: UseOfAircraft };

/** Every deferral asks about the same eight. */
const EACH_KIND = new WeakMap<UseOfAircraft, readonly OfKind[]>();

function asEachKind(use: UseOfAircraft): readonly OfKind[] {
  const all = EACH_KIND.get(use) ?? OPERATION_KINDS.map((kind) => ({ kind, use: asKind(use, kind) }));
  EACH_KIND.set(use, all);
  return all;
}

/** The same flight as another kind of operation, for saying which kinds the deferral closes. */
function asKind(use: UseOfAircraft, kind: OperationKind): UseOfAircraft {
  const night = kind.light === 'night';
  return {
    ...use,
    ...kind,
    purpose: kind.hire === use.hire ? use.purpose : kind.hire ? 'instruction-for-hire' : 'private',
    betweenSunsetAndSunrise: night || (use.light === 'day' && use.betweenSunsetAndSunrise),
    sunsetAt: night ? null : use.sunsetAt,
  };
}
