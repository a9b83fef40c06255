'use server';

import { placePlacard } from '@/lib/determinations/place-placard';
import { recordServicing } from '@/lib/findings/record-servicing';
import { signedInRef } from '../_session/actor-ref';

/** Somebody says that an owed placard is up. */
export async function sayPlacardIsUp(input: { requestId: string; placardId: string }) {
  return placePlacard(await signedInRef(), input);
}

/** Somebody says what was serviced. */
export async function sayServiced(input: { requestId: string; discrepancyId: string; words: string }) {
  return recordServicing(await signedInRef(), input);
}
