import { Refusal } from '../../problems';
import { said } from '../../words/said';
import { endFactorInput } from '../account/schema';
import { command } from '../service';
import { keptFactors } from './kept';
import { endRecoveryCodes } from './recovery-codes';

/** Ends one of one's own factors. With the last one the recovery codes end too: there is nothing left to recover. */
export const endFactor = command({
  verb: 'second-factor.end',
  asksPassword: true,
  input: endFactorInput,
  async run({ tx, operatorId, actor, now }, { factorId }) {
    const { personId } = actor;
    const { count } = await tx.secondFactor.updateMany({
      where: { operatorId, personId, id: factorId, endedAt: null },
      data: { endedAt: now, endedById: personId },
    });
    if (count === 0)
      throw new Refusal('not_found', { say: said('You have no such second factor any more.') });
    const left = (await keptFactors(tx, { operatorId, personId })).length;
    if (left === 0) await endRecoveryCodes(tx, { operatorId, personId, now });
    return {
      value: { left },
      audit: { subjectKind: 'person', subjectId: personId, detail: { factorId, left } },
    };
  },
});
