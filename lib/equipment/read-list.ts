import type { Tx } from '../db/client';
import type { StandingLine } from './check-file';
import { lineContent } from './line';

/** The lines that are on an aircraft's list, by name. */
export async function standingLines(tx: Tx, operatorId: string, aircraftId: string): Promise<StandingLine[]> {
  const rows = await tx.equipment.findMany({
    where: { operatorId, aircraftId, removedOn: null },
    orderBy: [{ name: 'asc' }, { id: 'asc' }],
  });
  return rows.map((row) => ({
    ...lineContent(row),
    id: row.id,
    confirmed: row.origin === null || row.vouchingId !== null,
  }));
}
