import { z } from 'zod';
import { query } from '../access/service';
import { calendarDate } from '../db/dates';
import { Refusal } from '../problems';
import { signedList } from '../records/signed-tables';
import type { ListedItem, ListPaper } from './discrepancy-list';
import { fileName } from './paper';
import { paperAircraft, paperSignature } from './read-entry';

/** The list of 43.11(b) that was signed, to print. */
export const readListPaper = query({
  verb: 'paper.read',
  input: z.object({ listId: z.uuid() }),
  async run({ tx, operatorId, now }, { listId }): Promise<ListPaper> {
    const row = await tx.discrepancyList.findUnique({
      where: { operatorId_id: { operatorId, id: listId } },
      include: {
        inspection: { include: { aircraft: { include: { type: true, base: true } } } },
        supersedes: true,
        supersededBy: true,
      },
    });
    if (!row) throw new Refusal('not_found', { say: 'There is no such list here.' });
    const { aircraft } = row.inspection;
    return {
      fileName: fileName(aircraft.registration, 'discrepancy-list', row.id),
      aircraft: await paperAircraft(tx, operatorId, aircraft),
      madeAt: now.toISOString(),
      kind: row.inspection.kind,
      dated: calendarDate(row.dated),
      items: listedItems(row.items),
      signature: paperSignature(row, statementOf(row.content), signedList(row)),
      supersedes: row.supersedes && { hash: row.supersedes.hash, dated: calendarDate(row.supersedes.dated) },
      supersededBy: row.supersededBy && {
        hash: row.supersededBy.hash,
        dated: calendarDate(row.supersededBy.dated),
      },
    };
  },
});

const placed = z
  .union([
    z.string(),
    z
      .looseObject({ wording: z.string(), location: z.string().nullish() })
      .transform(({ wording, location }) => (location ? `${wording}: ${location}` : wording)),
  ])
  .nullish()
  .catch(null);

const item = z.looseObject({
  number: z.string().nullish(),
  title: z.string(),
  standing: z.string(),
  placard: placed,
});

/** The items as a row keeps them. One that cannot be read is printed as it stands: a list loses nothing. */
export function listedItems(items: unknown): readonly ListedItem[] {
  return (Array.isArray(items) ? items : []).map((one: unknown) => {
    const read = item.safeParse(one);
    if (!read.success)
      return { number: null, title: JSON.stringify(one), standing: 'not stated', placard: null };
    const { number, title, standing, placard } = read.data;
    return { number: number ?? null, title, standing, placard: placard ?? null };
  });
}

const statementOf = (content: unknown): string => {
  const read = z.looseObject({ statement: z.string() }).safeParse(content);
  return read.success ? read.data.statement : 'Signed as the list of 43.11(b).';
};
