/**
 * The second factor. Sources: RFC 6238 section 5.2 (a code once, one step of drift); W3C Web Authentication, level 2, 7.1
 * and 7.2 (challenge, origin, relying party, signature, counter; from memory), answered here by an authenticator of our
 * own (tests/fixtures/authenticator.ts); issue 6, "passkeys or TOTP as second factor for those who sign".
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { changeOperator } from '@/lib/access/account/change-operator';
import { readOwnAccount } from '@/lib/access/account/read-own-account';
import { beginFactor } from '@/lib/access/second-factor/begin';
import { confirmFactor } from '@/lib/access/second-factor/confirm';
import { endFactor } from '@/lib/access/second-factor/end';
import { makeRecoveryCodes } from '@/lib/access/second-factor/make-recovery-codes';
import { resetSecondFactor } from '@/lib/access/second-factor/reset';
import { UNKNOWN_SENDER } from '@/lib/access/sender-limit';
import { askSecondStep } from '@/lib/access/sign-in';
import { readInOperator } from '@/lib/db/scope';
import { judgeSeverity } from '@/lib/determinations/judge-severity';
import { withClient } from '@/lib/operate/connection';
import { readBoard } from '@/lib/fleet/read-board';
import { whoAmI } from '@/lib/people/who-am-i';
import {
  appCode,
  cameIn,
  codeOf,
  comeIn,
  enrolApp,
  enrolPasskey,
  got,
  knock,
  own,
  passkeyQuestion,
  SITE,
} from '../fixtures/accounts';
import { Authenticator } from '../fixtures/authenticator';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, foundSchool, NOW, openSchools, PASSWORD, type School } from '../fixtures/school';
import { trainer } from '../fixtures/aircraft';

let database: FreshDatabase;
let school: School;
let other: School;
let name: string;
let round = 0;

beforeAll(async () => {
  vi.stubEnv('NEXTAUTH_SECRET', 'a secret of this test of enough characters');
  vi.stubEnv('NEXTAUTH_URL', SITE);
  ({ database, other } = await openSchools());
});
// Each test has a school of its own: codes, locks and factors of one do not reach the next.
beforeEach(async () => {
  round += 1;
  name = `round${round}`;
  school = await foundSchool(name, trainer());
});
afterAll(async () => {
  vi.unstubAllEnvs();
  await closeSchools(database);
});

const later = (seconds: number) => new Date(NOW.getTime() + seconds * 1000);
const mail = (who: string) => `${who}@${name}.example`;

describe('an authenticator app', () => {
  test('counts only after its first code: until then the password alone signs in', async () => {
    const ref = await comeIn(mail('airframe'), NOW);
    const begun = got(await beginFactor(ref, { ...own(), password: PASSWORD, kind: 'totp' }, { now: NOW }));
    expect(begun.kind).toBe('totp');
    expect(await knock(mail('airframe'), NOW)).toMatchObject({ step: 'in' });
    expect(await askSecondStep(mail('airframe'), PASSWORD, NOW, UNKNOWN_SENDER)).toBeNull();
  });
  test('the password is asked before anything is shown', async () => {
    const ref = await comeIn(mail('airframe'), NOW);
    const result = await beginFactor(ref, { ...own(), password: 'wrong', kind: 'totp' }, { now: NOW });
    expect(codeOf(result)).toBe('wrong_password');
    expect(result.ok ? '' : result.problem.say).toBe('The password is not right. Nothing was changed.');
  });
  test('password first, then the code; the session says so', async () => {
    const { secret } = await enrolApp(await comeIn(mail('airframe'), NOW), NOW);
    const at = later(60);
    expect(await knock(mail('airframe'), at)).toEqual({ step: 'second-factor' });
    expect(await askSecondStep(mail('airframe'), PASSWORD, at, UNKNOWN_SENDER)).toEqual({
      app: true,
      recoveryCodes: true,
      passkey: null,
    });
    const ref = await comeIn(mail('airframe'), at, { proof: { code: appCode(secret, at) } });
    expect(got(await readOwnAccount(ref, {}, { now: at })).signedInWith).toBe('totp');
  });
  test('a code works once: neither the one that proved it nor one that signed in signs in again', async () => {
    const { secret } = await enrolApp(await comeIn(mail('airframe'), NOW), NOW);
    const first = { proof: { code: appCode(secret, NOW) } };
    expect(await knock(mail('airframe'), NOW, first)).toEqual({ step: 'refused' });
    const at = later(60);
    const next = { proof: { code: appCode(secret, at) } };
    expect(await knock(mail('airframe'), at, next)).toMatchObject({ step: 'in' });
    expect(await knock(mail('airframe'), at, next)).toEqual({ step: 'refused' });
    // The step before it is over too, though it is still within the drift.
    const before = { proof: { code: appCode(secret, later(30)) } };
    expect(await knock(mail('airframe'), at, before)).toEqual({ step: 'refused' });
  });
  test('one code sent many times at once lets in once', async () => {
    const { secret } = await enrolApp(await comeIn(mail('airframe'), NOW), NOW);
    const at = later(60);
    const proof = { code: appCode(secret, at) };
    const answers = await Promise.all(
      Array.from({ length: 4 }, () => knock(mail('airframe'), at, { proof })),
    );
    expect(answers.map(({ step }) => step).sort()).toEqual(['in', 'refused', 'refused', 'refused']);
  });
  test('a right code with a wrong password is refused like any wrong password', async () => {
    const { secret } = await enrolApp(await comeIn(mail('airframe'), NOW), NOW);
    const at = later(60);
    const asked = { password: 'wrong', proof: { code: appCode(secret, at) } };
    expect(await knock(mail('airframe'), at, asked)).toEqual({ step: 'refused' });
  });
  test('eight wrong codes lock, and the right password between them does not forgive them', async () => {
    const { secret } = await enrolApp(await comeIn(mail('airframe'), NOW), NOW);
    const at = later(60);
    for (let guess = 1; guess <= 8; guess += 1) {
      expect(await knock(mail('airframe'), at)).toEqual({ step: 'second-factor' });
      expect(await knock(mail('airframe'), at, { proof: { code: '000000' } })).toEqual({ step: 'refused' });
    }
    const right = (now: Date) => ({ proof: { code: appCode(secret, now) } });
    expect(await knock(mail('airframe'), at, right(at))).toEqual({ step: 'refused' });
    const over = later(60 + 300);
    expect(await knock(mail('airframe'), over, right(over))).toMatchObject({ step: 'in' });
  });
  test('seven wrong codes do not lock', async () => {
    const { secret } = await enrolApp(await comeIn(mail('airframe'), NOW), NOW);
    const at = later(60);
    for (let guess = 1; guess <= 7; guess += 1)
      await knock(mail('airframe'), at, { proof: { code: '000000' } });
    expect(await knock(mail('airframe'), at, { proof: { code: appCode(secret, at) } })).toMatchObject({
      step: 'in',
    });
  });
  test('the secret is sealed: not in the row, the request, the audit; and not shown after it was proven', async () => {
    const ref = await comeIn(mail('airframe'), NOW);
    const asked = { ...own(), password: PASSWORD, kind: 'totp' };
    const first = got(await beginFactor(ref, asked, { now: NOW }));
    // A lost answer: asked again, the same secret.
    expect(got(await beginFactor(ref, asked, { now: NOW }))).toEqual(first);
    if (first.kind !== 'totp') throw new Error('not an app');
    const dump = await withClient(database.adminUrl, async (client) => {
      const rows = await client.query(
        `SELECT to_jsonb(f)::text AS t FROM second_factor f UNION ALL SELECT to_jsonb(r)::text FROM request r
         UNION ALL SELECT to_jsonb(a)::text FROM audit_row a`,
      );
      return JSON.stringify(rows.rows);
    });
    expect(dump).toContain(first.factorId);
    expect(dump).not.toContain(first.secret);
    const code = appCode(first.secret, NOW);
    const confirm = { ...own(), kind: 'totp', factorId: first.factorId, name: 'Phone', code };
    got(await confirmFactor(ref, confirm, { now: NOW }));
    expect(codeOf(await beginFactor(ref, asked, { now: NOW }))).toBe('invalid');
  });
  test('a wrong first code proves nothing; after half an hour one begins again', async () => {
    const ref = await comeIn(mail('airframe'), NOW);
    const begun = got(await beginFactor(ref, { ...own(), password: PASSWORD, kind: 'totp' }, { now: NOW }));
    if (begun.kind !== 'totp') throw new Error('not an app');
    const { factorId, secret } = begun;
    const confirm = (code: string, now: Date) =>
      confirmFactor(ref, { ...own(), kind: 'totp', factorId, name: 'Phone', code }, { now });
    expect(codeOf(await confirm('000000', NOW))).toBe('invalid');
    const late = later(30 * 60 + 1);
    expect(codeOf(await confirm(appCode(secret, late), late))).toBe('invalid');
    const just = later(30 * 60);
    expect(codeOf(await confirm(appCode(secret, just), just))).toBe('ok');
  });
  test("somebody else's, and another school's, cannot be proven or ended", async () => {
    const ref = await comeIn(mail('airframe'), NOW);
    const begun = got(await beginFactor(ref, { ...own(), password: PASSWORD, kind: 'totp' }, { now: NOW }));
    if (begun.kind !== 'totp') throw new Error('not an app');
    const { factorId, secret } = begun;
    const confirm = { kind: 'totp', factorId, name: 'Mine', code: appCode(secret, NOW) };
    for (const stranger of [school.people.renter, other.people.manager]) {
      expect(codeOf(await confirmFactor(stranger, { ...own(), ...confirm }, { now: NOW }))).toBe('not_found');
      const end = { ...own(), password: PASSWORD, factorId };
      expect(codeOf(await endFactor(stranger, end, { now: NOW }))).toBe('not_found');
    }
  });
});

describe('a passkey', () => {
  test('is made, and signs in beside the password', async () => {
    const { device, codes } = await enrolPasskey(await comeIn(mail('airframe'), NOW), NOW);
    expect(codes).toHaveLength(10);
    expect(await knock(mail('airframe'), NOW)).toEqual({ step: 'second-factor' });
    const passkey = device.get(await passkeyQuestion(mail('airframe'), NOW));
    const ref = await comeIn(mail('airframe'), NOW, { proof: { passkey } });
    expect(got(await readOwnAccount(ref, {}, { now: NOW })).signedInWith).toBe('passkey');
  });
  test('an answer works once; also after a wrong one the question is used up', async () => {
    const { device } = await enrolPasskey(await comeIn(mail('airframe'), NOW), NOW);
    const passkey = device.get(await passkeyQuestion(mail('airframe'), NOW));
    expect(await knock(mail('airframe'), NOW, { proof: { passkey } })).toMatchObject({ step: 'in' });
    expect(await knock(mail('airframe'), NOW, { proof: { passkey } })).toEqual({ step: 'refused' });

    const question = await passkeyQuestion(mail('airframe'), NOW);
    const forged = new Authenticator(new URL(SITE).hostname, SITE).get(question);
    const wrong = { ...forged, id: device.get(question).id };
    expect(await knock(mail('airframe'), NOW, { proof: { passkey: wrong } })).toEqual({ step: 'refused' });
    const right = device.get(question);
    expect(await knock(mail('airframe'), NOW, { proof: { passkey: right } })).toEqual({ step: 'refused' });
  });
  test.each([
    ['just under five minutes', 299, 'in'],
    ['at five minutes', 300, 'refused'],
    ['just over', 301, 'refused'],
  ])('a question is open for five minutes: %s', async (_, seconds, step) => {
    const { device } = await enrolPasskey(await comeIn(mail('airframe'), NOW), NOW);
    const passkey = device.get(await passkeyQuestion(mail('airframe'), NOW));
    expect(await knock(mail('airframe'), later(seconds), { proof: { passkey } })).toMatchObject({ step });
  });
  test('an answer given to another site, for another server, or without its question proves nothing', async () => {
    const { device } = await enrolPasskey(await comeIn(mail('airframe'), NOW), NOW);
    const host = new URL(SITE).hostname;
    for (const [rpId, origin] of [
      [host, 'https://wheelchock.school.example.evil.example'],
      ['evil.example', SITE],
    ] as const) {
      const phished = device.as(rpId, origin).get(await passkeyQuestion(mail('airframe'), NOW));
      expect(await knock(mail('airframe'), NOW, { proof: { passkey: phished } })).toEqual({
        step: 'refused',
      });
    }
    const invented = device.get({ challenge: Buffer.from(randomUUID()).toString('base64url') });
    expect(await knock(mail('airframe'), NOW, { proof: { passkey: invented } })).toEqual({ step: 'refused' });
  });
  test("somebody else's question is not answered by one's own", async () => {
    const mine = await enrolPasskey(await comeIn(mail('airframe'), NOW), NOW);
    await enrolPasskey(await comeIn(mail('powerplant'), NOW), NOW);
    const theirs = await passkeyQuestion(mail('powerplant'), NOW);
    const passkey = mine.device.get(theirs);
    expect(await knock(mail('airframe'), NOW, { proof: { passkey } })).toEqual({ step: 'refused' });
    expect(await knock(mail('powerplant'), NOW, { proof: { passkey } })).toEqual({ step: 'refused' });
  });
  test('a count of signatures that does not rise shows a copy, and is refused', async () => {
    const { device } = await enrolPasskey(await comeIn(mail('airframe'), NOW), NOW);
    const sign = async () => {
      const passkey = device.get(await passkeyQuestion(mail('airframe'), NOW));
      return (await knock(mail('airframe'), NOW, { proof: { passkey } })).step;
    };
    expect(await sign()).toBe('in');
    device.signCount = 0;
    expect(await sign()).toBe('refused');
  });
  test('the answer that adds one works once, and for nobody else', async () => {
    const ref = await comeIn(mail('airframe'), NOW);
    const begin = { password: PASSWORD, kind: 'passkey' };
    const begun = got(await beginFactor(ref, { ...own(), ...begin }, { now: NOW }));
    if (begun.kind !== 'passkey') throw new Error('not a passkey');
    const device = new Authenticator(new URL(SITE).hostname, SITE);
    const confirm = { kind: 'passkey', name: 'Key', answer: device.create(begun.options) };
    const stranger = await confirmFactor(school.people.renter, { ...own(), ...confirm }, { now: NOW });
    expect(codeOf(stranger)).toBe('invalid');
    expect(codeOf(await confirmFactor(ref, { ...own(), ...confirm }, { now: NOW }))).toBe('ok');
    expect(codeOf(await confirmFactor(ref, { ...own(), ...confirm }, { now: NOW }))).toBe('invalid');
  });
});

describe('recovery codes', () => {
  test('ten, each once, and kept as hashes only', async () => {
    const { codes } = await enrolApp(await comeIn(mail('airframe'), NOW), NOW);
    expect(new Set(codes).size).toBe(10);
    const [first = '', second = ''] = codes ?? [];
    expect(first).toMatch(/^([2-9a-z]{4}-){3}[2-9a-z]{4}$/);
    const ref = await comeIn(mail('airframe'), NOW, { proof: { code: first } });
    const account = got(await readOwnAccount(ref, {}, { now: NOW }));
    expect(account).toMatchObject({ signedInWith: 'recovery', recoveryCodesLeft: 9 });
    expect(await knock(mail('airframe'), NOW, { proof: { code: first } })).toEqual({ step: 'refused' });
    // As somebody types it from paper.
    const typed = { proof: { code: second.replaceAll('-', ' ').toUpperCase() } };
    expect(await knock(mail('airframe'), NOW, typed)).toMatchObject({ step: 'in' });
    const rows = await readInOperator(school.operatorId, (tx) => tx.recoveryCode.findMany());
    const dump = JSON.stringify(rows);
    for (const code of codes ?? []) expect(dump).not.toContain(code.replaceAll('-', ''));
  });
  test('are no use to somebody else', async () => {
    const { codes } = await enrolApp(await comeIn(mail('airframe'), NOW), NOW);
    await enrolApp(await comeIn(mail('powerplant'), NOW), NOW);
    const proof = { code: codes?.[0] ?? '' };
    expect(await knock(mail('powerplant'), NOW, { proof })).toEqual({ step: 'refused' });
  });
  test('new ones end the old ones, and are shown once', async () => {
    const ref = await comeIn(mail('airframe'), NOW);
    const { codes: old } = await enrolApp(ref, NOW);
    const asked = { ...own(), password: PASSWORD };
    const { codes } = got(await makeRecoveryCodes(ref, asked, { now: NOW }));
    expect(codes).toHaveLength(10);
    expect(got(await makeRecoveryCodes(ref, asked, { now: NOW })).codes).toBeNull();
    const use = async (code = '') => (await knock(mail('airframe'), NOW, { proof: { code } })).step;
    expect(await use(old?.[3])).toBe('refused');
    expect(await use(codes?.[3])).toBe('in');
  });
  test('there are none without a factor, and they end with the last one', async () => {
    const ref = await comeIn(mail('airframe'), NOW);
    expect(codeOf(await makeRecoveryCodes(ref, { ...own(), password: PASSWORD }, { now: NOW }))).toBe(
      'invalid',
    );
    const { factorId } = await enrolApp(ref, NOW);
    const end = { ...own(), password: PASSWORD, factorId };
    expect(got(await endFactor(ref, end, { now: NOW }))).toEqual({ left: 0 });
    expect(got(await readOwnAccount(ref, {}, { now: NOW })).recoveryCodesLeft).toBe(0);
    expect(await knock(mail('airframe'), NOW)).toMatchObject({ step: 'in' });
  });
});

describe('asked of everybody who signs', () => {
  const ask = (ref: Parameters<typeof changeOperator>[0], signersNeedSecondFactor: boolean) =>
    changeOperator(ref, { ...own(), signersNeedSecondFactor, password: PASSWORD }, { now: NOW });
  const signature = () => ({
    ...own(),
    discrepancyId: randomUUID(),
    kind: 'damage',
    jasc: '6110',
    equipmentId: null,
    inoperativeCount: null,
    severity: 'grounding',
    statement: 'Looked at: nicked beyond what may be dressed out.',
    password: PASSWORD,
  });

  test('only by a manager who has one', async () => {
    const manager = await comeIn(mail('manager'), NOW);
    const refused = await ask(manager, true);
    expect(refused.ok ? {} : refused.problem.fields).toHaveProperty('signersNeedSecondFactor');
    await enrolApp(manager, NOW);
    expect(codeOf(await ask(manager, true))).toBe('ok');
    expect(codeOf(await ask(await comeIn(mail('dispatcher'), NOW), true))).toBe('not_allowed');
  });
  test('takes the password again, both ways; name and units do not', async () => {
    const manager = await comeIn(mail('manager'), NOW);
    await enrolApp(manager, NOW);
    for (const signersNeedSecondFactor of [true, false]) {
      const none = await changeOperator(manager, { ...own(), signersNeedSecondFactor }, { now: NOW });
      expect(none.ok ? {} : none.problem.fields).toEqual({ password: ['Enter your password.'] });
      const wrong = { ...own(), signersNeedSecondFactor, password: 'wrong' };
      expect(codeOf(await changeOperator(manager, wrong, { now: NOW }))).toBe('wrong_password');
      const read = await readOwnAccount(manager, {}, { now: NOW });
      expect(got(read).secondFactorAsked).toBe(!signersNeedSecondFactor);
      got(await ask(manager, signersNeedSecondFactor));
    }
    got(await changeOperator(manager, { ...own(), units: 'metric' }, { now: NOW }));
    const kept = await readInOperator(school.operatorId, (tx) =>
      tx.auditRow.findMany({ where: { operatorId: school.operatorId, verb: 'operator.change' } }),
    );
    expect(kept.map(({ detail }) => Object.keys(detail as object))).toEqual([
      ['signersNeedSecondFactor'],
      ['signersNeedSecondFactor'],
      ['units'],
    ]);
  });
  test('then no signature counts from a session without one, and its words lead to the account', async () => {
    const manager = await comeIn(mail('manager'), NOW);
    const before = await comeIn(mail('airframe'), NOW);
    // What is not asked for: the write-up is looked for, and is not there.
    expect(codeOf(await judgeSeverity(before, signature(), { now: NOW }))).toBe('not_found');
    await enrolApp(manager, NOW);
    got(await ask(manager, true));

    const refused = await judgeSeverity(before, signature(), { now: NOW });
    expect(refused.ok ? {} : refused.problem).toMatchObject({
      code: 'signature_refused',
      settleAt: '/account#second-factor',
    });
    expect(got(await whoAmI(before, {}, { now: NOW })).secondFactor).toBe('missing');
    // Looking is free, and so is setting one up.
    expect(codeOf(await readBoard(before, {}, { now: NOW }))).toBe('ok');
    const { secret } = await enrolApp(before, NOW);
    expect(got(await whoAmI(before, {}, { now: NOW })).secondFactor).toBe('not-used');
    expect(codeOf(await judgeSeverity(before, signature(), { now: NOW }))).toBe('signature_refused');

    const at = later(60);
    const proof = { code: appCode(secret, at) };
    const ref = cameIn(await knock(mail('airframe'), at, { proof }));
    expect(codeOf(await judgeSeverity(ref, signature(), { now: at }))).toBe('not_found');
    expect(got(await whoAmI(ref, {}, { now: at })).secondFactor).toBeUndefined();
  });
  test('who asks without a session (tests, the demo) is not asked', async () => {
    const { manager, airframe } = school.people;
    await enrolApp(manager, NOW);
    got(await ask(manager, true));
    expect(codeOf(await judgeSeverity(airframe, signature(), { now: NOW }))).toBe('not_found');
  });
});

describe('a lost phone', () => {
  const lost = (personId: string) => ({
    ...own(),
    password: PASSWORD,
    personId,
    why: 'Phone fell into the sea.',
  });
  test('a manager resets it: every factor, code and session ends', async () => {
    const manager = await comeIn(mail('manager'), NOW);
    const ref = await comeIn(mail('airframe'), NOW);
    const { codes } = await enrolApp(ref, NOW);
    const result = await resetSecondFactor(manager, lost(ref.personId), { now: NOW });
    expect(got(result)).toEqual({ factors: 1, sessions: 1 });
    expect(codeOf(await readBoard(ref, {}, { now: NOW }))).toBe('not_signed_in');
    expect(await knock(mail('airframe'), NOW)).toMatchObject({ step: 'in' });
    await enrolApp(await comeIn(mail('airframe'), later(60)), later(60));
    const old = { proof: { code: codes?.[0] ?? '' } };
    expect(await knock(mail('airframe'), later(60), old)).toEqual({ step: 'refused' });
  });
  test('not the own one, not of another school, not by others', async () => {
    const manager = await comeIn(mail('manager'), NOW);
    const { renter } = other.people;
    expect(codeOf(await resetSecondFactor(manager, lost(manager.personId), { now: NOW }))).toBe(
      'not_allowed',
    );
    expect(codeOf(await resetSecondFactor(manager, lost(renter.personId), { now: NOW }))).toBe('not_found');
    const { dispatcher, airframe } = school.people;
    expect(codeOf(await resetSecondFactor(dispatcher, lost(airframe.personId), { now: NOW }))).toBe(
      'not_allowed',
    );
  });
});
