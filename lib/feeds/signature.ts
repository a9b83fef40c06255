import { createHmac, randomBytes } from 'node:crypto';

/** Signing as the open Standard Webhooks specification says (standardwebhooks.com, version 1.0.0, symmetric signatures). */
const MARK = 'whsec_';
/** The specification asks for 24 to 64 bytes. */
const SECRET_BYTES = 32;

export const newSigningSecret = (): string => MARK + randomBytes(SECRET_BYTES).toString('base64');

/** Identity of the row a sealed secret belongs to. */
export const sealedFor = (operatorId: string, webhookId: string): string => `${operatorId}/${webhookId}`;

/**
 * Headers of one try. `id` stays the same over all tries, so that a receiver can tell a repeat; the time is that of this
 * try, so that an old message cannot be played back.
 */
export function signedHeaders(
  secret: string,
  message: { readonly id: string; readonly at: Date; readonly body: string },
): Record<string, string> {
  const seconds = String(Math.floor(message.at.getTime() / 1000));
  const key = Buffer.from(secret.slice(MARK.length), 'base64');
  const signature = createHmac('sha256', key)
    .update(`${message.id}.${seconds}.${message.body}`)
    .digest('base64');
  return {
    'webhook-id': message.id,
    'webhook-timestamp': seconds,
    'webhook-signature': `v1,${signature}`,
  };
}
