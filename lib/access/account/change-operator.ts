import { factsChanged } from '../../fleet/require-aircraft';
import { fieldRefusal } from '../../problems';
import { said } from '../../words/said';
import { keptFactors } from '../second-factor/kept';
import { command } from '../service';
import { changeOperatorInput } from './schema';

/**
 * Settings of the operator; what is left out stays. Who asks everybody for a second factor must have one: otherwise the
 * last manager could shut everybody out, and himself. Whether a second factor is asked takes the password again, as ending
 * one does: whoever sits at a manager's open screen could otherwise take it away from everybody who signs.
 */
export const changeOperator = command({
  verb: 'operator.change',
  input: changeOperatorInput,
  asksPassword: (asked) => asked.signersNeedSecondFactor !== undefined,
  async run({ tx, operatorId, actor }, { requestId: _requestId, password: _password, ...asked }) {
    if (asked.signersNeedSecondFactor) {
      const own = await keptFactors(tx, { operatorId, personId: actor.personId });
      if (own.length === 0)
        throw fieldRefusal(
          'signersNeedSecondFactor',
          said('Set up a second factor of your own first, under your account.'),
        );
    }
    const changes = Object.fromEntries(Object.entries(asked).filter(([, value]) => value !== undefined));
    await tx.operator.updateMany({ where: { id: operatorId }, data: changes });
    // Whether the school is certificated under part 141 is a fact of every aircraft (141.39).
    if ('part141' in changes) {
      for (const { id } of await tx.aircraft.findMany({ where: { operatorId }, select: { id: true } }))
        await factsChanged(tx, operatorId, id);
    }
    return {
      value: { changed: Object.keys(changes) },
      audit: { subjectKind: 'operator', subjectId: operatorId, detail: changes },
    };
  },
});
