import { said } from '@/lib/words/said';

/** A file as it was chosen: its name cut to what is kept, and its text as it is. */
export interface TextFile {
  readonly name: string;
  readonly text: string;
}

export type ReadText<File extends TextFile = TextFile> =
  { readonly ok: true; readonly file: File } | { readonly ok: false; readonly say: string };

/** The text of a file, as it is. Refuses what is too large and what is not UTF-8: a wrong letter in a name is not guessed. */
export async function readTextFile(file: File, mostBytes: number): Promise<ReadText> {
  if (file.size > mostBytes) return { ok: false, say: said('The file is larger than 1 MB. Split it.') };
  try {
    const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(await file.arrayBuffer());
    return { ok: true, file: { name: file.name.slice(0, 200), text } };
  } catch {
    return {
      ok: false,
      say: said('The file is not UTF-8 text. Save it as “CSV UTF-8” and choose it again.'),
    };
  }
}

/** The same but for line ends, which a text box makes its own. */
export const sameText = (a: string, b: string): boolean => withLf(a) === withLf(b);

const withLf = (text: string): string => text.replace(/\r\n?/g, '\n');
