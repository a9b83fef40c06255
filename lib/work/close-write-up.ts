import type { Context } from '../access/service';
import { endDeferral, takePlacardsDown } from '../determinations/end-deferral';
import { tellReporters } from '../notices/tell-reporters';
import { fieldRefusal, Refusal } from '../problems';
import { detailsOf, type WorkRow } from './entry';
import { filled, said } from '../words/said';

/** Work whose signature settles its write-up: not what a deferral stands on, no owed test, no correction of an entry. */
export const settlesWriteUp = (
  work: Pick<WorkRow, 'discrepancyId' | 'deferralId' | 'testForId' | 'supersedesId'>,
): boolean => work.discrepancyId !== null && !work.deferralId && !work.testForId && !work.supersedesId;

/**
 * The write-up is repaired, or could not be found again: it closes, and a deferral it had ends with its placard taken
 * down. Refuses while the placard stands, and a write-up that something else has closed meanwhile.
 */
export async function closeWriteUp(
  context: Context,
  work: WorkRow,
  placardRemoved: boolean | null,
): Promise<void> {
  const { tx, operatorId, now } = context;
  const discrepancyId = work.discrepancyId;
  if (!discrepancyId) return;
  const how = work.outcome ?? 'repaired';
  const { state, number } = await tx.discrepancy.findUniqueOrThrow({
    where: { operatorId_id: { operatorId, id: discrepancyId } },
    select: { state: true, number: true },
  });
  if (state === 'closed') {
    throw new Refusal('conflict', {
      say: filled(
        said('{number} is closed already. Give this work up; the same trouble again is a new write-up.'),
        { number },
      ),
    });
  }
  const live = await tx.deferral.findMany({
    where: { operatorId, discrepancyId, end: null },
    include: { placards: true },
  });
  for (const deferral of live) {
    const standing = deferral.placards.filter((placard) => placard.placedAt && !placard.removedAt);
    if (standing.length > 0 && placardRemoved !== true) {
      throw fieldRefusal('placardRemoved', said('The item works again: take its placard down and say so.'));
    }
    await takePlacardsDown(context, deferral.id);
    await endDeferral(context, { deferralId: deferral.id, how, words: work.title });
  }
  await tx.discrepancy.update({
    where: { operatorId_id: { operatorId, id: discrepancyId } },
    data: { state: 'closed', closedAt: now, closedHow: how },
  });
}

/** Tells whoever wrote it up what the signature means. An owed test and a corrected entry change nothing for them. */
export async function tellOfWork(context: Context, work: WorkRow, signOffId: string): Promise<void> {
  const { discrepancyId, deferralId } = work;
  if (!discrepancyId || work.testForId || work.supersedesId) return;
  const telling = { discrepancyId, eventId: signOffId, byName: context.actor.name };
  const done = work.description ?? work.title;
  if (deferralId) return tellReporters(context, { ...telling, what: 'made-safe', words: done });
  if (work.outcome !== 'could-not-duplicate') {
    return tellReporters(context, { ...telling, what: 'repaired', words: done });
  }
  const words = `It could not be found again, and the write-up is closed. How it was looked for: ${detailsOf(work).lookedFor ?? ''}\n${done}`;
  return tellReporters(context, { ...telling, what: 'judged', words });
}
