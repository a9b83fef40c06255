import type { PublicKeyCredentialRequestOptionsJSON } from '@simplewebauthn/server';
import { readInOperator, writeInOperator } from '../db/scope';
import { Refusal } from '../problems';
import type { ActorRef } from './actor';
import { checkSignIn, countWrongTry, forgetWrongTries, isLocked } from './passwords';
import { keepChallenge } from './second-factor/challenges';
import { keptFactors, passkeysOf, type KeptFactor } from './second-factor/kept';
import { requestOptions } from './second-factor/passkeys';
import { prove, type Proof } from './second-factor/prove';
import { recoveryCodesLeft } from './second-factor/recovery-codes';
import type { Sender } from './sender-limit';
import { beginSession } from './sessions';

export interface SignInAsked {
  readonly email: string;
  readonly password: string;
  /** What is shown beside the password; null in the first step. */
  readonly proof: Proof | null;
  readonly userAgent: string | null;
}

/**
 * `second-factor`: the password was right and somebody has to show more; nobody is signed in yet. `held-up`: so many tries from
 * there were wrong that this one was not looked at.
 */
export type SignInAnswer =
  | { readonly step: 'in'; readonly ref: ActorRef & { readonly sessionId: string } }
  | { readonly step: 'second-factor' }
  | { readonly step: 'refused' }
  | { readonly step: 'held-up' };

const REFUSED = { step: 'refused' } as const;

/**
 * Signs somebody in: address and password, and beside them the second factor where one is set up. Both are given together
 * each time, so that nothing that is half signed in exists. An unknown address, a wrong password, somebody who left, an
 * account without a password and a locked one are refused alike. `from` counts the tries of where it comes from.
 */
export async function signIn(asked: SignInAsked, now: Date, from: Sender): Promise<SignInAnswer> {
  if (!(await from.knocks())) return { step: 'held-up' };
  const answer = await judge(asked, now);
  if (answer.step !== 'refused') await from.wasRight();
  return answer;
}

async function judge(asked: SignInAsked, now: Date): Promise<SignInAnswer> {
  const ref = await passwordStep(asked.email, asked.password, now);
  if (!ref) return REFUSED;
  return writeInOperator(ref.operatorId, async (tx): Promise<SignInAnswer> => {
    const whose = { operatorId: ref.operatorId, personId: ref.personId, now };
    const factors = await keptFactors(tx, whose);
    if (factors.length > 0) {
      if (!asked.proof) return { step: 'second-factor' };
      // Read again, in line: many guesses sent at once are counted one after the other.
      if (await isLocked(tx, ref, now)) return REFUSED;
    }
    const shown = factors.length > 0 && asked.proof ? await prove(tx, whose, factors, asked.proof) : 'none';
    if (shown === null) {
      await countWrongTry(tx, ref, now);
      return REFUSED;
    }
    await forgetWrongTries(tx, ref);
    const sessionId = await beginSession(tx, ref, { userAgent: asked.userAgent, secondFactor: shown, now });
    return { step: 'in', ref: { ...ref, sessionId } };
  });
}

/** What the second step of signing in can be done with. */
export interface SecondStep {
  readonly app: boolean;
  readonly recoveryCodes: boolean;
  /** For the browser, when there is a passkey. */
  readonly passkey: PublicKeyCredentialRequestOptionsJSON | null;
}

/**
 * For the screen of the second step: null when the password is not right, nothing more is asked, or too many tries from there
 * were wrong.
 */
export async function askSecondStep(
  email: string,
  password: string,
  now: Date,
  from: Sender,
): Promise<SecondStep | null> {
  if (!(await from.knocks())) return null;
  const ref = await passwordStep(email, password, now);
  if (!ref) return null;
  await from.wasRight();
  const whose = { operatorId: ref.operatorId, personId: ref.personId };
  const { factors, left } = await readInOperator(ref.operatorId, async (tx) => ({
    factors: await keptFactors(tx, whose),
    left: await recoveryCodesLeft(tx, whose),
  }));
  if (factors.length === 0) return null;
  return {
    app: factors.some(({ kind }) => kind === 'totp'),
    recoveryCodes: left > 0,
    passkey: await askPasskey(ref, factors, now),
  };
}

async function askPasskey(ref: ActorRef, factors: readonly KeptFactor[], now: Date) {
  const passkeys = passkeysOf(factors);
  if (passkeys.length === 0) return null;
  const options = await requestOptions(passkeys);
  const { operatorId, personId } = ref;
  await writeInOperator(operatorId, (tx) =>
    keepChallenge(tx, { operatorId, personId, purpose: 'sign-in', now }, options.challenge),
  );
  return options;
}

/**
 * A locked address and a wrong password give the same answer on purpose: a stranger could else find out by trying which
 * addresses exist. The words on the sign-in page cover both.
 */
async function passwordStep(email: string, password: string, now: Date): Promise<ActorRef | null> {
  try {
    return await checkSignIn(email, password, now);
  } catch (error) {
    if (error instanceof Refusal && error.problem.code === 'locked') return null;
    throw error;
  }
}
