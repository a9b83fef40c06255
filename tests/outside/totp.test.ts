/**
 * Codes of an authenticator app against RFC 6238, appendix B (SHA-1 rows; the RFC prints eight digits, an app shows the
 * last six of them: truncation is modulo 10^digits, RFC 4226 section 5.3). Times and codes from memory of the RFC's table,
 * checked here by HMAC of node:crypto as well.
 */
import { createHmac } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { newTotpSecret, totpAddress, totpStep } from '@/lib/access/second-factor/totp';

/** The RFC's secret, ASCII "12345678901234567890", in base32. */
const SECRET = 'GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ';
const TABLE = [
  [59, '94287082'],
  [1_111_111_109, '07081804'],
  [1_111_111_111, '14050471'],
  [1_234_567_890, '89005924'],
  [2_000_000_000, '69279037'],
  [20_000_000_000, '65353130'],
] as const;

/** RFC 4226 section 5.3, written out. */
function byHand(step: number, digits: number): string {
  const counter = Buffer.alloc(8);
  counter.writeBigUInt64BE(BigInt(step));
  const mac = createHmac('sha1', '12345678901234567890').update(counter).digest();
  const offset = (mac[19] ?? 0) & 15;
  const cut = mac.readUInt32BE(offset) & 0x7fffffff;
  return String(cut % 10 ** digits).padStart(digits, '0');
}
const at = (seconds: number) => new Date(seconds * 1000);

describe('RFC 6238, appendix B', () => {
  test.each(TABLE)('at %i s the code is the last six of %s', (seconds, code) => {
    const step = Math.floor(seconds / 30);
    expect(byHand(step, 8)).toBe(code);
    expect(totpStep(SECRET, code.slice(-6), at(seconds), null)).toBe(step);
  });
});

describe('drift: one step either way (RFC 6238, section 5.2)', () => {
  const STEP = 37_037_036;
  test.each([
    ['two steps early', -2, null],
    ['one step early', -1, STEP - 1],
    ['now', 0, STEP],
    ['one step late', 1, STEP + 1],
    ['two steps late', 2, null],
  ])('%s', (_, away, expected) => {
    expect(totpStep(SECRET, byHand(STEP + away, 6), at(STEP * 30 + 15), null)).toBe(expected);
  });
  test.each([
    ['the first second of the step', 0],
    ['the last second of the step', 29],
  ])('%s belongs to it', (_, second) => {
    expect(totpStep(SECRET, byHand(STEP, 6), at(STEP * 30 + second), null)).toBe(STEP);
  });
});

test.each([
  ['an older step', 37_037_035, 37_037_036],
  ['the very step', 37_037_036, null],
  ['a newer step', 37_037_037, null],
])('a code works once: after %s was used', (_, lastStep, expected) => {
  const code = byHand(37_037_036, 6);
  expect(totpStep(SECRET, code, at(37_037_036 * 30), lastStep)).toBe(expected);
});

test.each(['', '12345', '1234567', '-12345', 'abcdef', '12345６'])('%j is no code', (code) => {
  expect(totpStep(SECRET, code, at(59), null)).toBeNull();
});

test('blanks between the digits are read over', () => {
  expect(totpStep(SECRET, '287 082', at(59), null)).toBe(1);
});

test('a new secret has 160 bits and stands in the address an app reads', () => {
  const secret = newTotpSecret();
  expect(secret).toMatch(/^[A-Z2-7]{32}$/);
  expect(newTotpSecret()).not.toBe(secret);
  const url = new URL(totpAddress(secret, 'tess@quillback.example'));
  expect(url.protocol).toBe('otpauth:');
  expect(Object.fromEntries(url.searchParams)).toMatchObject({ secret, issuer: 'Wheelchock', digits: '6' });
});
