import { randomUUID } from 'node:crypto';
import type { Tx } from '../../db/client';

/** What a browser is asked to prove, and where the answer counts. */
export type Purpose = 'sign-in' | 'passkey-add';

const FIVE_MINUTES = 5 * 60_000;

interface Whose {
  readonly operatorId: string;
  readonly personId: string;
  readonly purpose: Purpose;
  readonly now: Date;
}

/** Keeps a challenge; it may be answered once, within five minutes. */
export async function keepChallenge(tx: Tx, whose: Whose, challenge: string): Promise<void> {
  const { now, ...row } = whose;
  const expiresAt = new Date(now.getTime() + FIVE_MINUTES);
  await tx.challenge.create({ data: { ...row, id: randomUUID(), challenge, madeAt: now, expiresAt } });
}

/**
 * Uses the challenge up that the answer names. Null when it was not asked of this person for this purpose, was answered
 * before, or its time is over. At sign-in a wrong answer uses it up too; the act that adds a passkey is taken back whole.
 */
export async function takeChallenge(tx: Tx, whose: Whose, named: string | null): Promise<string | null> {
  const { now, ...row } = whose;
  if (named === null) return null;
  const { count } = await tx.challenge.updateMany({
    where: { ...row, challenge: named, usedAt: null, expiresAt: { gt: now } },
    data: { usedAt: now },
  });
  return count === 1 ? named : null;
}

/** The challenge an answer of a browser names in its client data (WebAuthn, CollectedClientData); null when it names none. */
export function challengeNamedIn(clientDataJson: unknown): string | null {
  if (typeof clientDataJson !== 'string') return null;
  try {
    const data: unknown = JSON.parse(Buffer.from(clientDataJson, 'base64url').toString('utf8'));
    const named = (data as { challenge?: unknown } | null)?.challenge;
    return typeof named === 'string' ? named : null;
  } catch {
    return null;
  }
}
