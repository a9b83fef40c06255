import { stringify } from 'csv-stringify/sync';
import { FOR_SPREADSHEETS } from './for-spreadsheets';
import { type ActorRef } from '../../access/actor';
import { type CallOptions } from '../../access/service';
import { Refusal, type Result } from '../../problems';
import { type Given } from './columns';
import { readExportPage, type ExportPage } from './read-set';
import { EXPORT_SETS } from './sets';

export type ExportFormat = 'csv' | 'json';

/** A file that is written while it is read: the first rows are there, the rest follow page by page. */
export interface ExportFile {
  readonly fileName: string;
  readonly type: string;
  readonly body: ReadableStream<Uint8Array>;
}

export const EVERYTHING = 'everything';

const TYPES: Readonly<Record<ExportFormat, string>> = {
  csv: 'text/csv; charset=utf-8; header=present',
  json: 'application/json; charset=utf-8',
};

/**
 * One set as CSV or JSON, or everything as one JSON. Refused before the first byte when the caller may not, or there is no
 * such set. Trouble later breaks the transfer off, so that half a file is never taken for a whole one. Rows that are
 * written meanwhile may or may not be in it.
 */
export async function exportFile(
  ref: ActorRef | null,
  set: string,
  format: ExportFormat,
  options: CallOptions = {},
): Promise<Result<ExportFile>> {
  const everything = set === EVERYTHING && format === 'json';
  const first = await readExportPage(ref, { set: everything ? EXPORT_SETS[0]?.name : set }, options);
  if (!first.ok) return first;
  const pages = (name: string, begin?: ExportPage) => pagesOf(ref, name, options, begin);
  const text = everything
    ? everythingAsJson(pages, options.now ?? new Date())
    : format === 'csv'
      ? asCsv(pages(set, first.value))
      : asJson(pages(set, first.value));
  return {
    ok: true,
    value: { fileName: `${set}.${format}`, type: TYPES[format], body: streamOf(text) },
  };
}

async function* pagesOf(
  ref: ActorRef | null,
  set: string,
  options: CallOptions,
  begin?: ExportPage,
): AsyncGenerator<ExportPage> {
  let page = begin;
  let after: ExportPage['next'] = null;
  do {
    if (!page) {
      const read = await readExportPage(ref, { set, after }, options);
      if (!read.ok) throw new Refusal(read.problem.code, read.problem);
      page = read.value;
    }
    yield page;
    after = page.next;
    page = undefined;
  } while (after !== null);
}

/** CSV as RFC 4180 has it: a header, quotes where they are needed; the mark of UTF-8 once, at the very beginning. */
async function* asCsv(pages: AsyncGenerator<ExportPage>): AsyncGenerator<string> {
  let begun = false;
  for await (const { columns, rows } of pages) {
    const records = rows.map((row) => row.map(cell));
    yield stringify(begun ? records : [[...columns], ...records], {
      ...FOR_SPREADSHEETS,
      bom: !begun,
    });
    begun = true;
  }
}

/** Lists of words stand beside each other, anything deeper as JSON. Nothing is empty only where nothing is known. */
function cell(value: Given): string | number {
  if (value === null) return '';
  if (typeof value === 'string' || typeof value === 'number') return value;
  if (typeof value === 'boolean') return String(value);
  if (Array.isArray(value) && value.every((one) => typeof one === 'string')) return value.join('; ');
  return JSON.stringify(value);
}

async function* asJson(pages: AsyncGenerator<ExportPage>): AsyncGenerator<string> {
  yield '[';
  let begun = false;
  for await (const { columns, rows } of pages) {
    for (const row of rows) {
      yield `${begun ? ',' : ''}\n${JSON.stringify(asObject(columns, row))}`;
      begun = true;
    }
  }
  yield '\n]\n';
}

const asObject = (columns: readonly string[], row: readonly Given[]) =>
  Object.fromEntries(columns.map((column, index) => [column, row[index] ?? null]));

async function* everythingAsJson(
  pages: (set: string) => AsyncGenerator<ExportPage>,
  now: Date,
): AsyncGenerator<string> {
  yield `{"made_at_utc":${JSON.stringify(now.toISOString())},"sets":{`;
  for (const [index, { name }] of EXPORT_SETS.entries()) {
    yield `${index > 0 ? ',' : ''}\n${JSON.stringify(name)}:`;
    yield* asJson(pages(name));
  }
  yield '}}\n';
}

/** Chunks of some size: a chunk a row would be slow. */
const CHUNK = 64_000;

function streamOf(text: AsyncGenerator<string>): ReadableStream<Uint8Array> {
  const encoder = new TextEncoder();
  return new ReadableStream({
    async pull(controller) {
      let chunk = '';
      while (chunk.length < CHUNK) {
        const { done, value } = await text.next();
        if (done) {
          if (chunk !== '') controller.enqueue(encoder.encode(chunk));
          controller.close();
          return;
        }
        chunk += value;
      }
      controller.enqueue(encoder.encode(chunk));
    },
    async cancel() {
      await text.return(undefined);
    },
  });
}
