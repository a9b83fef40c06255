import { z } from 'zod';
import { query } from '../access/service';
import { instant } from '../db/dates';
import { eventsOf, type WriteUpEvent } from './events';
import { SUMMARY, summaryOf, type WriteUpSummary } from './summary';
import { nameIn, namesOf } from '../people/names';

export interface OwnFinding {
  readonly aircraftId: string;
  readonly registration: string;
  readonly zone: string;
  readonly writeUp: WriteUpSummary;
  readonly events: readonly WriteUpEvent[];
}

/** What became of everything I wrote up, newest first. */
export const readOwnFindings = query({
  verb: 'own-findings.read',
  input: z.object({}),
  async run({ tx, operatorId, actor }): Promise<OwnFinding[]> {
    const rows = await tx.discrepancy.findMany({
      where: { operatorId, finding: { personId: actor.personId } },
      include: {
        ...SUMMARY,
        aircraft: { include: { base: { select: { zone: true } } } },
        determinations: true,
        work: { include: { signOff: true } },
      },
      orderBy: { openedAt: 'desc' },
      take: 50,
    });
    const names = await namesOf(tx, [
      actor.personId,
      ...rows.flatMap((row) => row.work.map((work) => work.startedById)),
    ]);
    return rows.map((row) => ({
      aircraftId: row.aircraftId,
      registration: row.aircraft.registration,
      zone: row.aircraft.base.zone,
      writeUp: summaryOf(row, names),
      events: eventsOf(
        row.determinations.map(({ kind, personName, statement, signedAt }) => ({
          kind,
          by: personName,
          statement,
          at: instant(signedAt),
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
