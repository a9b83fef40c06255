import { command } from '../access/service';
import { requireAircraft } from '../fleet/require-aircraft';
import { startWalkaroundInput } from './schema';

/** Begins a walkaround; its id is the request's. Refuses `not_found` for an aircraft that is not this operator's. */
export const startWalkaround = command({
  verb: 'walkaround.start',
  input: startWalkaroundInput,
  async run({ tx, operatorId, actor, requestId }, input) {
    const aircraft = await requireAircraft(tx, operatorId, input.aircraftId);
    await tx.walkaround.create({
      data: {
        id: requestId,
        operatorId,
        aircraftId: aircraft.id,
        personId: actor.personId,
        startedAt: new Date(input.startedAt),
        stations: {},
      },
    });
    return {
      value: { walkaroundId: requestId },
      audit: { subjectKind: 'walkaround', subjectId: requestId, detail: { aircraft: aircraft.registration } },
    };
  },
});
