import type { Prisma, Tx } from '../db/client';

/** The requirements whose calendar, when it runs out, bars every flight. */
const KINDS = ['annual', 'directive', 'life-limit', 'maker-interval'];

const OF_WRITE_UP = {
  finding: { select: { findingKey: true, kind: true, measurements: true } },
  determinations: {
    where: { kind: { in: ['severity', 'within-limits', 'inspected-at-inspection'] } },
    orderBy: { signedAt: 'asc' },
    select: {
      kind: true,
      severity: true,
      signedAt: true,
      content: true,
      deferralId: true,
      complianceId: true,
      inspectionId: true,
    },
  },
  deferrals: {
    orderBy: { begunAt: 'asc' },
    include: { placards: true, end: true, extension: true },
  },
} as const satisfies Prisma.DiscrepancyInclude;

export const OF_AIRCRAFT = {
  base: { select: { ident: true, name: true, zone: true } },
  mel: { include: { items: true } },
} as const satisfies Prisma.AircraftInclude;

export type AircraftRow = Prisma.AircraftGetPayload<{ include: typeof OF_AIRCRAFT }>;
export type WriteUpRow = Prisma.DiscrepancyGetPayload<{ include: typeof OF_WRITE_UP }>;
export type HistoryRows = Awaited<ReturnType<typeof historyRows>>;

/**
 * Everything on record of these aircraft that reaches into the time since an instant, and all requirements: one query a table,
 * whatever the number of aircraft. Write-ups that were closed before are left out, open ones of any age are in.
 */
export async function historyRows(tx: Tx, operatorId: string, aircraftIds: readonly string[], since: Date) {
  const here = { operatorId, aircraftId: { in: [...aircraftIds] } };
  const writeUps = await tx.discrepancy.findMany({
    where: { ...here, OR: [{ closedAt: null }, { closedAt: { gte: since } }] },
    include: OF_WRITE_UP,
    orderBy: { number: 'asc' },
  });
  const work = await tx.maintenanceAction.findMany({
    where: {
      ...here,
      OR: [
        { state: { in: ['started', 'entered', 'abandoned'] } },
        { signOff: { signedAt: { gte: since } } },
        // The record a deferral stands on, however long ago it was signed.
        { deferralId: { not: null } },
      ],
    },
    select: {
      id: true,
      aircraftId: true,
      discrepancyId: true,
      deferralId: true,
      inspectionId: true,
      state: true,
      startedAt: true,
      signOff: { select: { signedAt: true } },
    },
  });
  const requirements = await tx.requirement.findMany({
    where: { ...here, kind: { in: [...KINDS, 'hundred-hour'] } },
    include: { compliances: { orderBy: [{ doneOn: 'asc' }, { recordedAt: 'asc' }] } },
    orderBy: { name: 'asc' },
  });
  // When work was given up stands in the audit alone.
  const givenUp = work.flatMap(({ state, id, inspectionId }) =>
    state === 'abandoned' ? [id, ...(inspectionId === null ? [] : [inspectionId])] : [],
  );
  const endings = await tx.auditRow.findMany({
    where: { operatorId, verb: { in: ['work.abandon', 'inspection.give-up'] }, subjectId: { in: givenUp } },
    select: { subjectId: true, at: true },
  });
  return { writeUps, work, requirements, endings, firstRecords: await firstRecords(tx, here) };
}

/** The earliest of what each table has of an aircraft, by aircraft. */
async function firstRecords(
  tx: Tx,
  where: { readonly operatorId: string; readonly aircraftId: { readonly in: string[] } },
): Promise<ReadonlyMap<string, Date>> {
  const by = ['aircraftId'] as ['aircraftId'];
  const writeUps = await tx.discrepancy.groupBy({ by, where, _min: { openedAt: true } });
  const work = await tx.maintenanceAction.groupBy({ by, where, _min: { startedAt: true } });
  const walks = await tx.walkaround.groupBy({ by, where, _min: { startedAt: true } });
  const releases = await tx.release.groupBy({ by, where, _min: { releasedAt: true } });
  const readings = await tx.meterReading.groupBy({ by, where, _min: { at: true } });
  const first = new Map<string, Date>();
  const note = (aircraftId: string, at: Date | null) => {
    const known = first.get(aircraftId);
    if (at !== null && (known === undefined || at < known)) first.set(aircraftId, at);
  };
  for (const row of writeUps) note(row.aircraftId, row._min.openedAt);
  for (const row of [...work, ...walks]) note(row.aircraftId, row._min.startedAt);
  for (const row of releases) note(row.aircraftId, row._min.releasedAt);
  for (const row of readings) note(row.aircraftId, row._min.at);
  return first;
}
