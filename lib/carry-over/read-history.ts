import { z } from 'zod';
import { query } from '../access/service';
import { calendarDateOrNull } from '../db/dates';
import { PAPER_KINDS, type PaperKind } from '../rules/aircraft';

/** One aircraft in the list: what of its history is entered, in figures a manager can follow up. */
export interface HistoryRow {
  readonly aircraftId: string;
  readonly registration: string;
  readonly typeName: string;
  readonly papersMissing: readonly PaperKind[];
  /** What recurs, and how much of it has no record of when it was last done. */
  readonly recurs: number;
  readonly neverRecorded: number;
  readonly directivesReviewedOn: string | null;
  /** list: one is in force; none: operated without; null: nobody has said. */
  readonly mel: 'list' | 'none' | null;
  readonly limits: number;
  /** Write-ups carried over, and how many of them are still open. */
  readonly carriedOver: number;
  readonly carriedOpen: number;
}

/** The fleet, with what of its history is still lacking. */
export const readHistory = query({
  verb: 'carry-over.read',
  input: z.object({}),
  async run({ tx, operatorId }): Promise<HistoryRow[]> {
    const rows = await tx.aircraft.findMany({
      where: { operatorId, retiredOn: null },
      orderBy: { registration: 'asc' },
      include: {
        type: { select: { name: true } },
        papers: { select: { kind: true } },
        requirements: { where: { endedOn: null }, select: { _count: { select: { compliances: true } } } },
        mel: { where: { endedAt: null }, select: { id: true } },
        discrepancies: { where: { vouchingId: { not: null } }, select: { state: true } },
        _count: { select: { limits: { where: { endedAt: null } } } },
      },
    });
    return rows.map((row) => ({
      aircraftId: row.id,
      registration: row.registration,
      typeName: row.type.name,
      papersMissing: PAPER_KINDS.filter((kind) => !row.papers.some((paper) => paper.kind === kind)),
      recurs: row.requirements.length,
      neverRecorded: row.requirements.filter(({ _count }) => _count.compliances === 0).length,
      directivesReviewedOn: calendarDateOrNull(row.directivesReviewedOn),
      mel: row.mel.length > 0 ? 'list' : row.withoutMel === true ? 'none' : null,
      limits: row._count.limits,
      carriedOver: row.discrepancies.length,
      carriedOpen: row.discrepancies.filter(({ state }) => state !== 'closed').length,
    }));
  },
});
