import { createHash, randomBytes, randomUUID } from 'node:crypto';
import type { Tx } from '../../db/client';

/** How many codes there are in a set, for the day the phone is lost. */
export const CODES = 10;

/** No 0, 1, i, l, o, u: written by hand and typed again, they are taken for one another. 30 signs, 16 of them: 78 bits. */
const SIGNS = '23456789abcdefghjkmnpqrstvwxyz';
const LENGTH = 16;

/** Ten new codes in groups of four. They are shown once and kept as hashes. */
export const newRecoveryCodes = (): string[] => Array.from({ length: CODES }, newCode);

function newCode(): string {
  let code = '';
  while (code.length < LENGTH) {
    for (const byte of randomBytes(LENGTH)) {
      // Bytes from 240 on would make the first signs likelier.
      if (byte < 240 && code.length < LENGTH) code += SIGNS[byte % SIGNS.length];
    }
  }
  return code.match(/.{4}/g)?.join('-') ?? code;
}

/** Salted with the row's own number. A slow hash is for what people think up; nobody guesses 78 bits. */
const codeSha256 = (rowId: string, code: string): string =>
  createHash('sha256')
    .update(`${rowId}:${plain(code)}`)
    .digest('hex');

const plain = (code: string): string => code.toLowerCase().replace(/[^a-z0-9]/g, '');

/** Whether somebody means a recovery code, and not six digits of an app. */
export const looksLikeRecoveryCode = (code: string): boolean => plain(code).length === LENGTH;

/** The rows of a set, made before the write so that a request sent again does not need the codes. */
export const recoveryRows = (codes: readonly string[]): { id: string; codeSha256: string }[] =>
  codes.map((code) => {
    const id = randomUUID();
    return { id, codeSha256: codeSha256(id, code) };
  });

interface Whose {
  readonly operatorId: string;
  readonly personId: string;
  readonly now: Date;
}

/** Puts a new set in the place of the old one. */
export async function replaceRecoveryCodes(
  tx: Tx,
  { operatorId, personId, now }: Whose,
  rows: readonly { id: string; codeSha256: string }[],
): Promise<void> {
  await endRecoveryCodes(tx, { operatorId, personId, now });
  await tx.recoveryCode.createMany({
    data: rows.map((row) => ({ ...row, operatorId, personId, madeAt: now })),
  });
}

export async function endRecoveryCodes(tx: Tx, { operatorId, personId, now }: Whose): Promise<void> {
  await tx.recoveryCode.updateMany({
    where: { operatorId, personId, usedAt: null, endedAt: null },
    data: { endedAt: now },
  });
}

export const recoveryCodesLeft = (tx: Tx, whose: Omit<Whose, 'now'>): Promise<number> =>
  tx.recoveryCode.count({ where: { ...whose, usedAt: null, endedAt: null } });

/** Uses one of the codes up. False when it is none of them, or was used. */
export async function useRecoveryCode(tx: Tx, whose: Whose, code: string): Promise<boolean> {
  const { operatorId, personId, now } = whose;
  const rows = await tx.recoveryCode.findMany({
    where: { operatorId, personId, usedAt: null, endedAt: null },
  });
  const row = rows.find(({ id, codeSha256: kept }) => kept === codeSha256(id, code));
  if (!row) return false;
  const { count } = await tx.recoveryCode.updateMany({
    where: { operatorId, id: row.id, usedAt: null, endedAt: null },
    data: { usedAt: now },
  });
  return count === 1;
}
