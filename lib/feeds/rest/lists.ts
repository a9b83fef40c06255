import { z } from 'zod';
import { query } from '../../access/service';
import { SUMMARY, summaryOf } from '../../findings/summary';
import { namesOf } from '../../people/names';
import { fieldRefusal } from '../../problems';
import { stateOf } from '../../releases/history';
import { peopleInHead, releaseHead, WITH_ZONE } from '../../releases/release-head';

/** Where a list goes on: the moment and the number of its last row, in one word that nobody need read. */
interface Place {
  readonly at: Date;
  readonly id: string;
}

const page = {
  limit: z.int().min(1).max(200).default(50),
  after: z.string().optional(),
};

const wordOf = ({ at, id }: Place): string => Buffer.from(`${at.toISOString()} ${id}`).toString('base64url');

const PLACE = /^(\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}\.\d{3}Z) ([0-9a-f-]{36})$/;

function placeOf(word: string | undefined): Place | null {
  if (word === undefined) return null;
  const [, at, id] = PLACE.exec(Buffer.from(word, 'base64url').toString()) ?? [];
  if (!at || !id) throw fieldRefusal('after', 'Give back `next` of the page before, unchanged.');
  return { at: new Date(at), id };
}

/** Rows older than the place, or of the same moment and behind it. */
const behind = <K extends 'openedAt' | 'releasedAt'>(column: K, place: Place | null) => {
  if (place === null) return {};
  const is = <V>(value: V) => ({ [column]: value }) as Record<K, V>;
  return { OR: [is({ lt: place.at }), { ...is({ equals: place.at }), id: { lt: place.id } }] };
};

/** One row too many was read: there is more. */
function cut<R>(rows: readonly R[], limit: number, at: (row: R) => Place) {
  const last = rows.length > limit ? rows[limit - 1] : undefined;
  return { rows: rows.slice(0, limit), next: last ? wordOf(at(last)) : null };
}

/** Write-ups, the newest first, of one aircraft or state where asked. */
export const listWriteUps = query({
  verb: 'write-up.read',
  input: z.object({
    ...page,
    state: z.enum(['open', 'deferred', 'closed', 'not-closed']).optional(),
    aircraftId: z.uuid().optional(),
  }),
  async run({ tx, operatorId }, { limit, after, state, aircraftId }) {
    const found = await tx.discrepancy.findMany({
      where: {
        operatorId,
        aircraftId,
        state: state === 'not-closed' ? { not: 'closed' } : state,
        ...behind('openedAt', placeOf(after)),
      },
      include: { ...SUMMARY, aircraft: { select: { registration: true } } },
      orderBy: [{ openedAt: 'desc' }, { id: 'desc' }],
      take: limit + 1,
    });
    const { rows, next } = cut(found, limit, ({ openedAt: at, id }) => ({ at, id }));
    const names = await namesOf(
      tx,
      rows.map(({ finding }) => finding.personId),
    );
    return {
      writeUps: rows.map((row) => ({
        ...summaryOf(row, names),
        aircraftId: row.aircraftId,
        registration: row.aircraft.registration,
      })),
      next,
    };
  },
});

/** Releases, the newest first, of one aircraft where asked. */
export const listReleases = query({
  verb: 'release.read',
  input: z.object({ ...page, aircraftId: z.uuid().optional() }),
  async run({ tx, operatorId }, { limit, after, aircraftId }) {
    const found = await tx.release.findMany({
      where: { operatorId, aircraftId, ...behind('releasedAt', placeOf(after)) },
      include: WITH_ZONE,
      orderBy: [{ releasedAt: 'desc' }, { id: 'desc' }],
      take: limit + 1,
    });
    const { rows, next } = cut(found, limit, ({ releasedAt: at, id }) => ({ at, id }));
    const names = await namesOf(tx, peopleInHead(rows));
    return {
      releases: rows.map((row) => ({
        ...releaseHead(row, names),
        aircraftId: row.aircraftId,
        state: stateOf(row),
      })),
      next,
    };
  },
});
