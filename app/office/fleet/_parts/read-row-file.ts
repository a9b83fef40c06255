import { MOST_BYTES } from '@/lib/equipment/row-limits';
import { said } from '@/lib/words/said';

export interface RowFile {
  readonly name: string;
  readonly text: string;
  /** By its name or its first sign; null when neither tells. */
  readonly format: 'csv' | 'json' | null;
}

export type ReadFile =
  { readonly ok: true; readonly file: RowFile } | { readonly ok: false; readonly say: string };

/** The text of a file, as it is. Refuses what is too large and what is not UTF-8: a wrong letter in a name is not guessed. */
export async function readRowFile(file: File): Promise<ReadFile> {
  if (file.size > MOST_BYTES) return { ok: false, say: said('The file is larger than 1 MB. Split it.') };
  try {
    const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(await file.arrayBuffer());
    return { ok: true, file: { name: file.name.slice(0, 200), text, format: formatOf(file.name, text) } };
  } catch {
    return {
      ok: false,
      say: said('The file is not UTF-8 text. Save it as “CSV UTF-8” and choose it again.'),
    };
  }
}

function formatOf(name: string, text: string): RowFile['format'] {
  if (/\.json$/i.test(name) || /^\uFEFF?\s*[[{]/.test(text)) return 'json';
  return /\.csv$/i.test(name) ? 'csv' : null;
}

/** The same but for line ends, which a text box makes its own. */
export const sameText = (a: string, b: string): boolean => withLf(a) === withLf(b);

const withLf = (text: string): string => text.replace(/\r\n?/g, '\n');
