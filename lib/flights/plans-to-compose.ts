import { z } from 'zod';
import { query } from '../access/service';
import type { Prisma } from '../db/client';
import { instant } from '../db/dates';
import { nameIn, namesOf } from '../people/names';
import { wherePlanStands } from '../releases/active-releases';
import { stateOf, WITH_HISTORY } from '../releases/history';
import type { PlanToCompose } from '../releases/prefill';
import type { Purpose } from '../rules/operations';
import type { ReleaseStateName } from '../rules/release-state';
import { placesOfPlans } from './places-of-plans';

/** A planned flight the desk may compose next, with the words that tell it from others. */
export interface PlanChoice extends PlanToCompose {
  readonly registration: string;
  readonly pilot: string | null;
  readonly words: string;
  readonly release: PlanRelease | null;
}

/** The newest release of a planned flight. */
export interface PlanRelease {
  readonly releaseId: string;
  readonly state: ReleaseStateName;
}

const MOST = 6;

/**
 * The planned flights to be released next: not over, not cancelled, not released yet (or void or withdrawn since), soonest
 * first, six at most. With `plannedFlightId` that one alone, whatever has become of it, unless it was cancelled.
 */
export const readPlansToCompose = query({
  verb: 'planned-flights.read',
  input: z.object({ plannedFlightId: z.uuid().optional() }),
  async run({ tx, operatorId, now }, { plannedFlightId }): Promise<PlanChoice[]> {
    const rows = await tx.plannedFlight.findMany({
      where: {
        operatorId,
        ...(plannedFlightId ? { id: plannedFlightId, cancelledAt: null } : wherePlanStands(now)),
        aircraft: { retiredOn: null },
      },
      include: WITH_RELEASES,
      orderBy: [{ departAt: 'asc' }, { id: 'asc' }],
      take: MOST,
    });
    const placeOf = await placesOfPlans(tx, operatorId);
    const names = await namesOf(
      tx,
      rows.flatMap(({ pilotId }) => pilotId ?? []),
    );
    return rows.map((row): PlanChoice => {
      const { base, registration } = row.aircraft;
      return {
        id: row.id,
        aircraftId: row.aircraftId,
        registration,
        pilotId: row.pilotId,
        pilot: row.pilotId ? nameIn(names, row.pilotId) : null,
        departAt: instant(row.departAt),
        arriveAt: instant(row.arriveAt),
        plannedTenths: row.plannedTenths,
        from: placeOf(row.fromIdent, base),
        to: placeOf(row.toIdent, base),
        rules: row.rules as PlanChoice['rules'],
        purpose: row.purpose as Purpose | null,
        words: row.words,
        release: newestRelease(row.releases),
      };
    });
  },
});

/** What the newest release of a plan has become needs this of each. */
export const RELEASES_OF_PLAN = {
  include: WITH_HISTORY,
  orderBy: { releasedAt: 'desc' },
  take: 1,
} as const satisfies Prisma.PlannedFlight$releasesArgs;

const WITH_RELEASES = {
  aircraft: { select: { registration: true, base: true } },
  releases: RELEASES_OF_PLAN,
} as const satisfies Prisma.PlannedFlightInclude;

/** The newest release of a plan and what has become of it, or null. */
export function newestRelease(
  releases: Prisma.PlannedFlightGetPayload<{ include: typeof WITH_RELEASES }>['releases'],
): PlanRelease | null {
  const [row] = releases;
  return row ? { releaseId: row.id, state: stateOf(row).name } : null;
}
