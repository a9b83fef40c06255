/**
 * What stands in the log of a running server. Source: issue 6, "structured logs without personal data". Whatever people
 * write here carries words found nowhere else; none of them may come through, whether the act succeeds, is refused, or meets
 * a bug whose error quotes them.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { z } from 'zod';
import { requestId } from '@/lib/access/request-id';
import { command, type Context } from '@/lib/access/service';
import { reportFinding } from '@/lib/findings/report-finding';
import { log, logLevel } from '@/lib/log';
import { takeOverConsole } from '@/lib/log/take-over-console';
import { readOwnFindings } from '@/lib/findings/own-findings';
import { Refusal, type Result } from '@/lib/problems';
import { deadLandingLight } from '../fixtures/acts';
import type { FreshDatabase } from '../fixtures/database';
import { loggedIn } from '../fixtures/logged';
import { closeSchools, NOW, openSchools, PASSWORD, PEOPLE, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
const now = { now: NOW };

beforeAll(async () => {
  ({ database, school } = await openSchools());
});
afterAll(() => closeSchools(database));

const codeOf = (result: Result<unknown>) => (result.ok ? 'ok' : result.problem.code);

const WORDS = 'Quibblethorn said the wobblegasket squeaks';
const MAIL = 'quibblethorn@wobble.example';
const TELL_TALES = [
  /quibblethorn/i,
  /wobble/i,
  /squeaks/,
  new RegExp(PASSWORD),
  ...Object.values(PEOPLE).map(({ name }) => new RegExp(name)),
  ...Object.values(PEOPLE).flatMap(({ name }) => name.split(' ').map((part) => new RegExp(`\\b${part}\\b`))),
  /argon2/,
  /@first\.example/,
];
function expectNobody(text: string): void {
  expect(text.length).toBeGreaterThan(0);
  for (const word of TELL_TALES) expect(text).not.toMatch(word);
}

test('a command that succeeds: one line with verb, operator, request, outcome and time', async () => {
  const input = { ...deadLandingLight(school), note: WORDS };
  const { result, lines, text } = await loggedIn(() => reportFinding(school.people.renter, input, now));
  expect(codeOf(result)).toBe('ok');
  expect(lines).toEqual([
    {
      level: 'info',
      time: expect.stringMatching(/^\d{4}-\d\d-\d\dT[\d:.]+Z$/),
      verb: 'finding.report',
      operatorId: school.operatorId,
      requestId: input.requestId,
      outcome: 'ok',
      ms: expect.any(Number),
      msg: 'command',
    },
  ]);
  expectNobody(text);
});

test.each([
  ['not found', () => school.people.renter, {}, 'not_found'],
  ['not understood', () => school.people.renter, { aircraftId: WORDS, note: MAIL }, 'invalid'],
  ['not signed in', () => null, {}, 'not_signed_in'],
])('a refusal (%s) tells its code and nothing of what was written', async (_, who, more, code) => {
  const input = { ...deadLandingLight(school), note: WORDS, aircraftId: randomUUID(), ...more };
  const { lines, text } = await loggedIn(() => reportFinding(who(), input, now));
  expect(lines).toMatchObject([{ level: 'info', msg: 'command', outcome: code }]);
  expectNobody(text);
});

test('a number of a request that is none is not repeated', async () => {
  const input = { ...deadLandingLight(school), requestId: MAIL };
  const { lines, text } = await loggedIn(() => reportFinding(school.people.renter, input, now));
  expect(lines).toMatchObject([{ requestId: '[withheld]', outcome: 'invalid' }]);
  expectNobody(text);
});

test('a query stands there for whoever looks for a fault only', async () => {
  const { lines } = await loggedIn(() => readOwnFindings(school.people.renter, {}, now));
  expect(lines).toMatchObject([{ level: 'debug', msg: 'query', verb: 'own-findings.read', outcome: 'ok' }]);
});

/** Bugs as they happen: each makes an error that quotes what somebody wrote. */
const BUGS: Record<string, (context: Context) => Promise<unknown>> = {
  'a unique constraint': ({ tx, operatorId }) => {
    const row = () => tx.$executeRaw`INSERT INTO person (id, operator_id, name, email, password_hash, roles)
      VALUES (${randomUUID()}::uuid, ${operatorId}::uuid, ${WORDS}, ${MAIL}, 'x', '{}')`;
    return row().then(row);
  },
  'a check': ({ tx, operatorId }) =>
    tx.$executeRaw`INSERT INTO person (id, operator_id, name, email, password_hash, roles, units)
      VALUES (${randomUUID()}::uuid, ${operatorId}::uuid, ${WORDS}, ${MAIL}, 'x', '{}', 'wobble')`,
  'a cast': ({ tx }) => tx.$queryRaw`SELECT ${WORDS}::date`,
  'a cast in the where of a query': ({ tx }) => tx.$queryRawUnsafe(`SELECT '${MAIL}'::uuid`),
  'arguments the client does not take': ({ tx }) =>
    tx.person.create({ data: { name: WORDS, email: MAIL, roles: 7 } as never }),
  'a text that is no JSON': async () => JSON.parse(`${WORDS} "${MAIL}"`),
  'a thrown text': async () => {
    throw WORDS;
  },
  'a cause': async () => {
    throw new Error('outside', { cause: new Error(`inside: "${WORDS}" <${MAIL}>`) });
  },
};
let bug: (context: Context) => Promise<unknown> = async () => undefined;
const broken = command({
  verb: 'own-settings.change',
  input: z.object({ requestId, words: z.string() }),
  async run(context) {
    await bug(context);
    return { value: null, audit: { subjectKind: 'person', subjectId: context.actor.personId, detail: {} } };
  },
});

test.each(Object.keys(BUGS))(
  'a bug is told with its number, kind and places, and nobody’s words: %s',
  async (name) => {
    bug = BUGS[name]!;
    const input = { requestId: randomUUID(), words: WORDS };
    const { result, lines, text } = await loggedIn(() => broken(school.people.renter, input, now));
    // One of the outcomes of something that was not foreseen; a broken unique is told as a conflict where Prisma says so.
    expect(['bug', 'conflict']).toContain(codeOf(result));
    const command = lines.find(({ msg }) => msg === 'command');
    expect(command).toMatchObject({ verb: 'own-settings.change', outcome: codeOf(result) });
    if (!result.ok && result.problem.code === 'bug') {
      const { eventId } = result.problem;
      expect(eventId).toMatch(/^[0-9a-f-]{36}$/);
      expect(lines.find(({ msg }) => msg === 'bug')).toMatchObject({
        level: 'error',
        eventId,
        verb: 'own-settings.change',
        operatorId: school.operatorId,
        error: { kind: expect.any(String) },
      });
      expect(command).toMatchObject({ eventId });
    }
    expectNobody(text);
  },
);

test('the code of the database and the place in our code are kept: they are what a fault is found by', async () => {
  bug = BUGS['a check']!;
  const { text } = await loggedIn(() =>
    broken(school.people.renter, { requestId: randomUUID(), words: '' }, now),
  );
  expect(text).toContain('23514');
  expect(text).toMatch(/log\.test\.ts:\d+:\d+/);
});

test('a field cannot carry what it does not claim to be', async () => {
  const { text, lines } = await loggedIn(async () => {
    log.info('command', {
      verb: MAIL,
      operatorId: WORDS,
      why: 'Ruth Dewberry',
      ms: Number.NaN,
      about: 'rest',
    });
    // By hand around the types, as a careless cast would.
    log.info(WORDS as 'command', { name: WORDS, nested: { email: MAIL } } as never);
    log.error('bug', new Refusal('invalid', { fields: { note: [WORDS] } }));
  });
  expectNobody(text);
  expect(lines[0]).toMatchObject({ verb: '[withheld]', operatorId: '[withheld]', about: 'rest' });
  expect(lines).toHaveLength(3);
});

const real = { error: console.error, warn: console.warn };
afterEach(() => Object.assign(console, real));

test('what the framework writes to the console goes the same way', async () => {
  takeOverConsole();
  const { lines, text } = await loggedIn(async () => {
    console.error('⨯', Object.assign(new Error(`page: "${WORDS}"`), { digest: '12345' }));
    console.error('could not read', { name: WORDS }, `<${MAIL}>`);
    console.warn(`"${WORDS}" is deprecated`);
    console.error(`(node:17) DeprecationWarning: ${MAIL}`);
    console.error(`(node:17) [DEP0040] DeprecationWarning: ${MAIL}`);
    console.error(`The page said (node:17) DeprecationWarning: ${MAIL}`);
  });
  expect(lines.map(({ level, msg }) => [level, msg])).toEqual([
    ['error', 'framework'],
    ['error', 'framework'],
    ['warn', 'framework'],
    ['warn', 'framework'],
    ['warn', 'framework'],
    ['error', 'framework'],
  ]);
  expectNobody(text);
});

test.each([
  [{}, 'info'],
  [{ LOG_LEVEL: '' }, 'info'],
  [{ LOG_LEVEL: 'WARN' }, 'warn'],
  [{ LOG_LEVEL: 'silent' }, 'silent'],
])('%j asks for the level %s', (env, level) => expect(logLevel(env)).toBe(level));

test('a level that is none is refused in plain words', () => {
  expect(() => logLevel({ LOG_LEVEL: 'loud' })).toThrow('LOG_LEVEL=loud is none of');
});
