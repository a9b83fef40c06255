'use client';

import { noteSignOut } from '@/app/_session/last-signed-in';
import { inOne } from './database';
import { dropPacks, readPack } from './pack';

/** How many messages of whoever is here wait on this phone. */
export async function countUnsent(): Promise<number> {
  const personId = (await readPack())?.pack.person.id;
  const all = await inOne(['outbox'], 'readonly', (at) => at.all('outbox'));
  return all.filter((one) => one.state !== 'sent' && (personId === undefined || one.personId === personId))
    .length;
}

/** Takes away what the phone took along for the person who leaves. What is not sent, drafts and walkarounds stay. */
export async function forgetWhatWasTakenAlong(): Promise<void> {
  noteSignOut();
  await dropPacks();
}
