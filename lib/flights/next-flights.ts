import type { Tx } from '../db/client';
import { instant } from '../db/dates';
import { whereActive, wherePlanStands } from '../releases/active-releases';
import type { Instant } from '../rules/facts';

/**
 * When each aircraft next departs: planned flights that are not cancelled nor released, and released ones that are not
 * back, void or withdrawn, as far as they end after `now`; the earliest of them. In the past while the aircraft is out. An aircraft without one is not in it.
 */
export async function nextFlights(tx: Tx, operatorId: string, now: Date): Promise<Map<string, Instant>> {
  const select = { aircraftId: true, departAt: true } as const;
  const planned = await tx.plannedFlight.findMany({
    where: { operatorId, ...wherePlanStands(now) },
    select,
  });
  const released = await tx.release.findMany({
    where: { AND: [whereActive(now)], operatorId, arriveAt: { gt: now } },
    select,
  });
  const next = new Map<string, Instant>();
  for (const { aircraftId, departAt } of [...planned, ...released]) {
    const at = instant(departAt);
    const known = next.get(aircraftId);
    if (known === undefined || at < known) next.set(aircraftId, at);
  }
  return next;
}
