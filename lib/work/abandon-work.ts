import { command } from '../access/service';
import { factsChanged } from '../fleet/require-aircraft';
import { fieldRefusal, Refusal } from '../problems';
import { refuseOtherDoor } from './enter-work';
import { requireWork } from './entry';
import { abandonWorkInput } from './schema';
import { said } from '../words/said';

/**
 * Gives up work that was never done (begun on the wrong write-up, say). The write-up stays open. Work whose entry says
 * something was done cannot be given up, nor can the work a deferral stands on: both end with a signature. A correction
 * can be given up until it is signed; the entry it corrects stands then.
 */
export const abandonWork = command({
  verb: 'work.abandon',
  input: abandonWorkInput,
  async run({ tx, operatorId, actor }, input) {
    const work = await requireWork(tx, operatorId, input.workId);
    refuseOtherDoor(work);
    // A correction given up leaves the entry it would have corrected, however far it had come.
    const correction = work.supersedesId !== null;
    if (work.state !== 'started' && !(correction && work.state === 'entered')) {
      throw new Refusal('conflict', { say: said('An entry was written: this work ends with a signature.') });
    }
    if (work.deferralId && !correction)
      throw fieldRefusal('words', said('The deferral stands on this work; it has to be signed.'));
    // An aircraft may stand open under it: only who began it, or a mechanic, can say that nothing was done.
    if (work.startedById !== actor.personId && !actor.roles.includes('mechanic')) {
      throw new Refusal('conflict', {
        say: said('Somebody else began this work: they or a mechanic can give it up.'),
      });
    }
    await tx.maintenanceAction.update({
      where: { operatorId_id: { operatorId, id: work.id } },
      data: {
        state: 'abandoned',
        description: `${correction ? 'Correction given up' : 'Not done'}: ${input.words}`,
      },
    });
    await factsChanged(tx, operatorId, work.aircraftId);
    return {
      value: { workId: work.id },
      audit: { subjectKind: 'work', subjectId: work.id, detail: { title: work.title, words: input.words } },
    };
  },
});
