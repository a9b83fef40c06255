/**
 * A file of rows, CSV (RFC 4180, comma or semicolon, with or without a byte order mark) or JSON (an array of objects, or an
 * object whose `rows` is one), read by a zod object of texts. Both formats give the schema the same: a text for every column, empty
 * where the file has none, so that one schema reads both. Cells are text and stay text; a formula is kept as it stands. Everything
 * that is wrong is told at once, row by row. Pure.
 */
import { parse } from 'csv-parse/sync';
import type { z } from 'zod';
import { readable } from '../flights/import/parsed';

export type RowFormat = 'csv' | 'json';

/** What is wrong. `row` 0: with the file itself; `field` null: with the row as a whole. */
export interface RowFault {
  /** As a spreadsheet counts: the head of a CSV is row 1. In JSON the first object is row 1. */
  readonly row: number;
  readonly field: string | null;
  readonly message: string;
}

export interface ReadRow<T> {
  readonly row: number;
  readonly value: T;
}

export interface ReadRows<T> {
  /** The rows nothing is wrong with. */
  readonly rows: readonly ReadRow<T>[];
  readonly errors: readonly RowFault[];
  /** What was passed over ("Columns that are not read: ..."). */
  readonly notes: readonly string[];
}

/** Rows one file may hold. */
export const MOST_ROWS = 2000;

interface WrittenRow {
  readonly row: number;
  readonly cells: Readonly<Record<string, string>>;
  /** The row itself is broken: nothing in it may be believed. */
  readonly broken: string | null;
}

interface Written {
  readonly names: readonly string[];
  readonly rows: readonly WrittenRow[];
}

/**
 * Reads `text` by `rowSchema`, whose keys are the columns (lower case, snake_case). A column whose schema refuses an empty text
 * must be in the head of a CSV; every other may be left out. Objects of a JSON file may leave out what may be empty.
 */
export function readRows<S extends z.ZodObject>(
  format: RowFormat,
  text: string,
  rowSchema: S,
): ReadRows<z.output<S>> {
  const written = format === 'csv' ? writtenCsv(text) : writtenJson(text);
  if (typeof written === 'string') return broken(written);
  const columns = Object.keys(rowSchema.shape);
  const missing = format === 'csv' ? columns.filter((name) => missesColumn(rowSchema, written, name)) : [];
  if (missing.length > 0) return broken(...missing.map((name) => `Row 1: the column ${name} is missing.`));
  if (written.rows.length === 0) return broken('There is no row in the file.');
  if (written.rows.length > MOST_ROWS) return broken(`The file has more than ${MOST_ROWS} rows. Split it.`);
  const extra = written.names.filter((name) => name !== '' && !columns.includes(name));
  const rows: ReadRow<z.output<S>>[] = [];
  const errors: RowFault[] = [];
  for (const { row, cells, broken: why } of written.rows) {
    if (why !== null) {
      errors.push({ row, field: null, message: why });
      continue;
    }
    const parsed = rowSchema.safeParse(
      Object.fromEntries(columns.map((name) => [name, Object.hasOwn(cells, name) ? cells[name] : ''])),
    );
    if (parsed.success) rows.push({ row, value: parsed.data });
    else errors.push(...faultsOf(row, parsed.error));
  }
  return {
    rows,
    errors,
    notes: extra.length > 0 ? [`Columns that are not read: ${extra.join(', ')}.`] : [],
  };
}

const broken = (...messages: string[]): ReadRows<never> => ({
  rows: [],
  errors: messages.map((message) => ({ row: 0, field: null, message })),
  notes: [],
});

const missesColumn = (schema: z.ZodObject, { names }: Written, name: string): boolean =>
  !names.includes(name) && !(schema.shape[name] as z.ZodType).safeParse('').success;

const faultsOf = (row: number, error: z.ZodError): RowFault[] =>
  error.issues.map(({ path, message }) => ({
    row,
    field: path[0] === undefined ? null : String(path[0]),
    message,
  }));

/** "Row 4, jasc: There is no such code." */
export const faultInWords = ({ row, field, message }: RowFault): string =>
  row === 0 ? message : field === null ? `Row ${row}: ${message}` : `Row ${row}, ${field}: ${message}`;

/** The faults as the fields of a refusal: `text` for the file, `rows.4.jasc` for a cell, `rows.4.row` for a row. */
export function faultFields(errors: readonly RowFault[]): Record<string, string[]> {
  const fields: Record<string, string[]> = {};
  for (const fault of errors) {
    const path = fault.row === 0 ? 'text' : `rows.${fault.row}.${fault.field ?? 'row'}`;
    (fields[path] ??= []).push(faultInWords(fault));
  }
  return fields;
}

function writtenCsv(text: string): Written | string {
  const rows = cellsOf(text);
  if (typeof rows === 'string') return rows;
  const [head, ...body] = rows;
  if (head === undefined || isBlank(head)) return 'Row 1: the names of the columns are missing.';
  const names = head.map((name) => readable(name).trim().toLowerCase());
  const twice = names.find((name, index) => name !== '' && names.indexOf(name) !== index);
  if (twice !== undefined) return `Row 1: the column ${twice} is there twice.`;
  return {
    names,
    rows: body.flatMap((cells, index) => (isBlank(cells) ? [] : [csvRow(cells, names, index + 2)])),
  };
}

const csvRow = (cells: readonly string[], names: readonly string[], row: number): WrittenRow => ({
  row,
  cells: Object.fromEntries(
    names.map((name, index) => [name, unguarded(readable(cells[index] ?? '').trim())]),
  ),
  // A comma too many shifts the cells after it.
  broken:
    cells.length === names.length ? null : `It has ${cells.length} cells, the head has ${names.length}.`,
});

/** Our own files put an apostrophe before what a spreadsheet would run as a formula; it is not part of the words. */
const unguarded = (cell: string): string => (/^'[=+\-@\t\r]/.test(cell) ? cell.slice(1) : cell);

function cellsOf(text: string): string[][] | string {
  try {
    return parse(text, {
      bom: true,
      delimiter: delimiterOf(text),
      relax_column_count: true,
      skip_empty_lines: false,
      to: MOST_ROWS + 2,
    }) as string[][];
  } catch (error) {
    const line = (error as { lines?: number }).lines;
    return `This is not a CSV file that can be read${line ? `; it breaks off at line ${line}` : ''}. Look at its quotation marks.`;
  }
}

/** By the first line, outside quotation marks: the sign that is there more often. */
function delimiterOf(text: string): ',' | ';' {
  const head = (text.split(/\r\n|\n|\r/, 1)[0] ?? '').replace(/"[^"]*"/g, '');
  return head.split(';').length > head.split(',').length ? ';' : ',';
}

const isBlank = (cells: readonly string[]): boolean => cells.every((cell) => cell.trim() === '');

function writtenJson(text: string): Written | string {
  let value: unknown;
  try {
    value = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return 'This is not JSON that can be read.';
  }
  const list = Array.isArray(value) ? value : (value as { rows?: unknown } | null)?.rows;
  if (!Array.isArray(list)) return 'The file must be an array of objects, or an object whose "rows" is one.';
  const rows = list.map((entry: unknown, index) => jsonRow(entry, index + 1));
  return { names: [...new Set(rows.flatMap(({ cells }) => Object.keys(cells)))], rows };
}

function jsonRow(entry: unknown, row: number): WrittenRow {
  if (typeof entry !== 'object' || entry === null || Array.isArray(entry)) {
    return { row, cells: {}, broken: 'It is no object.' };
  }
  const cells: Record<string, string> = {};
  for (const [name, value] of Object.entries(entry)) {
    const cell = asText(value);
    if (cell === null)
      return { row, cells: {}, broken: `${name} is neither text, number, yes or no, nor a list.` };
    cells[name.trim().toLowerCase()] = readable(cell).trim();
  }
  return { row, cells, broken: null };
}

/** A list becomes its parts with a semicolon between, as a cell of a CSV writes it. */
function asText(value: unknown): string | null {
  if (value === null) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return value;
  if (typeof value === 'number') return String(value);
  if (!Array.isArray(value)) return null;
  const parts = value.map(asText);
  return parts.some((part) => part === null) ? null : parts.join('; ');
}
