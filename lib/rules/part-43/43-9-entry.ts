import type { CalendarDate, Fact } from '../facts';
import { barsForMissing, type Line } from '../verdict';

/**
 * 14 CFR 43.9(a): what a maintenance entry must contain (inspections are 43.11, see (c)).
 * (1) A description of the work, or reference to data acceptable to the FAA.
 * (2) The date the work was completed.
 * (3) The name of the person who did the work, if that is not the one who approves.
 * (4) The signature, certificate number and kind of certificate held by the person approving, if the work was
 *     satisfactory. The signature approves only the work described.
 * Read in an eCFR copy of 24 August 2026.
 */

export interface EntryFacts439 {
  /** What was done, in words; null or blank when only a reference is given. */
  readonly description: string | null;
  /** Manual, drawing or other acceptable data, with chapter; null or blank when the description stands alone. */
  readonly dataReference: string | null;
  /** First day of the work, at the base; unknown bars, because the order of dates could not be judged. */
  readonly startedOn: Fact<CalendarDate>;
  readonly completedOn: Fact<CalendarDate>;
  /** Names of all who did the work, the approver included if so. Empty when nobody is named. */
  readonly performedBy: readonly string[];
  readonly approver: {
    readonly name: string;
    /** The deliberate act of signing has happened, or is what is being asked for now. */
    readonly signed: boolean;
    readonly certificateNumber: string | null;
    /** "mechanic, airframe and powerplant", "private pilot", "repair station" and so on. */
    readonly certificateKind: string | null;
  };
}

const said = (text: string | null): boolean => text !== null && text.trim() !== '';

/** (a)(1) Description, or reference to acceptable data. */
function description(entry: EntryFacts439): Line {
  return said(entry.description) || said(entry.dataReference)
    ? { effect: 'supports', cite: '14cfr43.9(a)(1)', because: 'The work is described.' }
    : {
        effect: 'bars',
        cite: '14cfr43.9(a)(1)',
        because: 'Describe the work, or name the data it was done by.',
        missing: 'a description of the work',
      };
}

/** (a)(2) Completion date: not before the work began, not after the day of signing. Both days themselves are good. */
function completionDate(entry: EntryFacts439, on: CalendarDate): Line {
  const cite = '14cfr43.9(a)(2)';
  if (!entry.completedOn.known) return barsForMissing(cite, entry.completedOn.missing);
  if (!entry.startedOn.known) return barsForMissing(cite, entry.startedOn.missing);
  const completed = entry.completedOn.value;
  if (completed > on)
    return {
      effect: 'bars',
      cite,
      because: `The completion date ${completed} is later than the day of signing, ${on}.`,
    };
  if (completed < entry.startedOn.value)
    return {
      effect: 'bars',
      cite,
      because: `The completion date ${completed} is before the work began, ${entry.startedOn.value}.`,
    };
  return { effect: 'supports', cite, because: `Completed on ${completed}.` };
}

/** (a)(3) Who did the work, where it was not the approver alone. */
function worker(entry: EntryFacts439): Line {
  const names = entry.performedBy.filter((name) => said(name));
  if (names.length === 0 || names.length < entry.performedBy.length)
    return {
      effect: 'bars',
      cite: '14cfr43.9(a)(3)',
      because: 'Name the person who did the work.',
      missing: 'the name of the person who did the work',
    };
  return { effect: 'supports', cite: '14cfr43.9(a)(3)', because: `Work done by ${names.join(', ')}.` };
}

/** (a)(4) Signature, number and kind of certificate: one line for each that is missing. */
function approval(entry: EntryFacts439): readonly Line[] {
  const { name, signed, certificateNumber, certificateKind } = entry.approver;
  const missing = [
    said(name) ? null : 'the name of the person approving',
    signed ? null : 'the signature',
    said(certificateNumber) ? null : 'the certificate number',
    said(certificateKind) ? null : 'the kind of certificate',
  ].filter((gap) => gap !== null);
  if (missing.length > 0) return missing.map((gap) => barsForMissing('14cfr43.9(a)(4)', gap));
  return [
    {
      effect: 'supports',
      cite: '14cfr43.9(a)(4)',
      because: `Signed by ${name}, ${certificateKind} ${certificateNumber}, for the work described and no other.`,
    },
  ];
}

/**
 * Checks an entry against 43.9(a). `on` is the day of signing at the base. Any `bars` line means the entry does not
 * count and 91.407(a)(2) is not met; a complete entry gives `supports` lines only.
 */
export function checkEntry439(entry: EntryFacts439, on: CalendarDate): readonly Line[] {
  return [description(entry), completionDate(entry, on), worker(entry), ...approval(entry)];
}
