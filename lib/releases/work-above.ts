import type { Tx } from '../db/client';
import { formatTenths } from '../rules/hours';

/**
 * What is on record of this aircraft at more hours than it has now: work entered and inspections done while a mistyped
 * reading stood. An inspection counted from too many hours falls due too late (91.409(b) for the 100 hours), so it is said.
 */
export async function workAbove(
  tx: Tx,
  operatorId: string,
  aircraftId: string,
  ttisTenths: number | null,
): Promise<string[]> {
  if (ttisTenths === null) return [];
  const above = { operatorId, ttisTenths: { gt: ttisTenths } };
  const work = await tx.maintenanceAction.findMany({
    where: { ...above, aircraftId, state: { in: ['entered', 'signed'] } },
    select: { title: true, ttisTenths: true },
    orderBy: { ttisTenths: 'asc' },
  });
  const done = await tx.compliance.findMany({
    where: { ...above, requirement: { aircraftId } },
    select: { ttisTenths: true, requirement: { select: { name: true } } },
    orderBy: { ttisTenths: 'asc' },
  });
  return [
    ...work.map((one) => ({ title: one.title, tenths: one.ttisTenths ?? ttisTenths })),
    ...done.map((one) => ({ title: one.requirement.name, tenths: one.ttisTenths })),
  ].map(
    ({ title, tenths }) =>
      `"${title}" is on record at ${formatTenths(tenths)} h, more than the aircraft has now. ` +
      'Tell whoever signed it.',
  );
}
