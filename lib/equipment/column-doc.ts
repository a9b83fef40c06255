/** A column of a file that is taken in, in the words of the page and of docs/import.md, with the example of the template. */
export interface ColumnDoc<Column extends string> {
  readonly column: Column;
  readonly needed: boolean;
  readonly what: string;
  readonly example: string;
}

/** One line of such a list: `const doc = columnDoc<Column>;`. */
export const columnDoc = <Column extends string>(
  column: Column,
  what: string,
  example = '',
  needed = false,
): ColumnDoc<Column> => ({ column, what, example, needed });
