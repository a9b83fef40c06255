import { z } from 'zod';
import { query } from '../access/service';
import { instant } from '../db/dates';
import { nameIn, namesOf } from '../people/names';
import type { Instant } from '../rules/facts';
import type { ReleaseState } from '../rules/release-state';
import { whereAlarmed } from './active-releases';
import { peopleInHistory, standingOf, WITH_HISTORY, type FlightEventView } from './history';

/** A released flight whose facts changed after release, and that nobody has ended yet. */
export interface FlightAlarm {
  readonly releaseId: string;
  readonly aircraftId: string;
  readonly registration: string;
  readonly zone: string;
  readonly departAt: Instant;
  readonly arriveAt: Instant;
  readonly pilot: string | null;
  readonly state: ReleaseState;
  /** The newest void or warning, with its lines and words. */
  readonly event: FlightEventView;
  /** The asker is its pilot in command. */
  readonly isMine: boolean;
}

/**
 * Releases that went void or were warned about and are not closed, withdrawn or back, and not over for more than a day;
 * the newest alarm first. Everybody may see them; `isMine` tells the pilot's own.
 */
export const readAlarms = query({
  verb: 'release.read',
  input: z.object({}),
  async run({ tx, operatorId, actor, now }): Promise<FlightAlarm[]> {
    const rows = await tx.release.findMany({
      where: { operatorId, ...whereAlarmed(now) },
      include: {
        ...WITH_HISTORY,
        aircraft: { select: { registration: true, base: { select: { zone: true } } } },
      },
    });
    const names = await namesOf(tx, [
      ...rows.flatMap(({ pilotId }) => pilotId ?? []),
      ...peopleInHistory(rows),
    ]);
    const alarms = rows.flatMap((row): FlightAlarm[] => {
      const { state, events } = standingOf(row, actor, now, names);
      const event = [...events].reverse().find(({ what }) => what === 'void' || what === 'warned');
      if (!event) return [];
      return [
        {
          releaseId: row.id,
          aircraftId: row.aircraftId,
          registration: row.aircraft.registration,
          zone: row.aircraft.base.zone,
          departAt: instant(row.departAt),
          arriveAt: instant(row.arriveAt),
          pilot: row.pilotId ? nameIn(names, row.pilotId) : null,
          state,
          event,
          isMine: row.pilotId === actor.personId,
        },
      ];
    });
    return alarms.sort((a, b) => b.event.recordedAt.localeCompare(a.event.recordedAt));
  },
});
