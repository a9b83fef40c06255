/**
 * Keys for other programs. Sources: issue 5 ("scoped tokens"); RFC 6750 for the header; the rest common practice for
 * bearer keys (shown once, kept as a hash), no source.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { endKey } from '@/lib/feeds/end-key';
import { issueKey } from '@/lib/feeds/issue-key';
import { actorOfKey, bearerKey } from '@/lib/feeds/key-actor';
import { keySha256 } from '@/lib/feeds/key-text';
import { readFeeds } from '@/lib/feeds/read-feeds';
import { readBoard } from '@/lib/fleet/read-board';
import { planFlight } from '@/lib/flights/plan-flight';
import { contentHash } from '@/lib/records/canonical';
import { withClient } from '@/lib/operate/connection';
import { readForKey } from '@/lib/db/scope';
import { problemOf, valueOf } from '../fixtures/acts';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, NOW, openSchools, PASSWORD, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let other: School;
const now = { now: NOW };

beforeAll(async () => {
  ({ database, school, other } = await openSchools());
});
afterAll(() => closeSchools(database));

const asked = (some: object = {}) => ({
  requestId: randomUUID(),
  name: 'Wall screen',
  scopes: ['fleet:read'],
  lastDay: '',
  password: PASSWORD,
  ...some,
});
const issue = async (some: object = {}, of = school) =>
  valueOf(await issueKey(of.people.manager, asked(some), now));
const opens = async (key: string | null, at = NOW) => (await actorOfKey(key ?? '', at)) !== null;
const asOwner = (sql: string, values: unknown[] = []) =>
  withClient(database.adminUrl, (client) => client.query<Record<string, unknown>>(sql, values));

describe('a key', () => {
  test('has 256 random bits, opens, and is kept nowhere', async () => {
    const first = await issue();
    const second = await issue();
    expect(first.key).toMatch(/^wck_[A-Za-z0-9_-]{43}$/);
    expect(second.key).not.toBe(first.key);
    expect(await opens(first.key)).toBe(true);
    const { rows: tables } = await asOwner(
      `SELECT table_name AS name FROM information_schema.tables WHERE table_schema = 'public' AND table_type = 'BASE TABLE'`,
    );
    for (const { name } of tables) {
      const { rows } = await asOwner(`SELECT count(*)::int AS found FROM "${name}" t WHERE t::text LIKE $1`, [
        `%${first.key?.slice(12)}%`,
      ]);
      expect(rows[0], String(name)).toEqual({ found: 0 });
    }
    const { rows } = await asOwner('SELECT key_sha256 FROM access_key WHERE id = $1', [first.keyId]);
    expect(rows).toEqual([{ key_sha256: keySha256(first.key ?? '') }]);
  });

  test('asked for twice with one number is one key, and the second answer does not have it', async () => {
    const request = asked();
    const first = valueOf(await issueKey(school.people.manager, request, now));
    const again = valueOf(await issueKey(school.people.manager, request, now));
    expect(again).toEqual({ ...first, key: null });
    expect(problemOf(await issueKey(school.people.manager, { ...request, name: 'Other' }, now)).code).toBe(
      'conflict',
    );
  });

  test('acts for whoever issued it, with the roles they have now', async () => {
    const { key } = await issue();
    const actor = await actorOfKey(key ?? '', NOW);
    expect(actor?.ref).toMatchObject({
      personId: school.people.manager.personId,
      operatorId: school.operatorId,
    });
    expect(valueOf(await readBoard(actor?.ref ?? null, {}, now)).rows).toHaveLength(1);
    const roles = (list: string) =>
      asOwner('UPDATE person SET roles = $1 WHERE id = $2', [list, school.people.manager.personId]);
    await roles('{pilot}');
    try {
      const plan = { requestId: randomUUID(), ...flight(), aircraftId: school.aircraftId };
      expect(problemOf(await planFlight(actor?.ref ?? null, plan, now)).code).toBe('not_allowed');
    } finally {
      await roles('{manager}');
    }
  });

  test('shows one operator nothing of another, though it is looked up before an operator is known', async () => {
    const { key } = await issue();
    const theirs = await issue({}, other);
    const seen = await readForKey(keySha256(key ?? ''), (tx) =>
      tx.accessKey.findMany({ select: { id: true, operatorId: true } }),
    );
    expect(seen.map(({ operatorId }) => operatorId)).toEqual([school.operatorId]);
    expect(await readForKey('', (tx) => tx.accessKey.count())).toBe(0);
    expect(await readForKey(keySha256(key ?? ''), (tx) => tx.person.count())).toBe(0);
    const listed = valueOf(await readFeeds(school.people.manager, {}, now)).keys.map(({ id }) => id);
    expect(listed).not.toContain(theirs.keyId);
    expect(
      problemOf(await endKey(school.people.manager, { requestId: randomUUID(), keyId: theirs.keyId }, now))
        .code,
    ).toBe('not_found');
  });
});

describe('is issued with the password alone: a session somebody left open leaves no key behind', () => {
  const keys = async () => (await asOwner('SELECT count(*)::int AS found FROM access_key')).rows[0];

  test.each([
    ['without it', undefined, 'invalid', 'password'],
    ['with an empty one', '', 'invalid', 'password'],
    ['with a wrong one', `${PASSWORD}.`, 'wrong_password', 'password'],
  ])('%s there is none', async (_name, password, code, field) => {
    const before = await keys();
    const problem = problemOf(await issueKey(school.people.manager, asked({ password }), now));
    expect(problem.code).toBe(code);
    expect(Object.keys(problem.fields ?? {})).toEqual([field]);
    expect(await keys()).toEqual(before);
  });

  test('a key issues no further one, whoever it acts for', async () => {
    const { key } = await issue();
    const actor = await actorOfKey(key ?? '', NOW);
    expect(problemOf(await issueKey(actor?.ref ?? null, asked(), now)).code).toBe('not_allowed');
  });

  test('the password stands nowhere, and in no hash', async () => {
    const request = asked();
    const { keyId } = valueOf(await issueKey(school.people.manager, request, now));
    const { rows } = await asOwner(
      `SELECT (SELECT r::text FROM request r WHERE r.id = $1)
           || (SELECT a::text FROM audit_row a WHERE a.request_id = $1) AS kept, r.input_hash AS hash
         FROM request r WHERE r.id = $1`,
      [keyId],
    );
    const { password: _password, ...counted } = request;
    expect(rows[0]?.['kept']).not.toContain(PASSWORD);
    expect(rows[0]?.['hash']).toBe(contentHash({ verb: 'key.issue', input: counted }));
  });
});

describe('it stops', () => {
  test('when it is ended, at once and for good', async () => {
    const { key, keyId } = await issue();
    const end = () => endKey(school.people.manager, { requestId: randomUUID(), keyId }, now);
    valueOf(await end());
    expect(await opens(key)).toBe(false);
    const later = new Date(NOW.getTime() + 1000);
    valueOf(await endKey(school.people.manager, { requestId: randomUUID(), keyId }, { now: later }));
    const ended = valueOf(await readFeeds(school.people.manager, {}, now)).keys.find(
      ({ id }) => id === keyId,
    );
    expect(ended).toMatchObject({ endedAt: NOW.toISOString(), works: false });
  });

  test('at the end of its last day, which is a day of UTC', async () => {
    const { key } = await issue({ lastDay: '2026-11-26' });
    expect(await opens(key, new Date('2026-11-26T23:59:59.999Z'))).toBe(true);
    expect(await opens(key, new Date('2026-11-27T00:00:00.000Z'))).toBe(false);
    expect(await opens(key, new Date('2026-11-27T00:00:00.001Z'))).toBe(false);
    expect(
      problemOf(await issueKey(school.people.manager, asked({ lastDay: '2026-11-24' }), now)).fields,
    ).toEqual({
      lastDay: ['This day is over already.'],
    });
  });

  test('when its person leaves', async () => {
    const { key } = await issue({}, other);
    const person = other.people.manager.personId;
    await asOwner('UPDATE person SET left_on = $1 WHERE id = $2', ['2026-11-25', person]);
    try {
      expect(await opens(key)).toBe(false);
    } finally {
      await asOwner('UPDATE person SET left_on = NULL WHERE id = $1', [person]);
    }
    expect(await opens(key)).toBe(true);
  });

  test.each(['', 'wck_', `wck_${'A'.repeat(43)}`, `xck_${'A'.repeat(43)}`, `wck_${'A'.repeat(42)}!`])(
    'and %j never opened anything',
    async (key) => expect(await opens(key)).toBe(false),
  );
});

test('when it was last used is noted once a minute at most', async () => {
  const { key, keyId } = await issue();
  const lastUsed = async (ms: number) => {
    await actorOfKey(key ?? '', new Date(NOW.getTime() + ms));
    const found = valueOf(await readFeeds(school.people.manager, {}, now)).keys.find(
      ({ id }) => id === keyId,
    );
    return Date.parse(found?.lastUsedAt ?? '') - NOW.getTime();
  };
  expect(await lastUsed(0)).toBe(0);
  expect(await lastUsed(59_999)).toBe(0);
  expect(await lastUsed(60_000)).toBe(60_000);
  expect(await lastUsed(60_001)).toBe(60_000);
});

test('a key for the calendar opens nothing else, and one without a scope is none', async () => {
  const refused = async (scopes: string[]) =>
    problemOf(await issueKey(school.people.manager, asked({ scopes }), now)).fields;
  expect(await refused(['calendar:read', 'due:read'])).toHaveProperty('scopes');
  expect(await refused([])).toHaveProperty('scopes');
  expect(await refused(['everything:write'])).toHaveProperty(['scopes.0']);
  expect((await issue({ scopes: ['calendar:read'] })).forCalendar).toBe(true);
});

test('what a key writes is written down as of its person, by that key', async () => {
  const { key, keyId } = await issue({ scopes: ['flights:plan'] });
  const actor = await actorOfKey(key ?? '', NOW);
  const requestId = randomUUID();
  valueOf(
    await planFlight(actor?.ref ?? null, { requestId, ...flight(), aircraftId: school.aircraftId }, now),
  );
  const { rows } = await asOwner('SELECT person_id, detail FROM audit_row WHERE request_id = $1', [
    requestId,
  ]);
  expect(rows).toEqual([
    { person_id: school.people.manager.personId, detail: expect.objectContaining({ byKey: keyId }) },
  ]);
});

// RFC 6750, section 2.1: "Bearer" 1*SP b64token; the scheme's case does not count (RFC 9110, section 11.1).
test.each([
  ['Bearer wck_abc', 'wck_abc'],
  ['bearer  wck_abc', 'wck_abc'],
  ['Basic wck_abc', null],
  ['Bearer', null],
  ['Bearer a b', null],
  [null, null],
])('the header %j has the key %j', (header, key) => expect(bearerKey(header)).toBe(key));

const flight = () => ({
  pilotId: null,
  departLocal: '2026-11-26T10:00',
  arriveLocal: '2026-11-26T11:00',
  plannedHours: '',
  words: '',
});
