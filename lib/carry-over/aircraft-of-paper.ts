import type { Tx } from '../db/client';
import type { Prisma } from '../db/client';
import { dayAtBase } from '../records/signature';
import type { AircraftOfPaper } from './write-up-on-paper';

const OF_PAPER = {
  base: { select: { zone: true } },
  type: { select: { rating: true } },
  equipment: { where: { removedOn: null }, select: { id: true, name: true, installed: true } },
  mel: {
    where: { endedAt: null },
    select: { items: { select: { id: true, title: true, equipmentId: true } } },
  },
} as const satisfies Prisma.AircraftInclude;

/** The operator's aircraft in use, as far as their papers are read by it; one of them where `id` is given. */
export async function aircraftOfPapers(
  tx: Tx,
  operatorId: string,
  now: Date,
  id?: string,
): Promise<AircraftOfPaper[]> {
  const rows = await tx.aircraft.findMany({
    where: { operatorId, retiredOn: null, ...(id === undefined ? {} : { id }) },
    include: OF_PAPER,
    orderBy: { registration: 'asc' },
  });
  return rows.map((row) => ({
    id: row.id,
    registration: row.registration,
    rating: row.type.rating,
    zone: row.base.zone,
    today: dayAtBase(now, row.base.zone),
    equipment: row.equipment,
    melItems: row.mel.flatMap(({ items }) => items),
  }));
}
