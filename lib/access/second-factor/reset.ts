import { Refusal } from '../../problems';
import { said } from '../../words/said';
import { resetFactorInput } from '../account/schema';
import { command } from '../service';
import { endSessions } from '../sessions';
import { endAllFactors } from './end-all';

/**
 * A manager ends everything somebody has beside the password, because the phone is lost and so are the recovery codes. It
 * ends the sessions too. Not one's own: whoever sits at a manager's open screen could otherwise strip the account.
 */
export const resetSecondFactor = command({
  verb: 'person.reset-second-factor',
  asksPassword: true,
  input: resetFactorInput,
  async run({ tx, operatorId, actor, now }, { personId, why }) {
    if (personId === actor.personId)
      throw new Refusal('not_allowed', {
        say: said('Your own second factor is ended under your account, or by another manager.'),
      });
    const person = await tx.person.findUnique({
      where: { operatorId_id: { operatorId, id: personId } },
      select: { id: true },
    });
    if (!person) throw new Refusal('not_found', { say: said('There is no such person here.') });
    const factors = await endAllFactors(tx, { operatorId, personId, byId: actor.personId, now });
    const sessions = await endSessions(tx, { operatorId, personId, byId: actor.personId, now });
    return {
      value: { factors, sessions },
      audit: { subjectKind: 'person', subjectId: personId, detail: { why, factors, sessions } },
    };
  },
});
