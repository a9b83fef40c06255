import { randomUUID } from 'node:crypto';
import type { Context } from '../access/service';
import { Refusal } from '../problems';
import { workPartOf } from '../rules/findings/catalogue';
import type { requireOpenWriteUp } from './write-up';
import { said } from '../words/said';

/** Removing or deactivating as maintenance is work like any other: begun now, owed its entry and signature. */
export async function openDeferralWork(
  { tx, operatorId, actor, now }: Context,
  writeUp: Awaited<ReturnType<typeof requireOpenWriteUp>>,
  deferralId: string,
  input: { readonly method: string; readonly methodWords: string },
): Promise<void> {
  const part = workPartOf(writeUp.findingKey, writeUp.jasc);
  if (!part.known) throw new Refusal('conflict', { say: said('Give the write-up its JASC code first.') });
  await tx.maintenanceAction.create({
    data: {
      id: randomUUID(),
      operatorId,
      aircraftId: writeUp.aircraftId,
      discrepancyId: writeUp.id,
      deferralId,
      title: `${input.method === 'removed' ? 'Remove' : 'Deactivate'}: ${writeUp.title}`,
      part: part.value,
      jasc: writeUp.jasc,
      workKind: 'minor',
      swapOnly: true,
      state: 'started',
      startedById: actor.personId,
      startedAt: now,
      description: input.methodWords,
    },
  });
}
