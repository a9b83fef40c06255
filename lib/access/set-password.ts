import { dictionary, adjacencyGraphs } from '@zxcvbn-ts/language-common';
import { ZxcvbnFactory } from '@zxcvbn-ts/core';
import type { Tx } from '../db/client';
import { Refusal } from '../problems';
import { said } from '../words/said';
import { hashPassword } from './passwords';
import { endSessions } from './sessions';

/**
 * Length over composition, as NIST SP 800-63B-4 (3.1.1.2) has it: no rules about kinds of characters, no changing by the
 * calendar, every character of Unicode counts as one, long ones allowed. It asks 15 characters of a password that stands
 * alone and 8 beside a second factor, read in summaries of the text, not in the text itself; 12 is the operator's choice
 * between the two, so what is short is also held against lists of common passwords.
 */
export const LEAST_CHARACTERS = 12;
export const MOST_CHARACTERS = 200;

/** zxcvbn's 3 of 4: at least 10^8 guesses, against a slow hash. With somebody's own name in it 4 of 4 is asked, 10^10. */
const LEAST_SCORE = 3;
const LEAST_SCORE_WITH_OWN_WORDS = 4;

/** The estimate takes longer than it is worth beyond this; verifying never shortens a password. */
const JUDGED_CHARACTERS = 100;

/** Read in when somebody first chooses a password: the lists are large and signing in needs none of them. */
let judge: ZxcvbnFactory | undefined;

/**
 * What is wrong with a password somebody wants to choose, in plain words; empty when it may be used. `about`: name,
 * address and operator of the person, which a stranger would try first.
 */
export function passwordTroubles(password: string, about: readonly string[]): string[] {
  const length = [...password].length;
  if (length < LEAST_CHARACTERS)
    return [said('Use at least 12 characters. Several words with spaces between are good.')];
  if (length > MOST_CHARACTERS) return [said('Use 200 characters at most.')];
  judge ??= new ZxcvbnFactory({ dictionary, graphs: adjacencyGraphs });
  const judged = judge.check([...password].slice(0, JUDGED_CHARACTERS).join(''), ownWords(about));
  const ownWordsInIt = judged.sequence.some((match) => match['dictionaryName'] === 'userInputs');
  const least = ownWordsInIt ? LEAST_SCORE_WITH_OWN_WORDS : LEAST_SCORE;
  return judged.score >= least ? [] : [why(judged.feedback.warning, ownWordsInIt)];
}

/** "Tess Quill" and "tess@quillback.example" -> whole texts and their parts of three letters and more. */
const ownWords = (about: readonly string[]): string[] =>
  ['wheelchock', ...about.flatMap((text) => [text, ...text.split(/[^\p{L}\p{N}]+/u)])]
    .map((word) => word.toLowerCase())
    .filter((word) => word.length >= 3);

const EASY = said('This is easy to guess. Take several words that have nothing to do with each other.');

function why(warning: string | null, ownWordsInIt: boolean): string {
  if (ownWordsInIt)
    return said(
      'It is mostly your name, your address or your school, which a stranger tries first. Take other words.',
    );
  switch (warning) {
    case 'simpleRepeat':
    case 'extendedRepeat':
      return said('It repeats itself, which is easy to guess. Take several different words.');
    case 'sequences':
    case 'straightRow':
    case 'keyPattern':
      return said('It follows the keyboard or the alphabet, which is easy to guess. Take several words.');
    case 'dates':
    case 'recentYears':
    case 'associatedYears':
      return said('It is mostly a date, which is easy to guess. Take several words.');
    case 'topTen':
    case 'topHundred':
    case 'common':
    case 'similarToCommon':
    case 'pwned':
      return said('It is, or is close to, a password many people use. Take several words of your own.');
    default:
      return EASY;
  }
}

interface NewPassword {
  readonly operatorId: string;
  readonly personId: string;
  readonly password: string;
  readonly now: Date;
  /** The field of the form that gets the words when the password cannot be used. */
  readonly field?: string;
  /** The session that goes on, where somebody changes the own password. Without it every session ends. */
  readonly keepSessionId?: string;
}

/**
 * Gives somebody a new password: judges it (throws `invalid` on `field`), hashes it, opens a locked account, and ends the
 * person's sessions. Call inside the operator's transaction; the caller has made sure that it is this person who asks.
 */
export async function setPassword(tx: Tx, asked: NewPassword): Promise<void> {
  const { operatorId, personId, password, now, field = 'password', keepSessionId } = asked;
  const where = { operatorId_id: { operatorId, id: personId } };
  const person = await tx.person.findUnique({ where, select: { name: true, email: true } });
  const operator = await tx.operator.findUnique({ where: { id: operatorId }, select: { name: true } });
  if (!person || !operator) throw new Refusal('not_found');
  const troubles = passwordTroubles(password, [person.name, person.email, operator.name]);
  if (troubles.length > 0) throw new Refusal('invalid', { fields: { [field]: troubles } });
  await tx.person.update({
    where,
    data: {
      passwordHash: await hashPassword(password),
      passwordSetAt: now,
      failedSignIns: 0,
      lockedUntil: null,
      // What carries no session of its own (a key of another program does) goes by this number.
      ...(keepSessionId === undefined ? { sessionVersion: { increment: 1 } } : {}),
    },
  });
  await endSessions(tx, { operatorId, personId, byId: personId, now, except: keepSessionId });
}
