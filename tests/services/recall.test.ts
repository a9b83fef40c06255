/**
 * What changed facts do to a release that was given before. Sources: issue 5, "a grounding write-up that arrives after
 * release warns dispatcher and pilot at once and marks the release void unless already airborne"; 91.7(a), (b). Who is
 * told, and that it is told once, is common practice, no source.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { readInOperator, writeInOperator } from '@/lib/db/scope';
import { addObservation } from '@/lib/findings/add-observation';
import { reportFinding } from '@/lib/findings/report-finding';
import { bookedFlights } from '@/lib/fleet/booked-flights';
import { planFlight } from '@/lib/flights/plan-flight';
import { recordEltUse } from '@/lib/inspections/record-elt-use';
import { readNotices } from '@/lib/notices/read-notices';
import { verifyAudit } from '@/lib/operate/audit-verify';
import { withClient } from '@/lib/operate/connection';
import { acceptRelease } from '@/lib/releases/accept-release';
import { logFlight } from '@/lib/releases/log-flight';
import { readMyFlights } from '@/lib/releases/my-flights';
import { readAlarms } from '@/lib/releases/read-alarms';
import { readMetersIn } from '@/lib/releases/record-meters';
import { releaseFlight } from '@/lib/releases/release-flight';
import { withdrawRelease } from '@/lib/releases/withdraw-release';
import { enterWork } from '@/lib/work/enter-work';
import { signWork } from '@/lib/work/sign-work';
import { startWork } from '@/lib/work/start-work';
import { inspectForPermit } from '@/lib/permits/inspect-for-permit';
import { recordPermit } from '@/lib/permits/record-permit';
import {
  entryOf,
  ferry,
  nickedPropeller,
  permitOf,
  problemOf,
  signatureOf,
  startOf,
  valueOf,
} from '../fixtures/acts';
import { makeInspector } from '../fixtures/inspections';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import {
  at,
  fileOf,
  minutes,
  released,
  releaseOf,
  scratchedPaint,
  standing,
  toldOf,
} from '../fixtures/flights';
import {
  closeSchools,
  foundSchool,
  NOW,
  openSchools,
  PASSWORD,
  PEOPLE,
  register,
  type School,
} from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let founded = 0;

beforeAll(async () => {
  ({ database } = await openSchools());
});
afterAll(() => closeSchools(database));
beforeEach(async () => {
  founded += 1;
  school = await foundSchool(`recall-${founded}`, trainer());
});

const own = () => ({ requestId: randomUUID() });

/** A second aircraft of the same type's making. */
const second = () =>
  writeInOperator(school.operatorId, (tx) =>
    register(tx, school.operatorId, school.baseId, {
      ...trainer(),
      registration: 'N0418W',
      type: { ...trainer().type, name: 'Invented trainer, the other' },
    }),
  );

const ground = async (after: number, change: object = {}, who = school.people.renter) =>
  valueOf(await reportFinding(who, { ...nickedPropeller(school), ...change }, minutes(after)));

const log = (releaseId: string, what: string, when: string, after: number, who = school.people.dispatcher) =>
  logFlight(who, { ...own(), releaseId, what, at: when, words: '' }, minutes(after));

/** Past its hour the transmitter's battery is due: training near the field may go on without it (91.207(c)(1), (f)(3)). */
const overusedElt = async (after: number) =>
  valueOf(
    await recordEltUse(
      school.people.renter,
      { ...own(), aircraftId: school.aircraftId, usedOn: '2026-11-25', words: 'Stuck on.', minutes: 61 },
      minutes(after),
    ),
  );

async function repaired(discrepancyId: string, after: number): Promise<void> {
  const { powerplant } = school.people;
  const { workId } = valueOf(await startWork(powerplant, startOf(discrepancyId), minutes(after)));
  const entry = entryOf(workId, PEOPLE.powerplant.name);
  const { entryHash } = valueOf(await enterWork(powerplant, entry, minutes(after)));
  valueOf(await signWork(powerplant, signatureOf(workId, entryHash), minutes(after)));
}

const VOID = { state: 'void', warned: false, events: ['void'] };
const PILOT = PEOPLE.renter.name;
const DESK = PEOPLE.dispatcher.name;

describe('a grounding write-up after the release', () => {
  test('voids it with the lines and the write-up, and tells its pilot and its dispatcher', async () => {
    const releaseId = await released(school);
    expect(await toldOf(school, releaseId)).toEqual([`${PILOT}: released`]);
    const nick = await ground(10, {}, school.people.airframe);

    const file = await fileOf(school, releaseId, minutes(11));
    expect(file.state).toEqual({ name: 'void', warned: false, since: at(10) });
    expect(file.events).toHaveLength(1);
    expect(file.events[0]).toMatchObject({
      what: 'void',
      by: PEOPLE.airframe.name,
      writeUp: { id: nick.discrepancyId, number: nick.number },
    });
    expect(file.events[0]?.lines.length).toBeGreaterThan(0);
    expect(file.events[0]?.lines.every(({ effect }) => effect === 'bars')).toBe(true);
    expect(file).toMatchObject({ canAccept: false, canWithdraw: false });
    // What was released stays as it was: a record of that moment.
    expect(file.outcome).toBe('go');

    expect(await toldOf(school, releaseId)).toEqual(
      [`${PILOT}: released`, `${PILOT}: release-void`, `${DESK}: release-void`].sort(),
    );
    const { unread } = valueOf(await readNotices(school.people.renter, {}, minutes(11)));
    expect(unread.find(({ what }) => what === 'release-void')).toMatchObject({
      releaseId,
      discrepancyId: nick.discrepancyId,
      done: 'Release void',
      title: '0WC to 0WC',
      departs: { at: '2026-11-25T16:00:00.000Z', zone: 'America/Chicago' },
      words: expect.stringContaining('no go now') as string,
    });
  });

  test('tells the pilot who wrote it up as well: knowing of the nick is not knowing of the release', async () => {
    const releaseId = await released(school);
    await ground(10);
    expect(await toldOf(school, releaseId)).toContain(`${PILOT}: release-void`);
  });

  test('is in the audit chain, and everything verifies', async () => {
    const releaseId = await released(school);
    await ground(10);
    const rows = await readInOperator(school.operatorId, (tx) =>
      tx.auditRow.findMany({ where: { verb: 'flight.recall', subjectId: releaseId } }),
    );
    expect(rows).toHaveLength(1);
    expect(rows[0]?.detail).toMatchObject({ what: 'void' });
    const report = (await verifyAudit(database.adminUrl)).find((one) => one.operatorId === school.operatorId);
    expect(report?.faults).toEqual([]);
  });

  test('is not told twice by a second one', async () => {
    const releaseId = await released(school);
    await ground(10);
    const told = await toldOf(school, releaseId);
    await ground(12, { requestId: randomUUID(), place: 'blade 2' });
    expect(await standing(school, releaseId)).toEqual(VOID);
    expect(await toldOf(school, releaseId)).toEqual(told);
  });

  test('sent twice voids once', async () => {
    const releaseId = await released(school);
    const message = nickedPropeller(school);
    valueOf(await reportFinding(school.people.renter, message, minutes(10)));
    valueOf(await reportFinding(school.people.renter, message, minutes(11)));
    expect((await standing(school, releaseId)).events).toEqual(['void']);
  });

  test('found before departure and sent long after by a phone without signal voids all the same', async () => {
    const releaseId = await released(school);
    // Nobody logged a take-off: a departure time that has passed is no departure (strict).
    await ground(90, { foundAt: at(30) });
    expect(await standing(school, releaseId)).toEqual(VOID);
  });

  test('leaves another aircraft’s release alone', async () => {
    const { aircraftId } = await second();
    const theirs = await released(school, { aircraftId, pilotId: school.people.student.personId });
    const ours = await released(school);
    await ground(10);
    expect(await standing(school, ours)).toEqual(VOID);
    expect(await standing(school, theirs)).toEqual({ state: 'released', warned: false, events: [] });
  });

  test('leaves a flight that is back, and one that is closed, as they are', async () => {
    const back = await released(school);
    const readIn = { ...own(), releaseId: back, moment: 'in', hobbsTenths: 21246, tachTenths: 19886 };
    valueOf(await readMetersIn(school.people.renter, { ...readIn, readAt: at(140) }, minutes(140)));
    const closed = await released(
      school,
      { departLocal: '2026-11-25T14:00', arriveLocal: '2026-11-25T15:00', plannedHours: '1.0' },
      minutes(141),
    );
    const ended = { ...own(), releaseId: closed, what: 'closed', at: 'now', words: 'Not flown: fog.' };
    valueOf(await logFlight(school.people.dispatcher, ended, minutes(142)));
    await ground(150);
    expect((await standing(school, back)).state).toBe('closed');
    expect((await standing(school, closed)).state).toBe('closed');
  });

  test('repaired afterwards does not revive it; released anew it goes', async () => {
    const releaseId = await released(school);
    const nick = await ground(10);
    await repaired(nick.discrepancyId, 12);
    expect(await standing(school, releaseId)).toEqual(VOID);
    const again = await released(school, {}, minutes(18));
    expect((await standing(school, again)).state).toBe('released');
  });

  test('cannot be accepted, nor departed on, but it can be closed', async () => {
    const releaseId = await released(school);
    const { answerHash } = await fileOf(school, releaseId);
    await ground(10);
    const signature = {
      ...own(),
      releaseId,
      answerHash,
      limitsRead: true,
      statementConfirmed: true,
      password: PASSWORD,
    };
    expect(problemOf(await acceptRelease(school.people.renter, signature, minutes(12)))).toMatchObject({
      code: 'conflict',
      say: expect.stringContaining('void') as string,
    });
    expect(problemOf(await log(releaseId, 'airborne', at(12), 12)).fields).toHaveProperty('at');
    expect(valueOf(await readAlarms(school.people.dispatcher, {}, minutes(12)))).toMatchObject([
      { releaseId, isMine: false, event: { what: 'void' } },
    ]);
    expect(valueOf(await readMyFlights(school.people.renter, {}, minutes(12)))).toMatchObject([
      { releaseId, state: { name: 'void' }, canAccept: false, canLog: ['airborne', 'closed'] },
    ]);
    const ended = { ...own(), releaseId, what: 'closed', at: 'now', words: 'Took the other one.' };
    valueOf(await logFlight(school.people.dispatcher, ended, minutes(13)));
    expect(await standing(school, releaseId)).toMatchObject({ state: 'void' });
    expect(valueOf(await readAlarms(school.people.dispatcher, {}, minutes(14)))).toEqual([]);
  });

  test('frees the hours, the plan and the time of the aircraft', async () => {
    const plan = {
      ...own(),
      aircraftId: school.aircraftId,
      pilotId: null,
      departLocal: '2026-11-25T10:00',
      arriveLocal: '2026-11-25T11:12',
      plannedHours: '1.2',
      words: 'Lesson',
    };
    const { plannedFlightId } = valueOf(await planFlight(school.people.dispatcher, plan, minutes(0)));
    const releaseId = await released(school, { plannedFlightId });
    const twice = await releaseOf(school, {
      plannedFlightId,
      departLocal: '2026-11-25T14:00',
      arriveLocal: '2026-11-25T15:12',
    });
    expect(problemOf(await releaseFlight(school.people.dispatcher, twice, minutes(1))).fields).toHaveProperty(
      'plannedFlightId',
    );
    const states = () =>
      readInOperator(school.operatorId, async (tx) =>
        (await bookedFlights(tx, school.operatorId, NOW)).get(school.aircraftId)?.map(({ state }) => state),
      );
    expect(await states()).toEqual(['released']);
    const nick = await ground(10);
    expect(await states()).toEqual(['planned']);
    await repaired(nick.discrepancyId, 12);
    const again = await released(school, { plannedFlightId }, minutes(14));
    expect(await fileOf(school, again)).toMatchObject({ plannedFlightId, state: { name: 'released' } });
    expect(await fileOf(school, releaseId)).toMatchObject({ state: { name: 'void' } });
  });
});

describe('what is worse but not no go', () => {
  test('warns, once for the same lines: the locator transmitter was used past its hour', async () => {
    const releaseId = await released(school);
    await overusedElt(10);
    expect(await standing(school, releaseId)).toEqual({
      state: 'released',
      warned: true,
      events: ['warned'],
    });
    const { events, outcome } = await fileOf(school, releaseId);
    expect(outcome).toBe('go');
    expect(events[0]?.lines.map(({ effect, cite }) => `${effect} ${cite}`)).toEqual([
      'limits 14cfr91.207(f)(3)',
    ]);
    expect(await toldOf(school, releaseId)).toEqual(
      [`${PILOT}: released`, `${PILOT}: release-warned`, `${DESK}: release-warned`].sort(),
    );
    // Facts change again, with nothing new in the lines.
    valueOf(await reportFinding(school.people.renter, scratchedPaint(school), minutes(15)));
    expect((await standing(school, releaseId)).events).toEqual(['warned']);
  });

  test('has to be read before it is accepted', async () => {
    const releaseId = await released(school);
    const { answerHash: before } = await fileOf(school, releaseId);
    await overusedElt(10);
    const accept = (answerHash: string, limitsRead: boolean) =>
      acceptRelease(
        school.people.renter,
        { ...own(), releaseId, answerHash, limitsRead, statementConfirmed: true, password: PASSWORD },
        minutes(20),
      );
    expect(problemOf(await accept(before, true)).code).toBe('conflict');
    const { answerHash } = await fileOf(school, releaseId);
    expect(problemOf(await accept(answerHash, false)).fields).toHaveProperty('limitsRead');
    valueOf(await accept(answerHash, true));
    expect((await standing(school, releaseId)).state).toBe('accepted');
  });

  test('after it was accepted takes the acceptance back until it is given again', async () => {
    const releaseId = await released(school);
    const accept = async (after: number, limitsRead: boolean) => {
      const { answerHash } = await fileOf(school, releaseId);
      const signature = { ...own(), releaseId, answerHash, limitsRead, statementConfirmed: true };
      return acceptRelease(school.people.renter, { ...signature, password: PASSWORD }, minutes(after));
    };
    valueOf(await accept(5, false));
    expect((await standing(school, releaseId)).state).toBe('accepted');
    await overusedElt(10);
    expect(await standing(school, releaseId)).toMatchObject({ state: 'released', warned: true });
    expect(await fileOf(school, releaseId)).toMatchObject({
      acceptance: null,
      acceptedBeforeWarning: { by: PILOT, at: at(5) },
    });
    const [mine] = valueOf(await readMyFlights(school.people.renter, {}, minutes(11)));
    expect(mine?.canAccept).toBe(true);
    expect(problemOf(await accept(12, false)).fields).toHaveProperty('limitsRead');
    valueOf(await accept(13, true));
    expect(await standing(school, releaseId)).toMatchObject({ state: 'accepted', warned: true });
    expect(await fileOf(school, releaseId)).toMatchObject({
      acceptance: { at: at(13) },
      acceptedBeforeWarning: null,
    });
    const report = (await verifyAudit(database.adminUrl)).find((one) => one.operatorId === school.operatorId);
    expect(report?.faults).toEqual([]);
  });

  test('and no go after that voids it', async () => {
    const releaseId = await released(school);
    await overusedElt(10);
    await ground(20);
    expect(await standing(school, releaseId)).toMatchObject({ state: 'void', events: ['warned', 'void'] });
  });

  test('a cosmetic note does nothing and tells nobody', async () => {
    const releaseId = await released(school);
    valueOf(await reportFinding(school.people.renter, scratchedPaint(school), minutes(5)));
    expect(await standing(school, releaseId)).toEqual({ state: 'released', warned: false, events: [] });
    expect(await toldOf(school, releaseId)).toEqual([`${PILOT}: released`]);
  });
});

describe('in the air', () => {
  test('it is not void but warned, and its words leave it to the pilot in command (91.7(b))', async () => {
    const releaseId = await released(school);
    valueOf(await log(releaseId, 'airborne', at(61), 62));
    await ground(70, {}, school.people.airframe);
    expect(await standing(school, releaseId)).toEqual({
      state: 'airborne',
      warned: true,
      events: ['airborne', 'warned'],
    });
    const { events } = await fileOf(school, releaseId);
    expect(events[1]?.words).toContain('91.7(b)');
    expect(await toldOf(school, releaseId)).toContain(`${DESK}: release-warned`);
  });

  test.each([
    [-1, 'airborne'],
    [0, 'void'],
    [1, 'void'],
  ])('a take-off logged late, %i ms after the write-up, leaves it %s', async (by, state) => {
    const releaseId = await released(school);
    await ground(70);
    const took = new Date(minutes(70).now.getTime() + by).toISOString();
    const result = await log(releaseId, 'airborne', took, 80, school.people.renter);
    expect(result.ok).toBe(state === 'airborne');
    expect(await standing(school, releaseId)).toMatchObject({ state, warned: state === 'airborne' });
  });

  test('a take-off logged late that lifts a void is told to its pilot and to the desk', async () => {
    const releaseId = await released(school);
    await ground(70);
    expect(await toldOf(school, releaseId)).not.toContain(`${PILOT}: release-warned`);
    valueOf(await log(releaseId, 'airborne', at(65), 80, school.people.renter));
    const told = await toldOf(school, releaseId);
    expect(told).toContain(`${PILOT}: release-warned`);
    expect(told).toContain(`${DESK}: release-warned`);
  });

  // Departure is planned at minute 60; house caution, no source.
  test.each([
    [-1, false],
    [0, true],
    [1, true],
  ])('a take-off %i ms after an hour before the planned departure', async (by, may) => {
    const releaseId = await released(school, {
      departLocal: '2026-11-25T11:00',
      arriveLocal: '2026-11-25T12:12',
    });
    const took = new Date(minutes(60).now.getTime() + by).toISOString();
    const result = await log(releaseId, 'airborne', took, 70);
    expect(result.ok).toBe(may);
    if (!may) expect(problemOf(result).fields).toHaveProperty('at');
  });

  test('a flight that has landed is neither void nor warned by what is found afterwards', async () => {
    const releaseId = await released(school);
    valueOf(await log(releaseId, 'airborne', at(61), 62));
    valueOf(await log(releaseId, 'landed', at(130), 131));
    await ground(140);
    expect(await standing(school, releaseId)).toMatchObject({ state: 'landed', warned: false });
  });
});

describe('a flight under a special flight permit', () => {
  test('that went void on the ground leaves the permit for another flight; one that set out spends it', async () => {
    const nick = await ground(0);
    const { people } = school;
    const { permitId } = valueOf(
      await recordPermit(people.manager, permitOf(school, [nick.discrepancyId]), minutes(1)),
    );
    const looked = { ...own(), permitId, safe: true, statement: 'Fit for it.', password: PASSWORD };
    valueOf(await inspectForPermit(await makeInspector(school), looked, minutes(2)));
    const first = await released(school, ferry(school, permitId), minutes(3));
    const twice = await releaseOf(school, ferry(school, permitId));
    expect(problemOf(await releaseFlight(people.dispatcher, twice, minutes(3))).code).toBe('conflict');
    valueOf(
      await withdrawRelease(people.dispatcher, { ...own(), releaseId: first, words: 'Fog.' }, minutes(4)),
    );
    const second = await released(school, ferry(school, permitId), minutes(5));
    valueOf(await log(second, 'airborne', at(61), 62));
    const third = await releaseOf(school, ferry(school, permitId));
    expect(problemOf(await releaseFlight(people.dispatcher, third, minutes(63))).code).toBe('conflict');
  });

  test('is void once what the permit names was seen again: it stands in for it no more (21.199(a))', async () => {
    const nick = await ground(0);
    const { people } = school;
    const { permitId } = valueOf(
      await recordPermit(people.manager, permitOf(school, [nick.discrepancyId]), minutes(1)),
    );
    const looked = { ...own(), permitId, safe: true, statement: 'Fit for it.', password: PASSWORD };
    valueOf(await inspectForPermit(await makeInspector(school), looked, minutes(2)));
    const releaseId = await released(school, ferry(school, permitId), minutes(3));
    valueOf(await reportFinding(people.renter, scratchedPaint(school), minutes(4)));
    const before = await standing(school, releaseId);
    const seen = {
      ...own(),
      discrepancyId: nick.discrepancyId,
      walkaroundId: null,
      station: 'propeller',
      itemKey: null,
      words: 'Longer than it was.',
      measurements: {},
      foundAt: at(5),
      phase: 'before-flight',
    };
    expect(before.state).toBe('released');
    valueOf(await addObservation(people.renter, seen, minutes(6)));
    expect(await standing(school, releaseId)).toMatchObject({ state: 'void' });
  });
});

/** Changes a row behind the triggers' back. */
const asOwner = (sql: string, values: unknown[]) =>
  withClient(database.adminUrl, async (client) => {
    await client.query('BEGIN');
    await client.query('SET LOCAL session_replication_role = replica');
    await client.query(sql, values);
    await client.query('COMMIT');
  });
const afternoon = { departLocal: '2026-11-25T14:00', arriveLocal: '2026-11-25T15:12' };
/** So many tenths are left of the 100 hours; the aircraft of the fixtures begins with 47.7 h. */
const leave = (tenths: number) =>
  asOwner(`UPDATE aircraft SET ttis_tenths = ttis_tenths + $1 WHERE id = $2`, [
    477 - tenths,
    school.aircraftId,
  ]);

describe('hours of other flights', () => {
  test.each([
    [71, 'released'],
    [72, 'released'],
    [73, 'void'],
  ])('landed %i minutes after the take-off, where 72 are left, the next one is %s', async (out, state) => {
    const first = await released(school);
    await leave(24);
    const second = await released(school, afternoon, minutes(1));
    valueOf(await log(first, 'airborne', at(61), 61));
    valueOf(await log(first, 'landed', at(61 + out), 61 + out));
    expect((await standing(school, second)).state).toBe(state);
  });

  test('withdrawing one asks about the next again: what it limited is told, what it barred is void already', async () => {
    const first = await released(school);
    await leave(23);
    const late = await releaseOf(school, afternoon);
    expect(problemOf(await releaseFlight(school.people.dispatcher, late, minutes(1))).code).toBe('no_go');
    valueOf(
      await withdrawRelease(
        school.people.dispatcher,
        { ...own(), releaseId: first, words: 'Fog.' },
        minutes(2),
      ),
    );
    const second = await released(school, afternoon, minutes(3));
    expect((await standing(school, second)).state).toBe('released');
  });
});

describe('nothing is lost', () => {
  test('one release that cannot be told of loses only itself', async () => {
    const first = await released(school);
    const second = await released(school, afternoon);
    // Its own answer is broken: what was known at release cannot be read.
    await asOwner(`UPDATE release SET answer = '[]' WHERE id = $1`, [first]);
    await ground(10);
    const events = await readInOperator(school.operatorId, (tx) =>
      tx.flightEvent.findMany({ where: { releaseId: { in: [first, second] } } }),
    );
    expect(events.map(({ releaseId, what }) => [releaseId, what])).toEqual([[second, 'void']]);
  });

  test('a void whose lines cannot be kept is kept bare', async () => {
    const releaseId = await released(school);
    const admin = (sql: string) => withClient(database.adminUrl, (client) => client.query(sql));
    await admin(
      `ALTER TABLE flight_event ADD CONSTRAINT no_write_up CHECK (discrepancy_id IS NULL) NOT VALID`,
    );
    try {
      await ground(10);
    } finally {
      await admin('ALTER TABLE flight_event DROP CONSTRAINT no_write_up');
    }
    const file = await fileOf(school, releaseId, minutes(11));
    expect(file.state.name).toBe('void');
    expect(file.events).toMatchObject([{ what: 'void', writeUp: null, lines: [] }]);
  });

  test('what the recall could not write down, the acceptance finds', async () => {
    const releaseId = await released(school);
    const { answerHash } = await fileOf(school, releaseId);
    const admin = (sql: string) => withClient(database.adminUrl, (client) => client.query(sql));
    await admin('REVOKE INSERT ON flight_event FROM wheelchock_app');
    try {
      await ground(10);
    } finally {
      await admin('GRANT INSERT ON flight_event TO wheelchock_app');
    }
    expect((await standing(school, releaseId)).state).toBe('released');
    const signature = { ...own(), releaseId, answerHash, statementConfirmed: true, password: PASSWORD };
    const refused = problemOf(
      await acceptRelease(school.people.renter, { ...signature, limitsRead: true }, minutes(12)),
    );
    expect(refused.code).toBe('no_go');
    expect(refused.lines?.length).toBeGreaterThan(0);
  });

  test('nor does a limit that nobody was told of pass the acceptance', async () => {
    const releaseId = await released(school);
    const { answerHash } = await fileOf(school, releaseId);
    const admin = (sql: string) => withClient(database.adminUrl, (client) => client.query(sql));
    await admin('REVOKE INSERT ON flight_event FROM wheelchock_app');
    try {
      await overusedElt(10);
    } finally {
      await admin('GRANT INSERT ON flight_event TO wheelchock_app');
    }
    const signature = { ...own(), releaseId, answerHash, statementConfirmed: true, password: PASSWORD };
    const refused = problemOf(
      await acceptRelease(school.people.renter, { ...signature, limitsRead: true }, minutes(12)),
    );
    expect(refused.code).toBe('superseded');
    expect(refused.lines).toHaveLength(1);
  });

  test('a release that cannot be judged any more is void, and the write-up is kept', async () => {
    const releaseId = await released(school);
    await withClient(database.adminUrl, async (client) => {
      await client.query('BEGIN');
      await client.query('SET LOCAL session_replication_role = replica');
      await client.query(`UPDATE release SET flight = flight - 'from' WHERE id = $1`, [releaseId]);
      await client.query('COMMIT');
    });
    // Even what would change no answer: nobody can say so of this release.
    const scratch = valueOf(await reportFinding(school.people.renter, scratchedPaint(school), minutes(5)));
    const rows = await readInOperator(school.operatorId, async (tx) => ({
      events: await tx.flightEvent.findMany({ where: { releaseId } }),
      writeUp: await tx.discrepancy.findFirst({ where: { id: scratch.discrepancyId } }),
    }));
    expect(rows.writeUp).not.toBeNull();
    expect(rows.events).toMatchObject([{ what: 'void' }]);
    expect(rows.events[0]?.words).toContain('could not be worked out');
  });

  test('when the recall itself fails in the database, the write-up is kept', async () => {
    await released(school);
    const admin = (sql: string) => withClient(database.adminUrl, (client) => client.query(sql));
    await admin('REVOKE INSERT ON flight_event FROM wheelchock_app');
    try {
      const nick = await ground(10);
      expect(nick.number).toBe('W-0001');
    } finally {
      await admin('GRANT INSERT ON flight_event TO wheelchock_app');
    }
  });

  test('a release and a write-up at the same time: never an active go on grounding facts', async () => {
    for (let round = 0; round < 12; round += 1) {
      const one = await foundSchool(`race-${founded}-${round}`, trainer());
      const input = await releaseOf(one);
      const [release, writeUp] = await Promise.all([
        releaseFlight(one.people.dispatcher, input, minutes(0)),
        reportFinding(one.people.renter, nickedPropeller(one), minutes(0)),
      ]);
      expect(writeUp.ok).toBe(true);
      if (release.ok) {
        expect((await standing(one, release.value.releaseId)).state).toBe('void');
      } else {
        expect(['no_go', 'superseded']).toContain(release.problem.code);
      }
    }
  });
});
