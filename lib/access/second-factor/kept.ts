import type { Tx } from '../../db/client';
import { seal, unseal } from '../../feeds/seal';
import type { KeptPasskey } from './passkeys';

/** A proven second factor that has not ended. */
export interface KeptFactor {
  readonly id: string;
  readonly kind: 'totp' | 'passkey';
  readonly name: string;
  readonly sealedSecret: string | null;
  readonly lastStep: number | null;
  readonly passkey: KeptPasskey | null;
  readonly addedAt: Date;
  readonly lastUsedAt: Date | null;
}

interface Whose {
  readonly operatorId: string;
  readonly personId: string;
}

/** Somebody's factors that count, oldest first. One that was begun and never proven by a first code counts for nothing. */
export async function keptFactors(tx: Tx, { operatorId, personId }: Whose): Promise<KeptFactor[]> {
  const rows = await tx.secondFactor.findMany({
    where: { operatorId, personId, confirmedAt: { not: null }, endedAt: null },
    orderBy: [{ addedAt: 'asc' }, { id: 'asc' }],
  });
  return rows.map((row) => ({
    id: row.id,
    kind: row.kind === 'totp' ? 'totp' : 'passkey',
    name: row.name,
    sealedSecret: row.sealedSecret,
    lastStep: row.lastStep,
    passkey:
      row.credentialId === null || row.publicKey === null
        ? null
        : {
            credentialId: row.credentialId,
            publicKey: row.publicKey,
            signCount: Number(row.signCount ?? 0),
            transports: row.transports,
          },
    addedAt: row.addedAt,
    lastUsedAt: row.lastUsedAt,
  }));
}

export const passkeysOf = (factors: readonly KeptFactor[]): KeptPasskey[] =>
  factors.flatMap(({ passkey }) => (passkey ? [passkey] : []));

/** A sealed secret opens only for the row it was made for. */
export const sealTotp = (secret: string, factorId: string): string =>
  seal(secret, `second factor ${factorId}`, 'second factors');
export const unsealTotp = (sealed: string, factorId: string): string =>
  unseal(sealed, `second factor ${factorId}`, 'second factors');
