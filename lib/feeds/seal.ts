import { createCipheriv, createDecipheriv, hkdfSync, randomBytes } from 'node:crypto';

const VERSION = 'v1';
const LEAST_SECRET = 32;

/** What a sealed text is for; each has a key of its own, so that one cannot be opened as another. */
export type SealPurpose = 'webhook secrets' | 'second factors' | 'person links';

/** The server has no secret to seal with, or the sealed text was not sealed with the one it has. */
export class CannotSeal extends Error {}

/**
 * A key for this purpose only, made from the server's own secret (HKDF, RFC 5869): who learns it cannot make sessions.
 * Read at every use, so that a server started without the secret says so and others go on.
 */
function sealKey(purpose: SealPurpose): Buffer {
  const secret = process.env.NEXTAUTH_SECRET?.trim() ?? '';
  if (secret.length < LEAST_SECRET) {
    throw new CannotSeal(
      'NEXTAUTH_SECRET is missing or shorter than 32 characters, so no secret can be kept safely.',
    );
  }
  return Buffer.from(hkdfSync('sha256', secret, '', `wheelchock ${purpose}`, 32));
}

/** Seals a text with AES-256-GCM. It opens only together with `about`: a sealed text cannot be moved to another row. */
export function seal(text: string, about: string, purpose: SealPurpose = 'webhook secrets'): string {
  const iv = randomBytes(12);
  const cipher = createCipheriv('aes-256-gcm', sealKey(purpose), iv).setAAD(Buffer.from(about));
  const sealed = Buffer.concat([cipher.update(text, 'utf8'), cipher.final(), cipher.getAuthTag()]);
  return [VERSION, iv.toString('base64url'), sealed.toString('base64url')].join('.');
}

/** Opens what `seal` sealed. Throws `CannotSeal` when the server's secret is another one or the text was changed. */
export function unseal(sealed: string, about: string, purpose: SealPurpose = 'webhook secrets'): string {
  const key = sealKey(purpose);
  const [version, iv = '', body = ''] = sealed.split('.');
  const bytes = Buffer.from(body, 'base64url');
  try {
    if (version !== VERSION) throw new Error('another version');
    const decipher = createDecipheriv('aes-256-gcm', key, Buffer.from(iv, 'base64url'), { authTagLength: 16 })
      .setAAD(Buffer.from(about))
      .setAuthTag(bytes.subarray(-16));
    return Buffer.concat([decipher.update(bytes.subarray(0, -16)), decipher.final()]).toString('utf8');
  } catch (error) {
    throw new CannotSeal(CHANGED_SINCE[purpose], { cause: error });
  }
}

const CHANGED_SINCE: Record<SealPurpose, string> = {
  'webhook secrets':
    "The signing secret cannot be opened: the server's own secret was changed since. End this webhook and add it anew.",
  'second factors':
    "The secret of the authenticator app cannot be opened: the server's own secret was changed since. A manager has to reset the second factor.",
  'person links': "The link cannot be opened: the server's own secret was changed since. Make a new link.",
};
