import { z } from 'zod';
import type { Prisma } from '../db/client';
import { query } from '../access/service';
import { instant } from '../db/dates';
import { ARE_OBSERVATIONS } from './observations';
import { eventsOf, type WriteUpEvent } from './events';
import { SUMMARY, summaryOf, type WriteUpSummary } from './summary';
import { onPaperOf } from '../fleet/carried-determination';
import { nameIn, namesOf } from '../people/names';

export interface OwnFinding {
  readonly aircraftId: string;
  readonly registration: string;
  readonly zone: string;
  readonly writeUp: WriteUpSummary;
  /** Whether I wrote it up; else somebody else did, and I have seen the same. */
  readonly isMine: boolean;
  /** When I have seen it again, and in my words, oldest first. */
  readonly seenAgain: readonly { readonly id: string; readonly at: string; readonly words: string }[];
  readonly events: readonly WriteUpEvent[];
}

/** How many are listed. */
const MOST = 50;

/** What became of everything I wrote up or have seen again, newest first by what I did last. */
export const readOwnFindings = query({
  verb: 'own-findings.read',
  input: z.object({}),
  async run({ tx, operatorId, actor }): Promise<OwnFinding[]> {
    const mine = { ...ARE_OBSERVATIONS, personId: actor.personId };
    const include = {
      ...SUMMARY,
      finding: { ...SUMMARY.finding, select: { ...SUMMARY.finding.select, receivedAt: true } },
      aircraft: { include: { base: { select: { zone: true } } } },
      determinations: true,
      work: { include: { signOff: true } },
      observations: {
        where: mine,
        select: { id: true, words: true, foundAt: true, receivedAt: true },
        orderBy: [{ foundAt: 'asc' }, { id: 'asc' }],
      },
    } as const satisfies Prisma.DiscrepancyInclude;
    const lastSeen = await tx.finding.findMany({
      where: { operatorId, ...mine, relatedId: { not: null } },
      orderBy: { receivedAt: 'desc' },
      take: MOST,
      select: { relatedId: true },
    });
    const written = await tx.discrepancy.findMany({
      where: { operatorId, finding: { personId: actor.personId } },
      include,
      orderBy: { openedAt: 'desc' },
      take: MOST,
    });
    const seen = await tx.discrepancy.findMany({
      where: {
        operatorId,
        id: { in: lastSeen.flatMap(({ relatedId }) => relatedId ?? []), notIn: written.map(({ id }) => id) },
      },
      include,
    });
    const myLast = (row: (typeof written)[number]): number =>
      Math.max(
        row.finding.personId === actor.personId ? row.finding.receivedAt.getTime() : 0,
        ...row.observations.map((one) => one.receivedAt.getTime()),
      );
    const rows = [...written, ...seen]
      .toSorted((a, b) => myLast(b) - myLast(a) || b.number.localeCompare(a.number))
      .slice(0, MOST);
    const names = await namesOf(tx, [
      ...rows.map((row) => row.finding.personId),
      ...rows.flatMap((row) => row.work.map((work) => work.startedById)),
    ]);
    return rows.map((row) => ({
      aircraftId: row.aircraftId,
      registration: row.aircraft.registration,
      zone: row.aircraft.base.zone,
      writeUp: summaryOf(row, names),
      isMine: row.finding.personId === actor.personId,
      seenAgain: row.observations.map(({ id, words, foundAt }) => ({ id, words, at: instant(foundAt) })),
      events: eventsOf(
        row.determinations.map((entry) => ({
          kind: entry.kind,
          by: entry.personName,
          statement: entry.statement,
          at: instant(entry.signedAt),
          onPaper: onPaperOf(entry),
        })),
        row.work.map((work) => ({
          forDeferral: work.deferralId !== null,
          state: work.state,
          startedAt: instant(work.startedAt),
          startedBy: nameIn(names, work.startedById),
          description: work.description ?? work.title,
          signOff: work.signOff && { by: work.signOff.personName, at: instant(work.signOff.signedAt) },
        })),
      ),
    }));
  },
});
