import type { Context } from '../access/service';
import { aircraftFacts, readAircraft } from '../fleet/facts';
import { Refusal } from '../problems';
import { whyCarriedOverDoesNotCount } from '../rules/carried-over-counts';
import { filled, said } from '../words/said';
import { endDeferral, takePlacardsDown } from './end-deferral';
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
  const live = writeUp.deferrals.find((deferral) => !deferral.end);
  if (!live) return null;
  const why = live.vouchingId === null ? '' : await whyNot(context, writeUp);
  if (why === '') {
    throw new Refusal('conflict', {
      say: filled(said('{number} is deferred already.'), { number: writeUp.number }),
    });
  }
  await endDeferral(context, { deferralId: live.id, how: 'does-not-count', words: why });
  // The placard of the new one takes its place, and is owed until somebody has placed it.
  await takePlacardsDown(context, live.id);
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
