/**
 * One password tried at many accounts. Sources: issue 7 ("brute force: rate limit in the database so that it holds over instances");
 * OWASP Credential Stuffing Prevention Cheat Sheet (a limit by address beside the one by account); fifty and ten minutes are
 * lib/access/sender-limit.ts, our choice.
 */
import { afterAll, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { database as connect } from '@/lib/db/client';
import { SENDER_MINUTES, SENDER_TRIES, senderLimit, type Sender } from '@/lib/access/sender-limit';
import { askSecondStep, signIn } from '@/lib/access/sign-in';
import { withClient } from '@/lib/operate/connection';
import type { FreshDatabase } from '../../fixtures/database';
import { closeSchools, NOW, openSchools, PASSWORD } from '../../fixtures/school';

let database: FreshDatabase;

beforeAll(async () => {
  ({ database } = await openSchools());
});
afterAll(() => closeSchools(database));
beforeEach(() => asOwner('DELETE FROM sign_in_knock'));

const asOwner = (sql: string, values: unknown[] = []) =>
  withClient(database.adminUrl, async (client) => (await client.query(sql, values)).rows as unknown[]);

const SECRET = 'a secret for tests only, of enough characters';
const HERE = senderLimit('203.0.113.7', SECRET);
const THERE = senderLimit('203.0.113.8', SECRET);

/** Another address each time, so that no account is locked by its own tries. */
const knock = async (n: number, password: string, from: Sender = HERE, who = `nobody-${n}`) =>
  (await signIn({ email: `${who}@first.example`, password, proof: null, userAgent: null }, NOW, from)).step;
const renter = (password: string, from: Sender = HERE) => knock(0, password, from, 'renter');

/** Without the slow hash: as many wrong tries as are asked for. */
async function wrongTries(count: number, from: Sender = HERE): Promise<void> {
  for (let n = 0; n < count; n += 1) await from.knocks();
}

describe('wrong passwords at many accounts', () => {
  test.each([
    [SENDER_TRIES - 2, 'in'],
    [SENDER_TRIES - 1, 'in'],
    [SENDER_TRIES, 'held-up'],
  ])('after %i of them the right password of another account is %s', async (count, step) => {
    await wrongTries(count);
    expect(await renter(PASSWORD)).toBe(step);
  });

  test('those of signing in and of the second step count together', async () => {
    await wrongTries(SENDER_TRIES - 2);
    expect(await knock(1, 'wrong')).toBe('refused');
    expect(await askSecondStep('nobody-2@first.example', 'wrong', NOW, HERE)).toBeNull();
    expect(await knock(3, 'wrong')).toBe('held-up');
  });

  test('many at once get no more than one after the other', async () => {
    await wrongTries(SENDER_TRIES - 3);
    const steps = await Promise.all([1, 2, 3, 4, 5, 6, 7].map((n) => knock(n, 'wrong')));
    expect(steps.filter((step) => step === 'refused')).toHaveLength(3);
    expect(steps.filter((step) => step === 'held-up')).toHaveLength(4);
  });

  test('at two servers they count together', async () => {
    await wrongTries(SENDER_TRIES - 1);
    vi.resetModules();
    const elsewhere = await import('@/lib/access/sender-limit');
    const { closeDatabase } = await import('@/lib/db/client');
    try {
      expect(elsewhere.senderLimit).not.toBe(senderLimit);
      const there = elsewhere.senderLimit('203.0.113.7', SECRET);
      expect([await there.knocks(), await there.knocks()]).toEqual([true, false]);
    } finally {
      await closeDatabase();
    }
    expect(await HERE.knocks()).toBe(false);
  });

  test('somebody at another address is not held up', async () => {
    await wrongTries(SENDER_TRIES + 5);
    expect(await renter(PASSWORD, THERE)).toBe('in');
  });
});

describe('a school behind one address', () => {
  test('signs in as often as it likes: what was right does not count', async () => {
    await wrongTries(SENDER_TRIES - 1);
    for (let n = 0; n < 4; n += 1) expect(await renter(PASSWORD)).toBe('in');
    expect(await knock(1, 'wrong')).toBe('refused');
    expect(await renter(PASSWORD)).toBe('held-up');
  });

  test.each([
    [SENDER_MINUTES * 60 - 5, false],
    [SENDER_MINUTES * 60, true],
    [SENDER_MINUTES * 60 + 5, true],
  ])('%i seconds after the first wrong one, open: %s', async (seconds, isOpen) => {
    await wrongTries(SENDER_TRIES);
    await asOwner(`UPDATE sign_in_knock SET began_at = clock_timestamp() - make_interval(secs => $1)`, [
      seconds,
    ]);
    expect(await HERE.knocks()).toBe(isOpen);
  });
});

describe('what is kept of it', () => {
  test('no address: a hash that nobody makes without the secret of the sessions', async () => {
    await wrongTries(1);
    await wrongTries(1, senderLimit('203.0.113.7', `${SECRET}, another one`));
    const rows = (await asOwner('SELECT sender_hmac AS kept FROM sign_in_knock')) as { kept: string }[];
    expect(rows).toHaveLength(2);
    for (const { kept } of rows) expect(kept).toMatch(/^[0-9a-f]{64}$/);
  });

  test('nothing of a sender whose while is over, once anybody knocks', async () => {
    await wrongTries(3, THERE);
    await asOwner(`UPDATE sign_in_knock SET began_at = now() - make_interval(mins => $1)`, [SENDER_MINUTES]);
    await wrongTries(1);
    expect(await asOwner('SELECT tries FROM sign_in_knock')).toEqual([{ tries: 1 }]);
  });

  test('the web account reads and writes none of it by itself', async () => {
    const client = await connect();
    for (const asked of [
      () => client.signInKnock.findMany(),
      () => client.signInKnock.updateMany({ data: { tries: 0 } }),
      () => client.signInKnock.deleteMany(),
    ]) {
      await expect(asked()).rejects.toThrow(/denied/);
    }
  });
});
