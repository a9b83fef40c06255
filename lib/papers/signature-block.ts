import type { PaperSignature } from './paper';
import { heading, keepTogether, labelled, paragraph, type Sheet } from './sheet';
import { certificateSaid, daySaid, hashSaid, momentSaid } from './words';

/**
 * Who signed, under what, when, and what they declared. The hash in short form leads back to the record; a record that is
 * no longer as it was signed says so here.
 */
export function signatureBlock(
  sheet: Sheet,
  signature: PaperSignature,
  zone: string,
  words: { readonly title: string; readonly cite: string },
): void {
  keepTogether(sheet, 45);
  heading(sheet, words.title);
  paragraph(sheet, signature.statement);
  labelled(sheet, 'Signed electronically by', signature.name);
  labelled(sheet, 'Kind of certificate', certificateSaid(signature.certificateKind));
  labelled(sheet, 'Certificate number', signature.certificateNumber);
  labelled(sheet, 'Date', daySaid(signature.signedOn));
  labelled(sheet, 'Signed at', momentSaid(signature.signedAt, zone));
  labelled(sheet, 'Bound by hash', `${hashSaid(signature.hash)} (SHA-256, first 16 of 64)`);
  labelled(sheet, 'Asked by', words.cite);
  if (signature.changes.length > 0) {
    paragraph(sheet, 'THIS RECORD IS NOT AS IT WAS SIGNED. Do not rely on it.', { bold: true, size: 10.5 });
    for (const change of signature.changes) paragraph(sheet, change);
  }
}
