import { command } from '../access/service';
import { Refusal } from '../problems';
import { endHouseRuleInput } from './schema';
import { factsOfReachedChanged, newestOf } from './set-house-rule';
import { said } from '../words/said';

/**
 * Ends a rule of the house by a version that does not hold; all versions stay on record. Refuses `conflict` when somebody
 * changed it since the writer looked, or it is ended already.
 */
export const endHouseRule = command({
  verb: 'house-rule.end',
  input: endHouseRuleInput,
  async run(context, { ruleId, seenVersion, why }) {
    const { tx, operatorId, actor, now, requestId } = context;
    const before = await newestOf(context, ruleId, seenVersion);
    if (!before.holds) throw new Refusal('conflict', { say: said('This rule has been ended already.') });
    const version = before.version + 1;
    const { kind, settings } = before.row;
    await tx.houseRule.create({
      data: {
        id: requestId,
        operatorId,
        ruleId,
        version,
        kind,
        settings: settings as object,
        holds: false,
        why,
        madeById: actor.personId,
        madeByName: actor.name,
        madeAt: now,
      },
    });
    await factsOfReachedChanged(context, [before.reach]);
    return {
      value: { ruleId, version },
      audit: {
        subjectKind: 'house-rule',
        subjectId: ruleId,
        detail: { version, kind, ended: true, why, by: actor.name },
      },
    };
  },
});
