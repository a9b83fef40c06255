import { command } from '../access/service';
import { dateColumn } from '../db/dates';
import { requireAircraft } from '../fleet/require-aircraft';
import { Refusal } from '../problems';
import { addItems } from './add-items';
import { openVisitInput } from './schema';
import { said } from '../words/said';

/**
 * Opens a visit: write-ups and what falls due, of one aircraft, to be done in one stay. It changes nothing about any of
 * them; each is still judged, done and signed for itself. Refuses a visit with nothing in it.
 */
export const openVisit = command({
  verb: 'visit.open',
  input: openVisitInput,
  async run(context, input) {
    const { tx, operatorId, actor, now, requestId } = context;
    const aircraft = await requireAircraft(tx, operatorId, input.aircraftId);
    if (input.discrepancyIds.length + input.requirementIds.length === 0) {
      throw new Refusal('invalid', { say: said('Choose at least one thing to be done in this visit.') });
    }
    await tx.visit.create({
      data: {
        id: requestId,
        operatorId,
        aircraftId: aircraft.id,
        title: input.title,
        words: input.words,
        plannedOn: input.plannedOn === null ? null : dateColumn(input.plannedOn),
        openedById: actor.personId,
        openedAt: now,
      },
    });
    await addItems(context, { id: requestId, aircraftId: aircraft.id }, input);
    return {
      value: { visitId: requestId },
      audit: {
        subjectKind: 'visit',
        subjectId: requestId,
        detail: {
          aircraft: aircraft.registration,
          title: input.title,
          discrepancyIds: input.discrepancyIds,
          requirementIds: input.requirementIds,
        },
      },
    };
  },
});
