import { inEnglish } from '../words/translate';
import { stringify } from 'csv-stringify/sync';
import { FOR_SPREADSHEETS } from '../feeds/export/for-spreadsheets';
import { FIGURE_TITLES, FIGURES, headlineOf, type FigureId } from './figures';
import type { InsightView } from './read-insight';
import { tableOf } from './tables';

/** Files for a spreadsheet: a header with units first. */
const WRITTEN = { ...FOR_SPREADSHEETS, header: true } as const;

/** The rows of one figure; each also says the period, so that files of two periods can be put together. */
export function csvOf(view: InsightView, figure: FigureId): string {
  const { columns, rows } = tableOf(view, figure);
  const { from, until } = view.period;
  return stringify(
    rows.map((row) => [from, until, ...row.map(({ raw }) => raw)]),
    { ...WRITTEN, columns: ['period from', 'period until', ...columns.map(({ file }) => file)] },
  );
}

/** What each figure says and how it is defined: the sheet to lay beside the others. */
export function definitionsCsv(view: InsightView): string {
  return stringify(
    FIGURES.map((figure) => {
      const { number, words, standsOn, definition } = headlineOf(inEnglish, view, figure);
      return [FIGURE_TITLES[figure], number, words, standsOn, definition];
    }),
    { ...WRITTEN, columns: ['figure', 'number', 'in words', 'stands on', 'definition'] },
  );
}

/** "insight-availability-2026-08-28-to-2026-11-25.csv" */
export const fileNameOf = ({ period }: InsightView, what: string, ending: 'csv' | 'svg'): string =>
  `insight-${what}-${period.from}-to-${period.until}.${ending}`;
