import { randomUUID } from 'node:crypto';
import type { Context } from '../access/service';
import { aircraftFacts, readAircraft } from '../fleet/facts';
import { Refusal } from '../problems';
import { whyCarriedOverDoesNotCount } from '../rules/carried-over-counts';
import { filled, said } from '../words/said';
import type { requireOpenWriteUp } from './write-up';

type WriteUp = Awaited<ReturnType<typeof requireOpenWriteUp>>;

/** What was put aside, for the audit and for what the new one may not loosen. */
export interface PutAside {
  readonly deferralId: string;
  readonly why: string;
  readonly eltFirstRemovedOn: Date | null;
}

/**
 * Before a write-up is deferred anew: ends a deferral taken over from a paper that does not count. Refuses `conflict` while one
 * stands that was made here, or that counts. Null when there is none. In the transaction of the new deferral, so that a refusal
 * of that one leaves the old one as it was.
 */
export async function endCarriedOver(context: Context, writeUp: WriteUp): Promise<PutAside | null> {
  const { tx, operatorId, actor, now } = context;
  const live = writeUp.deferrals.find((deferral) => !deferral.end);
  if (!live) return null;
  const why = live.vouchingId === null ? '' : await whyNot(context, writeUp);
  if (why === '') {
    throw new Refusal('conflict', {
      say: filled(said('{number} is deferred already.'), { number: writeUp.number }),
    });
  }
  await tx.deferralEnd.create({
    data: {
      id: randomUUID(),
      operatorId,
      deferralId: live.id,
      how: 'does-not-count',
      words: why,
      endedById: actor.personId,
      endedAt: now,
    },
  });
  // The placard of the new one takes its place, and is owed until somebody has placed it.
  await tx.placard.updateMany({
    where: { operatorId, deferralId: live.id, placedAt: { not: null }, removedAt: null },
    data: { removedAt: now, removedById: actor.personId },
  });
  return { deferralId: live.id, why, eltFirstRemovedOn: live.eltFirstRemovedOn };
}

async function whyNot({ tx, operatorId }: Context, { aircraftId, id }: WriteUp): Promise<string> {
  const row = await readAircraft(tx, operatorId, aircraftId);
  if (!row) throw new Refusal('not_found');
  const facts = aircraftFacts(row);
  const discrepancy = facts.discrepancies.find((one) => one.id === id);
  if (!discrepancy) throw new Refusal('not_found');
  return whyCarriedOverDoesNotCount(facts, discrepancy)
    .map(({ because }) => because)
    .join(' ');
}
