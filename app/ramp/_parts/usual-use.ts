import { type BoardCell, type BoardRow } from '@/lib/fleet/read-board';
import { type OperationId } from '@/lib/rules/operations';

/** The use an aircraft mostly has: by day under VFR, for hire where it is used for hire. The other seven are folded away. */
export const usualUse = (row: Pick<BoardRow, 'forHire'>): OperationId =>
  row.forHire ? 'day-vfr-hire' : 'day-vfr-private';

/** Today's answer for it, or null when the board has none. */
export const usualCell = (row: BoardRow): BoardCell | null =>
  row.cells.find((cell) => cell.id === usualUse(row)) ?? null;
