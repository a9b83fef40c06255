/**
 * Headers that next.config.ts sets over what a route says itself: of several entries of one header, the last whose path
 * matches counts (Next.js, `headers`, "Header Overriding Behavior"). Paths are matched by Next's own matcher.
 */
import { getPathMatch } from 'next/dist/shared/lib/router/utils/path-match';
import { expect, test } from 'vitest';
import config from '../../next.config';

async function headerAt(path: string, name: string): Promise<string | undefined> {
  const rules = (await config.headers?.()) ?? [];
  return rules
    .filter(({ source }) => getPathMatch(source, { strict: true })(path) !== false)
    .flatMap(({ headers }) => headers)
    .findLast(({ key }) => key === name)?.value;
}

// W3C Referrer Policy, section 3.1 and 3.3: "no-referrer" sends none, "same-origin" none to other sites.
test.each([
  ['/api/calendar/wck_some-key/maintenance-due.ics', 'no-referrer'],
  ['/desk', 'same-origin'],
  ['/api/v1/fleet', 'same-origin'],
])('the address %s is told on as %s', async (path, policy) => {
  expect(await headerAt(path, 'Referrer-Policy')).toBe(policy);
});

test('a calendar keeps every other header of the house', async () => {
  expect(await headerAt('/api/calendar/k/maintenance-due.ics', 'X-Content-Type-Options')).toBe('nosniff');
});

// CSP3; pages have a policy of their own over this one (tests/rules/content-policy.test.ts).
test.each([
  ['/api/v1/fleet', "default-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'"],
  ['/api/sync/findings', "default-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'"],
  ['/api/photos/x', "default-src 'none'; frame-ancestors 'none'; sandbox"],
  ['/api/proofs/x', "default-src 'none'; frame-ancestors 'none'; sandbox"],
  ['/api/insight/availability', "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'"],
  ['/api/papers/entry', "base-uri 'none'; form-action 'none'; frame-ancestors 'none'"],
  [
    '/serwist/sw.js',
    "default-src 'self'; object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'",
  ],
  [
    '/_next/static/chunks/a.js',
    "default-src 'self'; object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'",
  ],
])('what a browser makes of %s runs no scripts of it', async (path, policy) => {
  expect(await headerAt(path, 'Content-Security-Policy')).toBe(policy);
});

test.each(['/desk', '/api/v1/fleet', '/api/photos/x', '/serwist/sw.js', '/_next/static/chunks/a.js'])(
  '%s has the headers of the house',
  async (path) => {
    expect(await headerAt(path, 'X-Content-Type-Options')).toBe('nosniff');
    expect(await headerAt(path, 'X-Frame-Options')).toBe('DENY');
    expect(await headerAt(path, 'Cross-Origin-Opener-Policy')).toBe('same-origin');
    expect(await headerAt(path, 'Cross-Origin-Resource-Policy')).toBe('same-origin');
    const may = await headerAt(path, 'Permissions-Policy');
    for (const part of ['camera', 'microphone', 'geolocation', 'payment', 'usb'])
      expect(may).toContain(`${part}=()`);
    expect(may).toContain('publickey-credentials-get=(self)');
  },
);
