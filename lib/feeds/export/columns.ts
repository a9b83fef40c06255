import { Prisma } from '../../db/client';
import { calendarDate, instant } from '../../db/dates';
import { type ExportSet } from './sets';

/** What a value may be once it is given out. Hours stay whole tenths; instants are ISO 8601 in UTC; dates have no zone. */
export type Given = string | number | boolean | null | readonly Given[] | { readonly [key: string]: Given };

export interface Column {
  readonly field: string;
  /** Its name outside, with the unit: `planned_tenths_of_hour`, `released_at_utc`, `completed_on`. */
  readonly name: string;
}

/** Not given out: it is the same in every row, and nobody else's business. */
const OPERATOR = 'operatorId';

/** The columns of a set, in the order of the table. */
export function columnsOf({ model, without = [] }: ExportSet): Column[] {
  const fields = Object.keys(Prisma[`${model}ScalarFieldEnum`]);
  return fields
    .filter((field) => field !== OPERATOR && !without.includes(field))
    .map((field) => ({ field, name: columnName(field) }));
}

const UNITS: readonly (readonly [RegExp, string])[] = [
  [/_tenths$/, '_tenths_of_hour'],
  [/_deg$/, '_degrees'],
  [/_lb$/, '_pounds'],
  [/_ft$/, '_feet'],
  [/(^|_)at$/, '$1at_utc'],
];

export function columnName(field: string): string {
  const snake = field.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
  const unit = UNITS.find(([ending]) => ending.test(snake));
  return unit ? snake.replace(...unit) : snake;
}

/** Instants are named `…At` in our tables, and every other moment is a calendar date (tests/services/export.test.ts). */
export const isInstantField = (field: string): boolean => field === 'at' || field.endsWith('At');

export function given(field: string, value: unknown): Given {
  if (value instanceof Date) return isInstantField(field) ? instant(value) : calendarDate(value);
  return value as Given;
}
