import { command } from '../access/service';
import { instant } from '../db/dates';
import { touched } from '../fleet/require-aircraft';
import { tellOfFlight } from '../notices/tell-of-flight';
import { fieldRefusal, Refusal } from '../problems';
import { releaseState, whyNotLogged, type Logged, type ReleaseState } from '../rules/release-state';
import { logFlightInput } from './flight-schema';
import { historyOf, requireOwnOrDesk, requireReleaseRow } from './history';

export interface FlightLogged {
  readonly releaseId: string;
  readonly what: Logged;
  /** ISO instant. */
  readonly at: string;
  /** The state with it on record. */
  readonly state: ReleaseState;
}

/**
 * Writes down that a released flight took off, landed, or ended without meters. For its pilot in command and the desk. May
 * be written down late; a take-off before the release went void makes it a warned flight in the air, and its people are told.
 * Refuses `conflict` when the order of things does not allow it, and by field a time that cannot be.
 */
export const logFlight = command({
  verb: 'flight.log',
  input: logFlightInput,
  async run(context, { releaseId, what, at: said, words }) {
    const { tx, operatorId, actor, now, requestId } = context;
    const row = await requireReleaseRow(tx, operatorId, releaseId);
    requireOwnOrDesk(actor, row);
    const at = said === 'now' ? now : new Date(said);
    const history = historyOf(row);
    const refused = whyNotLogged(history, what, instant(at), instant(now), instant(row.departAt));
    if (refused?.field === 'at') throw fieldRefusal('at', refused.because);
    if (refused) throw new Refusal('conflict', { say: refused.because });
    const recordedAt = instant(now);
    await tx.flightEvent.create({
      data: {
        id: requestId,
        operatorId,
        releaseId,
        what,
        at,
        words,
        recordedById: actor.personId,
        recordedAt: now,
      },
    });
    const state = releaseState({
      ...history,
      events: [...history.events, { what, at: instant(at), recordedAt }],
    });
    // Hours are spent, or free again: releases of the same aircraft are asked about anew.
    touched(tx, row.aircraftId);
    const gone = row.events.find((event) => event.what === 'void');
    if (what === 'airborne' && gone) {
      await tellOfFlight(context, [row.pilotId, row.dispatcherId], {
        releaseId,
        what: 'release-warned',
        eventId: requestId,
        discrepancyId: gone.discrepancyId,
        words: IN_THE_AIR_BEFORE,
      });
    }
    const value: FlightLogged = { releaseId, what, at: instant(at), state };
    return {
      value,
      audit: {
        subjectKind: 'release',
        subjectId: releaseId,
        detail: {
          aircraft: row.aircraft.registration,
          what,
          at: instant(at),
          words,
          state: state.name,
        },
      },
    };
  },
});

const IN_THE_AIR_BEFORE =
  'The release went void, but the flight was in the air before that: its take-off was logged late. Its pilot in command ' +
  'decides, and discontinues the flight when the aircraft is not airworthy (14 CFR 91.7(b)). Reach the pilot.';
