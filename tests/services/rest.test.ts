/**
 * The interface for other programs. Sources: issue 5 ("OpenAPI 3.1 REST with scoped tokens"); the OpenAPI 3.1 document is
 * checked by another library, and every real answer against its own JSON Schema by a third (ajv); RFC 9457 for refusals,
 * RFC 6750 for keys, RFC 9110 for ETag.
 */
import { randomUUID } from 'node:crypto';
import { Validator } from '@seriousme/openapi-schema-validator';
import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { endKey } from '@/lib/feeds/end-key';
import { issueKey } from '@/lib/feeds/issue-key';
import { answerRest, DOCUMENT_PATH } from '@/lib/feeds/rest/answer-rest';
import { isFile, type Route } from '@/lib/feeds/rest/route';
import { ROUTES } from '@/lib/feeds/rest/routes';
import { SCOPE_NAMES } from '@/lib/feeds/scopes';
import { reportFinding } from '@/lib/findings/report-finding';
import { readPlannedFlights } from '@/lib/flights/read-planned-flights';
import { furnish, type Things } from '../access/acts-by-verb';
import { nickedPropeller, valueOf } from '../fixtures/acts';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, NOW, openSchools, PASSWORD, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let other: School;
let ours: Things;
let theirs: Things;
const keys = new Map<string, string>();
const now = { now: NOW };
const HOST = 'https://wheelchock.invented.example/api/v1';

beforeAll(async () => {
  ({ database, school, other } = await openSchools());
  ours = await furnish(school);
  theirs = await furnish(other);
  for (const scope of SCOPE_NAMES) keys.set(scope, (await issue([scope])).key ?? '');
});
afterAll(() => closeSchools(database));

const issue = async (scopes: readonly string[], of = school) => {
  const input = {
    requestId: randomUUID(),
    name: 'Program',
    scopes: [...scopes],
    lastDay: '',
    password: PASSWORD,
  };
  return valueOf(await issueKey(of.people.manager, input, now));
};

interface Asked {
  readonly method?: string;
  readonly key?: string | null;
  readonly headers?: Record<string, string>;
  readonly body?: unknown;
}
/** Asks as a program would; the key has the scope of the route unless another is given. */
async function ask(address: string, asked: Asked = {}): Promise<Response> {
  const { method = 'GET', key, headers = {}, body } = asked;
  const path = address.split('?')[0]!;
  const request = new Request(HOST + address, {
    method,
    headers: {
      ...(key ? { authorization: `Bearer ${key}` } : {}),
      ...(body === undefined ? {} : { 'content-type': 'application/json' }),
      ...headers,
    },
    ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
  });
  return answerRest(request, path, now);
}
const keyOf = (scope: string) => keys.get(scope) ?? '';
const plan = (some: object = {}) => ({
  aircraftId: school.aircraftId,
  pilotId: null,
  departLocal: '2026-11-27T10:00',
  arriveLocal: '2026-11-27T11:30',
  plannedHours: '1.2',
  words: 'By a program',
  ...some,
});

/** A real address of a route, about somebody's things. */
const addressOf = ({ path }: Route, of: Things): string =>
  path
    .replace('{aircraftId}', of.school.aircraftId)
    .replace('{writeUpId}', of.writeUpId)
    .replace('{releaseId}', of.releaseId)
    .replace('{file}', 'write-ups.csv');
const askRoute = (route: Route, key: string | null, of = ours) =>
  ask(addressOf(route, of), {
    method: route.method,
    key,
    ...(route.body
      ? { body: plan({ aircraftId: of.school.aircraftId }), headers: { 'idempotency-key': randomUUID() } }
      : {}),
  });
const named = (route: Route) => `${route.method} ${route.path}`;
const problem = async (answer: Response) => ({
  status: answer.status,
  contentType: answer.headers.get('content-type'),
  ...((await answer.json()) as { code: string; detail: string; fields?: Record<string, string[]> }),
});

interface Operation {
  readonly operationId: string;
  readonly security: { key: string[] }[];
  readonly parameters: { name: string; in: string; required: boolean }[];
  readonly responses: Record<string, { content?: Record<string, { schema?: object }> }>;
}
interface Document {
  readonly openapi: string;
  readonly paths: Record<string, Record<string, Operation>>;
  readonly components: { schemas: Record<string, object> };
}
const document = async () => (await (await ask(DOCUMENT_PATH)).json()) as Document;

describe('the document', () => {
  test('is OpenAPI 3.1, by a validator of its schema, and needs no key', async () => {
    const validator = new Validator();
    const result = await validator.validate(structuredClone(await document()) as never);
    expect(result.errors).toBeUndefined();
    expect(result.valid).toBe(true);
    expect(validator.version).toBe('3.1');
  });

  test('has every route and no other, with its scope, and no name twice', async () => {
    const { paths } = await document();
    const told = Object.entries(paths).flatMap(([path, methods]) =>
      Object.entries(methods).map(([method, { security }]) => `${method} ${path} ${security[0]?.key.join()}`),
    );
    const answered = ROUTES.map(({ method, path, scope }) => `${method.toLowerCase()} ${path} ${scope}`);
    expect(told.sort()).toEqual(answered.sort());
    expect(new Set(ROUTES.map(({ name }) => name)).size).toBe(ROUTES.length);
  });

  test('names every part of a path as a parameter', async () => {
    for (const [path, methods] of Object.entries((await document()).paths)) {
      const parts = [...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => name);
      for (const { parameters } of Object.values(methods)) {
        const told = parameters.filter((one) => one.in === 'path').map(({ name }) => name);
        expect(told, path).toEqual(parts);
      }
    }
  });
});

describe('every route', () => {
  const ajv = new Ajv2020({ strict: false, allErrors: true });
  addFormats.default(ajv);

  test.each(ROUTES.map((route) => [named(route), route] as const))(
    '%s answers as documented',
    async (_, route) => {
      const answer = await askRoute(route, keyOf(route.scope));
      const told = (await document()).paths[route.path]![route.method.toLowerCase()]!;
      const here = told.responses[String(answer.status)];
      expect(here, `${answer.status}: ${await answer.clone().text()}`).toBeDefined();
      const type = answer.headers.get('content-type')!.split(';')[0]!;
      expect(Object.keys(here!.content ?? {})).toContain(type);
      if (isFile(route)) return;
      const check = ajv.compile(here!.content![type]!.schema!);
      const value: unknown = await answer.json();
      check(value);
      expect(check.errors).toBeNull();
      // A schema that takes anything would check nothing.
      expect(check({ nothing: 'of this' })).toBe(false);
    },
  );

  test('has something to show, so that the checks above looked at something', async () => {
    const read = async (address: string, scope: string) =>
      (await (await ask(address, { key: keyOf(scope) })).json()) as Record<string, unknown[]>;
    // The school's own and the spare one that is retired and brought back in the matrix.
    expect((await read('/fleet', 'fleet:read'))['rows']).toHaveLength(2);
    expect((await read('/write-ups', 'write-ups:read'))['writeUps']!.length).toBeGreaterThan(1);
    expect((await read('/releases', 'flights:read'))['releases']).toHaveLength(1);
    expect((await read('/due', 'due:read'))['lines']!.length).toBeGreaterThan(3);
    const day = (await read(`/aircraft/${school.aircraftId}/day?on=2026-11-26`, 'fleet:read')) as unknown as {
      on: string;
      lanes: unknown[];
    };
    expect(day.on).toBe('2026-11-26');
    expect(day.lanes).toHaveLength(4);
  });

  const cells = ROUTES.flatMap((route) => SCOPE_NAMES.map((scope) => [named(route), scope, route] as const));
  test.each(cells)('%s with %s', async (_, scope, route) => {
    const answer = await askRoute(route, keyOf(scope));
    if (scope === route.scope) {
      expect([200, 201]).toContain(answer.status);
      await answer.body?.cancel();
      return;
    }
    expect(await problem(answer)).toMatchObject({ status: 403, code: 'not_allowed' });
    // RFC 6750, section 3.1.
    expect(answer.headers.get('www-authenticate')).toBe(
      `Bearer realm="Wheelchock", error="insufficient_scope", scope="${route.scope}"`,
    );
  });

  test.each(ROUTES.map((route) => [named(route), route] as const))(
    '%s without a key, and with one that is none, is 401',
    async (_, route) => {
      const none = await askRoute(route, null);
      expect(await problem(none)).toMatchObject({ status: 401, contentType: 'application/problem+json' });
      expect(none.headers.get('www-authenticate')).toBe('Bearer realm="Wheelchock"');
      const unknown = await askRoute(route, `wck_${'A'.repeat(43)}`);
      expect(unknown.status).toBe(401);
      expect(unknown.headers.get('www-authenticate')).toMatch(/error="invalid_token"/);
    },
  );

  test.each(
    ROUTES.filter(({ path }) => /\{(?!file)/.test(path) || path === '/plans').map(
      (route) => [named(route), route] as const,
    ),
  )('%s shows nothing of another school', async (_, route) => {
    const answer = await askRoute(route, keyOf(route.scope), theirs);
    if (route.path === '/plans' && route.method === 'GET') {
      expect(await answer.text()).not.toContain(other.aircraftId);
    } else expect((await problem(answer)).status).toBe(404);
  });
});

describe('a key', () => {
  test('that was ended opens nothing any more', async () => {
    const { key, keyId } = await issue(['fleet:read']);
    expect((await ask('/fleet', { key })).status).toBe(200);
    valueOf(await endKey(school.people.manager, { requestId: randomUUID(), keyId }, now));
    expect((await ask('/fleet', { key })).status).toBe(401);
  });

  test('in the address or in a cookie is none', async () => {
    const key = keyOf('fleet:read');
    expect((await ask(`/fleet?access_token=${key}`)).status).toBe(401);
    expect((await ask('/fleet', { headers: { cookie: `session=${key}` } })).status).toBe(401);
  });

  test('lets no page of another site read (no CORS)', async () => {
    const answer = await ask('/fleet', {
      key: keyOf('fleet:read'),
      headers: { origin: 'https://elsewhere.example' },
    });
    expect([...answer.headers.keys()].filter((name) => name.startsWith('access-control'))).toEqual([]);
  });
});

describe('planning', () => {
  const send = (body: unknown, headers: Record<string, string> = { 'idempotency-key': randomUUID() }) =>
    ask('/plans', { method: 'POST', key: keyOf('flights:plan'), body, headers });
  const words = async () =>
    valueOf(await readPlannedFlights(school.people.dispatcher, {}, now)).aircraft.flatMap(({ flights }) =>
      flights.map((one) => one.words),
    );

  test('sent twice with one number is planned once; other content under it is refused', async () => {
    const headers = { 'idempotency-key': `"${randomUUID()}"` };
    const first = await send(plan({ words: 'Once' }), headers);
    const again = await send(plan({ words: 'Once' }), headers);
    expect([first.status, again.status]).toEqual([201, 201]);
    expect(await again.json()).toEqual(await first.json());
    expect((await words()).filter((one) => one === 'Once')).toHaveLength(1);
    expect(await problem(await send(plan({ words: 'Twice' }), headers))).toMatchObject({
      status: 409,
      code: 'conflict',
    });
  });

  test.each([
    ['no number', {}, {}, 'Idempotency-Key'],
    ['a number that is no UUID', {}, { 'idempotency-key': '17' }, 'Idempotency-Key'],
    ['two numbers', { requestId: randomUUID() }, undefined, 'Idempotency-Key'],
    ['an arrival before the departure', { arriveLocal: '2026-11-27T09:00' }, undefined, 'arriveLocal'],
    ['no aircraft', { aircraftId: undefined }, undefined, 'aircraftId'],
  ])('%s is refused with the field', async (_, change, headers, field) => {
    const refused = await problem(await send(plan(change), headers));
    expect(refused).toMatchObject({ status: 422, code: 'invalid' });
    expect(Object.keys(refused.fields ?? {})).toContain(field);
  });

  test('takes the number from the body as well', async () => {
    expect((await send(plan({ requestId: randomUUID() }), {})).status).toBe(201);
  });

  test.each([
    ['no JSON', 'not json', {}, 422],
    ['a list', '[]', {}, 422],
    ['another type', '{}', { 'content-type': 'text/plain' }, 422],
    ['too much', JSON.stringify({ words: 'x'.repeat(64_001) }), {}, 413],
  ])('%s is refused', async (_, body, headers, status) => {
    expect((await send(body, { 'idempotency-key': randomUUID(), ...headers })).status).toBe(status);
  });
});

describe('lists', () => {
  test('go on behind the last row, with none twice and none left out', async () => {
    for (let n = 0; n < 5; n += 1) {
      const at = { now: new Date(NOW.getTime() + (n < 3 ? 0 : n) * 1000) };
      valueOf(await reportFinding(school.people.renter, nickedPropeller(school), at));
    }
    const seen: { id: string; openedAt: string }[] = [];
    let after = '';
    for (let round = 0; round < 20; round += 1) {
      const answer = await ask(`/write-ups?limit=2${after}`, { key: keyOf('write-ups:read') });
      const { writeUps, next } = (await answer.json()) as { writeUps: typeof seen; next: string | null };
      seen.push(...writeUps);
      if (next === null) break;
      expect(writeUps).toHaveLength(2);
      after = `&after=${next}`;
    }
    const all = await ask('/write-ups?limit=200', { key: keyOf('write-ups:read') });
    expect(seen.map(({ id }) => id)).toEqual(
      ((await all.json()) as { writeUps: typeof seen }).writeUps.map(({ id }) => id),
    );
    expect(new Set(seen.map(({ id }) => id)).size).toBe(seen.length);
    expect(seen.map(({ openedAt }) => openedAt)).toEqual(
      seen
        .map(({ openedAt }) => openedAt)
        .toSorted()
        .toReversed(),
    );
  });

  test.each([
    ['limit=0', 'limit'],
    ['limit=201', 'limit'],
    ['limit=many', 'limit'],
    ['after=nonsense', 'after'],
    ['state=lost', 'state'],
    ['colour=red', ''],
  ])('%s is refused', async (query, field) => {
    const refused = await problem(await ask(`/write-ups?${query}`, { key: keyOf('write-ups:read') }));
    expect(refused).toMatchObject({ status: 422, code: 'invalid' });
    expect(Object.keys(refused.fields ?? {})).toEqual([field]);
  });

  test.each([
    ['limit=1', 1],
    ['limit=200&state=deferred', 1],
    ['state=closed', 0],
  ])('%s gives %i', async (query, count) => {
    const answer = await ask(`/write-ups?${query}`, { key: keyOf('write-ups:read') });
    expect(((await answer.json()) as { writeUps: unknown[] }).writeUps).toHaveLength(count);
  });
});

describe('answers', () => {
  test('that have not changed are not sent again (RFC 9110, section 13.1.2)', async () => {
    const first = await ask('/due', { key: keyOf('due:read') });
    const tag = first.headers.get('etag')!;
    const same = await ask('/due', {
      key: keyOf('due:read'),
      headers: { 'if-none-match': `"other", ${tag}` },
    });
    expect([same.status, await same.text(), same.headers.get('etag')]).toEqual([304, '', tag]);
    const changed = await ask('/due', { key: keyOf('due:read'), headers: { 'if-none-match': '"other"' } });
    expect(changed.status).toBe(200);
  });

  test('are kept by nothing that is shared', async () => {
    const { headers } = await ask('/fleet', { key: keyOf('fleet:read') });
    expect(headers.get('cache-control')).toBe('private, no-cache');
    expect(headers.get('vary')).toBe('Authorization');
  });

  test('where there is nothing, and to what nobody does there', async () => {
    expect(await problem(await ask('/nothing'))).toMatchObject({ status: 404, code: 'not_found' });
    const wrong = await ask('/fleet', { method: 'DELETE', key: keyOf('fleet:read') });
    expect([wrong.status, wrong.headers.get('allow')]).toEqual([405, 'GET']);
    expect((await ask('/plans', { method: 'PUT' })).headers.get('allow')).toBe('GET, POST');
    expect((await ask('/aircraft/17', { key: keyOf('fleet:read') })).status).toBe(422);
    expect((await ask(`/aircraft/${randomUUID()}`, { key: keyOf('fleet:read') })).status).toBe(404);
  });

  test('of a refusal have what RFC 9457 asks for, and are as documented', async () => {
    const { components } = await document();
    const check = new Ajv2020({ strict: false }).compile(components.schemas['Problem']!);
    const refused = await ask('/write-ups?limit=0', { key: keyOf('write-ups:read') });
    const body = (await refused.json()) as Record<string, unknown>;
    expect(body).toMatchObject({ type: 'about:blank', title: 'Unprocessable Entity', status: 422 });
    check(body);
    expect(check.errors).toBeNull();
  });
});
