import { z } from 'zod';
import { query } from '../../access/service';
import { type Tx } from '../../db/client';
import { Refusal } from '../../problems';
import { columnsOf, given, type Given } from './columns';
import { EXPORT_SETS, exportSet, type ExportSet } from './sets';

/** Some rows of a set, and where the next begin; `next` is null after the last. */
export interface ExportPage {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly Given[])[];
  readonly next: string | number | null;
}

/** Releases keep whole facts: a hundred of them are some megabytes. */
const ROWS_A_PAGE = 100;

interface Table {
  findMany(asked: object): Promise<Record<string, unknown>[]>;
}

/** The rows of one set after `after`, in the order of its key. */
export const readExportPage = query({
  verb: 'export.read',
  input: z.object({
    set: z.string(),
    after: z.union([z.string(), z.int()]).nullable().default(null),
  }),
  async run({ tx, operatorId }, { set: name, after }): Promise<ExportPage> {
    const set = exportSet(name);
    if (!set)
      throw new Refusal('not_found', { say: 'There is no such set. See the page of feeds for all of them.' });
    const key = set.key ?? 'id';
    const columns = columnsOf(set);
    const rows = await tableOf(tx, set).findMany({
      where: {
        ...(set.model === 'Operator' ? { id: operatorId } : { operatorId }),
        ...(after === null ? {} : { [key]: { gt: after } }),
      },
      select: Object.fromEntries([...columns.map(({ field }) => field), key].map((field) => [field, true])),
      orderBy: { [key]: 'asc' },
      take: set.model === 'Operator' ? 1 : ROWS_A_PAGE,
    });
    const last = rows.length === ROWS_A_PAGE ? rows.at(-1) : undefined;
    return {
      columns: columns.map(({ name: column }) => column),
      rows: rows.map((row) => columns.map(({ field }) => given(field, row[field]))),
      next: last ? (last[key] as string | number) : null,
    };
  },
});

function tableOf(tx: Tx, { model }: ExportSet): Table {
  const name = `${model.charAt(0).toLowerCase()}${model.slice(1)}` as keyof Tx;
  return tx[name] as unknown as Table;
}

/** What there is to be had, for the screen. */
export const EXPORTS = EXPORT_SETS.map(({ name, says }) => ({ name, says }));
