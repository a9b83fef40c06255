import { z } from 'zod';
import { query } from '../access/service';
import { instant } from '../db/dates';
import { SUMMARY, summaryOf, type WriteUpSummary } from './summary';

/** One thing that happened to a write-up, in the words of whoever did it. */
export interface WriteUpEvent {
  readonly at: string;
  readonly who: string;
  readonly what: string;
  readonly words: string;
}

export interface OwnFinding {
  readonly aircraftId: string;
  readonly registration: string;
  readonly zone: string;
  readonly writeUp: WriteUpSummary;
  readonly events: readonly WriteUpEvent[];
}

const WHAT: Readonly<Record<string, string>> = {
  severity: 'Judged',
  'within-limits': 'Found within limits',
  'no-hazard': 'Deferred',
  servicing: 'Serviced',
};

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
    const names = new Map([[actor.personId, actor.name]]);
    return rows.map((row) => ({
      aircraftId: row.aircraftId,
      registration: row.aircraft.registration,
      zone: row.aircraft.base.zone,
      writeUp: summaryOf(row, names),
      events: [
        ...row.determinations.map((entry) => ({
          at: instant(entry.signedAt),
          who: entry.personName,
          what: WHAT[entry.kind] ?? entry.kind,
          words: entry.statement,
        })),
        ...row.work.flatMap((work) =>
          work.signOff && !work.deferralId
            ? [
                {
                  at: instant(work.signOff.signedAt),
                  who: work.signOff.personName,
                  what: 'Repaired and signed off',
                  words: work.description ?? work.title,
                },
              ]
            : [],
        ),
      ].sort((a, b) => (a.at < b.at ? -1 : 1)),
    }));
  },
});
