import { calendarDate } from '../db/dates';
import type { Prisma, Tx } from '../db/client';
import type { SpecialFlightPermit } from '../rules/operations';
import { coversOf } from './covered';

export const PERMIT_ROW = {
  from: { select: { ident: true } },
  to: { select: { ident: true } },
  inspection: true,
  release: { select: { id: true } },
} as const satisfies Prisma.SpecialFlightPermitInclude;
export type PermitRow = Prisma.SpecialFlightPermitGetPayload<{ include: typeof PERMIT_ROW }>;

/** One permit of the operator with what the rules need of it, or null. */
export const readPermitRow = (tx: Tx, operatorId: string, id: string): Promise<PermitRow | null> =>
  tx.specialFlightPermit.findUnique({
    where: { operatorId_id: { operatorId, id } },
    include: PERMIT_ROW,
  });

/** A recorded permit as the rules take it. */
export const permitFacts = (row: PermitRow): SpecialFlightPermit => ({
  reference: row.reference,
  limits: [...(row.limits as readonly string[]), `Aboard: ${row.crew}`],
  goodFrom: calendarDate(row.goodFrom),
  goodThrough: calendarDate(row.goodThrough),
  fromIdent: row.from.ident,
  toIdent: row.to.ident,
  covers: coversOf(row.covers).map(({ id }) => id),
  inspection: row.inspection ? 'signed' : row.asksInspection ? 'owed' : 'not-asked',
  used: row.release !== null,
});
