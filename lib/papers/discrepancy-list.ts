import { footOf, type PaperFrame, type PaperSignature } from './paper';
import { closeSheet, heading, labelled, openSheet, paragraph, rule, title } from './sheet';
import { signatureBlock } from './signature-block';
import { daySaid, hashSaid, workSaid } from './words';

export interface ListedItem {
  readonly number: string | null;
  readonly title: string;
  readonly standing: string;
  readonly placard: string | null;
}

/** The signed, dated list of 43.11(b), as it is given to the owner or operator. */
export interface ListPaper extends PaperFrame {
  readonly fileName: string;
  readonly kind: string;
  readonly dated: string;
  readonly items: readonly ListedItem[];
  readonly signature: PaperSignature;
  readonly supersedes: { readonly hash: string; readonly dated: string } | null;
  readonly supersededBy: { readonly hash: string; readonly dated: string } | null;
}

const STANDINGS: Readonly<Record<string, string>> = {
  unairworthy: 'Unairworthy',
  'inoperative-placarded': 'Inoperative, placarded as 91.213(d)(2) permits',
};

/** Draws it. */
export function discrepancyList(view: ListPaper): Promise<Uint8Array> {
  const { aircraft, items, signature } = view;
  const sheet = openSheet({
    title: `${aircraft.registration}: list of discrepancies of ${daySaid(view.dated)}`,
    subject: 'List of discrepancies and unairworthy items, 14 CFR 43.11(b)',
    madeAt: view.madeAt,
  });
  title(sheet, `${aircraft.registration}: discrepancies and unairworthy items`);
  if (view.supersededBy) {
    const { hash, dated } = view.supersededBy;
    paragraph(sheet, `SUPERSEDED by the list of ${daySaid(dated)} (record ${hashSaid(hash)}).`, {
      bold: true,
    });
  }
  labelled(sheet, 'Dated', daySaid(view.dated));
  labelled(sheet, 'Given to', `${aircraft.operatorName}, owner or operator`);
  labelled(sheet, 'Aircraft', `${aircraft.registration}, serial ${aircraft.serial}, ${aircraft.typeName}`);
  labelled(sheet, 'Found at', workSaid(view.kind));
  if (view.supersedes) {
    const { hash, dated } = view.supersedes;
    labelled(sheet, 'Takes the place of', `the list of ${daySaid(dated)} (record ${hashSaid(hash)})`);
  }
  rule(sheet);
  if (items.length === 0) paragraph(sheet, 'No item.');
  items.forEach((item, index) => {
    heading(sheet, `${index + 1}. ${item.title}`);
    if (item.number) labelled(sheet, 'Write-up', item.number);
    labelled(sheet, 'Standing', STANDINGS[item.standing] ?? item.standing.replaceAll('-', ' '));
    if (item.placard) labelled(sheet, 'Placard', item.placard);
  });
  rule(sheet);
  paragraph(
    sheet,
    'The aircraft is not to be flown until each unairworthy item is repaired and approved for return to service by a person with the rating for it, in an entry of its own (43.9). The list is kept until then (91.417(b)(3)).',
  );
  signatureBlock(sheet, signature, aircraft.zone, { title: 'Signed list', cite: '14 CFR 43.11(b)' });
  return closeSheet(sheet, footOf(signature));
}
