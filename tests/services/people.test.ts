/**
 * People come, change, leave and return. Source: issue 6 ("invitations by link (mail or printed), password set and reset,
 * roles ... leave and return ... A person who left can never sign again and everything he signed stands").
 */
import { createHash, randomUUID } from 'node:crypto';
import { mkdtemp, readdir, readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { verify } from '@node-rs/argon2';
import type { ActorRef } from '@/lib/access/actor';
import { readInOperator, writeInOperator } from '@/lib/db/scope';
import { issueKey } from '@/lib/feeds/issue-key';
import { actorOfKey } from '@/lib/feeds/key-actor';
import { reportFinding } from '@/lib/findings/report-finding';
import { readBoard } from '@/lib/fleet/read-board';
import { letterSettings } from '@/lib/notices/letter-settings';
import { openPost, type Post } from '@/lib/notices/letters';
import { MOST_TRIES, sendDueLetters } from '@/lib/notices/send-letters';
import { verifyAudit } from '@/lib/operate/audit-verify';
import { withClient } from '@/lib/operate/connection';
import { askForReset, RESETS_AN_HOUR } from '@/lib/people/ask-for-reset';
import { choosePasswordByLink, readLink } from '@/lib/people/by-link';
import { changePerson } from '@/lib/people/change-person';
import { endPersonLink } from '@/lib/people/end-link';
import { invitePerson, makePersonLink } from '@/lib/people/invite-person';
import { leavePerson, returnPerson } from '@/lib/people/leave-and-return';
import { LINK_HOURS } from '@/lib/people/make-link';
import { readPeople } from '@/lib/people/read-people';
import { readPerson } from '@/lib/people/read-person';
import { readSigner, signerFacts } from '@/lib/people/signer';
import { mayApproveReturnToService } from '@/lib/rules/who-may-sign';
import { enterWork } from '@/lib/work/enter-work';
import { signWork } from '@/lib/work/sign-work';
import { startWork } from '@/lib/work/start-work';
import { entryOf, nickedPropeller, problemOf, signatureOf, startOf, valueOf } from '../fixtures/acts';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import {
  closeSchools,
  foundSchool,
  NOW,
  openSchools,
  PASSWORD,
  PEOPLE,
  type School,
} from '../fixtures/school';
import { work } from '../fixtures/signers';

let database: FreshDatabase;
let school: School;
let other: School;
let schools = 0;
const now = { now: NOW };
const HOUR = 3_600_000;
const at = (ms: number) => ({ now: new Date(NOW.getTime() + ms) });
const GOOD_PASSWORD = 'seven copper kettles on a windowsill';

beforeAll(async () => {
  process.env['NEXTAUTH_SECRET'] ??= 'a secret for tests only, of enough characters';
  ({ database, other } = await openSchools());
});
afterAll(() => closeSchools(database));
beforeEach(async () => {
  schools += 1;
  school = await foundSchool(`people-${schools}`, trainer());
  for (const name of ['SMTP_URL', 'MAIL_OUTBOX_DIR', 'MAIL_FROM']) Reflect.deleteProperty(process.env, name);
});

const asked = (some: object = {}) => ({
  requestId: randomUUID(),
  name: 'Nell Newcomb',
  email: `nell.${randomUUID().slice(0, 8)}@people.example`,
  roles: ['pilot'],
  homeBaseId: school.baseId,
  handedOver: 'printed',
  ...some,
});
const invite = async (some: object = {}) =>
  valueOf(await invitePerson(school.people.manager, asked(some), now));
const tokenOf = ({ token }: { token: string | null }) => token ?? 'no token';
const personRow = (personId: string) =>
  readInOperator(school.operatorId, (tx) => tx.person.findUniqueOrThrow({ where: { id: personId } }));
const join = (token: string, password = GOOD_PASSWORD, when = now) =>
  choosePasswordByLink({ token, password }, when);
const refOf = async (personId: string): Promise<ActorRef> => ({
  personId,
  operatorId: school.operatorId,
  sessionVersion: (await personRow(personId)).sessionVersion,
});
const leaveOf = (personId: string, some: object = {}) => ({
  requestId: randomUUID(),
  personId,
  leftOn: '2026-11-25',
  ...some,
});
const asOwner = (sql: string, values: unknown[] = []) =>
  withClient(database.adminUrl, (client) => client.query<Record<string, unknown>>(sql, values));
const eventsOf = async (personId: string) =>
  (await asOwner('SELECT what FROM person_event WHERE person_id = $1 ORDER BY at, id', [personId])).rows.map(
    ({ what }) => what,
  );

describe('an invitation', () => {
  test('makes a person whom no password fits, and shows the link once', async () => {
    const input = asked();
    const made = valueOf(await invitePerson(school.people.manager, input, now));
    expect(made.token).toMatch(/^[A-Za-z0-9_-]{43}$/);
    expect(Date.parse(made.expiresAt) - NOW.getTime()).toBe(7 * 24 * HOUR);
    const row = await personRow(made.personId);
    expect(row.passwordSetAt).toBeNull();
    for (const guess of ['', made.token ?? '', input.email])
      expect(await verify(row.passwordHash, guess)).toBe(false);
    // Sent again, it is the same person and the same link, without the token.
    const again = valueOf(await invitePerson(school.people.manager, input, now));
    expect(again).toEqual({ ...made, token: null });
    expect(problemOf(await invitePerson(school.people.manager, { ...input, name: 'Other' }, now)).code).toBe(
      'conflict',
    );
  });

  test('keeps of the token its SHA-256 and nothing else, in no table', async () => {
    const { token, linkId } = await invite();
    const { rows: tables } = await asOwner(
      `SELECT table_name AS name FROM information_schema.tables WHERE table_schema = 'public' AND table_type = 'BASE TABLE'`,
    );
    for (const { name } of tables) {
      const { rows } = await asOwner(
        `SELECT count(*)::int AS found FROM "${String(name)}" t WHERE t::text LIKE $1`,
        [`%${token}%`],
      );
      expect({ name, ...rows[0] }).toEqual({ name, found: 0 });
    }
    const { rows } = await asOwner('SELECT token_sha256, sealed_token FROM person_link WHERE id = $1', [
      linkId,
    ]);
    expect(rows[0]).toEqual({
      token_sha256: createHash('sha256').update(tokenOf({ token })).digest('hex'),
      sealed_token: null,
    });
  });

  test('writes no name and no address into what is never erased', async () => {
    const { personId } = await invite({ name: 'Zephyrine Quillfeather', email: 'zephyrine@people.example' });
    const { rows } = await asOwner(
      `SELECT count(*)::int AS found FROM (SELECT detail::text AS text FROM audit_row UNION ALL SELECT result::text FROM request
       UNION ALL SELECT words FROM person_event) kept WHERE text ~* 'zephyrine'`,
    );
    expect(rows[0]).toEqual({ found: 0 });
    expect(personId).toBeTruthy();
  });

  test('lets its holder look, choose a password once, and sign in', async () => {
    const made = await invite({ name: 'Nell Newcomb' });
    const seen = valueOf(await readLink(made.token, now));
    expect(seen).toMatchObject({
      kind: 'invitation',
      name: 'Nell Newcomb',
      operatorName: `Invented school people-${schools}`,
    });
    expect(valueOf(await join(tokenOf(made)))).toMatchObject({ kind: 'invitation' });
    const row = await personRow(made.personId);
    expect(await verify(row.passwordHash, GOOD_PASSWORD)).toBe(true);
    expect(row.passwordSetAt).toEqual(NOW);
    expect(await eventsOf(made.personId)).toEqual(['joined']);
    expect((await readBoard(await refOf(made.personId), {}, now)).ok).toBe(true);
    expect(problemOf(await join(tokenOf(made))).code).toBe('link_closed');
  });

  test('a password that will not do is refused and the link stays good', async () => {
    const made = await invite();
    const problem = problemOf(await join(tokenOf(made), 'password'));
    expect(problem.code).toBe('invalid');
    expect(problem.fields?.['password']?.length).toBeGreaterThan(0);
    expect((await join(tokenOf(made))).ok).toBe(true);
  });

  test.each([
    ['just before its end', LINK_HOURS.invitation * HOUR - 1, true],
    ['at its end', LINK_HOURS.invitation * HOUR, false],
    ['just after', LINK_HOURS.invitation * HOUR + 1, false],
  ])('%s (7 days, our choice): works %s', async (_, ms, works) => {
    const made = await invite();
    expect((await readLink(made.token, at(ms))).ok).toBe(works);
    expect((await join(tokenOf(made), GOOD_PASSWORD, at(ms))).ok).toBe(works);
  });

  test('wrong, used, ended and over get the same words', async () => {
    const [used, ended, over] = [await invite(), await invite(), await invite()];
    valueOf(await join(tokenOf(used)));
    valueOf(
      await endPersonLink(school.people.manager, { requestId: randomUUID(), linkId: ended.linkId }, now),
    );
    const answers = [
      await readLink('not a token', now),
      await readLink('A'.repeat(43), now),
      await readLink(used.token, now),
      await readLink(ended.token, now),
      await readLink(over.token, at(8 * 24 * HOUR)),
      await join('A'.repeat(43)),
      await join(tokenOf(used)),
      await join(tokenOf(ended)),
    ].map(problemOf);
    expect(new Set(answers.map(({ say }) => say)).size).toBe(1);
    expect(new Set(answers.map(({ code }) => code))).toEqual(new Set(['link_closed']));
  });

  test('a new link ends the earlier one', async () => {
    const first = await invite();
    const second = valueOf(
      await makePersonLink(
        school.people.manager,
        { requestId: randomUUID(), personId: first.personId, handedOver: 'printed' },
        now,
      ),
    );
    expect((await readLink(first.token, now)).ok).toBe(false);
    expect(valueOf(await readLink(second.token, now)).kind).toBe('invitation');
  });

  test('refuses an address somebody has, here or at another school, and what is no address', async () => {
    const at2 = async (email: string) =>
      problemOf(await invitePerson(school.people.manager, asked({ email }), now)).fields?.['email']?.join(
        ' ',
      );
    expect(await at2(`RENTER@people-${schools}.example`)).toContain(PEOPLE.renter.name);
    expect(await at2(`gone@people-${schools}.example`)).toContain('has left');
    // Of another school nothing is said but that it is taken.
    expect(await at2('renter@other.example')).toBe('This address is taken. Use another one for work here.');
    expect(await at2('two@a.example, b@c.example')).toContain('one plain e-mail address');
  });

  test('refuses no role, another school’s base, and mail on a server that sends none', async () => {
    const refused = async (some: object) =>
      Object.keys(problemOf(await invitePerson(school.people.manager, asked(some), now)).fields ?? {});
    expect(await refused({ roles: [] })).toEqual(['roles']);
    expect(await refused({ homeBaseId: other.baseId })).toEqual(['homeBaseId']);
    expect(await refused({ handedOver: 'mail' })).toEqual(['handedOver']);
    expect(problemOf(await invitePerson(school.people.dispatcher, asked(), now)).code).toBe('not_allowed');
  });
});

describe('by mail', () => {
  let folder: string;
  beforeEach(async () => {
    folder = await mkdtemp(path.join(tmpdir(), 'wheelchock-people-'));
    process.env['MAIL_OUTBOX_DIR'] = folder;
    process.env['NEXTAUTH_URL'] = 'https://wheelchock.school.example';
  });
  const post = (): Post => {
    const settings = letterSettings();
    if (!settings) throw new Error('letters are off');
    return openPost(settings);
  };
  const send = (when = NOW, by = post()) => sendDueLetters(school.operatorId, by, { clock: () => when });
  const letters = async () => {
    const files = (await readdir(folder)).filter((name) => name.endsWith('.eml'));
    // Quoted-printable (RFC 2045, 6.7): soft breaks, then =3D and the like.
    return Promise.all(
      files.map(async (name) =>
        (await readFile(path.join(folder, name), 'utf8'))
          .replace(/=\r\n/g, '')
          .replace(/=([0-9A-F]{2})/g, (_, hex: string) => String.fromCharCode(parseInt(hex, 16))),
      ),
    );
  };
  const sealed = async (linkId: string) =>
    (await asOwner('SELECT sealed_token AS kept FROM person_link WHERE id = $1', [linkId])).rows[0]?.['kept'];
  const tokenIn = (letter = '') => /\/join#([A-Za-z0-9_-]{43})/.exec(letter)?.[1] ?? '';

  test('the token is kept sealed until the letter was sent, is in the letter, and opens', async () => {
    const made = await invite({ handedOver: 'mail' });
    expect(made.token).toBeNull();
    expect(await sealed(made.linkId)).toMatch(/^v1\./);
    expect(await send()).toBe(1);
    expect(await sealed(made.linkId)).toBeNull();
    const [letter] = await letters();
    expect(letter).toContain('https://wheelchock.school.example/join#');
    const { rows } = await asOwner('SELECT body FROM letter WHERE link_id = $1', [made.linkId]);
    expect(rows[0]?.['body']).toContain('/join#{token}');
    expect((await join(tokenIn(letter))).ok).toBe(true);
  });

  test('a letter given up leaves no token behind, and one whose link has ended is not sent', async () => {
    const broken: Post = { send: () => Promise.reject(new Error('nobody there')) };
    const made = await invite({ handedOver: 'mail' });
    for (
      let tried = 0, when = NOW;
      tried < MOST_TRIES;
      tried += 1, when = new Date(when.getTime() + 7 * HOUR)
    ) {
      await send(when, broken);
    }
    expect(await sealed(made.linkId)).toBeNull();
    const second = await invite({ handedOver: 'mail' });
    valueOf(
      await endPersonLink(school.people.manager, { requestId: randomUUID(), linkId: second.linkId }, now),
    );
    expect(await send()).toBe(0);
    const { rows } = await asOwner('SELECT state FROM letter WHERE link_id = $1', [second.linkId]);
    expect(rows[0]).toEqual({ state: 'given-up' });
    expect(await letters()).toEqual([]);
  });

  test('forgotten: a link to the address, three an hour, nothing for strangers and for those who left', async () => {
    const address = `renter@people-${schools}.example`;
    const links = async () =>
      (await asOwner('SELECT id FROM person_link WHERE operator_id = $1', [school.operatorId])).rows.length;
    await askForReset('nobody@people.example', NOW);
    await askForReset(`gone@people-${schools}.example`, NOW);
    expect(await links()).toBe(0);
    for (let n = 1; n <= RESETS_AN_HOUR + 1; n += 1) {
      await askForReset(` ${address.toUpperCase()} `, NOW);
      expect(await links()).toBe(Math.min(n, RESETS_AN_HOUR));
    }
    await askForReset(address, new Date(NOW.getTime() + HOUR - 1));
    expect(await links()).toBe(RESETS_AN_HOUR);
    await askForReset(address, new Date(NOW.getTime() + HOUR));
    expect(await links()).toBe(RESETS_AN_HOUR + 1);
    const when = new Date(NOW.getTime() + HOUR);
    expect(await send(when)).toBe(1);
    const [letter] = await letters();
    valueOf(await join(tokenIn(letter), GOOD_PASSWORD, { now: when }));
    expect(await verify((await personRow(school.people.renter.personId)).passwordHash, GOOD_PASSWORD)).toBe(
      true,
    );
    // The session of before is over, and a reset is no joining.
    expect(problemOf(await readBoard(school.people.renter, {}, now)).code).toBe('not_signed_in');
    expect(await eventsOf(school.people.renter.personId)).toEqual([]);
  });

  test('forgotten does not end the link on a manager’s desk, and does nothing where no letters are sent', async () => {
    const address = `renter@people-${schools}.example`;
    const { personId } = school.people.renter;
    const printed = valueOf(
      await makePersonLink(
        school.people.manager,
        { requestId: randomUUID(), personId, handedOver: 'printed' },
        now,
      ),
    );
    await askForReset(address, NOW);
    expect(valueOf(await readLink(printed.token, now)).kind).toBe('password-reset');
    delete process.env['MAIL_OUTBOX_DIR'];
    const before = (await asOwner('SELECT id FROM person_link')).rows.length;
    await askForReset(address, NOW);
    expect((await asOwner('SELECT id FROM person_link')).rows.length).toBe(before);
  });
});

describe('changes', () => {
  const changeOf = (personId: string, some: object = {}) => ({
    requestId: randomUUID(),
    personId,
    name: 'Rue Fernhollow-Marsh',
    email: `rue@people-${schools}.example`,
    roles: ['pilot', 'dispatcher'],
    homeBaseId: '',
    ...some,
  });

  test('name, address, roles and base; roles count at once and leave an event', async () => {
    const { renter, manager } = school.people;
    const { changed } = valueOf(await changePerson(manager, changeOf(renter.personId), now));
    expect(changed).toEqual(['name', 'email', 'roles']);
    expect(await eventsOf(renter.personId)).toEqual(['roles']);
    const listed = valueOf(await readPeople(manager, {}, now)).people.find(
      ({ id }) => id === renter.personId,
    );
    expect(listed).toMatchObject({
      name: 'Rue Fernhollow-Marsh',
      roles: ['pilot', 'dispatcher'],
      base: null,
      state: 'here',
    });
  });

  test('an invitation on its way to the address of before ends', async () => {
    const made = await invite();
    valueOf(await changePerson(school.people.manager, changeOf(made.personId), now));
    expect((await readLink(made.token, now)).ok).toBe(false);
  });

  test('the last manager who can sign in keeps the role and stays', async () => {
    const { manager, renter } = school.people;
    const demoted = changeOf(manager.personId, { roles: ['pilot'] });
    expect(problemOf(await changePerson(manager, demoted, now)).say).toContain('last manager');
    expect(problemOf(await leavePerson(manager, leaveOf(manager.personId), now)).say).toContain(
      'last manager',
    );
    // One who was invited and never came is none.
    await invite({ roles: ['manager'] });
    expect(problemOf(await changePerson(manager, demoted, now)).code).toBe('conflict');
    valueOf(await changePerson(manager, changeOf(renter.personId, { roles: ['manager'] }), now));
    expect(
      (await changePerson(manager, { ...demoted, email: `max@people-${schools}.example` }, now)).ok,
    ).toBe(true);
  });

  test('somebody of another school is not there', async () => {
    const theirs = other.people.renter.personId;
    expect(problemOf(await changePerson(school.people.manager, changeOf(theirs), now)).code).toBe(
      'not_found',
    );
    expect(problemOf(await leavePerson(school.people.manager, leaveOf(theirs), now)).code).toBe('not_found');
  });
});

describe('leaving', () => {
  async function signedBy(ref: ActorRef) {
    const { discrepancyId } = valueOf(
      await reportFinding(school.people.renter, nickedPropeller(school), now),
    );
    const { workId } = valueOf(await startWork(ref, startOf(discrepancyId), now));
    const { entryHash } = valueOf(await enterWork(ref, entryOf(workId, PEOPLE.powerplant.name), now));
    return { workId, entryHash };
  }

  test('ends sessions, keys and links at once; the door and the law both refuse a signature; what was signed verifies', async () => {
    const { powerplant, manager } = school.people;
    const { personId } = powerplant;
    const signed = await signedBy(powerplant);
    valueOf(await signWork(powerplant, signatureOf(signed.workId, signed.entryHash), now));
    const unsigned = await signedBy(powerplant);
    const sessionId = randomUUID();
    await writeInOperator(school.operatorId, (tx) =>
      tx.session.create({
        data: {
          id: sessionId,
          operatorId: school.operatorId,
          personId,
          beganAt: NOW,
          lastSeenAt: NOW,
          expiresAt: at(HOUR).now,
          device: 'test',
          secondFactor: 'none',
        },
      }),
    );
    expect((await readBoard({ ...powerplant, sessionId }, {}, now)).ok).toBe(true);

    valueOf(await leavePerson(manager, leaveOf(personId), now));

    for (const ref of [powerplant, { ...powerplant, sessionId }, await refOf(personId)]) {
      expect(problemOf(await readBoard(ref, {}, now)).code).toBe('not_signed_in');
      const signature = signatureOf(unsigned.workId, unsigned.entryHash);
      expect(problemOf(await signWork(ref, signature, now)).code).toBe('not_signed_in');
    }
    const { rows } = await asOwner('SELECT ended_at, ended_by_id FROM session WHERE id = $1', [sessionId]);
    expect(rows[0]).toEqual({ ended_at: NOW, ended_by_id: manager.personId });
    // The law's own refusal, should a door ever stand open (lib/rules/who-may-sign.ts).
    const facts = await readInOperator(school.operatorId, async (tx) =>
      signerFacts(await readSigner(tx, school.operatorId, personId)),
    );
    const ruling = mayApproveReturnToService(facts, work({ part: 'propeller', kind: 'minor' }), '2026-11-25');
    expect(ruling.allowed).toBe(false);
    expect(ruling.lines[0]?.because).toContain('left on 25 Nov 2026');
    expect((await verifyAudit(database.adminUrl)).flatMap(({ faults }) => faults)).toEqual([]);
    const { rows: stands } = await asOwner('SELECT person_name FROM sign_off WHERE work_id = $1', [
      signed.workId,
    ]);
    expect(stands).toEqual([{ person_name: PEOPLE.powerplant.name }]);
    // A link that was on its way opens nothing, and none can be made.
    const link = await makePersonLink(
      manager,
      { requestId: randomUUID(), personId, handedOver: 'printed' },
      now,
    );
    expect(problemOf(link).say).toContain('has left');
  });

  test('an access key of theirs stops for good, also after they return', async () => {
    const { manager, renter } = school.people;
    await writeInOperator(school.operatorId, (tx) =>
      tx.person.update({ where: { id: renter.personId }, data: { roles: ['manager'] } }),
    );
    const key = valueOf(
      await issueKey(
        renter,
        { requestId: randomUUID(), name: 'Screen', scopes: ['fleet:read'], lastDay: '', password: PASSWORD },
        now,
      ),
    ).key;
    expect(await actorOfKey(key ?? '', NOW)).not.toBeNull();
    valueOf(await leavePerson(manager, leaveOf(renter.personId), now));
    expect(await actorOfKey(key ?? '', NOW)).toBeNull();
    valueOf(await returnPerson(manager, { requestId: randomUUID(), personId: renter.personId }, now));
    expect(await actorOfKey(key ?? '', NOW)).toBeNull();
  });

  test.each([
    ['2026-11-24', 'leftOn'],
    ['2026-11-25', null],
    ['2026-11-26', 'leftOn'],
  ])('on %s, having done something on the 25th, which is today: refused field %s', async (leftOn, field) => {
    const { renter, manager } = school.people;
    valueOf(await reportFinding(renter, nickedPropeller(school), now));
    const result = await leavePerson(manager, leaveOf(renter.personId, { leftOn }), now);
    expect(result.ok ? null : (Object.keys(result.problem.fields ?? {})[0] ?? result.problem.code)).toBe(
      field,
    );
  });

  test('a return is on record; sessions of before stay dead; one who is here cannot return', async () => {
    const { manager, renter } = school.people;
    const again = { requestId: randomUUID(), personId: renter.personId };
    expect(problemOf(await returnPerson(manager, again, now)).code).toBe('conflict');
    valueOf(await leavePerson(manager, leaveOf(renter.personId), now));
    expect(valueOf(await readPerson(manager, { personId: renter.personId }, now)).state).toBe('left');
    valueOf(await returnPerson(manager, { ...again, requestId: randomUUID() }, at(1)));
    expect(await eventsOf(renter.personId)).toEqual(['left', 'returned']);
    expect(problemOf(await readBoard(renter, {}, now)).code).toBe('not_signed_in');
    expect((await readBoard(await refOf(renter.personId), {}, now)).ok).toBe(true);
  });
});
