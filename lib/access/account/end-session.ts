import { Refusal } from '../../problems';
import { said } from '../../words/said';
import { command } from '../service';
import { endSessions } from '../sessions';
import { endSessionInput } from './schema';

/** Ends one of one's own sessions, or all but the one that asks. One that has ended already stays as it is. */
export const endSession = command({
  verb: 'session.end',
  input: endSessionInput,
  async run({ tx, operatorId, actor, now }, asked) {
    const { personId } = actor;
    const about = (ended: number) => ({
      value: { ended },
      audit: { subjectKind: 'person', subjectId: personId, detail: { which: asked.which, ended } },
    });
    if (asked.which === 'others')
      return about(
        await endSessions(tx, { operatorId, personId, byId: personId, now, except: actor.session?.id }),
      );
    const where = { operatorId, personId, id: asked.sessionId };
    const row = await tx.session.findFirst({ where, select: { id: true } });
    // Somebody else's session is not there for this person.
    if (!row) throw new Refusal('not_found', { say: said('There is no such session of yours.') });
    const { count } = await tx.session.updateMany({
      where: { ...where, endedAt: null },
      data: { endedAt: now, endedById: personId },
    });
    return about(count);
  },
});
