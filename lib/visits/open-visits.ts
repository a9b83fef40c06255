import type { Tx } from '../db/client';
import { calendarDateOrNull } from '../db/dates';
import type { CalendarDate } from '../rules/facts';

/** One open visit in a list. */
export interface OpenVisit {
  readonly id: string;
  readonly title: string;
  readonly aircraftId: string;
  readonly registration: string;
  /** The day it is planned for, at the base; null when none is set. */
  readonly plannedOn: CalendarDate | null;
  /** Write-ups in it, whether open or closed. */
  readonly discrepancyIds: readonly string[];
  /** Recurring items in it, whether answered or not. */
  readonly requirementIds: readonly string[];
  /** Things in it in all. */
  readonly items: number;
}

/** Visits that are not closed, by planned day (those without one last), then by age. */
export async function openVisits(tx: Tx, operatorId: string): Promise<OpenVisit[]> {
  const rows = await tx.visit.findMany({
    where: { operatorId, closedAt: null },
    include: {
      aircraft: { select: { registration: true } },
      items: { where: { removedAt: null }, select: { discrepancyId: true, requirementId: true } },
    },
    orderBy: [{ plannedOn: { sort: 'asc', nulls: 'last' } }, { openedAt: 'asc' }],
  });
  return rows.map((row) => ({
    id: row.id,
    title: row.title,
    aircraftId: row.aircraftId,
    registration: row.aircraft.registration,
    plannedOn: calendarDateOrNull(row.plannedOn),
    discrepancyIds: row.items.flatMap(({ discrepancyId }) => discrepancyId ?? []),
    requirementIds: row.items.flatMap(({ requirementId }) => requirementId ?? []),
    items: row.items.length,
  }));
}
