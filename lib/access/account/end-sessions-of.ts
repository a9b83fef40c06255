import { Refusal } from '../../problems';
import { said } from '../../words/said';
import { command } from '../service';
import { endSessions } from '../sessions';
import { ofPersonInput } from './schema';

/** A manager ends every session of somebody: a phone was lost, a laptop stood open. The password stays good. */
export const endSessionsOf = command({
  verb: 'person.end-sessions',
  input: ofPersonInput,
  async run({ tx, operatorId, actor, now }, { personId }) {
    const person = await tx.person.findUnique({
      where: { operatorId_id: { operatorId, id: personId } },
      select: { id: true },
    });
    if (!person) throw new Refusal('not_found', { say: said('There is no such person here.') });
    const ended = await endSessions(tx, { operatorId, personId, byId: actor.personId, now });
    return { value: { ended }, audit: { subjectKind: 'person', subjectId: personId, detail: { ended } } };
  },
});
