import { createHash, randomBytes } from 'node:crypto';

/** How long a set-up token opens the page. */
export const TOKEN_HOURS = 24;

/** 256 random bits as base64url: nobody guesses one, so tries need not be counted. */
export const newSetUpToken = (): string => randomBytes(32).toString('base64url');

/** What is kept of a token. */
export const sha256OfToken = (token: string): string =>
  createHash('sha256').update(token, 'utf8').digest('hex');

/**
 * The page's address with the token behind `#`: a browser keeps that part to itself, so it stands in no log of a server or a
 * proxy and in no Referer (RFC 9110, 10.1.3: a Referer has no fragment; from memory).
 */
export const setUpAddress = (site: string, token: string): string =>
  `${site.replace(/\/+$/, '')}/set-up#${token}`;
