/**
 * Who may do what: every verb x every role x own or other operator, on a real PostgreSQL as the application's role.
 * Only an authorisation refusal counts as a refusal; the number of cells is asserted so that the test cannot pass
 * empty. Sources: lib/access/policy.ts is the policy; issue 2, "nothing leaks between operators".
 */
import { randomUUID } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { ActorRef } from '@/lib/access/actor';
import { POLICY, ROLES, type Role, type Verb } from '@/lib/access/policy';
import { writeInOperator } from '@/lib/db/scope';
import { readBoard } from '@/lib/fleet/read-board';
import { withClient } from '@/lib/operate/connection';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, NOW, openSchools } from '../fixtures/school';
import { ACTS, furnish, type Things } from './acts-by-verb';

let database: FreshDatabase;
let ours: Things;
let theirs: Things;
const now = { now: NOW };
const VERBS = Object.keys(POLICY) as Verb[];

beforeAll(async () => {
  const opened = await openSchools();
  database = opened.database;
  ours = await furnish(opened.school);
  theirs = await furnish(opened.other);
});
afterAll(() => closeSchools(database));

/** The renter of our school with this one role, whatever else the person is. */
async function asRole(role: Role): Promise<ActorRef> {
  const { operatorId, people } = ours.school;
  await writeInOperator(operatorId, (tx) =>
    tx.person.update({
      where: { operatorId_id: { operatorId, id: people.renter.personId } },
      data: { roles: [role] },
    }),
  );
  return people.renter;
}

let cells = 0;

describe.each(ROLES)('as %s', (role) => {
  test.each(VERBS)('%s', async (verb) => {
    const { call, input, aboutThings } = ACTS[verb];
    const ref = await asRole(role);
    const may = (POLICY[verb] as readonly Role[]).includes(role);

    const own = await call(ref, input(ours), now);
    const ownCode = own.ok ? 'ok' : own.problem.code;
    cells += 1;
    if (may) expect(['not_allowed', 'invalid', 'bug', 'not_found', 'not_signed_in']).not.toContain(ownCode);
    else expect(ownCode).toBe('not_allowed');

    if (!aboutThings) return;
    const foreign = await call(ref, input(theirs), now);
    cells += 1;
    // Another operator's things are not there; that they exist is not said.
    expect(foreign.ok ? 'ok' : foreign.problem.code).toBe(may ? 'not_found' : 'not_allowed');
  });
});

test('every cell was looked at', () => {
  const aboutThings = VERBS.filter((verb) => ACTS[verb].aboutThings).length;
  expect(cells).toBe(ROLES.length * (VERBS.length + aboutThings));
});

test('every verb that a service names stands in the policy, and none stands there unused', async () => {
  const used = new Set<string>();
  for (const file of await readdir('lib', { recursive: true })) {
    if (!file.endsWith('.ts') || file.includes('generated')) continue;
    const text = await readFile(path.join('lib', file), 'utf8');
    for (const [, verb = ''] of text.matchAll(/^ {2}verb: '([\w.-]+)'/gm)) used.add(verb);
  }
  expect([...used].sort()).toEqual([...VERBS].sort());
});

test('nobody, a stale session, a person who left and a session of another school are not signed in', async () => {
  const { people } = ours.school;
  const elsewhere = { ...people.renter, operatorId: theirs.school.operatorId };
  for (const ref of [null, { ...people.renter, sessionVersion: 0 }, people.gone, elsewhere]) {
    const result = await readBoard(ref, {}, now);
    expect(result.ok ? 'ok' : result.problem.code).toBe('not_signed_in');
  }
});

describe('row-level security behind the services', () => {
  const tables = () =>
    withClient(database.adminUrl, async (client) => {
      const { rows } = await client.query<{ name: string; forced: boolean; policies: string }>(
        `SELECT c.relname AS name, c.relrowsecurity AND c.relforcerowsecurity AS forced,
           (SELECT count(*) FROM pg_policies p
             WHERE p.tablename = c.relname AND p.policyname = 'tenant')::text AS policies
         FROM pg_class c WHERE c.relnamespace = 'public'::regnamespace AND c.relkind = 'r'
           -- Made before there is an operator: see tests/services/set-up.test.ts and attacks/spraying.test.ts.
           AND c.relname NOT IN ('applied_migration', 'set_up_token', 'sign_in_knock')`,
      );
      return rows;
    });

  test('every table of ours forces it and has its tenant policy', async () => {
    const rows = await tables();
    expect(rows.length).toBeGreaterThan(25);
    for (const row of rows) expect(row).toEqual({ name: row.name, forced: true, policies: '1' });
  });

  test('without a setting the app role reads nothing, table by table', async () => {
    for (const { name } of await tables()) {
      const { rowCount } = await withClient(database.appUrl, (client) =>
        client.query(`SELECT 1 FROM ${name}`),
      );
      expect({ name, rowCount }).toEqual({ name, rowCount: 0 });
    }
  });

  test('with our setting it reads none of theirs and can write none', async () => {
    const names = (await tables()).map(({ name }) => name);
    await withClient(database.appUrl, async (client) => {
      await client.query('BEGIN');
      await client.query(`SELECT set_config('app.operator_id', $1, true)`, [ours.school.operatorId]);
      for (const name of names) {
        const column = name === 'operator' ? 'id' : 'operator_id';
        const { rowCount } = await client.query(`SELECT 1 FROM ${name} WHERE ${column} = $1`, [
          theirs.school.operatorId,
        ]);
        expect({ name, rowCount }).toEqual({ name, rowCount: 0 });
      }
      const write = client.query(
        `INSERT INTO base (id, operator_id, ident, name, latitude_deg, longitude_deg, zone)
         VALUES ($1, $2, 'X', 'X', 0, 0, 'UTC')`,
        [randomUUID(), theirs.school.operatorId],
      );
      await expect(write).rejects.toThrow(/row-level security/);
      await client.query('ROLLBACK');
    });
  });
});
