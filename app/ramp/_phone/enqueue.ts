import { tell } from './channel';
import { type AtTheShelves } from './kept-store';
import { askForWakeUp, flush } from './sender';
import { freeFromWalk, inOrder } from './sending';
import { type NewOutgoing, type Outgoing } from './shapes';

/**
 * Puts messages at the end of the outbox, within a transaction of the caller's; `afterQueueing` has to follow it. A number
 * that is queued already keeps its place; its content is replaced as long as it was never tried.
 */
export async function enqueue(
  at: AtTheShelves,
  personId: string,
  messages: readonly NewOutgoing[],
): Promise<void> {
  const kept = await inOrder(at);
  let seq = kept.at(-1)?.seq ?? 0;
  for (const message of messages) {
    const there = kept.find((one) => one.id === message.id);
    if (there && !isReplaceable(there)) continue;
    seq += 1;
    await at.put('outbox', {
      ...message,
      seq: there?.seq ?? seq,
      personId,
      state: 'waiting',
      problem: null,
      answer: null,
      queuedAt: there?.queuedAt ?? new Date().toISOString(),
      sentAt: null,
      tries: 0,
    });
  }
  // The start of its walkaround may have been refused since the message was made; nobody would free it any more.
  for (const { id, kind, state } of kept) {
    if (kind === 'walk-start' && state === 'refused') await freeFromWalk(at, id);
  }
}

const isReplaceable = (message: Outgoing): boolean =>
  message.state === 'refused' || (message.state === 'waiting' && message.tries === 0);

/** Shows and sends what was queued. */
export function afterQueueing(): void {
  tell({ topic: 'outbox' });
  flush();
  askForWakeUp();
}
