/**
 * Every route x method x role x own or other operator, against the table lib/access/routes.ts, through the handlers themselves:
 * real cookies sealed by next-auth, a real PostgreSQL as the application's role. A new route without a row fails. Sources: issue
 * 7, "isolation"; RFC 9110, 15.5.2 (401), 15.5.4 (403), 15.5.5 (404).
 */
// First: it makes Next's place for a request, which its other modules look for once.
import { ask, Jar, type Handler } from '../fixtures/asking';
import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { POLICY, ROLES, type Role, type Verb } from '@/lib/access/policy';
import { ROUTES, type Method, type RouteAccess } from '@/lib/access/routes';
import { writeInOperator } from '@/lib/db/scope';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, openSchools } from '../fixtures/school';
import { SESSION, settingsOfServer, signInAs, signOutOf } from '../fixtures/signing-in';
import { ASKED, thingsOfRoutes, type RouteThings } from './asked-of-routes';

vi.setConfig({ testTimeout: 90_000 });

const METHODS: readonly Method[] = ['GET', 'POST', 'PUT', 'PATCH', 'DELETE'];

let database: FreshDatabase;
let ours: RouteThings;
let theirs: RouteThings;
let photos: string;
/** Signed in; was signed in (a copy of the cookie); has left since. */
let jar: Jar;
let ended: Jar;
let left: Jar;

const rows = Object.entries(ROUTES).flatMap(([route, methods]) =>
  (Object.entries(methods) as [Method, RouteAccess][]).map(([method, access]) => ({ route, method, access })),
);
const named = ({ route, method }: { route: string; method: Method }) => `${method} ${route}`;
const bySession = rows.filter(({ access }) => access !== 'anybody' && access !== 'key');
const namedRows = (some: typeof bySession) => some.map((row) => [named(row), row] as const);

const fileOf = (route: string) => `app${route}/route.ts`;
/** What the file answers to. */
const handlersOf = (route: string) =>
  import(/* @vite-ignore */ `../../${fileOf(route)}`) as Promise<Partial<Record<string, Handler>>>;

beforeAll(async () => {
  settingsOfServer();
  photos = await mkdtemp(path.join(tmpdir(), 'routes-photos-'));
  process.env['PHOTO_DIR'] = photos;
  const opened = await openSchools();
  database = opened.database;
  ours = await thingsOfRoutes(opened.school, database);
  theirs = await thingsOfRoutes(opened.other, database);
  jar = await signInAs('renter@first.example');
  const other = await signInAs('renter@first.example');
  ended = new Jar();
  ended.set(SESSION, other.get(SESSION) ?? '');
  await signOutOf(other);
  left = await signInAs('student@first.example');
  await change('student', { leftOn: new Date('2026-11-01') });
});
afterAll(async () => {
  await closeSchools(database);
  await rm(photos, { recursive: true, force: true });
});

const change = (who: 'renter' | 'student', data: { roles?: string[]; leftOn?: Date }) =>
  writeInOperator(ours.school.operatorId, (tx) =>
    tx.person.update({
      where: {
        operatorId_id: { operatorId: ours.school.operatorId, id: ours.school.people[who].personId },
      },
      data,
    }),
  );

interface Told {
  readonly status: number;
  readonly cache: string | null;
}
async function told(
  row: { route: string; method: Method },
  things: RouteThings,
  who: Jar,
  headers: Record<string, string> | null = null,
): Promise<Told> {
  const act = ASKED[named(row)];
  const handler = (await handlersOf(row.route))[row.method];
  if (!act || !handler) throw new Error(`${named(row)} has no act or no handler`);
  const [where, asked] = act.ask(things);
  const sent = headers ? { ...asked.headers, ...headers } : asked.headers;
  const answer = await ask(handler, where, { ...asked, ...(sent && { headers: sent }) }, who);
  await answer.body?.cancel();
  return { status: answer.status, cache: answer.headers.get('cache-control') };
}

test('every route of app/ has its row, method by method, and no row is of a route that is gone', async () => {
  const found = [];
  for (const file of await readdir('app', { recursive: true })) {
    if (!/(^|\/)route\.tsx?$/.test(file)) continue;
    const route = `/${path.dirname(file)}`;
    const handlers = await handlersOf(route);
    for (const method of [...METHODS, 'HEAD', 'OPTIONS'])
      if (method in handlers) found.push(`${method} ${route}`);
  }
  expect(found.length).toBeGreaterThan(30);
  expect(rows.map(named).sort()).toEqual(found.sort());
});

test('every route that asks for a session is asked below, and none that does not exist', () => {
  expect(Object.keys(ASKED).sort()).toEqual(bySession.map(named).sort());
});

const verbsOf = (access: RouteAccess): readonly Verb[] =>
  typeof access === 'string' ? [access as Verb] : access;

let cells = 0;
describe.each(ROLES)('as %s', (role) => {
  test.each(namedRows(bySession))('%s', async (name, row) => {
    await change('renter', { roles: [role] });
    const act = ASKED[name];
    const may = verbsOf(row.access).some((verb) => (POLICY[verb] as readonly Role[]).includes(role));
    const own = await told(row, ours, jar);
    cells += 1;
    if (may)
      expect(act?.own ?? [row.method === 'GET' || row.method === 'POST' ? 200 : 0]).toContain(own.status);
    else expect(own.status).toBe(403);
    // What is one person's is kept by nothing in between.
    expect(own.cache).toMatch(/no-store|private/);
    if (act?.foreign === null) return;
    const foreign = await told(row, theirs, jar);
    cells += 1;
    if (may) expect(act?.foreign ?? [404]).toContain(foreign.status);
    else expect(foreign.status).toBe(403);
  });
});

test('every cell was looked at', () => {
  const aboutThings = Object.values(ASKED).filter(({ foreign }) => foreign !== null).length;
  expect(cells).toBe(ROLES.length * (bySession.length + aboutThings));
});

test.each(namedRows(bySession))(
  '%s is 401 for nobody, a signed-out session and somebody who left',
  async (_, row) => {
    for (const who of [new Jar(), ended, left]) expect((await told(row, ours, who)).status).toBe(401);
  },
);

test.each(namedRows(bySession.filter(({ method }) => method !== 'GET')))(
  '%s is 403 from a page of another site, of none and of a name like ours',
  async (_, row) => {
    await change('renter', { roles: [...ROLES] });
    for (const origin of ['https://elsewhere.example', 'null', 'http://localhost:3000.elsewhere.example', ''])
      expect({ origin, ...(await told(row, ours, jar, { origin })) }).toMatchObject({
        origin,
        status: 403,
      });
  },
);

describe.each(namedRows(rows.filter(({ access }) => access === 'key')))('%s', (_, row) => {
  test('opens to no session, whatever its roles', async () => {
    await change('renter', { roles: [...ROLES] });
    const handler = (await handlersOf(row.route))[row.method];
    if (!handler) throw new Error('no handler');
    const asks: [string, Record<string, string | string[]>][] = row.route.startsWith('/api/v1')
      ? ['fleet', 'plans', 'write-ups'].map((part) => [`/api/v1/${part}`, { path: [part] }])
      : [['/api/calendar/x/maintenance-due.ics', { key: 'x' }]];
    for (const [where, params] of asks) {
      const { status } = await ask(handler, where, { method: row.method, params }, jar);
      expect([401, 404, 405]).toContain(status);
    }
  });
});

describe('what anybody may ask', () => {
  const known = ['/api/auth/[...nextauth]', '/serwist/[path]'];
  const open = rows.filter(({ access, route }) => access === 'anybody' && !known.includes(route));
  test.each(namedRows(open))('%s says the same to nobody and to a manager', async (_, row) => {
    await change('renter', { roles: ['manager'] });
    const handler = (await handlersOf(row.route))[row.method];
    if (!handler) throw new Error('no handler');
    const where = row.route === '/api/templates/history' ? `${row.route}?what=write-ups` : row.route;
    const [one, other] = [await ask(handler, where), await ask(handler, where, {}, jar)];
    expect([200, 404, 503]).toContain(one.status);
    expect(await other.text()).toBe(await one.text());
  });
});
