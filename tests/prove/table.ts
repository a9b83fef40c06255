/** The rows of the proof as a table: for the console, and for docs/proof.md. */
import type { Row } from './row';

const HEADS = ['', 'Part', 'What', 'Measured', 'Wanted', 'Command'] as const;
const markOf = ({ good }: Row): string => (good === null ? 'not here' : good ? 'good' : 'NOT GOOD');
const cellsOf = (row: Row): string[] => [
  markOf(row),
  row.part,
  row.what,
  row.measured,
  row.wanted,
  row.command,
];

/** Columns as wide as their widest cell; the command, the longest, stands last. */
export function asText(rows: readonly Row[]): string {
  const table = [[...HEADS], ...rows.map(cellsOf)];
  const widths = HEADS.map((_, at) => Math.max(...table.map((cells) => cells[at]?.length ?? 0)));
  return table
    .map((cells) =>
      cells
        .map((cell, at) => cell.padEnd(widths[at] ?? 0))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

/** A bar within a cell would end it. */
const written = (cell: string): string => cell.replaceAll('|', '\\|').replaceAll('\n', ' ');

export function asMarkdown(rows: readonly Row[]): string {
  const line = (cells: readonly string[]) => `| ${cells.map(written).join(' | ')} |`;
  const commands = (row: Row) => cellsOf(row).map((cell, at) => (at === 5 ? `\`${cell}\`` : cell));
  return [line(HEADS), line(HEADS.map(() => '---')), ...rows.map((row) => line(commands(row)))].join('\n');
}
