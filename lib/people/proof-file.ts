import { fileTypeFromBuffer } from 'file-type';
import { MIME_KEPT, remade, sha256Of } from '../photos/picture';

/** Largest proof taken, bytes: a scanned page or two. */
export const PROOF_MAX_BYTES = 10_000_000;

const PDF = 'application/pdf';

/** A proof as it is kept: pictures made anew from their pixels, PDFs as they came. */
export interface ProofFile {
  readonly bytes: Uint8Array;
  readonly mime: string;
  readonly sha256: string;
}

/**
 * What these bytes are kept as, or why they are not taken. Judged by the bytes, never by the name. A PDF cannot be made
 * anew without losing what it proves, so it is given out only as a file to be saved (see app/api/proofs).
 */
export async function proofFile(bytes: Uint8Array): Promise<ProofFile | string> {
  const mime = (await fileTypeFromBuffer(bytes))?.mime;
  // PDF 32000-1, 7.5.5: a whole file ends with %%EOF, near enough the end.
  if (mime === PDF) {
    const end = Buffer.from(bytes.subarray(-1024)).toString('latin1');
    if (!end.includes('%%EOF')) return 'This PDF is cut off. Send the whole file.';
    return { bytes, mime, sha256: sha256Of(bytes) };
  }
  if (mime !== 'image/jpeg' && mime !== 'image/png') {
    return 'This file is none of PDF, JPEG and PNG, whatever its name says.';
  }
  const picture = await remade(bytes);
  if (typeof picture === 'string') return picture;
  return { bytes: picture.full, mime: MIME_KEPT, sha256: picture.sha256 };
}

/** Where it lies in the store. */
export const proofKey = (storedAs: string, mime: string): string =>
  `${storedAs}/proof.${mime === PDF ? 'pdf' : 'jpg'}`;
