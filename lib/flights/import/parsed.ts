/**
 * A flight as a file writes it, before anything is known about it: which aircraft, person or zone is meant is found out by
 * `check-rows.ts`, which knows the school. Plain data; both readers (CSV and iCalendar) give these.
 */
import type { Instant } from '../../rules/facts';

export type Kind = 'csv' | 'icalendar';

/** The columns of the CSV; an event's properties are told under the same names. */
export const COLUMNS = [
  'aircraft',
  'pilot_email',
  'from',
  'to',
  'depart',
  'arrive',
  'rules',
  'purpose',
  'hours',
  'words',
  'id',
] as const;
export type Column = (typeof COLUMNS)[number];

/** What is wrong in one row. `column` null: with the row as a whole. */
export interface RowError {
  readonly column: Column | null;
  readonly say: string;
}

/**
 * A time as written. `local` is wall-clock time at the place of departure or arrival. `onChange`: what to do with one that
 * does not exist or exists twice as clocks change; RFC 5545 says which is meant, a spreadsheet does not.
 */
export type WrittenTime =
  | { readonly kind: 'instant'; readonly at: Instant }
  | { readonly kind: 'local'; readonly text: string; readonly onChange: 'refuse' | 'rfc5545' }
  | { readonly kind: 'unreadable'; readonly say: string }
  /** An arrival so long after its departure, whatever the clocks do meanwhile. */
  | { readonly kind: 'after'; readonly minutes: number }
  /** What is wrong was told already. */
  | { readonly kind: 'told' };

/** Which aircraft: named outright, or to be looked for in several texts, the first that names one of ours. */
export type WrittenAircraft =
  | { readonly kind: 'named'; readonly text: string }
  | { readonly kind: 'somewhere'; readonly texts: readonly string[] };

/** Before the id of a row of a CSV, so that it is nobody else's number. */
export const CSV_ID = 'csv: ';

export interface WrittenFlight {
  /** "Row 4", "Event 2". */
  readonly where: string;
  /** Its number where it came from, with the file's kind before it; the same flight has it again next time. */
  readonly uid: string;
  /** It is called off there. */
  readonly cancelled: boolean;
  readonly aircraft: WrittenAircraft;
  /** Addresses of whoever may be the pilot, the likeliest first. */
  readonly emails: readonly string[];
  readonly from: string;
  readonly to: string;
  readonly depart: WrittenTime;
  readonly arrive: WrittenTime;
  readonly rules: string;
  readonly purpose: string;
  readonly hours: string;
  readonly words: string;
  /** What the reader could not make sense of. */
  readonly errors: readonly RowError[];
  readonly notes: readonly string[];
}

/** A series whose every time is in the file: a standing plan of it that is not among `uids` is called off. */
export interface WholeSeries {
  readonly uid: string;
  readonly where: string;
  readonly uids: ReadonlySet<string>;
}

export interface WrittenFile {
  /** Something is wrong with the file itself; then there are no flights. */
  readonly errors: readonly string[];
  readonly notes: readonly string[];
  readonly flights: readonly WrittenFlight[];
  readonly series: readonly WholeSeries[];
}

export const brokenFile = (...errors: string[]): WrittenFile => ({
  errors,
  notes: [],
  flights: [],
  series: [],
});

/** What a database's text cannot hold, and what no screen shows: control characters but tab and line ends. */
export const readable = (text: string): string =>
  text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/g, '');

/** "Row 4, depart: It is missing." */
export const errorInWords = (where: string, { column, say }: RowError): string =>
  column === null ? `${where}: ${say}` : `${where}, ${column}: ${say}`;
