import { randomUUID } from 'node:crypto';
import type { Context } from '../access/service';
import { Refusal } from '../problems';
import { filled, said } from '../words/said';

interface Chosen {
  readonly discrepancyIds: readonly string[];
  readonly requirementIds: readonly string[];
}

/**
 * Puts write-ups and requirements of the visit's aircraft into it. What is of another aircraft is not there; refuses a
 * write-up that is closed, a requirement that has ended, and anything that another open visit holds: it would be done twice.
 */
export async function addItems(
  context: Context,
  visit: { readonly id: string; readonly aircraftId: string },
  chosen: Chosen,
): Promise<void> {
  const { tx, operatorId, actor, now } = context;
  const discrepancyIds = [...new Set(chosen.discrepancyIds)];
  const requirementIds = [...new Set(chosen.requirementIds)];
  await requireWriteUps(context, visit.aircraftId, discrepancyIds);
  await requireRequirements(context, visit.aircraftId, requirementIds);
  await refuseHeldElsewhere(context, { discrepancyIds, requirementIds });
  const items = [
    ...discrepancyIds.map((discrepancyId) => ({ discrepancyId, requirementId: null })),
    ...requirementIds.map((requirementId) => ({ discrepancyId: null, requirementId })),
  ];
  await tx.visitItem.createMany({
    data: items.map((item) => ({
      ...item,
      id: randomUUID(),
      operatorId,
      visitId: visit.id,
      addedById: actor.personId,
      addedAt: now,
    })),
  });
}

async function requireWriteUps({ tx, operatorId }: Context, aircraftId: string, ids: readonly string[]) {
  const found = await tx.discrepancy.findMany({
    where: { operatorId, aircraftId, id: { in: [...ids] } },
    select: { number: true, state: true },
  });
  if (found.length < ids.length) {
    throw new Refusal('not_found', { say: said('A chosen write-up is not one of this aircraft.') });
  }
  const closed = found.find(({ state }) => state === 'closed');
  if (closed)
    throw new Refusal('conflict', {
      say: filled(said('{number} is closed. Take it out and save again.'), { number: closed.number }),
    });
}

async function requireRequirements({ tx, operatorId }: Context, aircraftId: string, ids: readonly string[]) {
  const found = await tx.requirement.findMany({
    where: { operatorId, aircraftId, id: { in: [...ids] } },
    select: { name: true, endedOn: true },
  });
  if (found.length < ids.length) {
    throw new Refusal('not_found', { say: said('A chosen item is not one of this aircraft.') });
  }
  const ended = found.find(({ endedOn }) => endedOn !== null);
  if (ended)
    throw new Refusal('conflict', { say: filled(said('“{name}” applies no more.'), { name: ended.name }) });
}

async function refuseHeldElsewhere({ tx, operatorId }: Context, chosen: Chosen): Promise<void> {
  const held = await tx.visitItem.findFirst({
    where: {
      operatorId,
      removedAt: null,
      visit: { closedAt: null },
      OR: [
        { discrepancyId: { in: [...chosen.discrepancyIds] } },
        { requirementId: { in: [...chosen.requirementIds] } },
      ],
    },
    include: {
      visit: { select: { title: true } },
      discrepancy: { select: { number: true } },
      requirement: { select: { name: true } },
    },
  });
  if (!held) return;
  const what = held.discrepancy?.number ?? held.requirement?.name ?? 'It';
  throw new Refusal('conflict', {
    say: filled(said('{what} is in the visit “{title}” already.'), { what, title: held.visit.title }),
  });
}
