import { MOST_BYTES } from '@/lib/equipment/row-limits';
import { readTextFile, type ReadText, type TextFile } from '@/app/_ui/read-text-file';

export interface RowFile extends TextFile {
  /** By its name or its first sign; null when neither tells. */
  readonly format: 'csv' | 'json' | null;
}

/** A file of rows, with its kind. */
export async function readRowFile(file: File): Promise<ReadText<RowFile>> {
  const read = await readTextFile(file, MOST_BYTES);
  return read.ok ? { ok: true, file: { ...read.file, format: formatOf(file.name, read.file.text) } } : read;
}

function formatOf(name: string, text: string): RowFile['format'] {
  if (/\.json$/i.test(name) || /^\uFEFF?\s*[[{]/.test(text)) return 'json';
  return /\.csv$/i.test(name) ? 'csv' : null;
}
