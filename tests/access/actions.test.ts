/**
 * Every server action x every role x own or other operator, against the table lib/access/actions.ts, through the actions
 * themselves with real cookies on a real PostgreSQL. A browser can call any action by its number, whichever page it belongs to.
 * A new action without a row fails. Sources: issue 7, "every route and action"; Next.js, "Data Security" (each checks itself).
 */
// First: it makes Next's place for a request, which its other modules look for once.
import { ask, Jar } from '../fixtures/asking';
import { randomUUID } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { ACTIONS, type ActionAccess } from '@/lib/access/actions';
import { POLICY, ROLES, type Role, type Verb } from '@/lib/access/policy';
import { writeInOperator } from '@/lib/db/scope';
import { typedOf } from '@/lib/house-rules/form';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, openSchools, PASSWORD } from '../fixtures/school';
import { settingsOfServer, signInAs } from '../fixtures/signing-in';
import { ACTS, furnish, type Things } from './acts-by-verb';

vi.setConfig({ testTimeout: 90_000 });

type Action = (...args: unknown[]) => Promise<unknown>;
type Row = { file: string; name: string; access: ActionAccess };

let database: FreshDatabase;
let ours: Things;
let theirs: Things;
let jar: Jar;
beforeAll(async () => {
  settingsOfServer();
  const opened = await openSchools();
  database = opened.database;
  // Before the renter gets a second factor, beside which a password alone no longer opens.
  jar = await signInAs('renter@first.example');
  ours = await furnish(opened.school);
  theirs = await furnish(opened.other);
  // Passkeys are of a site reached over https; the cookie of this one would have another name there.
  settingsOfServer();
});
afterAll(() => closeSchools(database));

const rows: Row[] = Object.entries(ACTIONS).flatMap(([file, actions]) =>
  Object.entries(actions).map(([name, access]) => ({ file, name, access })),
);
const titled = rows.map((row) => [`${row.file} ${row.name}`, row] as const);
const forSomebody = titled.filter(([, { access }]) => access !== 'stranger');
const actionsOf = (file: string) =>
  import(/* @vite-ignore */ `../../${file}`) as Promise<Record<string, Action>>;

/** What an action takes, where that is not what its service takes. */
const TYPED_RULE = { ...typedOf({ kind: 'most-deferrals', most: 90 }, null), why: 'Tried by everybody.' };
const GIVEN: Readonly<Record<string, (things: Things) => unknown[]>> = {
  'app/account/actions.ts endSession': (things) => [about('session.end', things)],
  // The password as it was stays; that it is changed at all is the matrix of verbs.
  'app/account/actions.ts changePassword': (things) => [
    { ...about('password.change', things), password: `not ${PASSWORD}` },
  ],
  'app/desk/actions.ts findPlaces': () => ['KORD'],
  'app/desk/bases/actions.ts findAirports': () => ['KORD'],
  'app/desk/actions.ts recordMeters': (things) => [{ ...about('meters.read-out', things), moment: 'out' }],
  'app/office/rules/actions.ts saveRule': (things) => [
    { ...about('house-rule.set', things), ...TYPED_RULE },
    { ruleId: things.houseRuleId, seenVersion: 1 },
  ],
  'app/office/rules/actions.ts previewRule': (things) => [TYPED_RULE, things.houseRuleId],
  'app/office/rules/actions.ts previewEnd': (things) => [things.houseRuleId],
  'app/office/history/actions.ts usualSetAdded': ({ school }) => [
    { requestId: randomUUID(), aircraftId: school.aircraftId, kinds: ['vor-check'], batteryThrough: '' },
  ],
  'app/desk/bases/actions.ts proposeZone': () => [{ latitudeDeg: 43.3, longitudeDeg: -91.8 }],
};
/**
 * Past the policy these are refused for what they are given: of the day of the fixtures, which is over by the database's clock,
 * or on record already.
 */
const REFUSED_LATER = [
  'app/office/history/actions.ts usualSetAdded',
  'app/account/actions.ts confirm',
  'app/account/actions.ts makeCodes',
  'app/desk/actions.ts askForAnswer',
  'app/desk/actions.ts release',
  'app/desk/plans/actions.ts plan',
];
const about = (verb: Verb, things: Things) => ACTS[verb].input(things) as Record<string, unknown>;
const verbsOf = (access: ActionAccess): readonly Verb[] =>
  typeof access === 'string' ? [access as Verb] : access;

async function codeOf([title, { file, name, access }]: readonly [string, Row], things: Things, who: Jar) {
  const [verb] = verbsOf(access);
  const given = GIVEN[title]?.(things) ?? [verb && about(verb, things)];
  const action = (await actionsOf(file))[name];
  if (!action) throw new Error(`${title} is not there`);
  const handler = async () => Response.json((await action(...given)) ?? null);
  const answer = (await (await ask(handler, '/', { method: 'POST', acting: true }, who)).json()) as
    { ok: boolean; problem?: { code: string } } | unknown[] | null;
  // A search answers with what it found, and with nothing where it may not look.
  if (Array.isArray(answer)) return answer.length === 0 ? 'nothing' : 'ok';
  return answer?.ok ? 'ok' : (answer?.problem?.code ?? 'nothing');
}

test('every action of app/ has its row, in files of their own, and no row is of one that is gone', async () => {
  const found: string[] = [];
  for (const name of await readdir('app', { recursive: true })) {
    if (!/\.tsx?$/.test(name)) continue;
    const file = path.join('app', name);
    const text = await readFile(file, 'utf8');
    // A directive within a function would make an action that is not looked at here.
    expect(text, file).not.toMatch(/^\s+['"]use server['"]/m);
    if (/^['"]use server['"]/m.test(text))
      for (const action of Object.keys(await actionsOf(file))) found.push(`${file} ${action}`);
  }
  expect(found.length).toBeGreaterThan(110);
  expect(titled.map(([title]) => title).sort()).toEqual(found.sort());
});

test.each(forSomebody)('%s does nothing for a stranger', async (...row) => {
  expect(['not_signed_in', 'nothing']).toContain(await codeOf(row, ours, new Jar()));
});

let cells = 0;
describe.each(ROLES)('as %s', (role) => {
  test.each(forSomebody)('%s', async (...row) => {
    const { operatorId, people } = ours.school;
    await writeInOperator(operatorId, (tx) =>
      tx.person.update({
        where: { operatorId_id: { operatorId, id: people.renter.personId } },
        data: { roles: [role] },
      }),
    );
    const [title, { access }] = row;
    const verbs = verbsOf(access);
    const may = verbs.some((verb) => (POLICY[verb] as readonly Role[]).includes(role));
    const own = await codeOf(row, ours, jar);
    cells += 1;
    if (may && REFUSED_LATER.includes(title)) expect(own).toMatch(/^(invalid|ok)$/);
    else if (may)
      expect(['not_allowed', 'invalid', 'bug', 'not_found', 'not_signed_in', 'nothing']).not.toContain(own);
    else expect(['not_allowed', 'nothing']).toContain(own);

    if (!verbs.every((verb) => ACTS[verb].aboutThings)) return;
    const foreign = await codeOf(row, theirs, jar);
    cells += 1;
    expect({ title, foreign }).toEqual({ title, foreign: may ? 'not_found' : 'not_allowed' });
  });
});

test('every cell was looked at', () => {
  const aboutThings = forSomebody.filter(([, { access }]) =>
    verbsOf(access).every((verb) => ACTS[verb].aboutThings),
  );
  expect(cells).toBe(ROLES.length * (forSomebody.length + aboutThings.length));
});
