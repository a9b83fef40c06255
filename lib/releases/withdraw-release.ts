import { command } from '../access/service';
import { instant } from '../db/dates';
import { touched } from '../fleet/require-aircraft';
import { tellOfFlight } from '../notices/tell-of-flight';
import { Refusal } from '../problems';
import { whyNotWithdrawn } from '../rules/release-state';
import { withdrawReleaseInput } from './flight-schema';
import { historyOf, requireOwnOrDesk, requireReleaseRow } from './history';

/**
 * Takes a release back: the desk withdraws it, or its pilot in command declines it. The other side is told. Refuses
 * `conflict` once the flight has set out or ended, and when it is void already.
 */
export const withdrawRelease = command({
  verb: 'flight.withdraw',
  input: withdrawReleaseInput,
  async run(context, { releaseId, words }) {
    const { tx, operatorId, actor, now, requestId } = context;
    const row = await requireReleaseRow(tx, operatorId, releaseId);
    requireOwnOrDesk(actor, row);
    const why = whyNotWithdrawn(historyOf(row));
    if (why !== null) throw new Refusal('conflict', { say: why });
    await tx.flightEvent.create({
      data: {
        id: requestId,
        operatorId,
        releaseId,
        what: 'withdrawn',
        at: now,
        words,
        recordedById: actor.personId,
        recordedAt: now,
      },
    });
    // Its hours are free again: releases of the same aircraft are asked about anew.
    touched(tx, row.aircraftId);
    const others = [row.pilotId, row.dispatcherId].filter((id) => id !== actor.personId);
    await tellOfFlight(context, others, {
      releaseId,
      what: 'release-withdrawn',
      eventId: requestId,
      discrepancyId: null,
      words,
    });
    return {
      value: { releaseId },
      audit: {
        subjectKind: 'release',
        subjectId: releaseId,
        detail: { aircraft: row.aircraft.registration, departAt: instant(row.departAt), words },
      },
    };
  },
});
