/**
 * The way back for a manager who has lost everything and whom no other manager can help. Source: issue 6 ("password set and
 * reset", "passkeys or TOTP as second factor", "Sessions listed and ended"); that the console may do it is our own rule.
 */
import { afterAll, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { readOwnAccount } from '@/lib/access/account/read-own-account';
import { UNKNOWN_SENDER } from '@/lib/access/sender-limit';
import { askSecondStep } from '@/lib/access/sign-in';
import { readInOperator } from '@/lib/db/scope';
import { verifyAudit } from '@/lib/operate/audit-verify';
import { withClient } from '@/lib/operate/connection';
import { letInByConsole, linkInWords } from '@/lib/operate/let-in';
import { askForReset } from '@/lib/people/ask-for-reset';
import { choosePasswordByLink, readLink } from '@/lib/people/by-link';
import { leavePerson } from '@/lib/people/leave-and-return';
import { LINK_HOURS } from '@/lib/people/make-link';
import { codeOf, comeIn, enrolApp, got, knock, own, SITE } from '../fixtures/accounts';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, foundSchool, NOW, openSchools, type School } from '../fixtures/school';

const GOOD_PASSWORD = 'seven copper kettles on a windowsill';
const HOUR = 3_600_000;
let database: FreshDatabase;
let school: School;
let name: string;
let round = 0;

beforeAll(async () => {
  vi.stubEnv('NEXTAUTH_SECRET', 'a secret of this test of enough characters');
  vi.stubEnv('NEXTAUTH_URL', SITE);
  ({ database } = await openSchools());
});
beforeEach(async () => {
  round += 1;
  name = `round${round}`;
  school = await foundSchool(name, trainer());
});
afterAll(async () => {
  vi.unstubAllEnvs();
  await closeSchools(database);
});

const mail = (who: string) => `${who}@${name}.example`;
const later = (ms: number) => new Date(NOW.getTime() + ms);
const tokenOf = (path: string) => path.slice(path.indexOf('#') + 1);
const letIn = (who: string, now = NOW) => letInByConsole(database.adminUrl, mail(who), now);
const links = () =>
  readInOperator(school.operatorId, (tx) =>
    tx.personLink.findMany({ where: { operatorId: school.operatorId } }),
  );
const rows = () =>
  readInOperator(school.operatorId, (tx) =>
    tx.auditRow.findMany({ where: { operatorId: school.operatorId }, orderBy: { seq: 'asc' } }),
  );

describe('let in from the console', () => {
  test('the link sets a password, takes the second factor and the codes away, and ends all sessions', async () => {
    const ref = await comeIn(mail('manager'), NOW);
    await enrolApp(ref, NOW);
    const { path } = await letIn('manager');
    const token = tokenOf(path);
    // Before it is used nothing has changed: the factor is asked and the session lives.
    expect(await knock(mail('manager'), later(60_000))).toEqual({ step: 'second-factor' });
    expect(codeOf(await readOwnAccount(ref, {}, { now: NOW }))).toBe('ok');
    expect(got(await readLink(token, { now: NOW }))).toMatchObject({
      kind: 'password-reset',
      email: mail('manager'),
      takesSecondFactor: true,
    });
    got(await choosePasswordByLink({ token, password: GOOD_PASSWORD }, { now: NOW }));
    expect(codeOf(await readOwnAccount(ref, {}, { now: NOW }))).toBe('not_signed_in');
    const at = later(90_000);
    expect(await knock(mail('manager'), at)).toEqual({ step: 'refused' });
    const asked = { password: GOOD_PASSWORD };
    const again = await comeIn(mail('manager'), at, asked);
    const account = got(await readOwnAccount(again, {}, { now: at }));
    expect(account.signedInWith).toBe('none');
    expect(await askSecondStep(mail('manager'), GOOD_PASSWORD, at, UNKNOWN_SENDER)).toBeNull();
    // The old app and the old codes are ended for good, not set aside.
    const anew = await readInOperator(school.operatorId, async (tx) => ({
      factors: await tx.secondFactor.count({ where: { operatorId: school.operatorId, endedAt: null } }),
      codes: await tx.recoveryCode.count({
        where: { operatorId: school.operatorId, usedAt: null, endedAt: null },
      }),
    }));
    expect(anew).toEqual({ factors: 0, codes: 0 });
  });
  test('works once, and for a day', async () => {
    const first = tokenOf((await letIn('manager')).path);
    const day = LINK_HOURS['password-reset'] * HOUR;
    for (const [ms, code] of [
      [day - 1, 'ok'],
      [day, 'link_closed'],
      [day + 1, 'link_closed'],
    ] as const)
      expect(codeOf(await readLink(first, { now: later(ms) }))).toBe(code);
    got(await choosePasswordByLink({ token: first, password: GOOD_PASSWORD }, { now: NOW }));
    const twice = await choosePasswordByLink(
      { token: first, password: `${GOOD_PASSWORD} two` },
      { now: NOW },
    );
    expect(codeOf(twice)).toBe('link_closed');
  });
  test('a new one ends the one before; somebody who types the address at the sign-in page does not', async () => {
    const first = tokenOf((await letIn('manager')).path);
    const second = tokenOf((await letIn('manager')).path);
    expect(codeOf(await readLink(first, { now: NOW }))).toBe('link_closed');
    vi.stubEnv('MAIL_OUTBOX_DIR', '/tmp/none-is-written-here');
    await askForReset(mail('manager'), NOW);
    vi.stubEnv('MAIL_OUTBOX_DIR', '');
    expect(await links()).toHaveLength(3);
    expect(codeOf(await readLink(second, { now: NOW }))).toBe('ok');
  });
  test('a link that a letter carries leaves the second factor alone', async () => {
    const ref = await comeIn(mail('manager'), NOW);
    await enrolApp(ref, NOW);
    const { path } = await letIn('manager');
    await withClient(database.adminUrl, (client) =>
      client.query(`UPDATE person_link SET handed_over = 'mail' WHERE operator_id = $1`, [school.operatorId]),
    );
    const token = tokenOf(path);
    expect(got(await readLink(token, { now: NOW })).takesSecondFactor).toBe(false);
    got(await choosePasswordByLink({ token, password: GOOD_PASSWORD }, { now: NOW }));
    expect(await knock(mail('manager'), later(60_000), { password: GOOD_PASSWORD })).toEqual({
      step: 'second-factor',
    });
  });
  test('the records say that the console did it, and the chain holds', async () => {
    await enrolApp(await comeIn(mail('manager'), NOW), NOW);
    const { path } = await letIn('manager');
    got(await choosePasswordByLink({ token: tokenOf(path), password: GOOD_PASSWORD }, { now: NOW }));
    const told = (await rows()).filter(({ verb }) => /let-in|choose-password/.test(verb));
    expect(told.map(({ verb, detail }) => [verb, detail])).toEqual([
      ['person.let-in-from-console', expect.objectContaining({ by: 'console', kind: 'password-reset' })],
      [
        'person.choose-password',
        expect.objectContaining({ by: 'link from the console', factors: 1, kind: 'password-reset' }),
      ],
    ]);
    expect(JSON.stringify(told)).not.toContain(tokenOf(path));
    const report = (await verifyAudit(database.adminUrl)).find(
      ({ operatorId }) => operatorId === school.operatorId,
    );
    expect(report?.faults).toEqual([]);
  });
  test('refuses in words whoever is unknown, has left, or is no manager; nothing is written', async () => {
    await expect(letIn('nobody')).rejects.toThrow('Nobody signs in with that address.');
    await expect(letIn('gone')).rejects.toThrow('That person has left.');
    await expect(letIn('airframe')).rejects.toThrow('That person is not a manager.');
    await expect(letInByConsole(database.adminUrl, '', NOW)).rejects.toThrow('npm run let-in');
    expect(await links()).toEqual([]);
    expect((await rows()).filter(({ verb }) => verb.includes('let-in'))).toEqual([]);
  });
  test('refuses somebody whose data was erased, and a link made before somebody left opens nothing', async () => {
    const { personId } = school.people.manager;
    const write = (set: string) =>
      withClient(database.adminUrl, (client) =>
        client.query(`UPDATE person SET ${set} WHERE id = $1`, [personId]),
      );
    const { path } = await letIn('manager');
    await write(`left_on = '2026-11-20', erased_at = now()`);
    await expect(letIn('manager')).rejects.toThrow('Nobody signs in with that address.');
    expect(codeOf(await readLink(tokenOf(path), { now: NOW }))).toBe('link_closed');
  });
  test('the console’s act is no act of that person: it does not hold up the day they left', async () => {
    const { personId } = school.people.manager;
    // A second manager, so that the first may leave.
    await withClient(database.adminUrl, (client) =>
      client.query(`UPDATE person SET roles = '{manager}' WHERE id = $1`, [
        school.people.dispatcher.personId,
      ]),
    );
    await letIn('manager');
    const result = await leavePerson(
      school.people.dispatcher,
      { ...own(), personId, leftOn: '2026-11-01' },
      { now: NOW },
    );
    expect(codeOf(result)).toBe('ok');
  });
  test('what is printed holds the whole address', async () => {
    const { path } = await letIn('manager');
    expect(linkInWords(SITE, path)).toContain(`  ${SITE}/join#${tokenOf(path)}\n`);
  });
});
