/**
 * The key that seals sessions. Refuses in production without one of at least 32 characters: a guessable key lets
 * anybody sign as a mechanic. In development next-auth falls back to a key of its own and says so.
 */
export function sessionSecret(): string | undefined {
  const secret = process.env.NEXTAUTH_SECRET?.trim();
  if (secret && secret.length >= 32) return secret;
  if (process.env.NODE_ENV === 'production') {
    throw new Error(
      'NEXTAUTH_SECRET is missing or shorter than 32 characters; without it sessions could be forged. ' +
        '`npm run demo` makes one. By hand: NEXTAUTH_SECRET="$(openssl rand -base64 32)".',
    );
  }
  return secret || undefined;
}
