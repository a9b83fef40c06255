import { command } from '../access/service';
import { dateColumn } from '../db/dates';
import { Refusal } from '../problems';
import { addItems } from './add-items';
import { requireOpenVisit } from './require-visit';
import { changeVisitInput } from './schema';
import { said } from '../words/said';

/** Changes an open visit: its name, words and day, and what is in it. What is taken out stays on record as taken out. */
export const changeVisit = command({
  verb: 'visit.change',
  input: changeVisitInput,
  async run(context, input) {
    const { tx, operatorId, actor, now } = context;
    const visit = await requireOpenVisit(context, input.visitId);
    const known = new Set(visit.items.map(({ id }) => id));
    if (input.removeItemIds.some((id) => !known.has(id))) {
      throw new Refusal('conflict', {
        say: said('Something to be taken out is not in this visit any more.'),
      });
    }
    await tx.visit.update({
      where: { operatorId_id: { operatorId, id: visit.id } },
      data: {
        title: input.title,
        words: input.words,
        plannedOn: input.plannedOn === null ? null : dateColumn(input.plannedOn),
      },
    });
    // First out, then in: the same thing taken out and put back in one go is one change.
    await tx.visitItem.updateMany({
      where: { operatorId, id: { in: input.removeItemIds } },
      data: { removedAt: now, removedById: actor.personId },
    });
    await addItems(context, visit, {
      discrepancyIds: input.addDiscrepancyIds,
      requirementIds: input.addRequirementIds,
    });
    return {
      value: { visitId: visit.id },
      audit: {
        subjectKind: 'visit',
        subjectId: visit.id,
        detail: {
          aircraft: visit.aircraft.registration,
          title: input.title,
          added: [...input.addDiscrepancyIds, ...input.addRequirementIds],
          removed: input.removeItemIds,
        },
      },
    };
  },
});
