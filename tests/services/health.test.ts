/** /api/health, by the routes themselves. Source: issue 6, "health and readiness endpoints"; RFC 9110, 15.6.4 (503). */
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { readdir } from 'node:fs/promises';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { GET as live } from '@/app/api/health/live/route';
import { GET as ready } from '@/app/api/health/ready/route';
import { closeDatabase } from '@/lib/db/client';
import { NEEDED_MIGRATIONS } from '@/lib/db/needed-migrations';
import { forgetReadiness } from '@/lib/health/ready';
import { withClient } from '@/lib/operate/connection';
import { inRepository } from '@/lib/operate/places.mjs';
import { drainSeconds } from '@/lib/shutdown';
import { freshDatabase, type FreshDatabase } from '../fixtures/database';
import { loggedIn } from '../fixtures/logged';

let database: FreshDatabase;
const photos = process.env['PHOTO_DIR'];

beforeAll(async () => {
  database = await freshDatabase();
});
beforeEach(async () => {
  process.env['APP_DATABASE_URL'] = database.appUrl;
  process.env['PHOTO_DIR'] = photos;
  await closeDatabase();
  forgetReadiness();
});
afterAll(async () => {
  process.env['PHOTO_DIR'] = photos;
  await closeDatabase();
  await database.close();
});

/** Status and body; whatever is asked, nothing may be kept on the way, and nothing may tell about anybody or any version. */
async function asked(answer: Response | Promise<Response>) {
  const response = await answer;
  expect(response.headers.get('cache-control')).toBe('no-store');
  const text = await response.text();
  expect(text).toMatch(/^\{[a-z":,[\]]{1,80}\}$/);
  return [response.status, JSON.parse(text)];
}

test('live answers whatever the database does', async () => {
  process.env['APP_DATABASE_URL'] = 'postgres://nobody@127.0.0.1:1/nowhere';
  expect(await asked(live())).toEqual([200, { live: true }]);
});

test('ready with everything in its place; a migration from after this program is no fault', async () => {
  expect(await asked(ready())).toEqual([200, { ready: true, parts: [] }]);
  await ledger(`INSERT INTO applied_migration (name, sha256) VALUES ('9999_later', 'x')`);
  forgetReadiness();
  expect(await asked(ready())).toEqual([200, { ready: true, parts: [] }]);
});

test('a database that is away, and one in the hands of its owner, are not ready', async () => {
  process.env['APP_DATABASE_URL'] = 'postgres://nobody@127.0.0.1:1/nowhere';
  const { result, lines } = await loggedIn(async () => [await asked(ready()), await asked(ready())]);
  expect(result).toEqual([
    [503, { ready: false, parts: ['database'] }],
    [503, { ready: false, parts: ['database'] }],
  ]);
  // Once for the change, not for every question.
  expect(lines.map(({ msg, why }) => [msg, why])).toEqual([['not ready', 'database']]);
  process.env['APP_DATABASE_URL'] = database.adminUrl;
  forgetReadiness();
  expect(await asked(ready())).toEqual([503, { ready: false, parts: ['database'] }]);
});

test('a migration this program needs is missing', async () => {
  await ledger(`UPDATE applied_migration SET name = 'aside' WHERE name = '${NEEDED_MIGRATIONS.at(-1)}'`);
  expect(await asked(ready())).toEqual([503, { ready: false, parts: ['migrations'] }]);
  await ledger(`UPDATE applied_migration SET name = '${NEEDED_MIGRATIONS.at(-1)}' WHERE name = 'aside'`);
});

test('photos that could not be kept', async () => {
  const folder = await mkdtemp(path.join(tmpdir(), 'wheelchock-ready-'));
  const file = path.join(folder, 'no-folder');
  await writeFile(file, '');
  process.env['PHOTO_DIR'] = file;
  expect(await asked(ready())).toEqual([503, { ready: false, parts: ['photos'] }]);
  await rm(folder, { recursive: true });
});

test('asked by a crowd, the parts are looked at once', async () => {
  await ready();
  process.env['APP_DATABASE_URL'] = 'postgres://nobody@127.0.0.1:1/nowhere';
  await closeDatabase();
  const answers = await Promise.all(Array.from({ length: 20 }, () => ready()));
  expect(answers.map(({ status }) => status)).toEqual(Array(20).fill(200));
});

test('the migrations this program needs are those in the folder', async () => {
  const entries = await readdir(inRepository('prisma', 'migrations'), { withFileTypes: true });
  expect(
    entries
      .filter((entry) => entry.isDirectory())
      .map(({ name }) => name)
      .sort(),
  ).toEqual([...NEEDED_MIGRATIONS]);
});

test.each([
  [{}, 0],
  [{ DRAIN_SECONDS: '10' }, 10],
  [{ DRAIN_SECONDS: '120' }, 120],
])('%j waits %i seconds', (env, seconds) => expect(drainSeconds(env)).toBe(seconds));

test.each(['121', '-1', '1.5', 'soon'])('DRAIN_SECONDS=%s is refused', (DRAIN_SECONDS) =>
  expect(() => drainSeconds({ DRAIN_SECONDS })).toThrow('is not a whole number from 0 to 120'),
);

const ledger = (sql: string) => withClient(database.adminUrl, (client) => client.query(sql));
