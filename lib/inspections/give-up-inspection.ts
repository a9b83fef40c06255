import { command } from '../access/service';
import { factsChanged } from '../fleet/require-aircraft';
import { Refusal } from '../problems';
import { requireOpenInspection } from './inspection';
import { giveUpInspectionInput } from './schema';
import { said } from '../words/said';

/** Gives up an inspection of which nothing is signed yet. What is due stays due; what was found stays written up. */
export const giveUpInspection = command({
  verb: 'inspection.give-up',
  input: giveUpInspectionInput,
  async run({ tx, operatorId }, input) {
    const inspection = await requireOpenInspection(tx, operatorId, input.inspectionId);
    if (inspection.lists.length > 0 || inspection.work.some(({ signOff }) => signOff)) {
      throw new Refusal('conflict', {
        say: said(
          'Something of it is signed: the inspection ends with its signatures, as not airworthy if need be.',
        ),
      });
    }
    await tx.inspection.update({
      where: { operatorId_id: { operatorId, id: inspection.id } },
      data: { state: 'given-up', givenUpWhy: input.words },
    });
    for (const work of inspection.work) {
      await tx.maintenanceAction.update({
        where: { operatorId_id: { operatorId, id: work.id } },
        data: { state: 'abandoned', description: `Not done: ${input.words}` },
      });
    }
    await factsChanged(tx, operatorId, inspection.aircraftId);
    return {
      value: { inspectionId: inspection.id },
      audit: {
        subjectKind: 'inspection',
        subjectId: inspection.id,
        detail: {
          aircraft: inspection.aircraft.registration,
          kind: inspection.kind,
          words: input.words,
        },
      },
    };
  },
});
