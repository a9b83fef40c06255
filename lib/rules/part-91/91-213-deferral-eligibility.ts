/**
 * 14 CFR 91.213, as a report for the person who decides about a deferral: which way the section leaves open, what it
 * allows for each kind of operation, which steps are owed, and when the deferral ends. It decides nothing that
 * `judgeInoperative` does not decide; each row of the table is its verdict for one reference use.
 *
 * What ends a deferral: 91.405(c) at the next required inspection; a repair category of the list; 91.207(f)(10)(ii)
 * 90 days after the emergency locator transmitter was first removed.
 */
import { standingDeadline } from '../advisory/mmel-extension';
import { repairCategoryCite } from '../advisory/mmel-repair-categories';
import type { AircraftFacts, DiscrepancyFacts, MelFacts, MelItemFacts } from '../aircraft';
import type { CalendarDate, Instant } from '../facts';
import { formatTenths } from '../hours';
import { dayInWords } from '../in-words';
import type { CiteId } from '../law';
import { lastDayWithinDays, localDate } from '../months';
import { OPERATION_KINDS, type OperationKind } from '../operations';
import { referenceUse, type ReferenceBase } from '../use-of-flight';
import type { Line } from '../verdict';
import { melItemFor, melStanding } from './91-213-a-with-mel';
import { kindOfAircraft } from './91-213-d-without-mel';
import { isInoperativeEquipment, judgeInoperative } from './91-213-inoperative-equipment';
import { aboutDiscrepancy, inoperativeItem, type InoperativeItem } from './91-213-item';
import { countedTogether, judgementsOf, type CountedTogether, type Judgement } from './91-213-judgements';
import { listEntryOf, type ListEntry } from './91-213-list-entry';
import { treeOf, type Question } from './91-213-questions';
import { stepsWithMel, stepsWithoutMel, type StepOwed } from './91-213-steps';
import { nextRequiredInspection } from './91-405-maintenance-required';

export type DeferralPath = 'not-equipment' | 'mel' | 'paragraph-d' | 'closed';

export interface EligibilityRow {
  readonly kind: OperationKind;
  readonly allowed: boolean;
  readonly lines: readonly Line[];
}

/** What would end the deferral. `on` is the last day, null when no date is set or it is not known. */
export interface DeferralEnd {
  readonly cite: CiteId;
  readonly text: string;
  readonly on: CalendarDate | null;
}

export interface EligibilityReport {
  readonly path: DeferralPath;
  /** False when no kind of operation is allowed: the item is then repaired, not deferred. */
  readonly deferrable: boolean;
  /** The questions before the table: is it equipment, is there a list, is (d) open to the aircraft. */
  readonly gate: readonly Line[];
  /** All eight kinds of operation, in the order of `OPERATION_KINDS`. */
  readonly table: readonly EligibilityRow[];
  /** Empty when nothing is deferrable. */
  readonly stepsOwed: readonly StepOwed[];
  readonly ends: readonly DeferralEnd[];
  /** The section as read, question by question. */
  readonly tree: readonly Question[];
  /** What a person has to answer, in the section's order. Empty when nothing is deferrable, or it is deferred already. */
  readonly judgements: readonly Judgement[];
  /** Everything else that is out or limited on the aircraft: the hazard is asked of all together. */
  readonly together: readonly CountedTogether[];
  /** On the way of the list: its entry for the item. */
  readonly listEntry: ListEntry | null;
}

/**
 * The report for one discrepancy of an aircraft at `base`.
 * @param on date at the base for which the table is drawn
 * @param now instant at which somebody asks
 */
export function deferralEligibility(
  aircraft: AircraftFacts,
  d: DiscrepancyFacts,
  base: ReferenceBase,
  on: CalendarDate,
  now: Instant,
): EligibilityReport {
  const { path, gate, inoperative, entry, mel } = gateOf(aircraft, d);
  const table = OPERATION_KINDS.map((kind) =>
    rowOf(kind, judgeInoperative(aircraft, d, referenceUse(kind, base, on, now))),
  );
  const deferrable = table.some((row) => row.allowed);
  const name = inoperative?.item.name ?? d.title;
  const steps = entry === null ? stepsWithoutMel(name, d.deferral) : stepsWithMel(name, entry, d.deferral);
  const together = countedTogether(aircraft, d);
  const procedures = steps.some((step) => step.id === 'mel-procedures');
  return {
    path,
    deferrable,
    gate,
    table,
    stepsOwed: deferrable ? steps : [],
    ends: deferrable ? endsOf(aircraft, d, entry) : [],
    tree: treeOf({ path, gate, table, deferrable, steps: deferrable ? steps : [] }),
    judgements:
      deferrable && d.deferral === null
        ? judgementsOf({ name, withList: path === 'mel', procedures, together })
        : [],
    together,
    listEntry:
      mel !== null && entry !== null && inoperative !== null
        ? listEntryOf(mel, entry, inoperative, localDate(d.reportedAt, base.zone), on)
        : null,
  };
}

interface Gate {
  readonly path: DeferralPath;
  readonly gate: readonly Line[];
  readonly inoperative: InoperativeItem | null;
  /** The list and its entry, on the way of the list. */
  readonly mel: MelFacts | null;
  readonly entry: MelItemFacts | null;
}

function gateOf(aircraft: AircraftFacts, d: DiscrepancyFacts): Gate {
  const equipment = isInoperativeEquipment(d);
  const none = { mel: null, entry: null };
  if (!equipment.is) return { path: 'not-equipment', gate: equipment.lines, inoperative: null, ...none };
  const found = inoperativeItem(aircraft, d);
  if (!found.ok) return { path: 'closed', gate: found.lines, inoperative: null, ...none };
  const { inoperative } = found;
  const about = aboutDiscrepancy(d);
  const standing = melStanding(aircraft, about);
  const gate = [...equipment.lines, ...standing.lines];
  switch (standing.path) {
    case 'closed':
      return { path: 'closed', gate, inoperative, ...none };
    case 'mel': {
      const listed = melItemFor(standing.mel, inoperative);
      return listed.ok
        ? { path: 'mel', gate, inoperative, mel: standing.mel, entry: listed.entry }
        : { path: 'mel', gate: [...gate, ...listed.lines], inoperative, ...none };
    }
    case 'paragraph-d': {
      const kind = kindOfAircraft(aircraft, about);
      const path = kind.some((line) => line.effect === 'bars') ? 'closed' : 'paragraph-d';
      return { path, gate: [...gate, ...kind], inoperative, ...none };
    }
  }
}

const rowOf = (kind: OperationKind, lines: readonly Line[]): EligibilityRow => ({
  kind,
  allowed: lines.length > 0 && lines.every((line) => line.effect !== 'bars'),
  lines,
});

/** What ends the deferral of `d`, whether or not 91.213 would still allow it: one that has run out has ended too. */
export const deferralEnds = (aircraft: AircraftFacts, d: DiscrepancyFacts): readonly DeferralEnd[] =>
  endsOf(aircraft, d, gateOf(aircraft, d).entry);

function endsOf(
  aircraft: AircraftFacts,
  d: DiscrepancyFacts,
  entry: MelItemFacts | null,
): readonly DeferralEnd[] {
  return [
    ...(entry === null ? [] : [endOfInterval(aircraft, d, entry)]),
    endAtInspection(aircraft),
    ...endOfRemoval(d),
  ];
}

/** The repair category of the entry. */
function endOfInterval(aircraft: AircraftFacts, d: DiscrepancyFacts, entry: MelItemFacts): DeferralEnd {
  const cite = repairCategoryCite(entry.category);
  const bound = aircraft.mel.known && aircraft.mel.value?.enforceCategories === true;
  const category = `Repair category ${entry.category}`;
  if (d.deferral === null) {
    return { cite, text: `${category}: counted from the day of the write-up, once deferred.`, on: null };
  }
  if (!aircraft.mel.known || aircraft.mel.value === null) return { cite, text: `${category}.`, on: null };
  const { lastDay: deadline, extended } = standingDeadline(aircraft.mel.value, entry, d.deferral);
  if (!deadline.known) return { cite, text: `${category}: not known: ${deadline.missing}.`, on: null };
  const day = dayInWords(deadline.value);
  const once = extended ? ', extended once' : '';
  return bound
    ? { cite, text: `${category}${once}: repaired by the end of ${day}.`, on: deadline.value }
    : { cite, text: `${category}: ${day}; this operator is not held to intervals.`, on: null };
}

/** 91.405(c). */
function endAtInspection(aircraft: AircraftFacts): DeferralEnd {
  const next = nextRequiredInspection(aircraft, 'any');
  const when = [
    next.dueOn === null ? null : `by ${dayInWords(next.dueOn)}`,
    next.dueTenths === null ? null : `at ${formatTenths(next.dueTenths)} h`,
    next.missing === null ? null : `not known: ${next.missing}`,
  ].filter((part) => part !== null);
  const text = `Repaired, replaced, removed or inspected at the next ${next.name} (${when.join('; ')}).`;
  return { cite: '14cfr91.405(c)', text, on: next.dueOn };
}

/** 91.207(f)(10)(ii): not more than 90 days after the first removal. */
const ELT_REMOVED_DAYS = 90;

function endOfRemoval({ deferral }: DiscrepancyFacts): readonly DeferralEnd[] {
  if (deferral === null || deferral.eltRemoval === null) return [];
  const last = lastDayWithinDays(deferral.eltRemoval.firstRemovedOn, ELT_REMOVED_DAYS);
  const text = `Emergency locator transmitter removed for not more than 90 days: through ${dayInWords(last)}.`;
  return [{ cite: '14cfr91.207(f)(10)(ii)', text, on: last }];
}
