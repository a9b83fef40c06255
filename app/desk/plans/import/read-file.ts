import { readTextFile, type ReadText, type TextFile } from '@/app/_ui/read-text-file';
import { MOST_BYTES } from '@/lib/flights/import/schema';

export interface ChosenFile extends TextFile {
  /** By its name or its first line; null when neither tells. */
  readonly kind: 'csv' | 'icalendar' | null;
}

/** A file of flights, with its kind. */
export async function readFile(file: File): Promise<ReadText<ChosenFile>> {
  const read = await readTextFile(file, MOST_BYTES);
  return read.ok ? { ok: true, file: { ...read.file, kind: kindOf(file.name, read.file.text) } } : read;
}

function kindOf(name: string, text: string): ChosenFile['kind'] {
  if (/^\uFEFF?BEGIN:VCALENDAR/i.test(text) || /\.ics$/i.test(name)) return 'icalendar';
  return /\.csv$/i.test(name) ? 'csv' : null;
}
