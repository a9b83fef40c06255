import { sessionSecretTrouble } from '@/lib/access/session-secret';

/**
 * The key that seals sessions. Throws in production when it is missing, short, out of an example, or the demo's where others
 * reach the server: a guessable key lets anybody sign as a mechanic. In development next-auth falls back to a key of its own
 * and says so.
 */
export function sessionSecret(): string | undefined {
  const secret = process.env.NEXTAUTH_SECRET?.trim();
  if (process.env.NODE_ENV === 'production') {
    const trouble = sessionSecretTrouble(secret, process.env.NEXTAUTH_URL);
    if (trouble) throw new Error(trouble);
  }
  return secret || undefined;
}
