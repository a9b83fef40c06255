import { calendarDateOrNull } from '../db/dates';
import type { Prisma, Tx } from '../db/client';
import { Refusal } from '../problems';
import { contentHash } from '../records/canonical';

/** What the entry and every act on a piece of work need with it. */
export const WORK_ROW = {
  aircraft: { include: { base: true, type: true } },
  discrepancy: true,
  deferral: true,
  signOff: true,
  checkFlight: true,
} as const satisfies Prisma.MaintenanceActionInclude;

export type WorkRow = Prisma.MaintenanceActionGetPayload<{ include: typeof WORK_ROW }>;

/** One piece of work, or `not_found`. */
export async function requireWork(tx: Tx, operatorId: string, id: string): Promise<WorkRow> {
  const work = await tx.maintenanceAction.findUnique({
    where: { operatorId_id: { operatorId, id } },
    include: WORK_ROW,
  });
  if (!work) throw new Refusal('not_found', { say: 'There is no such work here.' });
  return work;
}

/** The entry as it will be signed: everything 43.9(a) asks of the work itself, and what kind of work it was. */
export function entryContent(work: WorkRow) {
  return {
    aircraft: work.aircraft.registration,
    serial: work.aircraft.serial,
    writeUp: work.discrepancy?.number ?? null,
    title: work.title,
    part: work.part,
    jasc: work.jasc,
    workKind: work.workKind,
    preventiveItem: work.preventiveItem,
    swapOnly: work.swapOnly,
    description: work.description,
    references: work.references,
    partsUsed: work.partsUsed,
    completedOn: calendarDateOrNull(work.completedOn),
    performedBy: work.performedBy,
    ttisTenths: work.ttisTenths,
    checkFlightNeeded: work.checkFlightNeeded,
    checkFlightReason: work.checkFlightReason,
  };
}

/** Hash of the entry; shown to the signer and demanded back with the signature. */
export const entryHash = (work: WorkRow): string => contentHash(entryContent(work));
