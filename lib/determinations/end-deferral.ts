import { randomUUID } from 'node:crypto';
import type { Context } from '../access/service';

/** Ends a deferral: how, and in which words. The write-up and the placard are the caller's. */
export async function endDeferral(
  { tx, operatorId, actor, now }: Context,
  { deferralId, how, words }: { readonly deferralId: string; readonly how: string; readonly words: string },
): Promise<void> {
  await tx.deferralEnd.create({
    data: { id: randomUUID(), operatorId, deferralId, how, words, endedById: actor.personId, endedAt: now },
  });
}

/** Marks the placards that stand on a deferral as taken down. */
export async function takePlacardsDown(
  { tx, operatorId, actor, now }: Context,
  deferralId: string,
): Promise<void> {
  await tx.placard.updateMany({
    where: { operatorId, deferralId, placedAt: { not: null }, removedAt: null },
    data: { removedAt: now, removedById: actor.personId },
  });
}
