import { writeInOperator } from '../db/scope';
import { photoStore } from '../photos/chosen-store';
import { proofKey } from './proof-file';

const DAY_MS = 86_400_000;

/** How long traces are kept that no law asks for, in days (our choice, no source). docs/personal-data.md says the same. */
export const TRACE_DAYS = {
  /** A session, after it ended or was over. */
  session: 90,
  /** A recovery code, after it was used or ended. */
  recoveryCode: 90,
  /** What a browser was asked to prove, after its time. */
  challenge: 1,
  /** Text and address of a letter, after it was sent or given up. */
  letter: 30,
  /** How long the bytes of an erased person's proofs are looked for again, should the store not have answered. */
  erasedProof: 30,
} as const;

/** What went, by kind. */
export type Swept = Readonly<
  Record<'sessions' | 'recoveryCodes' | 'challenges' | 'letters' | 'links', number>
>;

/**
 * Takes away what has had its time: ended sessions, used codes, old challenges, the text and address of letters, tokens of
 * links that open nothing, bytes of erased persons' proofs. No record of maintenance is touched.
 */
export async function sweepTraces(operatorId: string, now = new Date()): Promise<Swept> {
  const before = (days: number) => new Date(now.getTime() - days * DAY_MS);
  const swept = await writeInOperator(operatorId, async (tx) => {
    const old = { lt: before(TRACE_DAYS.session) };
    const sessions = await tx.session.deleteMany({
      where: { operatorId, OR: [{ endedAt: old }, { expiresAt: old }] },
    });
    const code = { lt: before(TRACE_DAYS.recoveryCode) };
    const recoveryCodes = await tx.recoveryCode.deleteMany({
      where: { operatorId, OR: [{ usedAt: code }, { endedAt: code }] },
    });
    const challenges = await tx.challenge.deleteMany({
      where: { operatorId, expiresAt: { lt: before(TRACE_DAYS.challenge) } },
    });
    const letter = { lt: before(TRACE_DAYS.letter) };
    const letters = await tx.letter.updateMany({
      where: {
        operatorId,
        toAddress: { not: '' },
        OR: [
          { state: 'sent', sentAt: letter },
          { state: 'given-up', nextTryAt: letter },
        ],
      },
      data: { toAddress: '', body: '', trouble: null },
    });
    const links = await tx.personLink.updateMany({
      where: {
        operatorId,
        sealedToken: { not: null },
        OR: [{ usedAt: { not: null } }, { endedAt: { not: null } }, { expiresAt: { lte: now } }],
      },
      data: { sealedToken: null },
    });
    const erased = await tx.proof.findMany({
      where: {
        operatorId,
        certificate: { person: { erasedAt: { gt: before(TRACE_DAYS.erasedProof) } } },
      },
      select: { storedAs: true, mime: true },
    });
    return {
      counts: {
        sessions: sessions.count,
        recoveryCodes: recoveryCodes.count,
        challenges: challenges.count,
        letters: letters.count,
        links: links.count,
      },
      erased,
    };
  });
  for (const { storedAs, mime } of swept.erased) await photoStore().remove(proofKey(storedAs, mime));
  return swept.counts;
}
