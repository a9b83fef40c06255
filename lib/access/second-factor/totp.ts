import { Secret, TOTP } from 'otpauth';

/**
 * Codes of an authenticator app, RFC 6238: HMAC-SHA-1, 30 seconds, six digits, which is what every app reads from the
 * address (common practice; RFC 6238 section 1.2 allows SHA-256 and SHA-512, many apps ignore them). The secret has the
 * 160 bits RFC 4226 (requirement R6) recommends.
 */
const SECONDS = 30;
const SECRET_BYTES = 20;
/** One step of drift either way, as RFC 6238 section 5.2 recommends at most. */
const DRIFT = 1;

/** A new secret, as base32 text (RFC 4648): what one types where a picture cannot be read. */
export const newTotpSecret = (): string => new Secret({ size: SECRET_BYTES }).base32;

/** The address an authenticator app reads, in the form all of them know. */
export const totpAddress = (secret: string, label: string): string =>
  new TOTP({
    issuer: 'Wheelchock',
    label,
    algorithm: 'SHA1',
    digits: 6,
    period: SECONDS,
    secret: Secret.fromBase32(secret),
  }).toString();

/**
 * The time step (RFC 6238 section 4.2) whose code this is, within one step of `now`; null when it is no code of that time,
 * or of a step not newer than `lastStep`: a code that was read over somebody's shoulder works no second time (section 5.2).
 */
export function totpStep(secret: string, code: string, now: Date, lastStep: number | null): number | null {
  const digits = code.replace(/\s/g, '');
  if (!/^\d{6}$/.test(digits)) return null;
  const timestamp = now.getTime();
  const delta = TOTP.validate({
    token: digits,
    secret: Secret.fromBase32(secret),
    algorithm: 'SHA1',
    digits: 6,
    period: SECONDS,
    timestamp,
    window: DRIFT,
  });
  if (delta === null) return null;
  const step = Math.floor(timestamp / 1000 / SECONDS) + delta;
  return lastStep !== null && step <= lastStep ? null : step;
}
