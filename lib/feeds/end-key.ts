import { command } from '../access/service';
import { Refusal } from '../problems';
import { endKeyInput } from './schema';
import { said } from '../words/said';

/** Ends a key for good: the next request with it is refused. One that has ended already stays as it is. */
export const endKey = command({
  verb: 'key.end',
  input: endKeyInput,
  async run({ tx, operatorId, actor, now }, { keyId }) {
    const key = await tx.accessKey.findUnique({ where: { operatorId_id: { operatorId, id: keyId } } });
    if (!key) throw new Refusal('not_found', { say: said('There is no such key here.') });
    await tx.accessKey.updateMany({
      where: { operatorId, id: keyId, endedAt: null },
      data: { endedAt: now, endedById: actor.personId },
    });
    return {
      value: { keyId },
      audit: { subjectKind: 'access-key', subjectId: keyId, detail: { name: key.name, prefix: key.prefix } },
    };
  },
});
