import { calendarDate, calendarDateOrNull } from '../db/dates';
import type { Prisma, Tx } from '../db/client';
import { Refusal } from '../problems';
import { contentHash } from '../records/canonical';
import type { InspectionKind, InspectionPart, ListedItem } from '../rules/part-43/43-11-inspection-entry';
import { performance, type Performance } from './schema';
import { said } from '../words/said';

/** What every act on an inspection needs with it. */
export const INSPECTION_ROW = {
  aircraft: { include: { base: true, type: true } },
  work: { include: { signOff: true }, orderBy: { part: 'asc' } },
  lists: { include: { supersededBy: { select: { id: true } } }, orderBy: { signedAt: 'asc' } },
  determinations: { where: { kind: 'inspected-at-inspection' } },
} as const satisfies Prisma.InspectionInclude;

export type InspectionRow = Prisma.InspectionGetPayload<{ include: typeof INSPECTION_ROW }>;
export type InspectionWork = InspectionRow['work'][number];

/** One inspection, or `not_found`. */
export async function requireInspection(tx: Tx, operatorId: string, id: string): Promise<InspectionRow> {
  const inspection = await tx.inspection.findUnique({
    where: { operatorId_id: { operatorId, id } },
    include: INSPECTION_ROW,
  });
  if (!inspection) throw new Refusal('not_found', { say: said('There is no such inspection here.') });
  return inspection;
}

/** The same, still open; one that is complete or given up is a conflict. */
export async function requireOpenInspection(tx: Tx, operatorId: string, id: string): Promise<InspectionRow> {
  const inspection = await requireInspection(tx, operatorId, id);
  if (inspection.state === 'complete')
    throw new Refusal('conflict', { say: said('This inspection is complete.') });
  if (inspection.state === 'given-up')
    throw new Refusal('conflict', { say: said('This inspection was given up.') });
  return inspection;
}

/** The signed list in force: the one that no later list takes the place of. */
export const listInForce = (inspection: InspectionRow): InspectionRow['lists'][number] | null =>
  inspection.lists.find((list) => list.supersededBy === null) ?? null;

/** What a list says of each write-up, as it was signed. */
export interface SignedItem extends ListedItem {
  readonly number: string;
  readonly title: string;
  readonly placard: string | null;
}

export const itemsOf = (list: { readonly items: unknown } | null): readonly SignedItem[] =>
  list === null ? [] : (list.items as SignedItem[]);

/** Answers to 43.15 as they were entered; null before the entry. */
export function performanceOf(inspection: InspectionRow): Performance | null {
  const parsed = performance.safeParse(inspection.runUp);
  return parsed.success ? parsed.data : null;
}

/** The entry for one part as it will be signed: 43.11(a)(1), (2), how it was made, and the list in force. */
export function inspectionEntry(inspection: InspectionRow, work: InspectionWork) {
  const list = listInForce(inspection);
  return {
    aircraft: inspection.aircraft.registration,
    serial: inspection.aircraft.serial,
    inspection: inspection.kind as InspectionKind,
    title: work.title,
    part: work.part as InspectionPart,
    extent: inspection.extent,
    checklist: inspection.checklist,
    performance: performanceOf(inspection),
    ttisTenths: inspection.ttisTenths,
    completedOn: calendarDateOrNull(inspection.completedOn),
    list: list && { dated: calendarDate(list.dated), hash: list.hash },
    dispositions: inspection.determinations.map(({ hash }) => hash).toSorted((a, b) => a.localeCompare(b)),
  };
}

/** Hash of the entry; shown to the signer and demanded back with the signature. */
export const inspectionHash = (inspection: InspectionRow, work: InspectionWork): string =>
  contentHash(inspectionEntry(inspection, work));

/** The deferrals found inspected at this inspection. */
export const disposedAt = (inspection: InspectionRow): ReadonlySet<string> =>
  new Set(inspection.determinations.flatMap(({ deferralId }) => (deferralId ? [deferralId] : [])));
