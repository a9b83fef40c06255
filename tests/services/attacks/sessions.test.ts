/**
 * Cross-site requests, fixed sessions, ways to lead somebody elsewhere, and bodies without an end, at the doors next-auth and
 * the outbox stand behind. Real routes, real cookies. Sources: issue 7 ("CSRF, session fixation, open redirects, oversized
 * bodies"); RFC 6265bis for SameSite and the __Secure- and __Host- prefixes (from memory); RFC 9110, 15.5.14 (413).
 */
// First: it makes Next's place for a request, which its other modules look for once.
import { ask, FROM_HERE, Jar, ORIGIN, type Handler } from '../../fixtures/asking';
import { randomUUID } from 'node:crypto';
import { afterAll, afterEach, beforeAll, describe, expect, test, vi } from 'vitest';
import { encode } from 'next-auth/jwt';
import { sameOriginPath } from '@/app/_session/same-origin-path';
import { withClient } from '@/lib/operate/connection';
import type { FreshDatabase } from '../../fixtures/database';
import { closeSchools, openSchools, PASSWORD, type School } from '../../fixtures/school';
import {
  authRoutes,
  postToAuth,
  SESSION,
  settingsOfServer,
  signInAs,
  signOutOf,
  tokenFor,
} from '../../fixtures/signing-in';

let database: FreshDatabase;
let school: School;
let contact: Handler;

beforeAll(async () => {
  settingsOfServer();
  ({ database, school } = await openSchools());
  contact = (await import('@/app/desk/contact/route')).GET as Handler;
});
afterAll(() => closeSchools(database));
afterEach(() => vi.unstubAllEnvs());

const EMAIL = 'renter@first.example';
const credentials = { email: EMAIL, password: PASSWORD };
const isIn = async (jar: Jar) => (await ask(contact, '/desk/contact', {}, jar)).status === 204;
const sessionsOf = (email: string) =>
  withClient(database.adminUrl, async (client) => {
    const { rows } = await client.query<{ id: string; ended: boolean }>(
      `SELECT s.id, s.ended_at IS NOT NULL AS ended FROM session s JOIN person p ON p.id = s.person_id
       WHERE p.email = $1 ORDER BY s.began_at`,
      [email],
    );
    return rows;
  });

describe('from another site', () => {
  test('nobody is signed in without the token, with a wrong one, or with one of another browser', async () => {
    const another = await tokenFor(new Jar());
    const before = (await sessionsOf(EMAIL)).length;
    for (const csrfToken of ['', 'wrong', another]) {
      const jar = new Jar();
      await tokenFor(jar);
      await postToAuth('callback/credentials', { ...credentials, csrfToken }, jar);
      expect(jar.get(SESSION)).toBeUndefined();
    }
    expect(await sessionsOf(EMAIL)).toHaveLength(before);
  });

  test('nobody is signed out without it', async () => {
    const jar = await signInAs(EMAIL);
    await postToAuth('signout', { csrfToken: 'wrong' }, jar);
    expect(await isIn(jar)).toBe(true);
    await signOutOf(jar);
    expect(await isIn(jar)).toBe(false);
  });

  test('opening an address changes nothing: neither signs in nor out', async () => {
    const jar = await signInAs(EMAIL);
    const { GET } = await authRoutes();
    const before = (await sessionsOf(EMAIL)).length;
    for (const path of ['signout', 'callback/credentials', 'signin/credentials']) {
      const where = `/api/auth/${path}?${new URLSearchParams(credentials).toString()}`;
      await ask(GET, where, { params: { nextauth: path.split('/') } }, jar);
    }
    expect(await sessionsOf(EMAIL)).toHaveLength(before);
    expect(await isIn(jar)).toBe(true);
  });

  test.each([
    ['http://localhost:3000', SESSION, false],
    ['https://wheelchock.school.example', `__Secure-${SESSION}`, true],
  ])(
    'the cookie of %s goes to no script, with no request of another site, and over https only',
    async (address, name, secure) => {
      vi.stubEnv('NEXTAUTH_URL', address);
      const jar = new Jar();
      const csrfToken = await tokenFor(jar);
      const answer = await postToAuth('callback/credentials', { ...credentials, csrfToken }, jar);
      const cookie = answer.headers.getSetCookie().find((line) => line.startsWith(`${name}=`)) ?? '';
      expect(cookie).toMatch(/; HttpOnly/i);
      expect(cookie).toMatch(/; SameSite=Lax/i);
      expect(/; Secure/i.test(cookie)).toBe(secure);
      expect(cookie).not.toMatch(/; Domain=/i);
    },
  );
});

describe('a session made beforehand', () => {
  test('is not taken over: each sign-in makes a row and a cookie of its own, and leaves none of what was brought', async () => {
    const jar = await signInAs(EMAIL);
    const planted = jar.get(SESSION) ?? '';
    const victim = new Jar();
    victim.set(SESSION, planted);
    await signInAs('dispatcher@first.example', victim);
    expect(victim.get(SESSION)).not.toBe(planted);
    // Whoever planted it is still who they were, and not the other.
    const rows = await sessionsOf('dispatcher@first.example');
    expect(rows).toHaveLength(1);
    expect((await sessionsOf(EMAIL)).map(({ id }) => id)).not.toContain(rows[0]?.id);
  });

  test('of an id somebody chose is none', async () => {
    const content = { ...school.people.renter, sessionId: randomUUID() };
    const jar = new Jar();
    // Sealed with the right secret even: there is no such row.
    jar.set(SESSION, await encode({ token: content, secret: process.env['NEXTAUTH_SECRET'] ?? '' }));
    expect(await isIn(jar)).toBe(false);
  });

  test.each([
    [
      'another secret',
      async (_: string, token: Record<string, unknown>) =>
        encode({ token, secret: 'another secret of enough characters!!' }),
    ],
    [
      'a changed letter',
      (sealed: string) => Promise.resolve(`${sealed.slice(0, -12)}AAAA${sealed.slice(-8)}`),
    ],
    [
      'no seal',
      (_: string, token: Record<string, unknown>) =>
        Promise.resolve(`eyJhbGciOiJub25lIn0.${Buffer.from(JSON.stringify(token)).toString('base64url')}.`),
    ],
    ['nothing', () => Promise.resolve('')],
  ])('with %s is none', async (_, forge) => {
    const jar = await signInAs(EMAIL);
    const [row] = (await sessionsOf(EMAIL)).slice(-1);
    const forged = new Jar();
    forged.set(SESSION, await forge(jar.get(SESSION) ?? '', { ...school.people.renter, sessionId: row?.id }));
    expect(await isIn(forged)).toBe(false);
  });

  test('whose cookie was copied before signing out is worth nothing after', async () => {
    const jar = await signInAs(EMAIL);
    const copy = new Jar();
    copy.set(SESSION, jar.get(SESSION) ?? '');
    expect(await isIn(copy)).toBe(true);
    await signOutOf(jar);
    expect(await isIn(copy)).toBe(false);
  });
});

describe('somebody is led elsewhere', () => {
  test.each([
    'https://elsewhere.example/',
    '//elsewhere.example',
    'javascript:alert(1)',
    '/\\elsewhere.example',
  ])('never by next-auth, asked to go on to %s', async (callbackUrl) => {
    const jar = new Jar();
    const csrfToken = await tokenFor(jar);
    const answer = await postToAuth('callback/credentials', { ...credentials, csrfToken, callbackUrl }, jar);
    const { url } = (await answer.json()) as { url: string };
    expect(new URL(url, ORIGIN).origin).toBe(ORIGIN);
    const out = await postToAuth('signout', { csrfToken: await tokenFor(jar), callbackUrl }, jar);
    const left = (await out.json()) as { url: string };
    expect(new URL(left.url, ORIGIN).origin).toBe(ORIGIN);
  });

  test.each([
    ['/ramp?x=1#y', '/ramp?x=1#y'],
    ['/desk/flight', '/desk/flight'],
    ['https://elsewhere.example', '/'],
    ['//elsewhere.example', '/'],
    ['///elsewhere.example', '/'],
    ['/\\elsewhere.example', '/'],
    ['\\\\elsewhere.example', '/'],
    ['/..//elsewhere.example', '/'],
    ['/./\\elsewhere.example', '/'],
    ['/%2e%2e//elsewhere.example', '/'],
    ['/a/..//elsewhere.example', '/'],
    ['/\t/elsewhere.example', '/'],
    ['/\n/elsewhere.example', '/'],
    ['/ramp\r\nSet-Cookie: a=b', '/'],
    ['javascript:alert(1)', '/'],
    ['data:text/html,x', '/'],
    [' //elsewhere.example', '/'],
    ['ramp', '/'],
    ['', '/'],
    [undefined, '/'],
    [['/ramp', '//elsewhere.example'], '/'],
  ])('the sign-in page goes from %j to %s', (asked, to) => {
    const path = sameOriginPath(asked);
    expect(path).toBe(to);
    // However a browser reads it, it stays here (WHATWG URL).
    expect(new URL(path, ORIGIN).origin).toBe(ORIGIN);
  });
});

describe('a body without an end', () => {
  /** Counts how much of it was taken. */
  function endless() {
    let sent = 0;
    const body = new ReadableStream({
      pull(controller) {
        sent += 16_384;
        if (sent > 200_000_000) controller.close();
        else controller.enqueue(new Uint8Array(16_384).fill(97));
      },
    });
    return { body, sent: () => sent };
  }
  const form = { 'content-type': 'application/x-www-form-urlencoded' };

  test.each([
    ['/api/auth/callback/credentials', () => authRoutes(), form, 64_000],
    ['/api/auth/callback/credentials', () => authRoutes(), { 'content-type': 'application/json' }, 64_000],
    [
      '/api/sync/findings',
      () => import('@/app/api/sync/findings/route'),
      { 'content-type': 'application/json' },
      64_000,
    ],
    [
      '/api/sync/walkarounds/finish',
      () => import('@/app/api/sync/walkarounds/finish/route'),
      { 'content-type': 'application/json' },
      512_000,
    ],
    [
      '/api/sync/photos',
      () => import('@/app/api/sync/photos/route'),
      { 'content-type': 'image/jpeg' },
      12_000_000,
    ],
    [
      '/api/sync/photos',
      () => import('@/app/api/sync/photos/route'),
      { 'content-type': 'multipart/form-data; boundary=x' },
      12_064_000,
    ],
    [
      '/api/proofs',
      () => import('@/app/api/proofs/route'),
      { 'content-type': 'application/pdf' },
      10_000_000,
    ],
  ] as const)('at %s is cut off with 413, near its bound', async (where, load, headers, most) => {
    const jar = await signInAs(EMAIL);
    const { POST } = (await load()) as { POST: Handler };
    const { body, sent } = endless();
    const params = { nextauth: ['callback', 'credentials'] };
    const answer = await ask(
      POST,
      where,
      { method: 'POST', headers: { ...FROM_HERE, ...headers }, body, params },
      jar,
    );
    expect(answer.status).toBe(413);
    // A little more is asked for ahead by the stream itself.
    expect(sent()).toBeLessThan(most + 1_000_000);
  });

  test('said to be long is not read at all', async () => {
    const { POST } = await authRoutes();
    const { body, sent } = endless();
    const headers = { ...form, 'content-length': '64001' };
    const answer = await ask(POST, '/api/auth/signout', {
      method: 'POST',
      headers,
      body,
      params: { nextauth: ['signout'] },
    });
    expect([answer.status, sent() < 100_000]).toEqual([413, true]);
  });

  test.each(['/api/sync/photos', '/api/proofs'])('from nobody is not read at %s', async (where) => {
    const { POST } = (await (where === '/api/proofs'
      ? import('@/app/api/proofs/route')
      : import('@/app/api/sync/photos/route'))) as { POST: Handler };
    const { body, sent } = endless();
    const answer = await ask(POST, where, {
      method: 'POST',
      headers: { ...FROM_HERE, 'content-type': 'image/png' },
      body,
    });
    expect([answer.status, sent() < 100_000]).toEqual([401, true]);
  });
});
