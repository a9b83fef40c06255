import { stringify } from 'csv-stringify/sync';
import { MEL_DOCS } from '../mel/mel-columns';
import { LAST_DONE_DOCS } from './last-done-columns';
import { WRITE_UP_DOCS } from './write-up-columns';

const DOCS = { 'write-ups': WRITE_UP_DOCS, 'last-done': LAST_DONE_DOCS, mel: MEL_DOCS } as const;
export type TemplateKind = keyof typeof DOCS;

export const isTemplateKind = (text: string | null): text is TemplateKind =>
  text !== null && Object.hasOwn(DOCS, text);

/** The head of a file and one row to write over; invented, and nobody's data. */
export function historyTemplate(kind: TemplateKind, format: 'csv' | 'json'): string {
  const docs = DOCS[kind];
  if (format === 'json') {
    return `${JSON.stringify([Object.fromEntries(docs.map(({ column, example }) => [column, example]))], null, 2)}\n`;
  }
  return stringify([docs.map(({ column }) => column), docs.map(({ example }) => example)], {
    bom: true,
    record_delimiter: 'windows',
  });
}
