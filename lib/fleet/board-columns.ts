/**
 * The board's four columns out of the eight kinds of operation. Wording and choice of what to show only: the answers
 * are those of the rules.
 */
import { formatTenths } from '../rules/hours';
import type { OperationId } from '../rules/operations';
import type { BoardCell, BoardRow, NextDue } from './read-board';

export interface ColumnOfBoard {
  readonly key: 'day-vfr' | 'night-vfr' | 'day-ifr' | 'night-ifr';
  readonly name: string;
  readonly light: 'day' | 'night';
}

export const BOARD_COLUMNS: readonly ColumnOfBoard[] = [
  { key: 'day-vfr', name: 'Day VFR', light: 'day' },
  { key: 'night-vfr', name: 'Night VFR', light: 'night' },
  { key: 'day-ifr', name: 'Day IFR', light: 'day' },
  { key: 'night-ifr', name: 'Night IFR', light: 'night' },
];

/** What one column says of one aircraft: its usual use, and the other use where that has another outcome. */
export interface CellOfBoard {
  readonly column: ColumnOfBoard;
  readonly usual: BoardCell;
  readonly other: (BoardCell & { readonly use: 'private' | 'for hire' }) | null;
}

/** The four cells of a row, in the order of `BOARD_COLUMNS`. */
export function cellsOfRow(row: Pick<BoardRow, 'cells' | 'forHire'>): CellOfBoard[] {
  return BOARD_COLUMNS.map((column) => {
    const usual = cellOf(row, `${column.key}-${row.forHire ? 'hire' : 'private'}`);
    const other = cellOf(row, `${column.key}-${row.forHire ? 'private' : 'hire'}`);
    return {
      column,
      usual,
      other: other.outcome === usual.outcome ? null : { ...other, use: row.forHire ? 'private' : 'for hire' },
    };
  });
}

/** Whether the aircraft may leave now on its usual use, VFR or IFR, in `light`. A go with limits counts. */
export const isFlyableNow = (row: Pick<BoardRow, 'cells' | 'forHire'>, light: 'day' | 'night'): boolean =>
  cellsOfRow(row).some(({ column, usual }) => column.light === light && usual.outcome !== 'no-go');

/** "in 1.4 h", "in 12 days", "in 1.4 h or 12 days", "1 day over". Days are whole days after today at the base. */
export function dueInWords(due: Pick<NextDue, 'remainingDays' | 'remainingTenths'>): string {
  const { remainingDays: days, remainingTenths: tenths } = due;
  const over = [
    tenths !== null && tenths < 0 ? `${formatTenths(-tenths)} h` : null,
    days !== null && days < 0 ? counted(-days) : null,
  ].filter((part) => part !== null);
  if (over.length > 0) return `over by ${over.join(' and ')}`;
  const left = [
    tenths === null ? null : `in ${formatTenths(tenths)} h`,
    days === null ? null : days === 0 ? 'today is the last day' : `in ${counted(days)}`,
  ].filter((part) => part !== null);
  return left.length > 0 ? left.join(', ') : 'not known when';
}

const counted = (days: number): string => `${days} day${days === 1 ? '' : 's'}`;

function cellOf(row: Pick<BoardRow, 'cells'>, id: OperationId): BoardCell {
  const cell = row.cells.find((one) => one.id === id);
  if (!cell) throw new Error(`The board has no cell ${id}`);
  return cell;
}
