import { randomUUID } from 'node:crypto';
import { command, type Context } from '../access/service';
import { requireAircraft } from '../fleet/require-aircraft';
import { Refusal } from '../problems';
import { STARTING_LIST } from '../rules/walkaround/starting-list';
import { startWalkaroundInput } from './schema';
import { said } from '../words/said';

/**
 * Begins a walkaround; its id is the request's. It names the version of the list it is walked by and keeps it. Refuses
 * `not_found` for an aircraft that is not this operator's and for a list that is not of its type.
 */
export const startWalkaround = command({
  verb: 'walkaround.start',
  input: startWalkaroundInput,
  async run(context, input) {
    const { tx, operatorId, actor, requestId } = context;
    const aircraft = await requireAircraft(tx, operatorId, input.aircraftId);
    const planId = await planFor(context, aircraft.typeId, input.planId);
    await tx.walkaround.create({
      data: {
        id: requestId,
        operatorId,
        aircraftId: aircraft.id,
        personId: actor.personId,
        startedAt: new Date(input.startedAt),
        stations: {},
        planId,
      },
    });
    return {
      value: { walkaroundId: requestId },
      audit: {
        subjectKind: 'walkaround',
        subjectId: requestId,
        detail: { aircraft: aircraft.registration, list: planId },
      },
    };
  },
});

/** The version named; for the starting list version 0 of the type, written down when it is first walked by. */
async function planFor(
  { tx, operatorId, actor, now }: Context,
  typeId: string,
  planId: string | null | undefined,
): Promise<string | null> {
  if (planId === undefined) return null;
  if (planId !== null) {
    const plan = await tx.walkaroundPlan.findUnique({
      where: { operatorId_id: { operatorId, id: planId } },
      select: { typeId: true },
    });
    if (plan?.typeId === typeId) return planId;
    throw new Refusal('not_found', { say: said('There is no such list for this type of aircraft.') });
  }
  const starting = await tx.walkaroundPlan.findUnique({
    where: { operatorId_typeId_version: { operatorId, typeId, version: 0 } },
    select: { id: true },
  });
  if (starting) return starting.id;
  const id = randomUUID();
  await tx.walkaroundPlan.create({
    data: {
      id,
      operatorId,
      typeId,
      version: 0,
      content: STARTING_LIST as object,
      why: 'The starting list, walked by before anybody fitted one to the type.',
      madeById: actor.personId,
      madeAt: now,
    },
  });
  return id;
}
