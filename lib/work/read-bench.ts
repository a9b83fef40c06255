import { z } from 'zod';
import { query } from '../access/service';
import { instant } from '../db/dates';
import { SUMMARY, summaryOf, type WriteUpSummary } from '../findings/summary';
import { namesOf } from '../people/names';
import { jascLabel } from '../rules/jasc';

/** One line of the mechanic's queue. */
export interface BenchRow {
  readonly aircraftId: string;
  readonly registration: string;
  readonly baseIdent: string;
  readonly zone: string;
  readonly jascLabel: string;
  readonly writeUp: WriteUpSummary;
  /** What is waited for next, in a few words. */
  readonly next: string;
  readonly work: { readonly id: string; readonly state: string; readonly title: string } | null;
}

export interface Bench {
  readonly asOf: string;
  readonly rows: readonly BenchRow[];
  /** Signed work whose check flight of 91.407(b) is owed. */
  readonly checkFlightsOwed: readonly {
    readonly workId: string;
    readonly title: string;
    readonly registration: string;
    readonly discrepancyId: string | null;
  }[];
}

/** Undecided stands with grounding: nobody has judged it, so it grounds. */
const WEIGHT: Readonly<Record<string, number>> = {
  grounding: 0,
  undecided: 0,
  limiting: 1,
  watch: 3,
  note: 4,
};
const DEFERRED_WEIGHT = 2;

/** All open write-ups, what grounds most first, then the oldest. */
export const readBench = query({
  verb: 'bench.read',
  input: z.object({}),
  async run({ tx, operatorId, now }): Promise<Bench> {
    const rows = await tx.discrepancy.findMany({
      where: { operatorId, state: { not: 'closed' }, aircraft: { retiredOn: null } },
      include: {
        ...SUMMARY,
        aircraft: { include: { base: { select: { ident: true, zone: true } } } },
        work: { where: { state: { in: ['started', 'entered'] } } },
      },
      orderBy: { openedAt: 'asc' },
    });
    const names = await namesOf(
      tx,
      rows.map((row) => row.finding.personId),
    );
    const owed = await tx.maintenanceAction.findMany({
      where: { operatorId, state: 'signed', checkFlightNeeded: true, checkFlight: null },
      include: { aircraft: { select: { registration: true } } },
    });
    const weight = (row: (typeof rows)[number]) =>
      row.state === 'deferred' ? DEFERRED_WEIGHT : (WEIGHT[row.severity ?? 'undecided'] ?? 0);
    return {
      asOf: instant(now),
      rows: rows
        .toSorted((a, b) => weight(a) - weight(b))
        .map((row) => {
          const work = row.work[0];
          const writeUp = summaryOf(row, names);
          return {
            aircraftId: row.aircraftId,
            registration: row.aircraft.registration,
            baseIdent: row.aircraft.base.ident,
            zone: row.aircraft.base.zone,
            jascLabel: row.jasc ? jascLabel(row.jasc) : 'no system named yet',
            writeUp,
            next: nextStep(writeUp, work?.state ?? null),
            work: work ? { id: work.id, state: work.state, title: work.title } : null,
          };
        }),
      checkFlightsOwed: owed.map((work) => ({
        workId: work.id,
        title: work.title,
        registration: work.aircraft.registration,
        discrepancyId: work.discrepancyId,
      })),
    };
  },
});

function nextStep(writeUp: WriteUpSummary, work: string | null): string {
  if (work === 'entered') return 'Entry written, signature owed';
  if (work === 'started') return 'Work begun, entry owed';
  if (writeUp.placards.some((placard) => !placard.placed)) return 'Placard owed';
  if (writeUp.state === 'deferred') return 'Deferred';
  if (writeUp.severity === null) return 'To be judged';
  if (writeUp.severity === 'watch') return 'Within limits, look again';
  if (writeUp.severity === 'limiting') return 'Repair or defer';
  if (writeUp.severity === 'note') return 'When convenient';
  return 'Repair';
}
