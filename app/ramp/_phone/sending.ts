import { tell } from './channel';
import { inOne } from './database';
import { type AtTheShelves } from './kept-store';
import { postMessage } from './post-message';
import { type Outgoing, type SyncState } from './shapes';
import { type Problem } from '@/lib/problems';
import { inTurn } from './turn';

/**
 * Sends what waits, in order, one at a time over all tabs and the worker. Exactly once, because each message carries its
 * own number and the server answers a number it knows with its first answer: a message may therefore always be sent again.
 * No React and no page in here; the service worker runs it too.
 */

/** Sent messages are kept that long, for showing. */
const SHOWN_FOR_MS = 24 * 60 * 60 * 1000;
/** A fault on the server's side may pass; a message that meets it every time must not hold up all others for ever. */
const FAULTS_BORNE = 5;

/** Name of the wish to be woken by the browser when the connection is back, page or no page. */
export const WAKE_UP = 'wheelchock-outbox';

/** Gives why it stopped before everything was sent; null when nothing is left to send for now. */
export const sendWaiting = (onTry: () => void = () => undefined): Promise<SyncState['stuck']> =>
  inTurn(() => sendInOrder(onTry));

async function sendInOrder(onTry: () => void): Promise<SyncState['stuck']> {
  await tidy();
  // Persons who are not the one signed in, as the server said in this run.
  const absent = new Set<string>();
  // Photos that did not get through in this run. On a thin signal only words may: they do not wait behind a picture.
  const aside = new Set<string>();
  let photoTrouble: SyncState['stuck'] = null;
  for (;;) {
    const taken = await takeNext(absent, aside);
    if (!taken) return photoTrouble ?? (absent.size > 0 ? 'other-person' : null);
    onTry();
    tell({ topic: 'outbox' });
    const { message, picture } = taken;
    if (message.photoId !== null && !picture) {
      await settle(message.id, refusal(PICTURE_GONE));
      continue;
    }
    const posted = await postMessage(message, picture);
    if (posted.as === 'sent') {
      await settle(message.id, { state: 'sent', answer: posted.answer, sentAt: new Date().toISOString() });
    } else if (posted.as === 'refused') {
      await settle(message.id, refusal(posted.problem));
    } else if (posted.problem?.code === 'bug' && message.tries >= FAULTS_BORNE) {
      await settle(message.id, refusal(posted.problem));
    } else {
      await settle(message.id, { state: 'waiting' });
      if (posted.why === 'other-person') absent.add(message.personId);
      else if (message.photoId !== null && posted.why !== 'signed-out') {
        photoTrouble = posted.why;
        // The server's own word is about this photo; no word at all is about the line, where no other would fare better.
        aside.add(posted.problem ? message.id : ALL_PHOTOS);
      } else return posted.why;
    }
  }
}

const ALL_PHOTOS = 'all photos';

const refusal = (problem: Problem): Partial<Outgoing> => ({ state: 'refused', problem });

const PICTURE_GONE: Problem = { code: 'not_found', say: 'The picture is no longer on this phone.' };

/** Takes away what was sent more than a day ago. */
async function tidy(): Promise<void> {
  const before = new Date(Date.now() - SHOWN_FOR_MS).toISOString();
  await inOne(['outbox'], 'readwrite', async (at) => {
    for (const message of await at.all('outbox')) {
      if (message.state === 'sent' && (message.sentAt ?? '') < before) await at.drop('outbox', message.id);
    }
  });
}

/**
 * The first message that may go, marked as being sent. One that is marked so already was being sent when its tab was
 * killed: nobody else sends while it is our turn.
 */
function takeNext(
  absent: ReadonlySet<string>,
  aside: ReadonlySet<string>,
): Promise<{ message: Outgoing; picture: Blob | null } | null> {
  return inOne(['outbox', 'photos'], 'readwrite', async (at) => {
    const all = await inOrder(at);
    const unsent = new Map(all.filter((one) => one.state !== 'sent').map((one) => [one.id, one]));
    const isAside = ({ id, photoId }: Outgoing) =>
      aside.has(id) || (photoId !== null && aside.has(ALL_PHOTOS));
    const next = all.find(
      (one) =>
        (one.state === 'waiting' || one.state === 'sending') &&
        !absent.has(one.personId) &&
        !isAside(one) &&
        !one.after.some((id) => holdsUp(unsent.get(id), one)),
    );
    if (!next) return null;
    const message: Outgoing = { ...next, state: 'sending', tries: next.tries + 1 };
    await at.put('outbox', message);
    const photo = message.photoId === null ? undefined : await at.get('photos', message.photoId);
    return { message, picture: photo?.picture ?? null };
  });
}

/**
 * Whether a message waits for another. The end of a walkaround does not wait for a finding that was refused: what was
 * measured on the walk, and a placard that is missing, must reach the server whatever becomes of that finding.
 */
const holdsUp = (first: Outgoing | undefined, waiting: Outgoing): boolean =>
  first !== undefined &&
  !(waiting.kind === 'walk-finish' && first.state === 'refused' && first.kind !== 'walk-start');

/** Everything in the outbox, first to be sent first. */
export const inOrder = async (at: AtTheShelves): Promise<Outgoing[]> =>
  [...(await at.all('outbox'))].sort((a, b) => a.seq - b.seq);

/** Keeps what became of a message. Its picture goes once it is sent. */
async function settle(id: string, change: Partial<Outgoing>): Promise<void> {
  const message = await inOne(['outbox', 'photos'], 'readwrite', async (at) => {
    const kept = await at.get('outbox', id);
    // Another tab that took the turn may have sent it meanwhile: sent is sent.
    if (!kept || kept.state === 'sent') return null;
    const settled = { ...kept, ...change };
    await at.put('outbox', settled);
    if (settled.state === 'sent' && settled.photoId !== null) await at.drop('photos', settled.photoId);
    if (settled.state === 'refused' && settled.kind === 'walk-start') await freeFromWalk(at, id);
    return settled;
  });
  tell({ topic: 'outbox' });
  if (message?.state === 'sent' && message.photoId !== null) tell({ topic: 'photos' });
}

/** What was found stands by itself: a write-up never waits for a walkaround that the server does not take. */
export async function freeFromWalk(at: AtTheShelves, walkId: string): Promise<void> {
  for (const message of await at.all('outbox')) {
    if (!message.after.includes(walkId) || message.kind === 'walk-finish') continue;
    await at.put('outbox', {
      ...message,
      message: { ...message.message, walkaroundId: null },
      after: message.after.filter((id) => id !== walkId),
    });
  }
}
