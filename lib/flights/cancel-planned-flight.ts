import { command } from '../access/service';
import { Refusal } from '../problems';
import { cancelPlannedFlightInput } from './schema';
import { said } from '../words/said';

/** Takes a planned flight off the plan. It stays on record as cancelled. Refuses one that is cancelled already. */
export const cancelPlannedFlight = command({
  verb: 'flight.cancel-plan',
  input: cancelPlannedFlightInput,
  async run({ tx, operatorId, actor, now }, { plannedFlightId }) {
    const key = { operatorId_id: { operatorId, id: plannedFlightId } };
    const planned = await tx.plannedFlight.findUnique({
      where: key,
      include: { aircraft: { select: { registration: true } } },
    });
    if (!planned) throw new Refusal('not_found', { say: said('There is no such planned flight here.') });
    if (planned.cancelledAt)
      throw new Refusal('conflict', { say: said('This flight is cancelled already.') });
    await tx.plannedFlight.update({
      where: key,
      data: { cancelledAt: now, cancelledById: actor.personId },
    });
    return {
      value: { plannedFlightId },
      audit: {
        subjectKind: 'planned-flight',
        subjectId: plannedFlightId,
        detail: { aircraft: planned.aircraft.registration, departAt: planned.departAt.toISOString() },
      },
    };
  },
});
