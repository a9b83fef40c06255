import { randomUUID } from 'node:crypto';
import type { Context } from '../access/service';
import type { NoticeKind } from './in-words';
import { wakeLetterSender } from './letter-signal';

/** What a notice says, whoever gets it. */
export interface Word {
  readonly what: NoticeKind;
  /** The act it tells of; nobody is told of one twice. */
  readonly eventId: string;
  readonly discrepancyId: string | null;
  readonly releaseId: string | null;
  readonly byName: string;
  readonly words: string;
}

/** Subject and text of a letter. */
export interface LetterText {
  readonly subject: string;
  readonly body: string;
}

/**
 * Writes the notices, and beside each its letter where there is one, in the transaction of the act they tell of: told and
 * done, or neither.
 */
export async function giveNotices(
  { tx, operatorId, now }: Pick<Context, 'tx' | 'operatorId' | 'now'>,
  people: readonly { readonly id: string; readonly email: string }[],
  word: Word,
  letter: LetterText | null,
): Promise<void> {
  for (const person of people) {
    const noticeId = randomUUID();
    await tx.notice.create({ data: { id: noticeId, operatorId, personId: person.id, ...word, at: now } });
    if (!letter) continue;
    await tx.letter.create({
      data: {
        id: randomUUID(),
        operatorId,
        noticeId,
        toAddress: person.email,
        ...letter,
        state: 'waiting',
        nextTryAt: now,
      },
    });
  }
  if (letter && people.length > 0) wakeLetterSender(operatorId);
}
