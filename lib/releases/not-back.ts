import { z } from 'zod';
import { query } from '../access/service';
import { instant } from '../db/dates';
import type { ReleaseStateName } from '../rules/release-state';
import type { Line, Outcome } from '../rules/verdict';
import { notBack } from './active-releases';
import { standsNow, WITH_HISTORY } from './history';
import { metersOfReleases, type FlightReading } from './readings';
import { stillAsked } from './unread-hours';

export { notBack } from './active-releases';

/** One's own released flight of an aircraft, for the pilot in command. */
export interface OwnFlight {
  readonly releaseId: string;
  readonly departAt: string;
  readonly arriveAt: string;
  /** What has become of it. Void: nobody departs on it, and it is only asked for its meters. */
  readonly state: ReleaseStateName;
  /** How it was released; a record of that moment. No go once it is void. */
  readonly outcome: Outcome;
  /** Limits at release and what its pilot was warned of since; of a void one, what bars. */
  readonly limits: readonly Line[];
  /** The meters at departure, once they were read. */
  readonly out: FlightReading | null;
}

/** The flights of this aircraft that the asking person is pilot in command of and that are not back, soonest first. */
export const readOwnFlights = query({
  verb: 'release.read',
  input: z.object({ aircraftId: z.uuid() }),
  async run({ tx, operatorId, actor, now }, { aircraftId }): Promise<OwnFlight[]> {
    const asked = await tx.release.findMany({
      where: { operatorId, aircraftId, pilotId: actor.personId, ...notBack(now) },
      include: WITH_HISTORY,
      orderBy: { departAt: 'asc' },
    });
    const rows = await stillAsked(tx, operatorId, asked);
    const meters = await metersOfReleases(
      tx,
      operatorId,
      rows.map((row) => row.id),
    );
    return rows.map((row) => ({
      releaseId: row.id,
      departAt: instant(row.departAt),
      arriveAt: instant(row.arriveAt),
      ...standsNow(row),
      out: meters.get(row.id)?.out ?? null,
    }));
  },
});
