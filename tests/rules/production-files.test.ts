/**
 * The files for production, as far as they can be read without Docker. Sources: issue 6, "container image and compose file for
 * production"; the Compose specification (services, secrets, `${NAME:?words}`); Dockerfile reference.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { readSettingsFromFiles, requireSettings } from '@/lib/operate/production/settings-from-files.mjs';

const HERE = 'lib/operate/production';
const composeText = readFileSync(`${HERE}/compose.yml`, 'utf8');
const compose = parse(composeText, { merge: true }) as {
  services: Record<string, Service>;
  secrets: Record<string, { file: string }>;
  volumes: Record<string, unknown>;
};
interface Service {
  image: string;
  environment?: Record<string, string>;
  secrets?: string[];
  volumes?: string[];
  command?: string | string[];
  read_only?: boolean;
  depends_on?: Record<string, { condition: string }>;
  ports?: string[];
  stop_grace_period?: string;
}
const folder = mkdtempSync(path.join(tmpdir(), 'wheelchock-production-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe('compose.yml', () => {
  const { postgres, migrate, app, backup } = compose.services as Record<string, Service>;

  test('only the migrate job gets the owner’s address; no value of a secret stands in the file', () => {
    for (const [name, { environment = {}, secrets = [] }] of Object.entries(compose.services)) {
      const owner = 'DATABASE_URL' in environment || 'DATABASE_URL_FILE' in environment;
      expect([name, owner, secrets.includes('owner_database_url')]).toEqual([
        name,
        name === 'migrate',
        name === 'migrate',
      ]);
      for (const key of [
        'DATABASE_URL',
        'APP_DATABASE_URL',
        'NEXTAUTH_SECRET',
        'POSTGRES_PASSWORD',
        'PGPASSWORD',
      ]) {
        expect(environment).not.toHaveProperty(key);
      }
      for (const secret of secrets) expect(compose.secrets).toHaveProperty(secret);
    }
  });

  test('what has no default refuses with a sentence', () => {
    for (const name of ['NEXTAUTH_URL', 'WHEELCHOCK_SECRETS', 'WHEELCHOCK_BACKUPS', 'WHEELCHOCK_VERSION']) {
      const uses = [...composeText.matchAll(new RegExp(`\\$\\{${name}([^}]*)\\}`, 'g'))].map(
        ([, rest]) => rest,
      );
      expect(uses.length).toBeGreaterThan(0);
      for (const rest of uses) expect(rest).toMatch(/^:\?[A-Z].*\.$/);
    }
  });

  test('the order: database, then migrations, then servers and backups', () => {
    expect(migrate?.depends_on).toEqual({ postgres: { condition: 'service_healthy' } });
    expect(app?.depends_on).toEqual({ migrate: { condition: 'service_completed_successfully' } });
    expect(backup?.depends_on?.['migrate']?.condition).toBe('service_completed_successfully');
  });

  test('servers are closed to the world and cannot change themselves; the dump is of the server’s own version', () => {
    expect(app?.read_only).toBe(true);
    for (const port of app?.ports ?? ['none']) expect(port).toMatch(/^127\.0\.0\.1:/);
    expect(backup?.image).toBe(postgres?.image);
    // lib/shutdown.ts: ten seconds of the image, twenty to finish.
    expect(Number.parseInt(app?.stop_grace_period ?? '', 10)).toBeGreaterThan(30);
  });

  test('every file and volume it names is there', () => {
    for (const { volumes = [], command } of Object.values(compose.services)) {
      for (const [from = ''] of volumes.map((volume) => volume.split(':'))) {
        if (from.startsWith('./')) expect([from, existsSync(path.join(HERE, from))]).toEqual([from, true]);
        else if (!from.startsWith('$')) expect(compose.volumes).toHaveProperty(from);
      }
      for (const word of Array.isArray(command) ? command : []) {
        if (word.startsWith('lib/')) expect([word, existsSync(word)]).toEqual([word, true]);
      }
    }
  });
});

describe('Dockerfile', () => {
  const lines = readFileSync(`${HERE}/Dockerfile`, 'utf8').replaceAll('\\\n', ' ').split('\n');
  const of = (word: string) =>
    lines.filter((line) => line.startsWith(`${word} `)).map((line) => line.slice(word.length + 1));

  test('bases are pinned, to a version package.json takes', () => {
    const bases = of('FROM').map((line) => line.split(' ')[0] ?? '');
    expect(bases.length).toBe(2);
    for (const base of bases) expect(base).toMatch(/^node:20\.(19|[2-9]\d)\.\d+-[a-z]+-slim$/);
  });

  test('what it copies and runs is there', () => {
    for (const line of of('COPY').filter((one) => !one.startsWith('--from'))) {
      for (const from of line.split(' ').slice(0, -1)) expect([from, existsSync(from)]).toEqual([from, true]);
    }
    const scripts = (JSON.parse(readFileSync('package.json', 'utf8')) as { scripts: Record<string, string> })
      .scripts;
    for (const [, script = ''] of of('RUN')
      .join('\n')
      .matchAll(/npm run ([\w:]+)/g))
      expect(scripts).toHaveProperty(script);
    for (const [file = ''] of lines.join('\n').matchAll(/lib\/operate\/production\/[\w.-]+\.mjs/g)) {
      expect([file, existsSync(file)]).toEqual([file, true]);
    }
  });

  test('the server is not root and is asked for its health', () => {
    expect(of('USER').at(-1)).toBe('node');
    expect(of('HEALTHCHECK')).toHaveLength(1);
  });
});

describe('settings of the container', () => {
  const file = path.join(folder, 'secret');
  writeFileSync(file, 'of many characters\n');

  test('a secret is read from its file', () => {
    const env: Record<string, string | undefined> = { A_FILE: file };
    readSettingsFromFiles(['A', 'B'], env);
    expect(env).toEqual({ A_FILE: file, A: 'of many characters' });
  });

  test.each([
    [{ A_FILE: path.join(folder, 'none') }, /cannot be read \(ENOENT\)/],
    [{ A_FILE: file, A: 'x' }, /are both set/],
  ])('%j is refused in words that do not hold the secret', (env, words) => {
    expect(() => readSettingsFromFiles(['A'], env)).toThrow(words);
  });

  test('all that is missing is told at once', () => {
    expect(() => requireSettings({ A: 'for this', B: 'for that', C: 'x' }, { C: 'c', B: ' ' })).toThrow(
      /no default for them:\n {2}A \(or A_FILE\): for this\n {2}B \(or B_FILE\): for that\nSee/,
    );
  });

  test.each([
    ['nothing', {}, /APP_DATABASE_URL \(or APP_DATABASE_URL_FILE\)[\s\S]*NEXTAUTH_SECRET[\s\S]*NEXTAUTH_URL/],
    ['the owner’s address', { DATABASE_URL: 'postgres://owner:hush@h/d' }, /does not belong to the server/],
  ])('the server with %s ends at once and says why', (_, env, words) => {
    const { PATH, NODE_ENV } = process.env;
    const run = spawnSync(process.execPath, [`${HERE}/serve.mjs`], {
      env: { PATH, NODE_ENV, ...env },
      encoding: 'utf8',
    });
    expect(run.status).toBe(1);
    expect(run.stderr).toMatch(words);
    expect(run.stderr).not.toContain('hush');
  });
});

test('old dumps are thinned to 7 days, 4 weeks and 12 months; what is no dump stays', () => {
  const dumps = path.join(folder, 'dumps');
  spawnSync('mkdir', [dumps]);
  // Two a day for 500 days up to Sunday 2027-06-20.
  const names: string[] = [];
  for (let day = 0; day < 500; day += 1) {
    const on = new Date(Date.UTC(2027, 5, 20) - day * 86_400_000).toISOString().slice(0, 10);
    names.push(`wheelchock-${on}T023000Z.dump`, `wheelchock-${on}T180000Z.dump`);
  }
  for (const name of [...names, 'notes.txt']) writeFileSync(path.join(dumps, name), '');
  const run = spawnSync('bash', [`${HERE}/thin-backups.sh`, dumps], { encoding: 'utf8' });
  expect(run.stderr).toBe('');
  // By hand, from a calendar: the last seven days; the Sundays of the weeks 24, 23, 22 and 21; the last days of twelve months.
  const days = [
    '2027-06-20',
    '2027-06-19',
    '2027-06-18',
    '2027-06-17',
    '2027-06-16',
    '2027-06-15',
    '2027-06-14',
    '2027-06-13',
    '2027-06-06',
    '2027-05-30',
    '2027-05-31',
    '2027-04-30',
    '2027-03-31',
    '2027-02-28',
    '2027-01-31',
    '2026-12-31',
    '2026-11-30',
    '2026-10-31',
    '2026-09-30',
    '2026-08-31',
    '2026-07-31',
  ];
  expect(readdirSync(dumps).sort()).toEqual(
    [...days.map((day) => `wheelchock-${day}T180000Z.dump`), 'notes.txt'].sort(),
  );
  expect(Number(run.stdout)).toBe(1000 - days.length);
  expect(spawnSync('bash', [`${HERE}/thin-backups.sh`, dumps], { encoding: 'utf8' }).stdout).toBe('0\n');
}, 60_000);
