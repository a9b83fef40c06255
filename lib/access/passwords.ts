import { hash, verify } from '@node-rs/argon2';
import { readForSignIn, readInOperator, writeInOperator } from '../db/scope';
import { Refusal } from '../problems';
import type { ActorRef } from './actor';

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
 * Checks address and password. Gives the session's content, or null for any mistake: the caller says the same words
 * whichever it was. Throws `locked` after too many wrong tries.
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
        sessionVersion: true,
        leftOn: true,
        lockedUntil: true,
      },
    }),
  );
  if (!person || person.leftOn) {
    nobodysHash ??= hashPassword('nobody has this password');
    await verify(await nobodysHash, password);
    return null;
  }
  const ref = { personId: person.id, operatorId: person.operatorId, sessionVersion: person.sessionVersion };
  return (await passwordHolds(ref, person, password, now)) ? ref : null;
}

/** For a signature: the signed-in person gives the password again. Throws `wrong_password` or `locked`. */
export async function confirmPassword(ref: ActorRef, password: string, now: Date): Promise<void> {
  const person = await readInOperator(ref.operatorId, (tx) =>
    tx.person.findUnique({
      where: { operatorId_id: { operatorId: ref.operatorId, id: ref.personId } },
      select: { passwordHash: true, sessionVersion: true, leftOn: true, lockedUntil: true },
    }),
  );
  if (!person || person.leftOn || person.sessionVersion !== ref.sessionVersion)
    throw new Refusal('not_signed_in');
  if (!(await passwordHolds(ref, person, password, now))) {
    throw new Refusal('wrong_password', { fields: { password: ['The password is not right.'] } });
  }
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
  await countTry(ref, right, now);
  return right;
}

/** Counted in the database, so that it holds over restarts and over several servers. */
async function countTry(ref: ActorRef, right: boolean, now: Date): Promise<void> {
  const where = { operatorId_id: { operatorId: ref.operatorId, id: ref.personId } };
  await writeInOperator(ref.operatorId, async (tx) => {
    const { failedSignIns } = await tx.person.findUniqueOrThrow({ where, select: { failedSignIns: true } });
    if (right) {
      if (failedSignIns > 0) await tx.person.update({ where, data: { failedSignIns: 0, lockedUntil: null } });
      return;
    }
    const failed = failedSignIns + 1;
    const lockedUntil = failed >= TRIES ? new Date(now.getTime() + LOCK_MINUTES * 60_000) : null;
    await tx.person.update({ where, data: { failedSignIns: lockedUntil ? 0 : failed, lockedUntil } });
  });
}
