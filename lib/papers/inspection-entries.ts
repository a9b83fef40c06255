import { counted } from '../rules/counted';
import { type PaperFrame, type PaperSignature } from './paper';
import { closePasted, endHere, openPasted, type Ends } from './pasted';
import { labelled, paragraph, title } from './sheet';
import { signatureBlock } from './signature-block';
import { daySaid, hoursSaid, partSaid, workSaid } from './words';

/** The signed entry of one part of an inspection. */
export interface InspectionPart {
  readonly part: string;
  readonly title: string;
  readonly description: string | null;
  readonly references: string | null;
  readonly performedBy: string | null;
  readonly completedOn: string | null;
  readonly ttisTenths: number | null;
  /** 43.11(a)(4) airworthy, (a)(5) with a list; null: the entry does not say. */
  readonly airworthy: boolean | null;
  /** The list that was given, where not airworthy. */
  readonly list: { readonly dated: string; readonly items: number } | null;
  readonly signature: PaperSignature;
}

/** The entries of one inspection (43.11), one for each part of the aircraft. */
export interface InspectionPaper extends PaperFrame {
  readonly fileName: string;
  readonly kind: string;
  readonly extent: string | null;
  readonly checklist: string | null;
  readonly runUp: string | null;
  readonly parts: readonly InspectionPart[];
  /** Parts whose entry is not signed yet. */
  readonly unsigned: readonly string[];
}

/** Draws them, each on its own page, because each is pasted into the logbook of its part. */
export function inspectionEntries(view: InspectionPaper): Promise<Uint8Array> {
  const { aircraft } = view;
  const sheet = openPasted({
    title: `${aircraft.registration}: ${workSaid(view.kind)}, entries`,
    subject: 'Inspection entries, 14 CFR 43.11(a), one for each part of the aircraft',
    madeAt: view.madeAt,
  });
  const ends: Ends = new Map();
  view.parts.forEach((part, index) => {
    if (index > 0) {
      endHere(sheet, ends);
      sheet.doc.addPage();
    }
    title(sheet, `${aircraft.registration}: ${workSaid(view.kind)}, ${partSaid(part.part)}`);
    if (view.unsigned.length > 0) {
      const rest = view.unsigned.map(partSaid).join(', ');
      paragraph(sheet, `This inspection is not complete. Not signed yet: ${rest}.`, { bold: true });
    }
    labelled(sheet, 'Aircraft', `${aircraft.registration}, serial ${aircraft.serial}, ${aircraft.typeName}`);
    labelled(sheet, 'Inspection: 43.11(a)(1)', workSaid(view.kind));
    labelled(
      sheet,
      'Extent: 43.11(a)(1)',
      // Said once where the part's entry repeats the inspection's own words.
      [...new Set([view.extent, part.description].filter(Boolean))].join('\n'),
    );
    labelled(sheet, 'Checklist: 43.15(c)(1)', view.checklist);
    if (part.references && part.references !== view.checklist) labelled(sheet, 'Data used', part.references);
    if (view.runUp) labelled(sheet, 'Engine run: 43.15(c)(2)', view.runUp);
    labelled(sheet, 'Date: 43.11(a)(2)', daySaid(part.completedOn));
    labelled(sheet, 'Total time: 43.11(a)(2)', hoursSaid(part.ttisTenths));
    if (part.performedBy) labelled(sheet, 'Done by', part.performedBy);
    labelled(sheet, 'Found', found(part));
    signatureBlock(sheet, part.signature, aircraft.zone, {
      title:
        part.airworthy === false ? 'Not approved for return to service' : 'Approved for return to service',
      cite: `14 CFR 43.11(a)(3), ${part.airworthy === false ? '43.11(a)(5)' : '43.11(a)(4)'}`,
    });
  });
  const [first] = view.parts;
  return closePasted(
    sheet,
    first ? `Wheelchock, ${aircraft.registration}, ${workSaid(view.kind).toLowerCase()}` : 'Wheelchock',
    ends,
  );
}

function found({ airworthy, list }: InspectionPart): string | null {
  if (airworthy === null) return null;
  if (airworthy) {
    const beside = list
      ? ` A list of ${counted(list.items, 'item')} dated ${daySaid(list.dated)} goes with it.`
      : '';
    return `Airworthy.${beside}`;
  }
  return list
    ? `Not airworthy. A list of ${counted(list.items, 'item')} dated ${daySaid(list.dated)} was given to the owner or operator.`
    : 'Not airworthy. The list is not on record.';
}
