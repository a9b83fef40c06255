import type { Context } from '../access/service';
import { calendarDate } from '../db/dates';
import type { Prisma, Tx } from '../db/client';
import type { SpecialFlightPermit } from '../rules/operations';
import { whereActive, whereSpendsPermit } from '../releases/active-releases';
import { coversOf } from './covered';

export const PERMIT_ROW = {
  from: { select: { ident: true } },
  to: { select: { ident: true } },
  inspection: true,
  releases: { where: whereSpendsPermit, select: { id: true } },
} as const satisfies Prisma.SpecialFlightPermitInclude;
export type PermitRow = Prisma.SpecialFlightPermitGetPayload<{ include: typeof PERMIT_ROW }>;

/** One permit of the operator with what the rules need of it, or null. */
export const readPermitRow = (tx: Tx, operatorId: string, id: string): Promise<PermitRow | null> =>
  tx.specialFlightPermit.findUnique({
    where: { operatorId_id: { operatorId, id } },
    include: PERMIT_ROW,
  });

/**
 * The write-ups the permit names that are another matter by now: judged, deferred or observed again after the permit was
 * recorded, or after the inspection it asks for, whichever is later. Whoever issued or inspected did not know of that, so
 * the permit stands in for them no more (strict reading of 21.199(a)). A new paper, or one more that names them, does.
 */
export async function changedSince(
  tx: Tx,
  operatorId: string,
  {
    covers,
    signedAt,
    inspection,
  }: Pick<PermitRow, 'covers' | 'signedAt'> & {
    readonly inspection: { readonly signedAt: Date } | null;
  },
): Promise<ReadonlySet<string>> {
  const named = coversOf(covers).flatMap(({ kind, id }) => (kind === 'discrepancy' ? [id] : []));
  if (named.length === 0) return new Set();
  const after = { gt: inspection && inspection.signedAt > signedAt ? inspection.signedAt : signedAt };
  const about = { operatorId, discrepancyId: { in: named } };
  const judged = await tx.determination.findMany({
    where: { ...about, signedAt: after },
    select: { discrepancyId: true },
  });
  const deferred = await tx.deferral.findMany({
    where: { ...about, begunAt: after },
    select: { discrepancyId: true },
  });
  const observed = await tx.finding.findMany({
    where: { operatorId, relatedId: { in: named }, receivedAt: after },
    select: { relatedId: true },
  });
  return new Set([
    ...[...judged, ...deferred].map(({ discrepancyId }) => discrepancyId),
    ...observed.flatMap(({ relatedId }) => relatedId ?? []),
  ]);
}

/** Whether a permit names this write-up under which no flight was released yet, or one that has not ended. */
export async function namedByOpenPermit(
  { tx, operatorId, now }: Pick<Context, 'tx' | 'operatorId' | 'now'>,
  writeUp: { readonly id: string; readonly aircraftId: string },
): Promise<boolean> {
  const permits = await tx.specialFlightPermit.findMany({
    where: {
      operatorId,
      aircraftId: writeUp.aircraftId,
      OR: [{ releases: { none: whereSpendsPermit } }, { releases: { some: whereActive(now) } }],
    },
    select: { covers: true },
  });
  return permits.some(({ covers }) =>
    coversOf(covers).some(({ kind, id }) => kind === 'discrepancy' && id === writeUp.id),
  );
}

/** A recorded permit as the rules take it. `changed`: what it names and no longer stands in for, of {@link changedSince}. */
export const permitFacts = (row: PermitRow, changed: ReadonlySet<string>): SpecialFlightPermit => ({
  reference: row.reference,
  limits: [...(row.limits as readonly string[]), `Aboard: ${row.crew}`],
  goodFrom: calendarDate(row.goodFrom),
  goodThrough: calendarDate(row.goodThrough),
  fromIdent: row.from.ident,
  toIdent: row.to.ident,
  covers: coversOf(row.covers)
    .map(({ id }) => id)
    .filter((id) => !changed.has(id)),
  inspection: row.inspection ? 'signed' : row.asksInspection ? 'owed' : 'not-asked',
  used: row.releases.length > 0,
});
