/**
 * What pages may run. Sources: issue 7 ("strict CSP with nonces, security headers"); Content Security Policy Level 3 (W3C),
 * the meaning of nonces, hashes and 'strict-dynamic' from memory; RFC 6797 for Strict-Transport-Security. Nonces are read with
 * Next's own reader, paths matched with its own matcher.
 */
import { createHash } from 'node:crypto';
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { unstable_doesMiddlewareMatch as doesProxyMatch } from 'next/experimental/testing/server';
import { getScriptNonceFromHeader } from 'next/dist/server/app-render/get-script-nonce-from-header';
import { NextRequest } from 'next/server';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { hashesOnly, nonceOnly } from '@/app/_guard/content-policy';
import { inlineScriptSums } from '@/app/_guard/inline-scripts';
import nextConfig from '../../next.config';
import { config, proxy } from '../../proxy';

type Directives = Readonly<Record<string, readonly string[]>>;

/** "a b c; d e" -> { a: ['b', 'c'], d: ['e'] } */
const read = (policy: string): Directives =>
  Object.fromEntries(
    policy.split(';').map((directive) => {
      const [name = '', ...sources] = directive.trim().split(/\s+/);
      return [name, sources];
    }),
  );
const HERE = 'https://wheelchock.school.example';
const SHELL = '/ramp/0b9c6a2e-1111-4222-8333-444455556666/walk';
const policyAt = async (where: string) =>
  (await proxy(new NextRequest(HERE + where))).headers.get('content-security-policy') ?? '';

beforeEach(() => {
  vi.stubEnv('NODE_ENV', 'production');
  vi.stubEnv('NEXTAUTH_URL', HERE);
});
afterEach(() => {
  vi.unstubAllEnvs();
  vi.restoreAllMocks();
});

describe('a page', () => {
  test('runs scripts with the nonce of this one answer, and those they load', async () => {
    const directives = read(await policyAt('/desk'));
    expect(directives['script-src']).toEqual([
      expect.stringMatching(/^'nonce-[A-Za-z0-9+/]{22}=='$/),
      "'strict-dynamic'",
    ]);
  });

  test.each(['object-src', 'frame-ancestors', 'frame-src'])('%s is none', async (directive) => {
    expect(read(await policyAt('/desk'))[directive]).toEqual(["'none'"]);
  });

  test.each(['default-src', 'base-uri', 'form-action', 'connect-src', 'worker-src', 'style-src', 'font-src'])(
    '%s is this site alone',
    async (directive) => {
      expect(read(await policyAt('/desk'))[directive]).toEqual(["'self'"]);
    },
  );

  test('has another nonce each time, and Next reads the very one out of the request', async () => {
    const seen = new Set<string>();
    for (let n = 0; n < 5; n += 1) {
      const answer = await proxy(new NextRequest(`${HERE}/desk`));
      const told = getScriptNonceFromHeader(answer.headers.get('content-security-policy') ?? '');
      // How Next hands a changed header on to what draws the page.
      const handedOn = answer.headers.get('x-middleware-request-content-security-policy') ?? '';
      expect(told).toBeDefined();
      expect(getScriptNonceFromHeader(handedOn)).toBe(told);
      seen.add(told ?? '');
    }
    expect(seen.size).toBe(5);
  });

  test('takes no nonce that the asker chose', async () => {
    const chosen = 'AAAAAAAAAAAAAAAAAAAAAA==';
    const asked = new NextRequest(`${HERE}/desk`, {
      headers: { 'content-security-policy': `script-src 'nonce-${chosen}'` },
    });
    const answer = await proxy(asked);
    expect(answer.headers.get('content-security-policy')).not.toContain(chosen);
    expect(answer.headers.get('x-middleware-request-content-security-policy')).not.toContain(chosen);
  });

  test.each(['production', 'development'])(
    'never runs what stands in it without leave (%s)',
    async (mode) => {
      vi.stubEnv('NODE_ENV', mode);
      const scripts = read(await policyAt('/desk'))['script-src'];
      expect(scripts).not.toContain("'unsafe-inline'");
      // React tells more while developing, with eval (Next.js, "Content Security Policy").
      expect(scripts?.includes("'unsafe-eval'")).toBe(mode === 'development');
    },
  );
});

describe('the page that phones keep', () => {
  let folder: string;
  const INLINE = ['(self.__next_f=self.__next_f||[]).push([0])', 'self.__next_f.push([1,"a\\u003cb é"])'];
  const HTML = `<!DOCTYPE html><html><head><script src="/_next/static/chunks/a.js" async=""></script></head>
    <body>${INLINE.map((text, n) => `<script id="_${n}_">${text}</script>`).join('')}
    <script>${INLINE[0]}</script></body></html>`;
  const sumOf = (text: string) => createHash('sha256').update(text, 'utf8').digest('base64');

  beforeEach(async () => {
    folder = await mkdtemp(path.join(tmpdir(), 'kept-page-'));
    const at = path.join(folder, '.next', 'server', 'app', 'ramp');
    await mkdir(at, { recursive: true });
    await writeFile(path.join(at, 'out.html'), HTML);
    vi.spyOn(process, 'cwd').mockReturnValue(folder);
    vi.resetModules();
  });
  afterEach(() => rm(folder, { recursive: true, force: true }));
  const fresh = async (where: string) => {
    const again = await import('../../proxy');
    return again.proxy(new NextRequest(HERE + where));
  };

  test('of its inline scripts each once, of its files none', () => {
    expect(inlineScriptSums(HTML)).toEqual(INLINE.map(sumOf));
    expect(inlineScriptSums('<script src="/a.js"></script>')).toEqual([]);
    // CSP3, 8.4: the hash is of the bytes in UTF-8, not of letters.
    expect(inlineScriptSums('<script>alert("é")</script>')).toEqual([sumOf('alert("é")')]);
  });

  test.each(['/ramp/out', SHELL])(
    '%s runs those scripts and files of this site, nothing else',
    async (where) => {
      const answer = await fresh(where);
      const directives = read(answer.headers.get('content-security-policy') ?? '');
      expect(directives['script-src']).toEqual([
        "'self'",
        ...INLINE.map((text) => `'sha256-${sumOf(text)}'`),
      ]);
      expect(directives['object-src']).toEqual(["'none'"]);
      expect(directives['frame-ancestors']).toEqual(["'none'"]);
      // It was drawn with the build: a nonce in the request would be for nobody.
      expect(answer.headers.has('x-middleware-request-content-security-policy')).toBe(false);
    },
  );

  test('stays as it was when Next draws it anew after a write: page and hashes fit each other', async () => {
    const again = await import('../../proxy');
    const asked = () => again.proxy(new NextRequest(`${HERE}/ramp/out`));
    const before = await asked();
    const file = path.join(folder, '.next', 'server', 'app', 'ramp', 'out.html');
    await writeFile(file, HTML.replaceAll('push([0])', 'push([1])'));
    const after = await asked();
    expect(await before.text()).toBe(HTML);
    expect(await after.text()).toBe(HTML);
    const policy = after.headers.get('content-security-policy');
    expect(policy).toBe(before.headers.get('content-security-policy'));
    expect(after.headers.get('content-type')).toBe('text/html; charset=utf-8');
    expect(after.headers.get('cache-control')).toBe('private, no-cache');
  });

  test('missing from the build is an error, and no page with a policy that lets nothing or all run', async () => {
    await rm(path.join(folder, '.next'), { recursive: true });
    await expect(fresh('/ramp/out')).rejects.toThrow(/ENOENT/);
    await mkdir(path.join(folder, '.next', 'server', 'app', 'ramp'), { recursive: true });
    await writeFile(path.join(folder, '.next', 'server', 'app', 'ramp', 'out.html'), '<p>nothing</p>');
    await expect(fresh('/ramp/out')).rejects.toThrow(/no scripts/);
  });

  test('is the only page made with the build: any other would have scripts without a nonce', async () => {
    const made = [];
    for (const file of await pages()) {
      const text = await readFile(file, 'utf8');
      if (/dynamic = '(force-static|error)'|generateStaticParams|'use cache'|\brevalidate\b/.test(text))
        made.push(file);
    }
    expect(made).toEqual(['app/ramp/out/page.tsx']);
  });
});

describe('https', () => {
  // RFC 6797, 7.2: not over plain http. One year: 6.1.1.
  test.each([
    [HERE, 'max-age=31536000', true],
    ['http://localhost:3000', null, false],
    ['', null, false],
  ])('reached at %j: Strict-Transport-Security %s', async (address, told, upgrades) => {
    vi.stubEnv('NEXTAUTH_URL', address);
    const answer = await proxy(new NextRequest('http://localhost:3000/desk'));
    expect(answer.headers.get('strict-transport-security')).toBe(told);
    const policy = answer.headers.get('content-security-policy') ?? '';
    expect('upgrade-insecure-requests' in read(policy)).toBe(upgrades);
  });
});

describe('which answers', () => {
  const matches = (url: string, headers: Record<string, string> = {}) =>
    doesProxyMatch({ config, nextConfig, url: HERE + url, headers });

  test('every page', async () => {
    const files = await pages();
    expect(files.length).toBeGreaterThan(30);
    for (const file of files) expect({ file, is: matches(addressOf(file)) }).toEqual({ file, is: true });
    expect(matches('/there-is-no-such-page')).toBe(true);
    expect(matches(SHELL)).toBe(true);
  });

  test.each([
    // 12 MB: Next keeps 10 MB of a body that comes by here, and drops the rest (its proxyClientMaxBodySize).
    '/api/sync/photos',
    '/api/proofs',
    '/api/v1/fleet',
    '/api/auth/callback/credentials',
    '/_next/static/chunks/a.js',
    '/serwist/sw.js',
    '/icon.svg',
    '/manifest.webmanifest',
  ])('not %s', (url) => expect(matches(url)).toBe(false));

  test('not what a page fetches of itself, and whatever else a browser says', () => {
    expect(matches('/desk', { rsc: '1' })).toBe(false);
    expect(matches('/desk', { 'next-action': 'x' })).toBe(false);
    // A document fetched ahead is shown later: it needs its policy.
    expect(matches('/desk', { purpose: 'prefetch', 'sec-purpose': 'prefetch' })).toBe(true);
  });
});

test('both kinds of policy differ in their scripts alone', () => {
  const { 'script-src': one, ...rest } = read(nonceOnly('n'));
  const { 'script-src': other, ...same } = read(hashesOnly(['s']));
  expect(rest).toEqual(same);
  expect(one).not.toEqual(other);
});

const pages = async (): Promise<string[]> =>
  (await readdir('app', { recursive: true }))
    .filter((file) => /(^|\/)(page|layout)\.tsx$/.test(file))
    .map((file) => path.join('app', file))
    .sort();

/** "app/desk/aircraft/[id]/page.tsx" -> "/desk/aircraft/x" */
const addressOf = (file: string): string =>
  path
    .dirname(file)
    .replace(/^app/, '')
    .replaceAll(/\[[^\]]+\]/g, 'x')
    .replaceAll(/\/\([^)]+\)/g, '') || '/';
