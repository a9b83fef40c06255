'use client';

import { useMemo, useSyncExternalStore } from 'react';
import { hear, tell, type Trying } from './channel';
import { inOne, isKept } from './database';
import { dropSlip } from './drafts';
import { afterQueueing, enqueue } from './enqueue';
import { type AtTheShelves } from './kept-store';
import { mirror } from './mirror';
import { requirePerson, usePack } from './pack';
import { flush, hearOthers, nowTrying } from './sender';
import { freeFromWalk, inOrder } from './sending';
import { type NewOutgoing, type Outgoing, type SyncState } from './shapes';

export { flush };

const outbox = mirror<readonly Outgoing[]>('outbox', () => inOne(['outbox'], 'readonly', inOrder));

/**
 * Keeps messages, all or none, and starts sending. With `dropDraft` the draft they were made from goes in the same moment,
 * so that a killed tab leaves either the draft or the message. A number that is queued already keeps its place; its content
 * is replaced as long as it was never tried.
 */
export async function queue(
  messages: readonly NewOutgoing[],
  also: { readonly dropDraft?: string } = {},
): Promise<void> {
  const personId = await requirePerson();
  await inOne(['outbox', 'drafts'], 'readwrite', async (at) => {
    await enqueue(at, personId, messages);
    if (also.dropDraft !== undefined) await at.drop('drafts', also.dropDraft);
  });
  if (also.dropDraft !== undefined) dropSlip(also.dropDraft);
  afterQueueing();
}

/** This person's messages, in the order of sending; those sent stay for a day. What others left is not shown. */
export function useOutbox(): readonly Outgoing[] {
  const all = outbox.use();
  const personId = usePack()?.pack.person.id;
  return useMemo(() => all?.filter((message) => message.personId === personId) ?? [], [all, personId]);
}

/** How many of other persons' messages wait on this phone. */
export function useOthersWaiting(): number {
  const all = outbox.use();
  const pack = usePack();
  if (!all || pack === undefined) return 0;
  return all.filter((one) => one.state !== 'sent' && one.personId !== pack?.pack.person.id).length;
}

const isWaiting = (message: Outgoing): boolean => message.state === 'waiting' || message.state === 'sending';

/** How sending of this person's messages stands. */
export function useSync(): SyncState {
  const all = outbox.use();
  const mine = useOutbox();
  const trying = useSyncExternalStore(hearSync, nowTrying, () => NOT_TRIED);
  const kept = useSyncExternalStore(hearSync, isKept, () => true);
  return useMemo(
    () => ({
      ...trying,
      // Said by a tab that was closed since, or about what is no longer there.
      ...(all?.some(isWaiting) ? {} : { isSending: false, stuck: null }),
      waiting: mine.filter(isWaiting).length,
      refused: mine.filter((message) => message.state === 'refused').length,
      isNotKept: !kept,
    }),
    [all, mine, trying, kept],
  );
}

/** Whether the outbox was read yet. */
export const useIsOutboxRead = (): boolean => outbox.use() !== undefined;

const NOT_TRIED: Trying = { isSending: false, stuck: null, lastTriedAt: null };

function hearSync(listener: () => void): () => void {
  hearOthers();
  return hear((told) => {
    if (told.topic === 'sync') listener();
  });
}

/**
 * The message as soon as it was sent or refused, or as it stands when sending has got stuck or the patience (milliseconds)
 * ends. Throws when there is no such message.
 */
export async function waitFor(id: string, patienceMs: number): Promise<Outgoing> {
  await outbox.read();
  await new Promise<void>((resolve) => {
    const timer = setTimeout(done, patienceMs);
    const stops = [outbox.subscribe(look), hearSync(look)];
    function look() {
      const message = outbox.now()?.find((one) => one.id === id);
      if (message && (!isWaiting(message) || isStuckSince(message.queuedAt))) done();
    }
    function done() {
      clearTimeout(timer);
      stops.forEach((stop) => stop());
      resolve();
    }
    look();
  });
  const message = await inOne(['outbox'], 'readonly', (at) => at.get('outbox', id));
  if (!message) throw new Error('There is no such message.');
  return message;
}

function isStuckSince(queuedAt: string): boolean {
  const { isSending, stuck, lastTriedAt } = nowTrying();
  return !isSending && stuck !== null && lastTriedAt !== null && lastTriedAt >= queuedAt;
}

/** Sends a refused message again, with other content or the same. */
export async function putRight(id: string, message: Outgoing['message']): Promise<void> {
  await inOne(['outbox'], 'readwrite', async (at) => {
    const kept = await at.get('outbox', id);
    if (kept?.state !== 'refused') return;
    await at.put('outbox', { ...kept, message, state: 'waiting', problem: null, tries: 0 });
  });
  afterQueueing();
}

/** Takes a refused message away, and what makes no sense without it: its photos, the end of its walkaround. */
export async function withdraw(id: string): Promise<void> {
  await inOne(['outbox', 'photos'], 'readwrite', async (at) => {
    const refused = await at.get('outbox', id);
    if (refused?.state !== 'refused') return;
    if (refused.kind === 'walk-start') await freeFromWalk(at, id);
    for (const message of await at.all('outbox')) {
      if (message.id === id || (message.after.includes(id) && hangsOn(message, refused)))
        await takeAway(at, message);
      else if (message.after.includes(id)) {
        await at.put('outbox', { ...message, after: message.after.filter((one) => one !== id) });
      }
    }
  });
  tell({ topic: 'photos' });
  afterQueueing();
}

const hangsOn = (message: Outgoing, refused: Outgoing): boolean =>
  message.kind === 'photo' || (refused.kind === 'walk-start' && message.kind === 'walk-finish');

async function takeAway(at: AtTheShelves, message: Outgoing): Promise<void> {
  await at.drop('outbox', message.id);
  if (message.photoId !== null) await at.drop('photos', message.photoId);
}
