/**
 * Sessions in the database. Sources: issue 6 ("Sessions listed and ended"); OWASP session management cheat sheet for the
 * new number at every sign-in and the end on the server at sign-out (from memory).
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { changePassword } from '@/lib/access/account/change-password';
import { endSession } from '@/lib/access/account/end-session';
import { endSessionsOf } from '@/lib/access/account/end-sessions-of';
import { readOwnAccount } from '@/lib/access/account/read-own-account';
import type { ActorRef } from '@/lib/access/actor';
import { confirmPassword } from '@/lib/access/passwords';
import { endOwnSession } from '@/lib/access/sessions';
import { readInOperator, writeInOperator } from '@/lib/db/scope';
import { readBoard } from '@/lib/fleet/read-board';
import { Refusal } from '@/lib/problems';
import { codeOf, comeIn, got, knock, own } from '../fixtures/accounts';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, NOW, openSchools, PASSWORD, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let other: School;

beforeAll(async () => {
  ({ database, school, other } = await openSchools());
});
afterAll(() => closeSchools(database));

const after = (minutes: number, seconds = 0) => new Date(NOW.getTime() + (minutes * 60 + seconds) * 1000);
const looks = async (ref: ActorRef, now: Date) => codeOf(await readBoard(ref, {}, { now }));
const rowOf = (id: string) =>
  readInOperator(school.operatorId, (tx) => tx.session.findUniqueOrThrow({ where: { id } }));
const RENTER = 'renter@first.example';

test('every sign-in makes a session of its own, with the browser in a few words', async () => {
  const [one, two] = [await comeIn(RENTER, NOW), await comeIn(RENTER, NOW)];
  expect(one.sessionId).not.toBe(two.sessionId);
  expect(await rowOf(one.sessionId)).toMatchObject({ device: 'Firefox on Linux', secondFactor: 'none' });
  expect(await looks(one, NOW)).toBe('ok');
});

test.each([
  ['a second before twelve hours', 12 * 60 - 1, 59, 'ok'],
  ['at twelve hours', 12 * 60, 0, 'not_signed_in'],
  ['a second after', 12 * 60, 1, 'not_signed_in'],
])('a session is good for twelve hours: %s', async (_, minutes, seconds, code) => {
  const ref = await comeIn(RENTER, NOW);
  expect(await looks(ref, after(minutes, seconds))).toBe(code);
});

test.each([
  ['just under five minutes', 4, 59, 0],
  ['at five minutes', 5, 0, 5],
  ['just over', 5, 1, 5],
])('when it was last seen is noted every five minutes: %s', async (_, minutes, seconds, noted) => {
  const ref = await comeIn(RENTER, NOW);
  await looks(ref, after(minutes, seconds));
  const { lastSeenAt } = await rowOf(ref.sessionId);
  expect(lastSeenAt).toEqual(noted === 0 ? NOW : after(minutes, seconds));
});

describe('who cannot sign in', () => {
  const change = (personId: string, data: object) =>
    writeInOperator(school.operatorId, (tx) =>
      tx.person.update({ where: { operatorId_id: { operatorId: school.operatorId, id: personId } }, data }),
    );
  test('somebody who has not chosen a password yet, and cannot sign with one either', async () => {
    const { uncertificated } = school.people;
    await change(uncertificated.personId, { passwordSetAt: null });
    expect(await knock('uncertificated@first.example', NOW)).toEqual({ step: 'refused' });
    await expect(confirmPassword(uncertificated, PASSWORD, NOW)).rejects.toThrow(Refusal);
    await change(uncertificated.personId, { passwordSetAt: NOW });
    expect(await knock('uncertificated@first.example', NOW)).toMatchObject({ step: 'in' });
  });
  test.each([
    ['somebody who left', 'gone@first.example', PASSWORD],
    ['an unknown address', 'nobody@first.example', PASSWORD],
    ['a wrong password', RENTER, 'wrong'],
  ])('%s, without saying why', async (_, email, password) => {
    expect(await knock(email, NOW, { password })).toEqual({ step: 'refused' });
  });
  test('a locked account, without saying so', async () => {
    for (let attempt = 1; attempt <= 8; attempt += 1)
      expect(await knock('student@first.example', NOW, { password: 'guess' })).toEqual({ step: 'refused' });
    expect(await knock('student@first.example', NOW)).toEqual({ step: 'refused' });
    expect(await knock('student@first.example', after(5))).toMatchObject({ step: 'in' });
  });
});

describe('ending', () => {
  test('the own list shows those that count and marks this one', async () => {
    const here = await comeIn('dispatcher@first.example', NOW);
    const there = await comeIn('dispatcher@first.example', after(1));
    const ended = await comeIn('dispatcher@first.example', after(2));
    await endOwnSession(ended, after(3));
    const { sessions } = got(await readOwnAccount(here, {}, { now: after(4) }));
    expect(sessions.map(({ id, thisOne }) => [id, thisOne])).toEqual([
      [there.sessionId, false],
      [here.sessionId, true],
    ]);
  });
  test('one is ended and is signed out at its next step; it cannot be used to try passwords either', async () => {
    const [here, there] = [await comeIn(RENTER, NOW), await comeIn(RENTER, NOW)];
    const asked = { ...own(), which: 'one', sessionId: there.sessionId };
    expect(got(await endSession(here, asked, { now: after(1) }))).toEqual({ ended: 1 });
    expect(await looks(there, after(1))).toBe('not_signed_in');
    expect(await looks(here, after(1))).toBe('ok');
    await expect(confirmPassword(there, PASSWORD, after(1))).rejects.toMatchObject({
      problem: { code: 'not_signed_in' },
    });
    expect(await rowOf(there.sessionId)).toMatchObject({ endedAt: after(1), endedById: here.personId });
  });
  test('all others end, this one stays', async () => {
    const [here, ...others] = [
      await comeIn(RENTER, NOW),
      await comeIn(RENTER, NOW),
      await comeIn(RENTER, NOW),
    ];
    got(await endSession(here, { ...own(), which: 'others' }, { now: NOW }));
    expect(await looks(here, NOW)).toBe('ok');
    for (const ref of others) expect(await looks(ref, NOW)).toBe('not_signed_in');
  });
  test("somebody else's session, and one of another school, are not there", async () => {
    const here = await comeIn(RENTER, NOW);
    const colleague = await comeIn('airframe@first.example', NOW);
    const foreign = await comeIn('manager@other.example', NOW);
    for (const { sessionId } of [colleague, foreign]) {
      const result = await endSession(here, { ...own(), which: 'one', sessionId }, { now: NOW });
      expect(codeOf(result)).toBe('not_found');
    }
    expect(await looks(colleague, NOW)).toBe('ok');
    expect(codeOf(await readBoard(foreign, {}, { now: NOW }))).toBe('ok');
  });
  test('a session does not fit another person', async () => {
    const colleague = await comeIn('airframe@first.example', NOW);
    const stolen = { ...school.people.renter, sessionId: colleague.sessionId };
    expect(await looks(stolen, NOW)).toBe('not_signed_in');
  });
  test('signing out ends it on the server', async () => {
    const ref = await comeIn(RENTER, NOW);
    await endOwnSession(ref, NOW);
    expect(await looks(ref, NOW)).toBe('not_signed_in');
  });
  test('a manager ends those of somebody, not of another school', async () => {
    const manager = await comeIn('manager@first.example', NOW);
    const ref = await comeIn('airframe@first.example', NOW);
    const asked = { ...own(), personId: ref.personId };
    expect(got(await endSessionsOf(manager, asked, { now: NOW })).ended).toBeGreaterThan(0);
    expect(await looks(ref, NOW)).toBe('not_signed_in');
    const foreign = { ...own(), personId: other.people.renter.personId };
    expect(codeOf(await endSessionsOf(manager, foreign, { now: NOW }))).toBe('not_found');
  });
});

describe('changing the own password', () => {
  const NEW = 'nine gravel umbrellas sing';
  const POWERPLANT = 'powerplant@first.example';
  test.each([
    ['a wrong old one', { password: 'wrong', newPassword: NEW }, 'wrong_password', 'password'],
    ['one that is short', { password: PASSWORD, newPassword: 'short' }, 'invalid', 'newPassword'],
    ['the one that is there', { password: PASSWORD, newPassword: PASSWORD }, 'invalid', 'newPassword'],
    ['the own name', { password: PASSWORD, newPassword: 'Castlewick Pim' }, 'invalid', 'newPassword'],
  ])('%s is refused on its field', async (_, typed, code, field) => {
    const ref = await comeIn(POWERPLANT, NOW);
    const result = await changePassword(ref, { ...own(), ...typed }, { now: NOW });
    expect(codeOf(result)).toBe(code);
    expect(result.ok ? {} : result.problem.fields).toHaveProperty(field);
  });
  test('it counts from then on, every other session ends, and neither password is kept anywhere', async () => {
    const [here, there] = [await comeIn(POWERPLANT, NOW), await comeIn(POWERPLANT, NOW)];
    const asked = { ...own(), password: PASSWORD, newPassword: NEW };
    got(await changePassword(here, asked, { now: NOW }));
    expect(await looks(here, NOW)).toBe('ok');
    expect(await looks(there, NOW)).toBe('not_signed_in');
    expect(await knock(POWERPLANT, NOW)).toEqual({ step: 'refused' });
    expect(await knock(POWERPLANT, NOW, { password: NEW })).toMatchObject({ step: 'in' });
    const { request, audit } = await readInOperator(school.operatorId, async (tx) => ({
      request: await tx.request.findUniqueOrThrow({ where: { id: asked.requestId } }),
      audit: await tx.auditRow.findFirstOrThrow({ where: { requestId: asked.requestId } }),
    }));
    const kept = JSON.stringify([request, audit], (_key, value: unknown) =>
      typeof value === 'bigint' ? String(value) : value,
    );
    expect(kept).not.toMatch(/gravel|chocks/);
  });
});
