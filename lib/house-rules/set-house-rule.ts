import { command, type Context } from '../access/service';
import { factsChanged } from '../fleet/require-aircraft';
import { fieldRefusal, Refusal } from '../problems';
import { reaches, type HouseReach } from '../rules/house/house-rule';
import { setHouseRuleInput } from './schema';
import { houseRuleVersion, storedSettings } from './stored';
import { said } from '../words/said';

/**
 * Sets a rule of the house: a new one, whose id is the request's, or the next version of one, also of one that was ended.
 * It counts at once: the facts of every aircraft it is for, or was for, change, and their active releases are asked about
 * again. Refuses `conflict` when somebody changed it since the writer looked, and aircraft or types that are not here.
 */
export const setHouseRule = command({
  verb: 'house-rule.set',
  input: setHouseRuleInput,
  async run(context, { of, setting, reach, why }) {
    const { tx, operatorId, actor, now, requestId } = context;
    await requireReach(context, reach);
    const before = of && (await newestOf(context, of.ruleId, of.seenVersion));
    const ruleId = of?.ruleId ?? requestId;
    const version = (before?.version ?? 0) + 1;
    await tx.houseRule.create({
      data: {
        id: requestId,
        operatorId,
        ruleId,
        version,
        kind: setting.kind,
        settings: storedSettings(setting, reach),
        holds: true,
        why,
        madeById: actor.personId,
        madeByName: actor.name,
        madeAt: now,
      },
    });
    await factsOfReachedChanged(context, before ? [reach, before.reach] : [reach]);
    return {
      value: { ruleId, version },
      audit: {
        subjectKind: 'house-rule',
        subjectId: ruleId,
        detail: { version, ...setting, reach, why, by: actor.name },
      },
    };
  },
});

/** The newest version, which must be the one the writer saw. */
export async function newestOf({ tx, operatorId }: Context, ruleId: string, seenVersion: number) {
  const row = await tx.houseRule.findFirst({ where: { operatorId, ruleId }, orderBy: { version: 'desc' } });
  if (!row) throw new Refusal('not_found', { say: said('There is no such rule of the house here.') });
  if (row.version !== seenVersion) {
    throw new Refusal('conflict', {
      say: said('Somebody changed this rule since you looked. Look at it again.'),
    });
  }
  return { ...houseRuleVersion(row), row };
}

/** Facts change for every aircraft that one of these reaches. */
export async function factsOfReachedChanged(
  { tx, operatorId }: Context,
  reached: readonly (HouseReach | null)[],
): Promise<void> {
  const fleet = await tx.aircraft.findMany({
    where: { operatorId, retiredOn: null },
    select: { id: true, typeId: true },
    orderBy: { registration: 'asc' },
  });
  for (const one of fleet) {
    if (reached.some((reach) => reaches(reach, one))) await factsChanged(tx, operatorId, one.id);
  }
}

async function requireReach({ tx, operatorId }: Context, reach: HouseReach | null): Promise<void> {
  if (!reach) return;
  const aircraft = await tx.aircraft.count({
    where: { operatorId, retiredOn: null, id: { in: [...reach.aircraftIds] } },
  });
  if (aircraft !== new Set(reach.aircraftIds).size) {
    throw fieldRefusal('aircraftIds', said('One of these aircraft is not here any more.'));
  }
  const types = await tx.aircraftType.count({ where: { operatorId, id: { in: [...reach.typeIds] } } });
  if (types !== new Set(reach.typeIds).size)
    throw fieldRefusal('typeIds', said('One of these types is not here.'));
}
