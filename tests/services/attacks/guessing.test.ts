/**
 * Guessing passwords. Sources: issue 7 ("brute force: rate limit in the database so that it holds over instances", "user
 * enumeration"); eight tries and five minutes are lib/access/passwords.ts, our choice within NIST SP 800-63B (from memory: no
 * more than 100 in a row).
 */
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { confirmPassword } from '@/lib/access/passwords';
import { UNKNOWN_SENDER } from '@/lib/access/sender-limit';
import { askSecondStep, signIn } from '@/lib/access/sign-in';
import { withClient } from '@/lib/operate/connection';
import { codeOf } from '../../fixtures/code-of';
import type { FreshDatabase } from '../../fixtures/database';
import { closeSchools, NOW, openSchools, PASSWORD, type School } from '../../fixtures/school';

let database: FreshDatabase;
let school: School;

beforeAll(async () => {
  ({ database, school } = await openSchools());
});
afterAll(() => closeSchools(database));

const at = (minutes: number) => new Date(NOW.getTime() + minutes * 60_000);
const knock = async (who: string, password: string, now = NOW) =>
  (
    await signIn(
      { email: `${who}@first.example`, password, proof: null, userAgent: null },
      now,
      UNKNOWN_SENDER,
    )
  ).step;
const guesses = (count: number) => Array.from({ length: count }, (_, n) => `guess ${n}`);
const triesOf = (who: string) =>
  withClient(database.adminUrl, async (client) => {
    const { rows } = await client.query<{ tries: number; locked: boolean }>(
      `SELECT failed_sign_ins AS tries, locked_until IS NOT NULL AS locked FROM person WHERE email = $1`,
      [`${who}@first.example`],
    );
    return rows[0];
  });

describe('many guesses at once', () => {
  test.each([7, 8, 9, 15, 16, 17])(
    '%i wrong ones: locked from the eighth on, and not opened by those behind it',
    async (count) => {
      const now = at(count * 60);
      await Promise.all(guesses(count).map((guess) => knock('airframe', guess, now)));
      expect(await knock('airframe', PASSWORD, now)).toBe(count < 8 ? 'in' : 'refused');
      // Five minutes later the right one counts, and the tries are forgotten.
      expect(await knock('airframe', PASSWORD, at(count * 60 + 5))).toBe('in');
    },
  );

  test('the right one behind thirty wrong ones does not get in', async () => {
    const answers = await Promise.all([...guesses(30), PASSWORD].map((guess) => knock('powerplant', guess)));
    expect(answers).not.toContain('in');
    expect(await triesOf('powerplant')).toEqual({ tries: 0, locked: true });
  });

  test('neither by the door of the second step, which would tell that the password is right', async () => {
    const asked = (password: string) => askSecondStep('stale@first.example', password, NOW, UNKNOWN_SENDER);
    await Promise.all(guesses(30).map(asked));
    expect(await asked(PASSWORD)).toBeNull();
    expect(await knock('stale', PASSWORD)).toBe('refused');
  });

  test('nor by signing again within a session', async () => {
    const { dispatcher } = school.people;
    const codes = await Promise.all(
      [...guesses(30), PASSWORD].map((guess) => codeOf(confirmPassword(dispatcher, guess, NOW))),
    );
    expect(codes.filter((code) => code === 'wrong_password')).toHaveLength(8);
    expect(codes.filter((code) => code === 'locked')).toHaveLength(23);
  });
});

test('tries at two servers count together', async () => {
  for (const guess of guesses(4)) expect(await knock('manager', guess)).toBe('refused');
  // The same program loaded a second time, with memory and connections of its own.
  vi.resetModules();
  const elsewhere = await import('@/lib/access/sign-in');
  const { closeDatabase } = await import('@/lib/db/client');
  try {
    expect(elsewhere.signIn).not.toBe(signIn);
    for (const guess of guesses(4)) {
      const asked = { email: 'manager@first.example', password: guess, proof: null, userAgent: null };
      expect((await elsewhere.signIn(asked, NOW, UNKNOWN_SENDER)).step).toBe('refused');
    }
  } finally {
    await closeDatabase();
  }
  expect(await knock('manager', PASSWORD)).toBe('refused');
  expect(await knock('manager', PASSWORD, at(5))).toBe('in');
});

describe('what a stranger learns', () => {
  test('of an address that is here, is not, has left or is locked: the same answer', async () => {
    for (const guess of guesses(8)) await knock('uncertificated', guess);
    const answers = await Promise.all(
      ['renter', 'nobody-at-all', 'gone', 'uncertificated'].map((who) => knock(who, 'wrong')),
    );
    expect(new Set(answers)).toEqual(new Set(['refused']));
  });

  test('by the clock: an unknown address takes the time of one slow hash as well', async () => {
    const timeOf = async (who: string) => {
      const times = [];
      for (let n = 0; n < 5; n += 1) {
        const began = performance.now();
        await askSecondStep(`${who}@first.example`, 'wrong', NOW, UNKNOWN_SENDER);
        times.push(performance.now() - began);
      }
      return Math.min(...times);
    };
    await timeOf('nobody');
    const [unknown, known] = [await timeOf('nobody'), await timeOf('student')];
    // Without the hash it is some milliseconds against some tens; a third is far from both.
    expect(unknown).toBeGreaterThan(known / 3);
  });
});
