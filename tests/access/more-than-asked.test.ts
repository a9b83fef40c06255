/**
 * Mass assignment: every write is sent all it asks for and a lot it does not (whose it is, who signed, roles, hashes, moments),
 * on every level of the message; afterwards no table holds any of it. Each write has marks of its own, so that one found says
 * which. Sources: issue 7 ("mass assignment", CWE-915).
 */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { POLICY, ROLES, type Verb } from '@/lib/access/policy';
import { writeInOperator } from '@/lib/db/scope';
import { withClient } from '@/lib/operate/connection';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, NOW, openSchools } from '../fixtures/school';
import { ACTS, furnish, type Things } from './acts-by-verb';

let database: FreshDatabase;
let ours: Things;

beforeAll(async () => {
  const opened = await openSchools();
  database = opened.database;
  ours = await furnish(opened.school);
  const { operatorId, people } = ours.school;
  await writeInOperator(operatorId, (tx) =>
    tx.person.update({
      where: { operatorId_id: { operatorId, id: people.renter.personId } },
      data: { roles: [...ROLES] },
    }),
  );
});
afterAll(() => closeSchools(database));

const VERBS = Object.keys(POLICY) as Verb[];

/** Begin of every mark; the verb's number makes it whole. */
const MARK = 'dead5eed-0000-4000-8000-';
const markOf = (verb: Verb) => `${MARK}${String(VERBS.indexOf(verb)).padStart(12, '0')}`;

const IDS =
  'id operatorId personId actorId byId madeById addedById signedById enteredById recordedById takenById reportedById ' +
  'openedById endedById judgedById sessionId keyId ownerId createdBy storedAs storedKey aircraftRegistration';
const TEXTS =
  'passwordHash hash entryHash contentHash sealedSecret tokenSha256 fileName mime registration name email signature';

/** Names of columns, as somebody who knows the tables would try them; and how the services pass things on to themselves. */
function extras(mark: string): Record<string, unknown> {
  return {
    ...Object.fromEntries([...IDS.split(' '), ...TEXTS.split(' ')].map((name) => [name, mark])),
    roles: [mark],
    made: { secret: mark, mark, keySha256: mark, codes: [mark] },
    kept: { storedAs: mark, width: 1, height: 1, sha256: mark, smallSha256: mark, mime: mark, bytes: 1 },
    constructor: mark,
    operator: { connect: { id: mark } },
    person: { create: { name: mark } },
  };
}

/** What a message may hold beside what it is sent with in the matrix: the new name of the operator. */
const MAY_HOLD: Partial<Record<Verb, readonly string[]>> = { 'operator.change': ['name'] };

const isPlain = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype;

/** The message with more in it, on every level; what it asks for itself stays as it is. */
function withMore(value: unknown, mark: string): unknown {
  if (Array.isArray(value)) return value.map((one) => withMore(one, mark));
  if (!isPlain(value)) return value;
  const whole = Object.entries(value).map(([name, one]) => [name, withMore(one, mark)]);
  return { ...extras(mark), ...Object.fromEntries(whole) };
}

const outcomes = new Map<Verb, string>();

test.each(VERBS)('%s', async (verb) => {
  const { call, input } = ACTS[verb];
  const known = MAY_HOLD[verb] ?? [];
  const more = Object.entries(withMore(input(ours), markOf(verb)) as object);
  const message = Object.fromEntries(more.filter(([name]) => !known.includes(name)));
  const result = await call(ours.school.people.renter, message, { now: NOW });
  outcomes.set(verb, result.ok ? 'ok' : result.problem.code);
  expect(outcomes.get(verb)).not.toBe('bug');
});

test('most of them did what was asked', () => {
  const done = [...outcomes].filter(([, outcome]) => outcome === 'ok');
  expect(done.length).toBeGreaterThan(VERBS.length / 2);
});

test('no table holds anything that was not asked for', async () => {
  const found = await withClient(database.adminUrl, async (client) => {
    const { rows: tables } = await client.query<{ name: string }>(
      `SELECT c.oid::regclass::text AS name FROM pg_class c
       WHERE c.relnamespace = 'public'::regnamespace AND c.relkind = 'r'`,
    );
    expect(tables.length).toBeGreaterThan(40);
    const held: string[] = [];
    for (const { name } of tables) {
      const { rows } = await client.query<{ row: string }>(
        `SELECT t::text AS row FROM ${name} t WHERE t::text LIKE '%${MARK}%'`,
      );
      for (const { row } of rows) {
        for (const [, number = ''] of row.matchAll(new RegExp(`${MARK}(\\d{12})`, 'g')))
          held.push(`${name}: ${VERBS[Number(number)]}`);
      }
    }
    return [...new Set(held)];
  });
  expect(found).toEqual([]);
});

test('the search would find one', async () => {
  const { operatorId, people } = ours.school;
  const rows = await withClient(database.adminUrl, async (client) => {
    await client.query('BEGIN');
    await client.query(`UPDATE person SET name = $1 WHERE id = $2`, [
      markOf('fleet.read'),
      people.student.personId,
    ]);
    const { rowCount } = await client.query(`SELECT 1 FROM person t WHERE t::text LIKE '%${MARK}%'`);
    await client.query('ROLLBACK');
    return rowCount;
  });
  expect([operatorId.length, rows]).toEqual([36, 1]);
});
