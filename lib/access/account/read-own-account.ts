import { query } from '../service';
import { asksSecondFactor } from '../second-factor/demand';
import { keptFactors } from '../second-factor/kept';
import { recoveryCodesLeft } from '../second-factor/recovery-codes';
import type { SecondFactorUsed } from '../sessions';
import { noInput } from './schema';

export interface SessionView {
  readonly id: string;
  readonly device: string;
  readonly beganAt: string;
  readonly lastSeenAt: string;
  readonly secondFactor: SecondFactorUsed;
  readonly thisOne: boolean;
}

export interface FactorView {
  readonly id: string;
  readonly kind: 'totp' | 'passkey';
  readonly name: string;
  readonly addedAt: string;
  readonly lastUsedAt: string | null;
}

/** One's own account, as the screen shows it. Instants are UTC. */
export interface OwnAccount {
  readonly asOf: string;
  readonly personId: string;
  readonly name: string;
  readonly email: string;
  readonly language: string | null;
  readonly units: string | null;
  readonly passwordSetAt: string | null;
  /** Those that count, newest first. */
  readonly sessions: readonly SessionView[];
  readonly factors: readonly FactorView[];
  readonly recoveryCodesLeft: number;
  /** The operator asks everybody who signs for a second factor. */
  readonly secondFactorAsked: boolean;
  /** With what this session was begun; null where one asks without a session. */
  readonly signedInWith: SecondFactorUsed | null;
}

export const readOwnAccount = query({
  verb: 'own-account.read',
  input: noInput,
  async run({ tx, operatorId, actor, now }): Promise<OwnAccount> {
    const whose = { operatorId, personId: actor.personId };
    const person = await tx.person.findUniqueOrThrow({
      where: { operatorId_id: { operatorId, id: actor.personId } },
      select: { name: true, email: true, language: true, units: true, passwordSetAt: true },
    });
    const sessions = await tx.session.findMany({
      where: { ...whose, endedAt: null, expiresAt: { gt: now } },
      orderBy: [{ beganAt: 'desc' }, { id: 'asc' }],
    });
    const factors = await keptFactors(tx, whose);
    return {
      asOf: now.toISOString(),
      personId: actor.personId,
      name: person.name,
      email: person.email,
      language: person.language,
      units: person.units,
      passwordSetAt: person.passwordSetAt?.toISOString() ?? null,
      sessions: sessions.map((row) => ({
        id: row.id,
        device: row.device,
        beganAt: row.beganAt.toISOString(),
        lastSeenAt: row.lastSeenAt.toISOString(),
        secondFactor: row.secondFactor as SecondFactorUsed,
        thisOne: row.id === actor.session?.id,
      })),
      factors: factors.map(({ id, kind, name, addedAt, lastUsedAt }) => ({
        id,
        kind,
        name,
        addedAt: addedAt.toISOString(),
        lastUsedAt: lastUsedAt?.toISOString() ?? null,
      })),
      recoveryCodesLeft: await recoveryCodesLeft(tx, whose),
      secondFactorAsked: await asksSecondFactor(tx, operatorId),
      signedInWith: actor.session?.secondFactor ?? null,
    };
  },
});
