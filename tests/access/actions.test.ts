/**
 * Every server action, asked for by nobody: a browser can call any of them by its number, whichever page it belongs to. What
 * each may do for whom is the matrix of verbs (matrix.test.ts), since an action hands its message on to one. A new action that
 * answers a stranger fails here. Source: issue 7, "every route and action"; Next.js, "Data Security" (each action checks itself).
 */
// First: it makes Next's place for a request, which its other modules look for once.
import { ask } from '../fixtures/asking';
import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, openSchools } from '../fixtures/school';
import { settingsOfServer } from '../fixtures/signing-in';

/** For whoever is not signed in: each asks for a password or a token itself, and has its own tests. */
const FOR_STRANGERS: Readonly<Record<string, string>> = {
  'app/sign-in/actions.ts': 'the password (tests/services/attacks/guessing.test.ts)',
  'app/sign-in/forgotten/actions.ts': 'nothing, and answers nothing (tests/services/people.test.ts)',
  'app/join/actions.ts': 'the token of a link (tests/services/people.test.ts)',
  'app/set-up/actions.ts': 'the token of the console (tests/services/set-up.test.ts)',
};

type Action = (...args: unknown[]) => Promise<unknown>;

let database: FreshDatabase;
beforeAll(async () => {
  settingsOfServer();
  ({ database } = await openSchools());
});
afterAll(() => closeSchools(database));

const files = (await readdir('app', { recursive: true }))
  .filter((file) => /\.tsx?$/.test(file))
  .map((file) => path.join('app', file));
const texts = await Promise.all(files.map(async (file) => ({ file, text: await readFile(file, 'utf8') })));
const acting = texts.filter(({ text }) => /^'use server';/m.test(text));

test('actions stand in files of their own, and all of them are found', () => {
  // A directive within a function would make an action that is not looked at here.
  expect(texts.filter(({ text }) => /^\s+['"]use server['"]/m.test(text)).map(({ file }) => file)).toEqual(
    [],
  );
  expect(acting.length).toBeGreaterThan(15);
  const files = acting.map(({ file }) => file);
  for (const file of Object.keys(FOR_STRANGERS)) expect(files).toContain(file);
});

let asked = 0;
test.each(acting.filter(({ file }) => !(file in FOR_STRANGERS)))(
  '$file does nothing for a stranger',
  async ({ file, text }) => {
    expect(text).toMatch(/\bsignedInRef\b/);
    const actions = Object.entries(
      (await import(/* @vite-ignore */ `../../${file}`)) as Record<string, Action>,
    );
    for (const [name, action] of actions) {
      const handler = async () => Response.json((await action({}, null)) ?? null);
      const answer = (await (await ask(handler, '/')).json()) as
        { ok?: boolean; problem?: { code: string } } | [];
      asked += 1;
      // A search answers with an empty list.
      if (Array.isArray(answer)) expect({ name, answer }).toEqual({ name, answer: [] });
      else expect(['not_signed_in', 'invalid'], name).toContain(answer.problem?.code);
    }
  },
);

test('all were asked', () => expect(asked).toBeGreaterThan(90));
