import type { Tx } from '../db/client';
import { writeInOperator } from '../db/scope';
import { TOKEN_PLACE, unsealedToken } from '../people/link-token';
import { PostShut, RefusedForGood, SEND_WITHIN_MS, type LetterToSend, type Post } from './letters';

/** For this long a letter is ours after it was taken up. Longer than a try can last; after a crash it is tried again then. */
export const CLAIM_MS = SEND_WITHIN_MS + 180_000;

const MINUTE = 60_000;
const FIRST_WAITS = [1, 5, 30, 120].map((minutes) => minutes * MINUTE);
const LATER_WAIT = 360 * MINUTE;
/** The first tries and seven more, six hours apart: within two days of the first. */
export const MOST_TRIES = FIRST_WAITS.length + 1 + 7;

/** How long to wait after the try of this number (the first is 1); null when it was the last. */
export const waitAfter = (tries: number): number | null =>
  tries >= MOST_TRIES ? null : (FIRST_WAITS[tries - 1] ?? LATER_WAIT);

interface ClaimedLetter extends LetterToSend {
  readonly tries: number;
  /** Why it is not sent at all; null: it is. */
  readonly barred: string | null;
  /** The link it carries; null: it tells of a notice. */
  readonly linkId: string | null;
}

interface SendOptions {
  readonly clock?: () => Date;
  /** Asked before each letter; true ends the round. */
  readonly stopping?: () => boolean;
}

/**
 * Sends what one operator has due, one letter after the other, and gives how many went. A letter is claimed in a
 * transaction, sent outside of it, and marked in another: whoever crashes in between has it sent once more, with the same
 * Message-ID. That is accepted: twice is a nuisance, never is a loss. Two servers do not send the same letter on purpose.
 * The round ends early when the post itself is shut.
 */
export async function sendDueLetters(
  operatorId: string,
  post: Post,
  options: SendOptions = {},
): Promise<number> {
  const { clock = () => new Date(), stopping = () => false } = options;
  let sent = 0;
  while (!stopping()) {
    const letter = await claimNext(operatorId, clock());
    if (!letter) break;
    const trouble = await tryToSend(post, letter);
    if (trouble === null) {
      await markSent(operatorId, letter, clock());
      sent += 1;
      continue;
    }
    await putOff(operatorId, letter, trouble, clock());
    if (trouble instanceof PostShut) break;
  }
  return sent;
}

/** Takes up the letter that is due longest, so that nobody else does for a while. */
function claimNext(operatorId: string, now: Date): Promise<ClaimedLetter | null> {
  return writeInOperator(operatorId, async (tx) => {
    const due = await tx.letter.findFirst({
      where: { operatorId, state: 'waiting', nextTryAt: { lte: now } },
      include: {
        notice: { include: { person: { select: { leftOn: true } } } },
        link: { include: { person: { select: { leftOn: true } } } },
      },
      orderBy: [{ nextTryAt: 'asc' }, { id: 'asc' }],
    });
    if (!due) return null;
    const tries = due.tries + 1;
    await tx.letter.update({
      where: { operatorId_id: { operatorId, id: due.id } },
      data: { tries, nextTryAt: new Date(now.getTime() + CLAIM_MS) },
    });
    const { id, subject, linkId } = due;
    const carried = due.link ? withToken(due.link, due.body, now) : { body: due.body, barred: null };
    const hasLeft = (due.notice ?? due.link)?.person.leftOn !== null;
    const barred = hasLeft ? 'Whom it was for has left.' : carried.barred;
    return { id, subject, body: carried.body, to: due.toAddress, tries, barred, linkId };
  });
}

interface CarriedLink {
  readonly id: string;
  readonly sealedToken: string | null;
  readonly usedAt: Date | null;
  readonly endedAt: Date | null;
  readonly expiresAt: Date;
}

/** The text with the link's token in it: that stands sealed beside the letter until now. A link that opens nothing is not sent. */
function withToken(link: CarriedLink, body: string, now: Date): { body: string; barred: string | null } {
  if (link.usedAt || link.endedAt || link.expiresAt <= now || link.sealedToken === null) {
    return { body, barred: 'The link it carries opens nothing any more.' };
  }
  try {
    return { body: body.replace(TOKEN_PLACE, unsealedToken(link.id, link.sealedToken)), barred: null };
  } catch {
    return { body, barred: "The link it carries cannot be read: the server's own secret was changed since." };
  }
}

async function tryToSend(post: Post, letter: ClaimedLetter): Promise<Error | null> {
  if (letter.barred !== null) return new RefusedForGood(letter.barred);
  try {
    await post.send(letter);
    return null;
  } catch (error) {
    return error instanceof Error ? error : new Error(String(error));
  }
}

const markSent = (operatorId: string, { id, linkId }: ClaimedLetter, now: Date) =>
  writeInOperator(operatorId, async (tx) => {
    await tx.letter.updateMany({
      where: { operatorId, id, state: { not: 'sent' } },
      data: { state: 'sent', sentAt: now, trouble: null },
    });
    await forgetToken(tx, operatorId, linkId);
  });

/** A token is kept no longer than its letter needs it. */
async function forgetToken(tx: Tx, operatorId: string, linkId: string | null): Promise<void> {
  if (linkId === null) return;
  await tx.personLink.updateMany({ where: { operatorId, id: linkId }, data: { sealedToken: null } });
}

/** Tried again later, or given up with the trouble kept. Leaves alone what somebody else has taken up meanwhile. */
function putOff(operatorId: string, letter: ClaimedLetter, trouble: Error, now: Date) {
  const wait = trouble instanceof RefusedForGood ? null : waitAfter(letter.tries);
  const kept = trouble.message.replace(/\p{Cc}+/gu, ' ').slice(0, 500);
  return writeInOperator(operatorId, async (tx) => {
    const { count } = await tx.letter.updateMany({
      where: { operatorId, id: letter.id, state: 'waiting', tries: letter.tries },
      data:
        wait === null
          ? { state: 'given-up', trouble: kept }
          : { nextTryAt: new Date(now.getTime() + wait), trouble: kept },
    });
    if (count > 0 && wait === null) await forgetToken(tx, operatorId, letter.linkId);
  });
}
