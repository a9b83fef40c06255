/** What a file of equipment would do to the list of one aircraft, row by row. Pure. */
import { equipmentRow, lineOfRow } from './columns-of-file';
import { differences, lineColumns, nameKey, type LineColumns } from './line';
import { readRows, type RowFault, type RowFormat } from './read-rows';

/** A line of the list as it stands. */
export interface StandingLine extends LineColumns {
  readonly id: string;
  /** Somebody signed for it, or it is from before the question. */
  readonly confirmed: boolean;
}

/** add: new. change: other than it stands. confirm: as it stands, and nobody has confirmed it yet. keep: as it stands. */
export type RowDoes = 'add' | 'change' | 'confirm' | 'keep';

export interface CheckedRow {
  readonly row: number;
  readonly does: RowDoes;
  readonly name: string;
  /** The columns that differ from the list as it stands. */
  readonly differs: readonly (keyof LineColumns)[];
  readonly standingId: string | null;
  readonly columns: LineColumns;
}

export interface CheckedEquipment {
  readonly rows: readonly CheckedRow[];
  readonly errors: readonly RowFault[];
  readonly notes: readonly string[];
  /** Lines of the list the file has no row for. They stay as they are. */
  readonly notInFile: readonly string[];
}

/** Reads the file and holds it against the list of this aircraft. With errors nothing of it may be taken in. */
export function checkFile(
  format: RowFormat,
  text: string,
  registration: string,
  list: readonly StandingLine[],
): CheckedEquipment {
  const read = readRows(format, text, equipmentRow);
  const errors: RowFault[] = [...read.errors];
  const rows: CheckedRow[] = [];
  const firstRow = new Map<string, number>();
  for (const { row, value } of read.rows) {
    const twin = firstRow.get(nameKey(value.name));
    if (twin !== undefined) {
      errors.push({ row, field: 'name', message: `Row ${twin} has this name too.` });
      continue;
    }
    firstRow.set(nameKey(value.name), row);
    const { line, faults } = lineOfRow(row, value, registration);
    if (line === null) errors.push(...faults);
    else rows.push(checked(row, lineColumns(line), list));
  }
  errors.sort((a, b) => a.row - b.row);
  return {
    rows,
    errors,
    notes: read.notes,
    notInFile: list.filter(({ name }) => !firstRow.has(nameKey(name))).map(({ name }) => name),
  };
}

function checked(row: number, columns: LineColumns, list: readonly StandingLine[]): CheckedRow {
  const standing = list.find(({ name }) => nameKey(name) === nameKey(columns.name));
  const common = { row, name: columns.name, columns, standingId: standing?.id ?? null };
  if (!standing) return { ...common, does: 'add', differs: [] };
  const differs = differences(columnsOf(standing), columns);
  const does = differs.length > 0 ? 'change' : standing.confirmed ? 'keep' : 'confirm';
  return { ...common, does, differs };
}

function columnsOf({ id: _id, confirmed: _confirmed, ...columns }: StandingLine): LineColumns {
  return columns;
}
