import { command } from '../access/service';
import { dateColumn } from '../db/dates';
import { factsChanged } from '../fleet/require-aircraft';
import { Refusal } from '../problems';
import { entryHash, requireWork } from './entry';
import { enterWorkInput } from './schema';

/** Writes the entry of 43.9(a). It may be written again until it is signed; the signature binds the last version. */
export const enterWork = command({
  verb: 'work.enter',
  input: enterWorkInput,
  async run({ tx, operatorId, actor, now }, input) {
    const work = await requireWork(tx, operatorId, input.workId);
    if (work.state !== 'started' && work.state !== 'entered') {
      throw new Refusal('conflict', {
        say: 'This work is signed or was given up. A correction is a new entry.',
      });
    }
    await tx.maintenanceAction.update({
      where: { operatorId_id: { operatorId, id: work.id } },
      data: {
        state: 'entered',
        description: input.description,
        references: input.references || null,
        partsUsed: input.partsUsed || null,
        completedOn: dateColumn(input.completedOn),
        performedBy: input.performedBy,
        ttisTenths: work.aircraft.ttisTenths,
        checkFlightNeeded: input.checkFlightNeeded,
        checkFlightReason: input.checkFlightReason,
        enteredById: actor.personId,
        enteredAt: now,
      },
    });
    await factsChanged(tx, operatorId, work.aircraftId);
    const hash = entryHash(await requireWork(tx, operatorId, work.id));
    return {
      value: { workId: work.id, entryHash: hash },
      audit: { subjectKind: 'work', subjectId: work.id, detail: { title: work.title, entryHash: hash } },
    };
  },
});
