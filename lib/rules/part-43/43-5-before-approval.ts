import type { Fact } from '../facts';
import { barsForMissing, type Line } from '../verdict';
import type { Capacity } from '../who-may-sign';
import type { WorkKind } from '../work-to-sign';
import { classifyAsked, type MajorAnswers } from './43-appendix-a-major';
import type { PartOfAircraft } from '../jasc';

/**
 * 14 CFR 43.5: what must be complete before a product is approved for return to service.
 * (a) The entry of 43.9 or 43.11 has been made: judged in `43-9-entry.ts`, taken here as said.
 * (b) The repair or alteration form has been filled in, in a manner the FAA prescribes: 43.9(d) and Appendix B.
 *     B(a) Form 337, at least in duplicate. B(b) A repair station may use its signed work order and a maintenance release
 *     instead, for a repair made by a manual or specifications acceptable to the FAA. B(d) An extended-range tank in a
 *     passenger or baggage compartment: in triplicate, one copy aboard.
 * (c) Operating limits or flight data of the approved flight manual that the work changes are revised first.
 * Read in an eCFR copy of 3 September 2026.
 */

/** The paper a major repair is recorded on. */
export type MajorRecordKind = 'form-337' | 'work-order';

export interface BeforeApprovalFacts {
  readonly kind: WorkKind;
  readonly part: PartOfAircraft;
  readonly jasc: string;
  /** (a) The entry of 43.9 stands whole. */
  readonly entryMade: boolean;
  /** Answers to the questions of Appendix A(b); null when nobody was asked. */
  readonly majorAnswers: MajorAnswers | null;
  readonly majorRecord: { readonly kind: MajorRecordKind; readonly reference: string } | null;
  /** The approved technical data a major repair was done by; null or blank when none is named. */
  readonly approvedData: string | null;
  /** The certificate it is approved under. */
  readonly approver: Capacity;
  /** (c) The work changed operating limits or flight data in the approved flight manual. */
  readonly limitsChanged: Fact<boolean>;
  /** How they were revised; null or blank when nobody has said. */
  readonly limitsRevised: string | null;
  /** Appendix B(d). */
  readonly cabinTank: Fact<boolean>;
  readonly copyAboard: Fact<boolean>;
}

const said = (text: string | null): text is string => text !== null && text.trim() !== '';

/** (a) The entry. */
function entry43_5a({ entryMade }: BeforeApprovalFacts): Line {
  return entryMade
    ? { effect: 'supports', cite: '14cfr43.5(a)', because: 'The maintenance entry is made.' }
    : barsForMissing('14cfr43.5(a)', 'the whole maintenance entry');
}

/** Appendix A(b): a minor repair is one whose every question was answered no. */
function minorIsMinor(facts: BeforeApprovalFacts): readonly Line[] {
  const { kind, lines } = classifyAsked(facts.part, facts.jasc, facts.majorAnswers ?? {});
  if (!kind.known || kind.value === 'minor') return lines;
  return lines.map((line) => ({
    ...line,
    effect: 'bars',
    because: `${line.because} It is entered as minor; enter it as major.`,
  }));
}

/** (b) with 43.9(d), Appendix B(a), (b): the form, or the repair station's work order in its place. */
function majorForm43_5b({ majorRecord, approver }: BeforeApprovalFacts): Line {
  if (!majorRecord || !said(majorRecord.reference)) {
    return barsForMissing('14cfr43.9(d)', 'the repair form (Form 337) of this major repair');
  }
  if (majorRecord.kind === 'form-337') {
    return {
      effect: 'supports',
      cite: '14cfr43appB(a)',
      because: `Form 337 is filled in: ${majorRecord.reference}. A signed copy goes to the owner, another to the FAA within 48 hours.`,
    };
  }
  return approver === 'repair-station'
    ? {
        effect: 'supports',
        cite: '14cfr43appB(b)',
        because: `Recorded on the repair station’s work order ${majorRecord.reference}, with its maintenance release.`,
      }
    : {
        effect: 'bars',
        cite: '14cfr43appB(b)',
        because: 'Only a repair station may use its work order in place of Form 337.',
      };
}

/** 65.95(a)(1) for an inspection authorization, Appendix B(b) for a repair station: the data behind a major repair. */
function approvedData({ approvedData: data, approver }: BeforeApprovalFacts): Line {
  const cite = approver === 'repair-station' ? '14cfr43appB(b)' : '14cfr65.95(a)(1)';
  if (!said(data)) return barsForMissing(cite, 'the approved data this major repair was done by');
  return { effect: 'supports', cite, because: `Done by approved data: ${data}.` };
}

/** (c) Operating limits and flight data. */
function limits43_5c({ limitsChanged, limitsRevised }: BeforeApprovalFacts): Line {
  const cite = '14cfr43.5(c)';
  if (!limitsChanged.known) return barsForMissing(cite, limitsChanged.missing);
  if (!limitsChanged.value) {
    return { effect: 'supports', cite, because: 'No operating limit or flight data was changed.' };
  }
  return said(limitsRevised)
    ? { effect: 'supports', cite, because: `The flight manual is revised: ${limitsRevised}.` }
    : barsForMissing(cite, 'how the changed limits or flight data were revised in the flight manual');
}

/** Appendix B(d): a tank in the cabin asks for the form itself, and for a copy of it aboard. */
function cabinTankB_d({ cabinTank, copyAboard, majorRecord }: BeforeApprovalFacts): readonly Line[] {
  const cite = '14cfr43appB(d)';
  if (!cabinTank.known) return [barsForMissing(cite, cabinTank.missing)];
  if (!cabinTank.value) return [];
  if (majorRecord?.kind === 'work-order') {
    return [
      {
        effect: 'bars',
        cite,
        because: 'A fuel tank in the cabin or baggage compartment needs Form 337 itself, in triplicate.',
      },
    ];
  }
  if (!copyAboard.known) return [barsForMissing(cite, copyAboard.missing)];
  return [
    copyAboard.value
      ? { effect: 'supports', cite, because: 'A copy of Form 337 for the fuel tank is aboard.' }
      : { effect: 'bars', cite, because: 'Put a copy of Form 337 for the fuel tank aboard first.' },
  ];
}

/**
 * Everything 43.5 asks before the approval. Any `bars` line means that the approval would not count yet. Inspections and
 * tests have no repair form; their entry is all that (a) asks.
 */
export function checkBeforeApproval(facts: BeforeApprovalFacts): readonly Line[] {
  const lines: Line[] = [entry43_5a(facts)];
  if (facts.kind === 'minor') lines.push(...minorIsMinor(facts));
  if (facts.kind === 'major') {
    lines.push(majorForm43_5b(facts), approvedData(facts), limits43_5c(facts), ...cabinTankB_d(facts));
  }
  return lines;
}
