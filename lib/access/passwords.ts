import { hash, verify } from '@node-rs/argon2';
import type { Tx } from '../db/client';
import { readForSignIn, readInOperator, writeInOperator } from '../db/scope';
import { Refusal, type Problem } from '../problems';
import { said } from '../words/said';
import type { ActorRef } from './actor';
import { liveSession } from './sessions';

/** argon2id with the parameters OWASP's password storage cheat sheet gives as its first choice (19 MiB, 2, 1). */
const ARGON2ID = {
  algorithm: 2 /* Algorithm.Argon2id: an ambient enum, not to be had under isolatedModules */,
  memoryCost: 19_456,
  timeCost: 2,
  parallelism: 1,
} as const;

const TRIES = 8;
const LOCK_MINUTES = 5;

/** A salted argon2id hash, safe to store. */
export const hashPassword = (password: string): Promise<string> => hash(password, ARGON2ID);

/** Compared against when nobody has the address, so that a stranger learns nothing from the time it takes. */
let nobodysHash: Promise<string> | undefined;

/**
 * Checks address and password. Gives who it is, or null for any mistake: the caller says the same words whichever it was.
 * Throws `locked` after too many wrong tries. A right password does not forget wrong tries yet: with a second factor
 * signing in is not done, and guesses at its codes count on (`lib/access/sign-in.ts`).
 */
export async function checkSignIn(email: string, password: string, now: Date): Promise<ActorRef | null> {
  const address = email.trim().toLowerCase();
  const person = await readForSignIn(address, (tx) =>
    tx.person.findUnique({
      where: { email: address },
      select: {
        id: true,
        operatorId: true,
        passwordHash: true,
        passwordSetAt: true,
        sessionVersion: true,
        leftOn: true,
        lockedUntil: true,
      },
    }),
  );
  if (!person || person.leftOn || !person.passwordSetAt) {
    nobodysHash ??= hashPassword('nobody has this password');
    await verify(await nobodysHash, password);
    return null;
  }
  const ref = { personId: person.id, operatorId: person.operatorId, sessionVersion: person.sessionVersion };
  return (await passwordHolds(ref, person, password, now)) ? ref : null;
}

/**
 * The signed-in person gives the password again: for a signature, or an act on the account. Throws `wrong_password`, with
 * the words of `wrong` where the usual ones do not fit, or `locked`.
 */
export async function confirmPassword(
  ref: ActorRef,
  password: string,
  now: Date,
  wrong: Pick<Partial<Problem>, 'say'> = {},
): Promise<void> {
  const { operatorId, personId, sessionId } = ref;
  const person = await readInOperator(operatorId, async (tx) => {
    // Otherwise a session that was ended could still be used to try passwords.
    if (sessionId !== undefined && !(await liveSession(tx, { ...ref, sessionId }, now))) return null;
    return tx.person.findUnique({
      where: { operatorId_id: { operatorId, id: personId } },
      select: {
        passwordHash: true,
        passwordSetAt: true,
        sessionVersion: true,
        leftOn: true,
        lockedUntil: true,
      },
    });
  });
  if (!person?.passwordSetAt || person.leftOn || person.sessionVersion !== ref.sessionVersion)
    throw new Refusal('not_signed_in');
  if (!(await passwordHolds(ref, person, password, now))) {
    throw new Refusal('wrong_password', {
      fields: { password: [said('The password is not right.')] },
      ...wrong,
    });
  }
  await writeInOperator(operatorId, (tx) => forgetWrongTries(tx, ref));
}

async function passwordHolds(
  ref: ActorRef,
  person: { passwordHash: string; lockedUntil: Date | null },
  password: string,
  now: Date,
): Promise<boolean> {
  // Verified also when locked, so that the time taken does not tell a locked address from an unknown one.
  const right = await verify(person.passwordHash, password);
  if (person.lockedUntil && person.lockedUntil > now) throw new Refusal('locked');
  // Read again, in line: of many guesses sent at once, all of which saw an open account, no more count than one by one.
  return writeInOperator(ref.operatorId, async (tx) => {
    if (await isLocked(tx, ref, now)) throw new Refusal('locked');
    if (!right) await countWrongTry(tx, ref, now);
    return right;
  });
}

/** Whether nothing is tried at the moment. Call in line (`writeInOperator`), or the answer is of before. */
export async function isLocked(tx: Tx, ref: ActorRef, now: Date): Promise<boolean> {
  const { lockedUntil } = await tx.person.findUniqueOrThrow({
    where: rowOf(ref),
    select: { lockedUntil: true },
  });
  return lockedUntil !== null && lockedUntil > now;
}

const rowOf = (ref: ActorRef) => ({ operatorId_id: { operatorId: ref.operatorId, id: ref.personId } });

/**
 * Wrong passwords and wrong codes count alike, in the database: it holds over restarts and over several servers. Asked only
 * of an account that is not locked (`isLocked`): counting anew from one would open it.
 */
export async function countWrongTry(tx: Tx, ref: ActorRef, now: Date): Promise<void> {
  const where = rowOf(ref);
  const { failedSignIns } = await tx.person.findUniqueOrThrow({ where, select: { failedSignIns: true } });
  const failed = failedSignIns + 1;
  const lockedUntil = failed >= TRIES ? new Date(now.getTime() + LOCK_MINUTES * 60_000) : null;
  await tx.person.update({ where, data: { failedSignIns: lockedUntil ? 0 : failed, lockedUntil } });
}

/** After everything that was asked for was right. */
export async function forgetWrongTries(tx: Tx, ref: ActorRef): Promise<void> {
  const { operatorId, personId } = ref;
  await tx.person.updateMany({
    where: { operatorId, id: personId, failedSignIns: { gt: 0 } },
    data: { failedSignIns: 0, lockedUntil: null },
  });
}
