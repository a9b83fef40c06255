/**
 * `npm run set-up-token`: makes a token that opens the set-up page once, and prints its address. For servers whose own account
 * may not make one (containers, where the owner's account is a separate job); `npm start` makes one by itself. Needs the
 * owner's DATABASE_URL, or the database of a running `npm start`.
 */
import { randomUUID } from 'node:crypto';
import { newSetUpToken, setUpAddress, sha256OfToken, TOKEN_HOURS } from '../set-up/token';
import { withClient } from './connection';
import { ownDatabaseUrl } from './own-database';
import { Trouble, say } from './say.mjs';
import { runAsProgram } from './run-as-program';

/**
 * A new token, kept as its SHA-256 only; earlier ones that nobody used end. Null when there is an operator: then nobody needs
 * one. `adminUrl` is the owner's.
 */
export function makeSetUpToken(adminUrl: string, now = new Date()): Promise<string | null> {
  return withClient(adminUrl, async (client) => {
    await client.query('BEGIN');
    // Stands in line behind somebody who is setting up at this moment, so that what is asked next is true.
    await client.query('UPDATE set_up_token SET expires_at = LEAST(expires_at, $1) WHERE used_at IS NULL', [
      now,
    ]);
    const { rowCount } = await client.query('SELECT 1 FROM operator LIMIT 1');
    if (rowCount !== 0) {
      await client.query('ROLLBACK');
      return null;
    }
    const token = newSetUpToken();
    const expires = new Date(now.getTime() + TOKEN_HOURS * 3_600_000);
    await client.query(
      'INSERT INTO set_up_token (id, token_sha256, made_at, expires_at) VALUES ($1, $2, $3, $4)',
      [randomUUID(), sha256OfToken(token), now, expires],
    );
    await client.query('COMMIT');
    return token;
  });
}

/** What is printed of it, to the console and nowhere else. */
export const tokenInWords = (site: string, token: string): string =>
  `Nobody has set this up yet. Open this address within ${TOKEN_HOURS} hours; it works once:\n\n` +
  `  ${setUpAddress(site, token)}\n\n` +
  'Whoever opens it first becomes the first manager, so show it to nobody else. A later start prints a new one.';

/** Where browsers see the server. */
export const siteAddress = (): string =>
  process.env['NEXTAUTH_URL'] || `http://localhost:${process.env['PORT'] || '3000'}`;

async function command(): Promise<number> {
  const adminUrl = process.env['DATABASE_URL'] || (await ownDatabaseUrl());
  const token = await makeSetUpToken(adminUrl);
  if (token === null) throw new Trouble('There is an operator already; nothing is to be set up.');
  say(tokenInWords(siteAddress(), token));
  return 0;
}

runAsProgram(import.meta.url, command);
