/**
 * A demo secret refuses to start in production (issue 7). What `register()` of instrumentation.ts calls is run in a process of
 * its own, in the mode of production, and its exit is looked at; the rule behind it is asked word by word.
 */
import { spawn } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { randomBytes } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { DEMO_PREFIX, sessionSecretTrouble } from '@/lib/access/session-secret';

const SCHOOL = 'https://wheelchock.school.example';
const good = () => randomBytes(32).toString('base64');
const demos = () => `${DEMO_PREFIX}${randomBytes(32).toString('base64url')}`;

describe('the rule', () => {
  test.each([
    ['none', undefined],
    ['an empty one', '   '],
    ['31 characters', good().slice(0, 31)],
    ['the demo’s', demos()],
    ['the tests’', 'a secret for tests only, of enough characters'],
    ['one of an example', 'change-me-change-me-change-me-change-me'],
    ['a sentence out of a guide', 'this is a placeholder and nothing else, replace it'],
    ['the product', 'wheelchockwheelchockwheelchockwheelchock'],
    ['the line that makes one', '$(openssl rand -base64 32) $(openssl rand -base64 32)'],
    ['one letter, often', 'a'.repeat(40)],
    ['seven letters, often', 'abcdefg'.repeat(6)],
  ])('%s is refused for a school’s server, in words without it', (_, secret) => {
    const trouble = sessionSecretTrouble(secret, SCHOOL);
    expect(trouble).toMatch(/^NEXTAUTH_SECRET /);
    if (secret?.trim()) expect(trouble).not.toContain(secret);
  });

  test.each([
    ['32 bytes as base64', () => randomBytes(32).toString('base64')],
    ['48 bytes as base64, as docs/operate.md says', () => randomBytes(48).toString('base64')],
    ['16 bytes as hex', () => randomBytes(16).toString('hex')],
    ['32 bytes as hex', () => randomBytes(32).toString('hex')],
  ])('%s is taken, two hundred times', (_, made) => {
    for (let n = 0; n < 200; n += 1) expect(sessionSecretTrouble(made(), SCHOOL)).toBeNull();
  });

  // RFC 6761, 6.3 (localhost); RFC 1122, 3.2.1.3 (127/8); RFC 4291, 2.5.3 (::1).
  test.each([
    ['http://localhost:3000', true],
    ['http://127.0.0.1:3000', true],
    ['http://[::1]:3000', true],
    ['http://demo.localhost:3000', true],
    ['http://192.168.1.20:3000', false],
    ['http://localhost.school.example', false],
    ['https://127.0.0.1.school.example', false],
    ['http://localhost@school.example', false],
    [SCHOOL, false],
    ['localhost', false],
    [undefined, false],
  ])('the demo’s own at %s: %s', (address, may) => {
    expect(sessionSecretTrouble(demos(), address) === null).toBe(may);
  });

  test('the demo’s, but with nothing at random in it, is refused there too', () => {
    expect(sessionSecretTrouble(`${DEMO_PREFIX}${'0'.repeat(40)}`, 'http://localhost:3000')).not.toBeNull();
  });
});

/** Runs what instrumentation.ts runs before the first request, as production does. */
function start(secret: string | undefined, address: string): Promise<{ code: number | null; words: string }> {
  const script = `
    const { sessionSecret } = await import('./app/_session/secret.ts');
    try { sessionSecret(); process.stdout.write('started'); }
    catch (error) { process.stderr.write(error.message); process.exit(1); }`;
  const { NEXTAUTH_SECRET: _none, ...rest } = process.env;
  const child = spawn(process.execPath, ['--import', 'tsx', '--input-type=module', '-e', script], {
    env: {
      ...rest,
      NODE_ENV: 'production',
      NEXTAUTH_URL: address,
      ...(secret === undefined ? {} : { NEXTAUTH_SECRET: secret }),
    },
  });
  let words = '';
  child.stdout.on('data', (chunk: Buffer) => (words += chunk.toString()));
  child.stderr.on('data', (chunk: Buffer) => (words += chunk.toString()));
  return new Promise((done) => child.on('exit', (code) => done({ code, words })));
}

describe('a server in production', () => {
  test('ends at once with the demo’s secret, and says why; with its own it goes on', async () => {
    const secret = demos();
    const refused = await start(secret, SCHOOL);
    expect(refused.code).toBe(1);
    expect(refused.words).toMatch(/the demo's/);
    expect(refused.words).not.toContain(secret);
    expect(await start(undefined, SCHOOL)).toMatchObject({ code: 1 });
    expect(await start(good(), SCHOOL)).toEqual({ code: 0, words: 'started' });
    expect(await start(secret, 'http://localhost:3000')).toEqual({ code: 0, words: 'started' });
  });

  test('asks this before its first request, and ends when it throws (startServer, called by instrumentation.ts)', async () => {
    expect(await readFile('instrumentation.ts', 'utf8')).toMatch(/await startServer\(\)/);
    const text = await readFile('app/_session/start-server.ts', 'utf8');
    expect(text.indexOf('sessionSecret();')).toBeGreaterThan(0);
    expect(text.indexOf('sessionSecret();')).toBeLessThan(text.indexOf('startLetters()'));
    expect(text).toMatch(/process\.exit\(1\)/);
  });

  test('and the demo’s secret is marked as such', async () => {
    expect(await readFile('lib/operate/demo.ts', 'utf8')).toMatch(/\$\{DEMO_PREFIX\}\$\{await keptSecret/);
    // What the school's own server makes for itself is not.
    expect(await readFile('lib/operate/start.ts', 'utf8')).not.toMatch(/DEMO_PREFIX/);
  });
});
