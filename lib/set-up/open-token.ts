import type { Tx } from '../db/client';
import { writeWithSetUpToken } from '../db/scope';
import { Refusal, type Result } from '../problems';
import { observed } from '../access/observed';
import { said } from '../words/said';
import { sha256OfToken } from './token';

/** The row of a token, locked until the transaction ends. */
interface TokenRow {
  readonly id: string;
  readonly expiresAt: Date;
  readonly madeOperatorId: string | null;
}

/** One thing is said whether a token is wrong, was used or has run out: a stranger learns nothing from it. */
export const tokenDoesNotOpen = (): Refusal =>
  new Refusal('link_closed', {
    say: said(
      'This address does not open the set-up page: it is not complete, was used before, or is too old.',
    ),
  });

/** The token's row, or null. Two browsers with one token stand in line here, and the second sees what the first did. */
export async function lockToken(tx: Tx, sha256: string): Promise<TokenRow | null> {
  const rows = await tx.$queryRaw<TokenRow[]>`
    SELECT id::text AS id, expires_at AS "expiresAt", made_operator_id::text AS "madeOperatorId"
    FROM set_up_token WHERE token_sha256 = ${sha256} FOR UPDATE`;
  return rows[0] ?? null;
}

export const isOpen = (row: TokenRow | null, now: Date): row is TokenRow =>
  row !== null && row.madeOperatorId === null && row.expiresAt > now;

/** Does `work` for whoever holds an open token, and nothing for anybody else. Reads only. */
export function withOpenToken<T>(
  token: string,
  work: () => T,
  options: { now?: Date } = {},
): Promise<Result<T>> {
  return observed('query', 'set-up-token.read', null, {}, async () => {
    const sha256 = sha256OfToken(token.trim());
    const row = await writeWithSetUpToken(sha256, (tx) =>
      tx.setUpToken.findUnique({ where: { tokenSha256: sha256 } }),
    );
    if (!isOpen(row, options.now ?? new Date())) throw tokenDoesNotOpen();
    return work();
  });
}
