import { command } from '../access/service';
import { Refusal } from '../problems';
import { finishWalkaroundInput } from './schema';

/** Ends one's own walkaround. A station nobody answered stays "not looked at": never silently good. */
export const finishWalkaround = command({
  verb: 'walkaround.finish',
  input: finishWalkaroundInput,
  async run({ tx, operatorId, actor, now }, input) {
    const key = { operatorId_id: { operatorId, id: input.walkaroundId } };
    const walk = await tx.walkaround.findUnique({ where: key });
    if (!walk || walk.personId !== actor.personId) throw new Refusal('not_found');
    if (walk.finishedAt) throw new Refusal('conflict', { say: 'This walkaround is already finished.' });
    await tx.walkaround.update({ where: key, data: { finishedAt: now, stations: input.stations } });
    const answers = Object.values(input.stations);
    const count = (answer: string) => answers.filter((given) => given === answer).length;
    const value = {
      walkaroundId: walk.id,
      good: count('good'),
      withFinding: count('finding'),
      notLookedAt: count('not-looked-at'),
    };
    return { value, audit: { subjectKind: 'walkaround', subjectId: walk.id, detail: value } };
  },
});
