/**
 * Signing in and signing again. Sources: issue 2 (credentials, argon2id); OWASP password storage cheat sheet for the
 * parameters (from memory); AC 120-78B point 7, identity proved at signing (from memory).
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { checkSignIn, confirmPassword, hashPassword } from '@/lib/access/passwords';
import { writeInOperator } from '@/lib/db/scope';
import { codeOf } from '../fixtures/code-of';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, NOW, openSchools, PASSWORD, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;

beforeAll(async () => {
  ({ database, school } = await openSchools());
});
afterAll(() => closeSchools(database));

const later = (minutes: number, seconds = 0) => new Date(NOW.getTime() + minutes * 60_000 + seconds * 1000);

test('a hash is argon2id, salted, and not the password', async () => {
  const [one, two] = await Promise.all([hashPassword(PASSWORD), hashPassword(PASSWORD)]);
  expect(one).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
  expect(one).not.toBe(two);
});

test('the right address and password give who, where and which session, whatever the case of the address', async () => {
  expect(await checkSignIn(' Renter@FIRST.example ', PASSWORD, NOW)).toEqual(school.people.renter);
});

test.each([
  ['a wrong password', 'renter@first.example', 'wrong'],
  ['an unknown address', 'nobody@first.example', PASSWORD],
  ['somebody who left', 'gone@first.example', PASSWORD],
  ['an empty address', '', PASSWORD],
])('%s gives nothing, without saying why', async (_, email, password) => {
  expect(await checkSignIn(email, password, NOW)).toBeNull();
});

describe('too many wrong passwords', () => {
  test('the eighth locks, for five minutes, for signing too; the right password does not help meanwhile', async () => {
    const { student } = school.people;
    for (let attempt = 1; attempt <= 8; attempt += 1) {
      expect(await codeOf(confirmPassword(student, 'guess', NOW))).toBe('wrong_password');
    }
    expect(await codeOf(confirmPassword(student, PASSWORD, NOW))).toBe('locked');
    expect(await codeOf(checkSignIn('student@first.example', PASSWORD, later(4, 59)))).toBe('locked');
    expect(await codeOf(confirmPassword(student, PASSWORD, later(5)))).toBe('ok');
  });
  test('seven do not lock, and a right one forgets them', async () => {
    const { dispatcher } = school.people;
    for (let round = 0; round < 2; round += 1) {
      for (let attempt = 1; attempt <= 7; attempt += 1) {
        expect(await codeOf(confirmPassword(dispatcher, 'guess', NOW))).toBe('wrong_password');
      }
      expect(await codeOf(confirmPassword(dispatcher, PASSWORD, NOW))).toBe('ok');
    }
  });
});

test('a raised session version ends every session', async () => {
  const { manager } = school.people;
  await writeInOperator(school.operatorId, (tx) =>
    tx.person.update({
      where: { operatorId_id: { operatorId: school.operatorId, id: manager.personId } },
      data: { sessionVersion: { increment: 1 } },
    }),
  );
  expect(await codeOf(confirmPassword(manager, PASSWORD, NOW))).toBe('not_signed_in');
  expect((await checkSignIn('manager@first.example', PASSWORD, NOW))?.sessionVersion).toBe(2);
});
