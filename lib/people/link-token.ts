import { createHash, randomBytes, randomUUID } from 'node:crypto';
import { seal, unseal } from '../feeds/seal';

/** 32 random bytes in base64url: nobody guesses one, so that no salt and no slow hash is needed. */
const TOKEN = /^[A-Za-z0-9_-]{43}$/;

export const looksLikeToken = (text: string): boolean => TOKEN.test(text);

/** All that is kept of a token once it has been handed over. */
export const tokenSha256 = (token: string): string => createHash('sha256').update(token).digest('hex');

/** A link about to be made: what the verb keeps of it, and the token for whoever gets it. */
export interface NewLink {
  readonly token: string;
  readonly made: { readonly linkId: string; readonly sha256: string; readonly sealed: string | null };
}

/** Makes a token. It is kept sealed only where a letter has to carry it, until that was sent. */
export function newLink(handedOver: unknown): NewLink {
  const token = randomBytes(32).toString('base64url');
  const linkId = randomUUID();
  const sealed = handedOver === 'mail' ? seal(token, aboutLink(linkId), 'person links') : null;
  return { token, made: { linkId, sha256: tokenSha256(token), sealed } };
}

/** The token of a link that waits for its letter. Throws `CannotSeal` when the server's secret is another one by now. */
export const unsealedToken = (linkId: string, sealed: string): string =>
  unseal(sealed, aboutLink(linkId), 'person links');

const aboutLink = (linkId: string): string => `person-link ${linkId}`;

/** Where in a letter's text the token goes. It stands behind a # in the address, which browsers send to no server. */
export const TOKEN_PLACE = '{token}';

export const linkPath = (token: string): string => `/join#${token}`;
