import type { Tx } from '../db/client';
import { instant } from '../db/dates';
import type { PilotCommitment } from '../rules/proposals';
import { whereActive, wherePlanStands } from './active-releases';

/**
 * What else a pilot is to fly, in whatever aircraft: releases that count, and plans that are neither cancelled, over nor
 * released. Nobody named: nothing.
 * @param exceptPlanId the plan that the flight at hand comes from
 */
export async function pilotCommitments(
  tx: Tx,
  operatorId: string,
  now: Date,
  pilotId: string | null,
  exceptPlanId: string | undefined,
): Promise<readonly PilotCommitment[]> {
  if (!pilotId) return [];
  const times = { departAt: true, arriveAt: true } as const;
  const released = await tx.release.findMany({
    where: { operatorId, pilotId, ...whereActive(now) },
    select: times,
  });
  const planned = await tx.plannedFlight.findMany({
    where: {
      operatorId,
      pilotId,
      ...wherePlanStands(now),
      ...(exceptPlanId === undefined ? {} : { id: { not: exceptPlanId } }),
    },
    select: times,
  });
  return [...released, ...planned].map(({ departAt, arriveAt }) => ({
    departAt: instant(departAt),
    arriveAt: instant(arriveAt),
  }));
}
