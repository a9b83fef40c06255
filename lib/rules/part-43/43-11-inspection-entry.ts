import type { DiscrepancyFacts } from '../aircraft';
import type { CalendarDate, Fact, HoursTenths } from '../facts';
import { formatTenths } from '../hours';
import { dayInWords } from '../in-words';
import { barsForMissing, type Line } from '../verdict';

/**
 * 14 CFR 43.11: the entry after an inspection of part 91, and the list of what was found.
 *
 * (a)(1) The type of inspection and a brief description of its extent.
 * (a)(2) The date of the inspection and the aircraft's total time in service.
 * (a)(3) Signature, certificate number and kind of certificate of the person approving or disapproving.
 * (a)(4) Found airworthy and approved: a statement that certifies it.
 * (a)(5) Not approved: a statement that a list of that date was given to the owner or operator. Each listed item may then
 *   be cleared by a 43.9 entry of anybody rated for it; no second inspection is needed.
 * (a)(6) Progressive inspections have a statement of their own: they are not offered here.
 * (a)(7) Inspection programmes (large aircraft, operators of parts 125 and 135): not offered here.
 * (b) Found unairworthy: a signed and dated list to the owner or lessee. Items that 91.213(d)(2) lets be inoperative are
 *   placarded by the inspector and added to the list.
 * Read in an eCFR copy of 3 September 2026. The statements are the regulation's own words, which it lets be used or be
 * worded alike.
 */

export const INSPECTION_KINDS = ['annual', 'hundred-hour'] as const;
export type InspectionKind = (typeof INSPECTION_KINDS)[number];

/** One entry for the logbook of each: 43.11(a) "the maintenance record of that equipment". */
export const INSPECTION_PARTS = ['airframe', 'powerplant', 'propeller'] as const;
export type InspectionPart = (typeof INSPECTION_PARTS)[number];

/** How the statement names the type of inspection. */
export const INSPECTION_NAMES: Readonly<Record<InspectionKind, string>> = {
  annual: 'an annual',
  'hundred-hour': 'a 100-hour',
};

/** The statement of (a)(4), or of (a)(5) with the date of the list. */
export function inspectionStatement(
  kind: InspectionKind,
  found: { readonly airworthy: true } | { readonly airworthy: false; readonly listDated: CalendarDate },
): string {
  const opening = `I certify that this aircraft has been inspected in accordance with ${INSPECTION_NAMES[kind]} inspection and`;
  return found.airworthy
    ? `${opening} was determined to be in airworthy condition.`
    : `${opening} a list of discrepancies and unairworthy items dated ${dayInWords(found.listDated)} has been provided for the aircraft owner or operator.`;
}

export interface InspectionEntryFacts {
  readonly kind: InspectionKind;
  /** (a)(1) The brief description of what was inspected. */
  readonly extent: string | null;
  /** First day of the inspection at the base; unknown bars, because the order of dates could not be judged. */
  readonly begunOn: Fact<CalendarDate>;
  readonly completedOn: Fact<CalendarDate>;
  readonly ttisTenths: Fact<HoursTenths>;
  /** What the aircraft's own record says, to hold the entry against. Unknown while nobody has entered it. */
  readonly onRecordTenths: Fact<HoursTenths>;
  readonly signer: {
    readonly name: string;
    readonly signed: boolean;
    readonly certificateNumber: string | null;
    readonly certificateKind: string | null;
  };
  /** (a)(4) or (a)(5): what the signer says was found. */
  readonly airworthy: Fact<boolean>;
  /** Date of the signed list in force; null when none was signed. */
  readonly listDated: CalendarDate | null;
}

const said = (text: string | null): boolean => text !== null && text.trim() !== '';

/** (a)(1). */
function typeAndExtent(entry: InspectionEntryFacts): Line {
  const cite = '14cfr43.11(a)(1)';
  return said(entry.extent)
    ? {
        effect: 'supports',
        cite,
        because: `Type and extent are described: ${INSPECTION_NAMES[entry.kind]} inspection.`,
      }
    : barsForMissing(cite, 'the extent of the inspection');
}

/** (a)(2) Date: not before the inspection began, not after the day of signing; both days themselves are good. */
function date(entry: InspectionEntryFacts, on: CalendarDate): Line {
  const cite = '14cfr43.11(a)(2)';
  if (!entry.completedOn.known) return barsForMissing(cite, entry.completedOn.missing);
  if (!entry.begunOn.known) return barsForMissing(cite, entry.begunOn.missing);
  const done = entry.completedOn.value;
  const bars = (because: string): Line => ({ effect: 'bars', cite, because });
  if (done > on)
    return bars(`The inspection is dated ${dayInWords(done)}, after the day of signing, ${dayInWords(on)}.`);
  if (done < entry.begunOn.value) {
    return bars(
      `The inspection is dated ${dayInWords(done)}, before it began, ${dayInWords(entry.begunOn.value)}.`,
    );
  }
  return { effect: 'supports', cite, because: `Inspected on ${dayInWords(done)}.` };
}

/** (a)(2) Total time in service: never less than the aircraft's record has, nor more, which would ground it as a false record. */
function totalTime(entry: InspectionEntryFacts): Line {
  const cite = '14cfr43.11(a)(2)';
  if (!entry.ttisTenths.known) return barsForMissing(cite, entry.ttisTenths.missing);
  if (!entry.onRecordTenths.known) return barsForMissing(cite, entry.onRecordTenths.missing);
  const written = entry.ttisTenths.value;
  const record = entry.onRecordTenths.value;
  if (written === record)
    return { effect: 'supports', cite, because: `Total time in service ${formatTenths(written)} h.` };
  const than = written < record ? 'less' : 'more';
  const because = `The entry says ${formatTenths(written)} h total time in service, ${than} than the aircraft's ${formatTenths(record)} h.`;
  return { effect: 'bars', cite, because };
}

/** (a)(3): one line for each thing missing. */
function signature(entry: InspectionEntryFacts): readonly Line[] {
  const cite = '14cfr43.11(a)(3)';
  const { name, signed, certificateNumber, certificateKind } = entry.signer;
  const missing = [
    said(name) ? null : 'the name of the person signing',
    signed ? null : 'the signature',
    said(certificateNumber) ? null : 'the certificate number',
    said(certificateKind) ? null : 'the kind of certificate',
  ].filter((gap) => gap !== null);
  if (missing.length > 0) return missing.map((gap) => barsForMissing(cite, gap));
  return [
    { effect: 'supports', cite, because: `Signed by ${name}, ${certificateKind} ${certificateNumber}.` },
  ];
}

/** (a)(4), (a)(5). */
function statement(entry: InspectionEntryFacts): Line {
  if (!entry.airworthy.known) return barsForMissing('14cfr43.11(a)', entry.airworthy.missing);
  if (entry.airworthy.value) {
    return { effect: 'supports', cite: '14cfr43.11(a)(4)', because: 'Certified as inspected and airworthy.' };
  }
  const cite = '14cfr43.11(a)(5)';
  return entry.listDated === null
    ? barsForMissing(cite, 'the signed list of discrepancies, which the statement names by its date')
    : { effect: 'supports', cite, because: `Not approved; list dated ${dayInWords(entry.listDated)} given.` };
}

/** Checks an entry against 43.11(a). `on` is the day of signing at the base. Any `bars` line: it is not signed. */
export function checkEntry4311(entry: InspectionEntryFacts, on: CalendarDate): readonly Line[] {
  return [typeAndExtent(entry), date(entry, on), totalTime(entry), ...signature(entry), statement(entry)];
}

/** How an open write-up stands when an inspector signs. */
export type StandingAtInspection = 'repair-owed' | 'within-limits' | 'cosmetic' | 'deferred';

/** Undecided counts as owed a repair, and so does equipment that does not work and is not deferred. */
export function standingAtInspection(d: DiscrepancyFacts): StandingAtInspection {
  if (d.deferral !== null) return 'deferred';
  if (!d.severity.known) return 'repair-owed';
  if (d.severity.value === 'watch' && d.withinLimits !== null) return 'within-limits';
  return d.severity.value === 'note' && d.kind === 'cosmetic' ? 'cosmetic' : 'repair-owed';
}

export interface ListedItem {
  readonly discrepancyId: string;
  readonly standing: 'unairworthy' | 'inoperative-placarded';
}

const aboutWriteUp = (d: DiscrepancyFacts) =>
  ({ kind: 'discrepancy', id: d.id, label: `${d.number} ${d.title}` }) as const;

/**
 * (b) and what (a)(4) and (a)(5) ask of the write-ups that stand open: nothing owed a repair on an aircraft certified
 * airworthy; everything unairworthy on the list of one that is not; every deferred item placarded and listed either way.
 * @param list items of the signed list in force; null when none was signed
 */
export function checkFindings4311(
  open: readonly DiscrepancyFacts[],
  list: readonly ListedItem[] | null,
  airworthy: boolean,
): readonly Line[] {
  const names = (d: DiscrepancyFacts, standing: ListedItem['standing']) =>
    list?.some((item) => item.discrepancyId === d.id && item.standing === standing) ?? false;
  const lines = open.flatMap((d): Line[] => {
    const about = aboutWriteUp(d);
    switch (standingAtInspection(d)) {
      case 'deferred':
        return deferredItem(d, names(d, 'inoperative-placarded'));
      case 'repair-owed':
        if (airworthy) return [openAndAirworthy(d)];
        if (names(d, 'unairworthy')) return [];
        return [
          {
            effect: 'bars',
            cite: '14cfr43.11(b)',
            because: `${about.label} is open and not on the signed list.`,
            about,
          },
        ];
      case 'within-limits':
      case 'cosmetic':
        // Whatever it was found to be before: on the list of this inspection it is unairworthy.
        return airworthy && names(d, 'unairworthy') ? [openAndAirworthy(d)] : [];
    }
  });
  const listed = list?.some((item) => item.standing === 'unairworthy') ?? false;
  if (!airworthy && !listed) {
    const because =
      'Nothing is listed as unairworthy. Without that the aircraft is certified airworthy, or the list is signed first.';
    lines.push({ effect: 'bars', cite: '14cfr43.11(a)(5)', because });
  }
  return lines;
}

function openAndAirworthy(d: DiscrepancyFacts): Line {
  return {
    effect: 'bars',
    cite: '14cfr43.11(a)(4)',
    because: `${d.number} ${d.title} is open: not repaired, not deferred, not within limits. The aircraft is not certified airworthy over it.`,
    about: aboutWriteUp(d),
    strictReading: 'The statement is about the aircraft; we hold each part of it to every open write-up.',
  };
}

function deferredItem(d: DiscrepancyFacts, listed: boolean): Line[] {
  const cite = '14cfr43.11(b)';
  const about = aboutWriteUp(d);
  if (d.deferral?.placardPlaced !== true) {
    return [
      {
        effect: 'bars',
        cite,
        because: `${about.label} is deferred, and its placard is not in place.`,
        about,
      },
    ];
  }
  if (listed) return [];
  return [
    {
      effect: 'bars',
      cite,
      because: `${about.label} is deferred and not on the signed list.`,
      about,
      strictReading: 'We ask for the list also where the deferred items are all that stands on it.',
    },
  ];
}
