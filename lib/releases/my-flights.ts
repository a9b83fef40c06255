import { z } from 'zod';
import { query } from '../access/service';
import { instant } from '../db/dates';
import { nameIn, namesOf } from '../people/names';
import type { Instant } from '../rules/facts';
import type { ProposedFlight } from '../rules/operations';
import type { Answer } from '../rules/verdict';
import { notBack, recentlyVoid } from './active-releases';
import { peopleInHistory, standingOf, WITH_HISTORY, type ReleaseStanding } from './history';
import { metersOfReleases, type FlightReading } from './readings';
import { stillAsked } from './unread-hours';

/** A released flight of one's own, for the phone: everything to read, sign and log it. */
export interface MyFlight extends ReleaseStanding {
  readonly releaseId: string;
  readonly aircraftId: string;
  readonly registration: string;
  readonly departAt: Instant;
  readonly arriveAt: Instant;
  /** Idents and zones of both ends; times are told in the zone of their place. */
  readonly from: { readonly ident: string; readonly zone: string };
  readonly to: { readonly ident: string; readonly zone: string };
  readonly rules: 'VFR' | 'IFR';
  readonly outcome: 'go' | 'go-with-limits';
  readonly answer: Answer;
  /** Of the release; with the acceptance goes `answerHash`. */
  readonly hash: string;
  readonly dispatcher: string;
  readonly releasedAt: Instant;
  /** The meters at departure, once they were read. */
  readonly out: FlightReading | null;
}

/** The asker's own released flights that have not ended: also void ones that nobody has closed, soonest first. */
export const readMyFlights = query({
  verb: 'release.read',
  input: z.object({ releaseId: z.uuid().optional() }),
  async run({ tx, operatorId, actor, now }, { releaseId }): Promise<MyFlight[]> {
    const found = await tx.release.findMany({
      where: {
        operatorId,
        pilotId: actor.personId,
        // One that is asked for by its number is shown whatever has become of it.
        ...(releaseId ? { id: releaseId } : { OR: [notBack(now), recentlyVoid(now)] }),
      },
      include: { ...WITH_HISTORY, aircraft: { select: { registration: true } } },
      orderBy: [{ departAt: 'asc' }, { id: 'asc' }],
    });
    const rows = releaseId ? found : await stillAsked(tx, operatorId, found);
    const ids = rows.map(({ id }) => id);
    const meters = await metersOfReleases(tx, operatorId, ids);
    const names = await namesOf(tx, [
      ...rows.map(({ dispatcherId }) => dispatcherId),
      ...peopleInHistory(rows),
    ]);
    return rows.map((row) => {
      const flight = row.flight as unknown as ProposedFlight;
      return {
        ...standingOf(row, actor, now, names),
        releaseId: row.id,
        aircraftId: row.aircraftId,
        registration: row.aircraft.registration,
        departAt: instant(row.departAt),
        arriveAt: instant(row.arriveAt),
        from: { ident: flight.from.ident, zone: flight.from.zone },
        to: { ident: flight.to.ident, zone: flight.to.zone },
        rules: flight.rules,
        outcome: row.outcome as MyFlight['outcome'],
        answer: row.answer as unknown as Answer,
        hash: row.hash,
        dispatcher: nameIn(names, row.dispatcherId),
        releasedAt: instant(row.releasedAt),
        out: meters.get(row.id)?.out ?? null,
      };
    });
  },
});
