import { z } from 'zod';
import type { Tx } from '../../db/client';
import type { SecondFactorUsed } from '../sessions';
import { challengeNamedIn, takeChallenge } from './challenges';
import { passkeysOf, unsealTotp, type KeptFactor } from './kept';
import { assertionAnswer, readAssertion, type AssertionAnswer } from './passkeys';
import { looksLikeRecoveryCode, useRecoveryCode } from './recovery-codes';
import { totpStep } from './totp';

/** What somebody shows beside the password: a code of the app or of the recovery codes, or a passkey's answer. */
export const proof = z.union([
  z.object({ code: z.string().max(60) }),
  z.object({ passkey: assertionAnswer }),
]);
export type Proof = z.output<typeof proof>;

interface Whose {
  readonly operatorId: string;
  readonly personId: string;
  readonly now: Date;
}

/**
 * Checks a proof against somebody's factors and uses it up: a code, a challenge, a recovery code works once. Gives which
 * kind it was, null when it proves nothing. Call inside the operator's transaction, whose line keeps two tries with one
 * code apart; commit also when it proves nothing.
 */
export async function prove(
  tx: Tx,
  whose: Whose,
  factors: readonly KeptFactor[],
  shown: Proof,
): Promise<Exclude<SecondFactorUsed, 'none'> | null> {
  if ('passkey' in shown) return (await provePasskey(tx, whose, factors, shown.passkey)) ? 'passkey' : null;
  if (looksLikeRecoveryCode(shown.code))
    return (await useRecoveryCode(tx, whose, shown.code)) ? 'recovery' : null;
  return (await proveTotp(tx, whose, factors, shown.code)) ? 'totp' : null;
}

async function proveTotp(
  tx: Tx,
  { operatorId, now }: Whose,
  factors: readonly KeptFactor[],
  code: string,
): Promise<boolean> {
  for (const { id, sealedSecret, lastStep } of factors) {
    if (sealedSecret === null) continue;
    const step = totpStep(unsealTotp(sealedSecret, id), code, now, lastStep);
    if (step === null) continue;
    await tx.secondFactor.updateMany({
      where: { operatorId, id },
      data: { lastStep: step, lastUsedAt: now },
    });
    return true;
  }
  return false;
}

async function provePasskey(
  tx: Tx,
  { operatorId, personId, now }: Whose,
  factors: readonly KeptFactor[],
  answer: AssertionAnswer,
): Promise<boolean> {
  const asked = { operatorId, personId, purpose: 'sign-in', now } as const;
  const challenge = await takeChallenge(tx, asked, challengeNamedIn(answer.response.clientDataJSON));
  const kept = passkeysOf(factors).find(({ credentialId }) => credentialId === answer.id);
  if (challenge === null || !kept) return false;
  const signCount = await readAssertion(answer, challenge, kept);
  if (signCount === null) return false;
  await tx.secondFactor.updateMany({
    where: { operatorId, personId, credentialId: kept.credentialId },
    data: { signCount, lastUsedAt: now },
  });
  return true;
}
