import { command } from '../access/service';
import { requireOpenVisit } from './require-visit';
import { closeVisitInput } from './schema';

/**
 * Closes a visit. It may close while something in it is not done: that stays open in the queue and the due list, and the
 * screen says so before and after. Closing signs nothing.
 */
export const closeVisit = command({
  verb: 'visit.close',
  input: closeVisitInput,
  async run(context, { visitId }) {
    const { tx, operatorId, actor, now } = context;
    const visit = await requireOpenVisit(context, visitId);
    await tx.visit.update({
      where: { operatorId_id: { operatorId, id: visit.id } },
      data: { closedAt: now, closedById: actor.personId },
    });
    return {
      value: { visitId: visit.id },
      audit: {
        subjectKind: 'visit',
        subjectId: visit.id,
        detail: { aircraft: visit.aircraft.registration, title: visit.title },
      },
    };
  },
});
