/**
 * The pilot in command's acceptance, what is logged of the flight, and taking a release back. Sources: issue 5, "the PIC's
 * acceptance on the pilot's own phone, and close on return"; 91.3(a), 91.7(b), 91.103 for what is signed. The order of
 * things is common practice, no source.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { readInOperator, writeInOperator } from '@/lib/db/scope';
import { readNotices } from '@/lib/notices/read-notices';
import { verifyAudit } from '@/lib/operate/audit-verify';
import { withClient } from '@/lib/operate/connection';
import { releaseFlight } from '@/lib/releases/release-flight';
import { contentHash } from '@/lib/records/canonical';
import { acceptRelease, ACCEPTANCE_STATEMENT } from '@/lib/releases/accept-release';
import { logFlight } from '@/lib/releases/log-flight';
import { readMyFlights } from '@/lib/releases/my-flights';
import { readOwnFlights } from '@/lib/releases/not-back';
import { readAlarms } from '@/lib/releases/read-alarms';
import { readMetersIn, readMetersOut } from '@/lib/releases/record-meters';
import { withdrawRelease } from '@/lib/releases/withdraw-release';
import { problemOf, valueOf } from '../fixtures/acts';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import { releaseOf, at, fileOf, minutes, released, standing, toldOf } from '../fixtures/flights';
import { closeSchools, foundSchool, openSchools, PASSWORD, PEOPLE, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let other: School;
let founded = 0;

beforeAll(async () => {
  ({ database, other } = await openSchools());
});
afterAll(() => closeSchools(database));
beforeEach(async () => {
  founded += 1;
  school = await foundSchool(`acceptance-${founded}`, trainer());
});

const own = () => ({ requestId: randomUUID() });
const signatureFor = async (releaseId: string, change: object = {}) => ({
  ...own(),
  releaseId,
  answerHash: (await fileOf(school, releaseId)).answerHash,
  limitsRead: false,
  statementConfirmed: true,
  password: PASSWORD,
  ...change,
});
const log = (releaseId: string, what: string, when: string, after: number, who = school.people.renter) =>
  logFlight(who, { ...own(), releaseId, what, at: when, words: 'As it was.' }, minutes(after));
const withdraw = (releaseId: string, who = school.people.dispatcher, after = 5) =>
  withdrawRelease(who, { ...own(), releaseId, words: 'Fog.' }, minutes(after));
const meters = (releaseId: string, moment: 'out' | 'in', after: number) => ({
  ...own(),
  releaseId,
  moment,
  hobbsTenths: moment === 'out' ? 21_234 : 21_246,
  tachTenths: moment === 'out' ? 19_876 : 19_886,
  readAt: at(after),
});

describe('the acceptance', () => {
  test('is refused to a pilot whose certificate ran out since the release, and the release before that', async () => {
    const releaseId = await released(school);
    const { personId } = school.people.renter;
    // As the owner: a certificate that names its last day, the day before the flight (NOW is the 25th).
    await withClient(database.adminUrl, (client) =>
      client.query("UPDATE certificate SET expires_on = '2026-11-24' WHERE person_id = $1", [personId]),
    );
    const refused = await acceptRelease(school.people.renter, await signatureFor(releaseId), minutes(5));
    expect(problemOf(refused)).toMatchObject({
      code: 'signature_refused',
      lines: [{ cite: '14cfr91.3(a)' }],
    });
    const anew = await releaseFlight(school.people.dispatcher, await releaseOf(school), minutes(6));
    expect(Object.keys(problemOf(anew).fields ?? {})).toEqual(['pilotId']);
  });

  test('is signed by the pilot in command over the release, its limits and the statement', async () => {
    const releaseId = await released(school);
    const before = valueOf(await readMyFlights(school.people.renter, {}, minutes(1)));
    expect(before).toMatchObject([{ releaseId, canAccept: true, state: { name: 'released' } }]);
    valueOf(await acceptRelease(school.people.renter, await signatureFor(releaseId), minutes(5)));
    const file = await fileOf(school, releaseId);
    expect(file).toMatchObject({
      state: { name: 'accepted', warned: false, since: at(5) },
      acceptance: { by: PEOPLE.renter.name, at: at(5) },
      canAccept: false,
    });
    const row = await readInOperator(school.operatorId, (tx) =>
      tx.flightAcceptance.findFirstOrThrow({ where: { releaseId } }),
    );
    expect(row).toMatchObject({
      personName: PEOPLE.renter.name,
      certificateKind: 'private pilot',
      certificateNumber: 'P-private',
      statement: ACCEPTANCE_STATEMENT,
    });
    expect(row.content).toMatchObject({
      what: 'flight-acceptance',
      release: file.hash,
      aircraft: 'N0417W',
      departAt: '2026-11-25T16:00:00.000Z',
      limits: [],
      statement: ACCEPTANCE_STATEMENT,
    });
    expect(contentHash(row.content)).toBe(row.hash);
    for (const cite of ['91.3(a)', '91.7(b)', '91.103']) expect(ACCEPTANCE_STATEMENT).toContain(cite);
    const report = (await verifyAudit(database.adminUrl)).find((one) => one.operatorId === school.operatorId);
    expect(report?.faults).toEqual([]);
  });

  test.each(['student', 'dispatcher', 'manager', 'powerplant'] as const)('not by %s', async (key) => {
    const releaseId = await released(school);
    const result = await acceptRelease(school.people[key], await signatureFor(releaseId), minutes(5));
    expect(problemOf(result).code).toBe('not_allowed');
    expect((await standing(school, releaseId)).state).toBe('released');
  });

  test('not with a wrong password, not unconfirmed, not from another school, not of what was not looked at', async () => {
    const releaseId = await released(school);
    const refused = async (change: object, who = school.people.renter) =>
      problemOf(await acceptRelease(who, await signatureFor(releaseId, change), minutes(5))).code;
    expect(await refused({ password: 'guessed' })).toBe('wrong_password');
    expect(await refused({ statementConfirmed: false })).toBe('invalid');
    expect(await refused({ answerHash: '0'.repeat(64) })).toBe('conflict');
    expect(await refused({}, other.people.renter)).toBe('not_found');
    expect((await standing(school, releaseId)).state).toBe('released');
  });

  test('not after the pilot certificate was revoked, with a row in the audit chain', async () => {
    const releaseId = await released(school);
    await withClient(database.adminUrl, (client) =>
      client.query(`UPDATE certificate SET revoked_on = '2026-11-25' WHERE person_id = $1`, [
        school.people.renter.personId,
      ]),
    );
    const result = await acceptRelease(school.people.renter, await signatureFor(releaseId), minutes(5));
    expect(problemOf(result).code).toBe('signature_refused');
    const rows = await readInOperator(school.operatorId, (tx) =>
      tx.auditRow.count({ where: { verb: 'flight.accept:refused' } }),
    );
    expect(rows).toBe(1);
  });

  test('once; sent again it gives the same answer', async () => {
    const releaseId = await released(school);
    const signature = await signatureFor(releaseId);
    const first = valueOf(await acceptRelease(school.people.renter, signature, minutes(5)));
    expect(valueOf(await acceptRelease(school.people.renter, signature, minutes(6)))).toEqual(first);
    const again = await acceptRelease(school.people.renter, { ...signature, ...own() }, minutes(7));
    expect(problemOf(again)).toMatchObject({ code: 'conflict' });
  });

  test.each([
    // Planned arrival is 11:12 at the base, 132 minutes after the day of the fixtures begins.
    [131, true],
    [132, false],
    [133, false],
  ])('at minute %i of a flight that was to be over at minute 132: %s', async (after, may) => {
    const releaseId = await released(school);
    const result = await acceptRelease(school.people.renter, await signatureFor(releaseId), minutes(after));
    expect(result.ok).toBe(may);
  });

  test('not after the take-off, nor once it is withdrawn or back', async () => {
    const departed = await released(school);
    valueOf(await log(departed, 'airborne', at(60), 61));
    const after = async (releaseId: string) =>
      problemOf(await acceptRelease(school.people.renter, await signatureFor(releaseId), minutes(62))).code;
    expect(await after(departed)).toBe('conflict');
    valueOf(await readMetersIn(school.people.renter, meters(departed, 'in', 130), minutes(130)));
    expect(await after(departed)).toBe('conflict');
  });
});

describe('the log', () => {
  test('a flight from release to return', async () => {
    const releaseId = await released(school);
    valueOf(await acceptRelease(school.people.renter, await signatureFor(releaseId), minutes(5)));
    valueOf(await readMetersOut(school.people.renter, meters(releaseId, 'out', 55), minutes(55)));
    expect(valueOf(await log(releaseId, 'airborne', at(60), 61)).state).toMatchObject({ name: 'airborne' });
    expect(problemOf(await withdraw(releaseId, school.people.renter, 62)).code).toBe('conflict');
    expect(valueOf(await log(releaseId, 'landed', at(130), 131)).state).toMatchObject({ name: 'landed' });
    expect(valueOf(await readMyFlights(school.people.renter, {}, minutes(132)))).toHaveLength(1);
    valueOf(await readMetersIn(school.people.renter, meters(releaseId, 'in', 133), minutes(133)));
    expect((await fileOf(school, releaseId)).state).toEqual({
      name: 'closed',
      warned: false,
      since: at(133),
    });
    expect(valueOf(await readMyFlights(school.people.renter, {}, minutes(134)))).toEqual([]);
  });

  test.each([
    ['its pilot in command', 'renter', true],
    ['a dispatcher', 'dispatcher', true],
    ['a manager', 'manager', true],
    ['another pilot', 'student', false],
    ['a mechanic', 'airframe', false],
  ] as const)('by %s', async (_, key, may) => {
    const releaseId = await released(school);
    const logged = await log(releaseId, 'airborne', at(60), 61, school.people[key]);
    expect(logged.ok ? 'ok' : logged.problem.code).toBe(may ? 'ok' : 'not_allowed');
    expect((await standing(school, releaseId)).state).toBe(may ? 'airborne' : 'released');
  });

  test('wants words for an end without meters, refuses times that cannot be, and what is out of order', async () => {
    const releaseId = await released(school);
    const wordless = { ...own(), releaseId, what: 'closed', at: 'now', words: ' ' };
    expect(problemOf(await logFlight(school.people.renter, wordless, minutes(5))).fields).toHaveProperty(
      'words',
    );
    expect(problemOf(await log(releaseId, 'airborne', at(6), 5)).fields).toHaveProperty('at');
    expect(problemOf(await log(releaseId, 'airborne', at(-1), 5)).fields).toHaveProperty('at');
    expect(problemOf(await log(releaseId, 'landed', at(4), 5)).code).toBe('conflict');
    valueOf(await log(releaseId, 'airborne', at(60), 61));
    expect(problemOf(await log(releaseId, 'airborne', at(60), 61)).code).toBe('conflict');
    expect(problemOf(await log(releaseId, 'closed', at(61), 61)).code).toBe('conflict');
  });

  test('what can be logged next is said to whoever may', async () => {
    const releaseId = await released(school);
    const next = async () => (await fileOf(school, releaseId)).canLog;
    expect(await next()).toEqual(['airborne', 'closed']);
    valueOf(await log(releaseId, 'airborne', at(60), 61));
    expect(await next()).toEqual(['landed']);
    valueOf(await log(releaseId, 'landed', at(130), 131));
    expect(await next()).toEqual(['closed']);
    valueOf(await log(releaseId, 'closed', at(131), 132));
    expect(await next()).toEqual([]);
    expect(valueOf(await readAlarms(school.people.renter, {}, minutes(133)))).toEqual([]);
  });
});

describe('taking a release back', () => {
  test('by the desk: its pilot is told, it is no flight any more, and its time is free', async () => {
    const releaseId = await released(school);
    valueOf(await withdraw(releaseId));
    expect(await standing(school, releaseId)).toEqual({
      state: 'withdrawn',
      warned: false,
      events: ['withdrawn'],
    });
    expect(await toldOf(school, releaseId)).toEqual([
      `${PEOPLE.renter.name}: release-withdrawn`,
      `${PEOPLE.renter.name}: released`,
    ]);
    const { unread } = valueOf(await readNotices(school.people.renter, {}, minutes(6)));
    expect(unread.map(({ done, words }) => `${done}: ${words}`)).toContain('Release withdrawn: Fog.');
    const mine = { aircraftId: school.aircraftId };
    expect(valueOf(await readOwnFlights(school.people.renter, mine, minutes(6)))).toEqual([]);
    expect(valueOf(await readMyFlights(school.people.renter, {}, minutes(6)))).toEqual([]);
    await released(school, {}, minutes(7));
  });

  test('declined by its pilot in command: the dispatcher is told', async () => {
    const releaseId = await released(school);
    valueOf(await withdraw(releaseId, school.people.renter));
    expect(await toldOf(school, releaseId)).toContain(`${PEOPLE.dispatcher.name}: release-withdrawn`);
  });

  test('not once the meters were read at departure; once they are read at return it is over', async () => {
    const releaseId = await released(school);
    valueOf(await readMetersOut(school.people.renter, meters(releaseId, 'out', 55), minutes(55)));
    expect(await fileOf(school, releaseId)).toMatchObject({ canWithdraw: false });
    expect(problemOf(await withdraw(releaseId, school.people.dispatcher, 56))).toMatchObject({
      code: 'conflict',
      say: expect.stringContaining('The meters were read at departure') as string,
    });
  });

  test('not by another pilot, not without words, not twice', async () => {
    const releaseId = await released(school);
    expect(problemOf(await withdraw(releaseId, school.people.student)).code).toBe('not_allowed');
    const wordless = { ...own(), releaseId, words: ' ' };
    expect(
      problemOf(await withdrawRelease(school.people.dispatcher, wordless, minutes(5))).fields,
    ).toHaveProperty('words');
    valueOf(await withdraw(releaseId));
    expect(problemOf(await withdraw(releaseId)).code).toBe('conflict');
  });
});

describe('who is told of a release', () => {
  test('its pilot in command, and not somebody who released their own flight', async () => {
    await writeInOperator(school.operatorId, (tx) =>
      tx.person.update({
        where: { operatorId_id: { operatorId: school.operatorId, id: school.people.renter.personId } },
        data: { roles: ['pilot', 'dispatcher'] },
      }),
    );
    const dispatcher = { ...school, people: { ...school.people, dispatcher: school.people.renter } };
    expect(await toldOf(school, await released(dispatcher))).toEqual([]);
  });
});

test('the app may change nothing of an acceptance or of what happened', async () => {
  const releaseId = await released(school);
  valueOf(await acceptRelease(school.people.renter, await signatureFor(releaseId), minutes(5)));
  valueOf(await log(releaseId, 'airborne', at(60), 61));
  for (const change of [
    (tx: Parameters<Parameters<typeof writeInOperator>[1]>[0]) =>
      tx.flightAcceptance.updateMany({ data: { statement: 'X' } }),
    (tx: Parameters<Parameters<typeof writeInOperator>[1]>[0]) =>
      tx.flightEvent.deleteMany({ where: { releaseId } }),
  ]) {
    await expect(writeInOperator(school.operatorId, change)).rejects.toThrow(
      /permission denied|never changed/,
    );
  }
});
