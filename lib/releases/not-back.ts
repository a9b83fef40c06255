import { z } from 'zod';
import { query } from '../access/service';
import type { Prisma } from '../db/client';
import { instant } from '../db/dates';
import type { Answer, Line } from '../rules/verdict';
import { metersOfReleases, type FlightReading } from './readings';

const TWO_DAYS_MS = 2 * 86_400_000;

/**
 * Released flights that are not back: the meters were read at departure and not at return, or nobody has read any and the
 * flight was to be back less than two days ago. Older ones of which nobody read anything are past all asking. Corrections
 * do not matter here: where a reading was superseded, another one of the same moment stands.
 */
export const notBack = (now: Date): Prisma.ReleaseWhereInput => ({
  readings: { none: { moment: 'in' } },
  OR: [
    { readings: { some: { moment: 'out' } } },
    { arriveAt: { gte: new Date(now.getTime() - TWO_DAYS_MS) } },
  ],
});

/** One's own released flight of an aircraft, for the pilot in command. */
export interface OwnFlight {
  readonly releaseId: string;
  readonly departAt: string;
  readonly arriveAt: string;
  /** How it was released; a record of that moment. */
  readonly outcome: 'go' | 'go-with-limits';
  readonly limits: readonly Line[];
  /** The meters at departure, once they were read. */
  readonly out: FlightReading | null;
}

/** The flights of this aircraft that the asking person is pilot in command of and that are not back, soonest first. */
export const readOwnFlights = query({
  verb: 'release.read',
  input: z.object({ aircraftId: z.uuid() }),
  async run({ tx, operatorId, actor, now }, { aircraftId }): Promise<OwnFlight[]> {
    const rows = await tx.release.findMany({
      where: { operatorId, aircraftId, pilotId: actor.personId, ...notBack(now) },
      orderBy: { departAt: 'asc' },
    });
    const meters = await metersOfReleases(
      tx,
      operatorId,
      rows.map((row) => row.id),
    );
    return rows.map((row) => ({
      releaseId: row.id,
      departAt: instant(row.departAt),
      arriveAt: instant(row.arriveAt),
      outcome: row.outcome as OwnFlight['outcome'],
      limits: (row.answer as unknown as Answer).lines.filter(({ effect }) => effect === 'limits'),
      out: meters.get(row.id)?.out ?? null,
    }));
  },
});
