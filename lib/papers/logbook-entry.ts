import type { EntryContent } from '../work/entry';
import { partInWords } from '../work/parts';
import { jascLabel } from '../rules/jasc';
import { fieldsOfEntry } from './entry-fields';
import { footOf, type PaperFrame, type PaperSignature } from './paper';
import { closePasted, openPasted } from './pasted';
import { labelled, paragraph, title } from './sheet';
import { signatureBlock } from './signature-block';
import { certificateSaid, daySaid, hashSaid, hoursSaid, partSaid, workSaid } from './words';

/** A signed maintenance entry (43.9), as it goes into the logbook. */
export interface EntryPaper extends PaperFrame {
  readonly fileName: string;
  readonly workId: string;
  readonly entry: EntryContent;
  readonly signature: PaperSignature;
  /** The signed entry this one takes the place of. */
  readonly supersedes: {
    readonly hash: string | null;
    readonly signedOn: string | null;
    readonly why: string;
  } | null;
  /** The signed entry that has taken this one's place. */
  readonly supersededBy: { readonly hash: string; readonly signedOn: string } | null;
  readonly checkFlight: {
    readonly by: string;
    readonly certificateNumber: string;
    readonly flownOn: string;
    readonly words: string;
    readonly hash: string;
  } | null;
}

/** Draws it. Every part of 43.9(a) stands under its paragraph. */
export function logbookEntry(view: EntryPaper): Promise<Uint8Array> {
  const { aircraft, entry, signature } = view;
  const sheet = openPasted({
    title: `${aircraft.registration}: maintenance entry of ${daySaid(entry.completedOn) ?? 'a day not stated'}`,
    subject: `Maintenance record entry, 14 CFR 43.9: ${entry.title}`,
    madeAt: view.madeAt,
  });
  title(sheet, `${entry.aircraft}: maintenance entry`);
  if (view.supersededBy) {
    paragraph(
      sheet,
      `SUPERSEDED on ${daySaid(view.supersededBy.signedOn)} by entry ${hashSaid(view.supersededBy.hash)}. This one stays in the record and no longer counts.`,
      { bold: true },
    );
  }
  if (view.supersedes) {
    const { hash, signedOn, why } = view.supersedes;
    paragraph(
      sheet,
      `CORRECTION. Takes the place of entry ${hash ? hashSaid(hash) : 'without a signature'}${signedOn ? ` of ${daySaid(signedOn)}` : ''}. Why: ${why}`,
      { bold: true },
    );
  }
  labelled(sheet, 'Aircraft', `${entry.aircraft}, serial ${entry.serial}, ${aircraft.typeName}`);
  labelled(sheet, 'Part of the aircraft', partSaid(entry.part));
  labelled(sheet, 'System', entry.jasc ? `JASC ${jascLabel(entry.jasc)}` : null);
  labelled(sheet, 'Kind of work', workSaid(entry.workKind));
  if (entry.preventiveItem !== null) {
    labelled(sheet, 'Preventive item', `Part 43 Appendix A(c)(${entry.preventiveItem})`);
  }
  if (entry.writeUp) labelled(sheet, 'Write-up', entry.writeUp);
  labelled(sheet, 'Work: 43.9(a)(1)', [entry.title, entry.description].filter(Boolean).join('\n'));
  labelled(sheet, 'Data used: 43.9(a)(1)', entry.references);
  const parts = [...(entry.parts ?? []).map(partInWords), entry.partsUsed ?? ''].filter(Boolean);
  labelled(sheet, 'Parts', parts.length > 0 ? parts.join('\n') : 'none');
  labelled(sheet, 'Completed: 43.9(a)(2)', daySaid(entry.completedOn));
  labelled(sheet, 'Total time in service', hoursSaid(entry.ttisTenths));
  labelled(sheet, 'Done by: 43.9(a)(3)', entry.performedBy);
  for (const field of fieldsOfEntry(entry)) labelled(sheet, field.name, field.value);
  labelled(sheet, 'Check flight: 91.407(b)', checkFlightSaid(view));
  signatureBlock(sheet, signature, aircraft.zone, {
    title: 'Approved for return to service',
    cite: '14 CFR 43.9(a)(4), 91.417(a)(1)(iii)',
  });
  return closePasted(sheet, footOf(signature));
}

function checkFlightSaid({ entry, checkFlight }: EntryPaper): string {
  if (checkFlight) {
    const { by, certificateNumber, flownOn, words, hash } = checkFlight;
    return `Flown on ${daySaid(flownOn)} by ${by}, ${certificateSaid('pilot').toLowerCase()} certificate ${certificateNumber}: ${words} (record ${hashSaid(hash)})`;
  }
  const why = entry.checkFlightReason ? ` ${entry.checkFlightReason}` : '';
  if (entry.checkFlightNeeded === null) return 'not stated whether one is needed';
  return entry.checkFlightNeeded
    ? `NEEDED and not flown when this was printed. Nobody may be carried until it is flown and logged.${why}`
    : `Not needed.${why}`;
}
