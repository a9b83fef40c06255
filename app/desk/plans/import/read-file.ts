import { MOST_BYTES } from '@/lib/flights/import/schema';

export interface ChosenFile {
  readonly name: string;
  readonly text: string;
  /** By its name or its first line; null when neither tells. */
  readonly kind: 'csv' | 'icalendar' | null;
}

type Read = { readonly ok: true; readonly file: ChosenFile } | { readonly ok: false; readonly say: string };

/** The text of a file, as it is. Refuses what is too large and what is not UTF-8: a wrong letter in a name is not guessed. */
export async function readFile(file: File): Promise<Read> {
  if (file.size > MOST_BYTES) return { ok: false, say: 'The file is larger than 1 MB. Split it.' };
  try {
    const bytes = await file.arrayBuffer();
    const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
    return { ok: true, file: { name: file.name.slice(0, 200), text, kind: kindOf(file.name, text) } };
  } catch {
    return { ok: false, say: 'The file is not UTF-8 text. Save it as “CSV UTF-8” and choose it again.' };
  }
}

function kindOf(name: string, text: string): ChosenFile['kind'] {
  if (/^\uFEFF?BEGIN:VCALENDAR/i.test(text) || /\.ics$/i.test(name)) return 'icalendar';
  return /\.csv$/i.test(name) ? 'csv' : null;
}

/** The same but for line ends, which a text box makes its own. */
export const sameText = (a: string, b: string): boolean => withLf(a) === withLf(b);

const withLf = (text: string): string => text.replace(/\r\n?/g, '\n');
