/**
 * A CSV of flights (RFC 4180, with or without a byte order mark, comma or semicolon) as written flights. Cells are text and
 * stay text: what looks like a formula is kept as it stands. Says everything that is wrong in a row at once; what depends on
 * the school is for check-rows.ts. Pure.
 */
import { createHash } from 'node:crypto';
import { parse } from 'csv-parse/sync';
import { COLUMN_DOCS } from './csv-columns';
import {
  brokenFile,
  COLUMNS,
  CSV_ID,
  readable,
  type Column,
  type RowError,
  type WrittenFile,
} from './parsed';
import type { WrittenFlight } from './parsed';
import { writtenTime } from './written-time';

/** Rows looked at; how many of them may be flights is limited where they are counted. */
const MOST_ROWS = 5000;

type Cells = Readonly<Record<Column, string>>;

export function readCsv(text: string): WrittenFile {
  const rows = cellsOf(text);
  if (typeof rows === 'string') return brokenFile(rows);
  const [head, ...body] = rows;
  if (head === undefined || isBlank(head)) return brokenFile('Row 1: the names of the columns are missing.');
  const names = head.map((name) => name.trim().toLowerCase());
  const wrong = wrongHead(names);
  if (wrong.length > 0) return brokenFile(...wrong);
  if (body.length > MOST_ROWS) return brokenFile(`The file has more than ${MOST_ROWS} rows. Split it.`);
  const extra = names.filter((name) => name !== '' && !isColumn(name));
  const flights = body.flatMap((cells, index) =>
    // The head is row 1, as a spreadsheet counts.
    isBlank(cells) ? [] : [flightOf(cells, names, `Row ${index + 2}`)],
  );
  if (flights.length === 0) return brokenFile('There is no flight in the file.');
  return {
    errors: [],
    notes: extra.length > 0 ? [`Columns that are not read: ${extra.join(', ')}.`] : [],
    flights: withoutTwins(flights),
    series: [],
  };
}

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

function wrongHead(names: readonly string[]): string[] {
  const missing = COLUMN_DOCS.filter(({ column, needed }) => needed && !names.includes(column));
  const twice = COLUMNS.filter((column) => names.filter((name) => name === column).length > 1);
  return [
    ...missing.map(({ column }) => `Row 1: the column ${column} is missing.`),
    ...twice.map((column) => `Row 1: the column ${column} is there twice.`),
  ];
}

function flightOf(cells: readonly string[], names: readonly string[], where: string): WrittenFlight {
  const cell = (column: Column) => readable(cells[names.indexOf(column)] ?? '').trim();
  const row = Object.fromEntries(COLUMNS.map((column) => [column, cell(column)])) as Cells;
  const errors: RowError[] = [];
  if (cells.length !== names.length) {
    // A comma too many shifts the cells after it: nothing in such a row may be believed.
    errors.push({ column: null, say: `It has ${cells.length} cells, the head has ${names.length}.` });
  }
  for (const column of ['aircraft', 'depart', 'arrive'] as const) {
    if (row[column] === '') errors.push({ column, say: 'It is missing.' });
  }
  return {
    where,
    uid: row.id === '' ? `csv# ${hashOf(row)}` : `${CSV_ID}${row.id}`,
    cancelled: false,
    aircraft: { kind: 'named', text: row.aircraft },
    emails: row.pilot_email === '' ? [] : [row.pilot_email],
    from: row.from,
    to: row.to,
    depart: writtenTime(row.depart),
    arrive: writtenTime(row.arrive),
    rules: row.rules,
    purpose: row.purpose,
    hours: row.hours,
    words: row.words,
    errors,
    notes: [],
  };
}

/** Two rows that are one flight: the second is told, or one of them would be lost without a word. */
function withoutTwins(flights: readonly WrittenFlight[]): WrittenFlight[] {
  const first = new Map<string, string>();
  return flights.map((flight) => {
    const twin = first.get(flight.uid);
    if (twin === undefined) {
      first.set(flight.uid, flight.where);
      return flight;
    }
    const error: RowError = flight.uid.startsWith(CSV_ID)
      ? { column: 'id', say: `It is the id of ${twin.toLowerCase()} too.` }
      : {
          column: null,
          say: `It says the same as ${twin.toLowerCase()}. Give them ids if both are flights.`,
        };
    return { ...flight, errors: [...flight.errors, error] };
  });
}

const hashOf = (row: Cells): string =>
  createHash('sha256')
    .update(JSON.stringify(COLUMNS.map((column) => row[column])))
    .digest('hex');

const isBlank = (cells: readonly string[]): boolean => cells.every((cell) => cell.trim() === '');

const isColumn = (name: string): name is Column => (COLUMNS as readonly string[]).includes(name);
