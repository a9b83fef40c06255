/**
 * Word to whoever wrote something up. Source: issue 3, "After: the reporter gets word when the write-up is judged, fixed or
 * deferred, with the mechanic's words"; that an observation's writer gets it too, that nobody is told of their own act, and
 * that a notice stays as it was given are common practice, no source.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { ActorRef } from '@/lib/access/actor';
import { writeInOperator } from '@/lib/db/scope';
import { beginDeferral } from '@/lib/determinations/begin-deferral';
import { findWithinLimits } from '@/lib/determinations/find-within-limits';
import { judgeSeverity } from '@/lib/determinations/judge-severity';
import { recordServicing } from '@/lib/findings/record-servicing';
import { reportFinding } from '@/lib/findings/report-finding';
import { markNoticesRead } from '@/lib/notices/mark-read';
import { readNotices, type NoticeView } from '@/lib/notices/read-notices';
import { tellReporters } from '@/lib/notices/tell-reporters';
import { withClient } from '@/lib/operate/connection';
import { whoAmI } from '@/lib/people/who-am-i';
import { enterWork } from '@/lib/work/enter-work';
import { signWork } from '@/lib/work/sign-work';
import { startWork } from '@/lib/work/start-work';
import {
  deadLandingLight,
  deferralOf,
  entryOf,
  nickedPropeller,
  problemOf,
  signatureOf,
  startOf,
  valueOf,
} from '../fixtures/acts';
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

let database: FreshDatabase;
let school: School;
let other: School;
const now = { now: NOW };

beforeAll(async () => {
  ({ database, school, other } = await openSchools());
});
afterAll(() => closeSchools(database));

const unreadOf = async (ref: ActorRef): Promise<readonly NoticeView[]> =>
  valueOf(await readNotices(ref, {}, now)).unread;

/** What somebody was told about one write-up, newest first. */
const toldOf = async (ref: ActorRef, discrepancyId: string): Promise<readonly NoticeView[]> =>
  (await unreadOf(ref)).filter((notice) => notice.discrepancyId === discrepancyId);

const report = async (input: object, ref = school.people.renter) =>
  valueOf(await reportFinding(ref, input, now));

const judgement = (discrepancyId: string, statement = 'Blade edge is sharp: out of service.') => ({
  requestId: randomUUID(),
  discrepancyId,
  kind: 'damage' as const,
  jasc: '6111',
  equipmentId: null,
  inoperativeCount: null,
  severity: 'grounding' as const,
  statement,
  password: PASSWORD,
});

/** A finding about a write-up without one of its own: an observation. */
const observe = (personId: string, discrepancyId: string) =>
  writeInOperator(school.operatorId, (tx) =>
    tx.finding.create({
      data: {
        id: randomUUID(),
        operatorId: school.operatorId,
        aircraftId: school.aircraftId,
        personId,
        station: 'propeller',
        place: '',
        words: 'Still there.',
        measurements: {},
        foundAt: NOW,
        relatedId: discrepancyId,
      },
    }),
  );

async function signedWork(discrepancyId: string, placardRemoved: boolean | null = null) {
  const { powerplant } = school.people;
  const { workId } = valueOf(await startWork(powerplant, startOf(discrepancyId), now));
  const { entryHash } = valueOf(await enterWork(powerplant, entryOf(workId, PEOPLE.powerplant.name), now));
  valueOf(await signWork(powerplant, { ...signatureOf(workId, entryHash), placardRemoved }, now));
}

describe('each act is told, in the words of whoever did it', () => {
  test('judged: the reason, and that it grounds', async () => {
    const nick = await report(nickedPropeller(school));
    valueOf(await judgeSeverity(school.people.powerplant, judgement(nick.discrepancyId), now));
    expect(await toldOf(school.people.renter, nick.discrepancyId)).toEqual([
      {
        id: expect.any(String) as string,
        what: 'judged',
        releaseId: null,
        departs: null,
        discrepancyId: nick.discrepancyId,
        registration: trainer().registration,
        number: nick.number,
        title: nick.title,
        done: 'Judged',
        meaning: 'It grounds the aircraft until it is put right and signed.',
        byName: PEOPLE.powerplant.name,
        words: 'Blade edge is sharp: out of service.',
        at: NOW.toISOString(),
        zone: 'America/Chicago',
      },
    ]);
  });

  test('found within limits: the finding', async () => {
    const nick = await report(nickedPropeller(school));
    const input = {
      requestId: randomUUID(),
      discrepancyId: nick.discrepancyId,
      measured: '0.010 in',
      limitText: '0.031 in',
      limitSource: 'Invented manual',
      statement: 'No crack under the loupe.',
      password: PASSWORD,
    };
    valueOf(await findWithinLimits(school.people.powerplant, input, now));
    expect(await toldOf(school.people.renter, nick.discrepancyId)).toMatchObject([
      { done: 'Found within limits', words: 'No crack under the loupe.', byName: PEOPLE.powerplant.name },
    ]);
  });

  test('deferred: how, and why it is no hazard; taken out of use with a signature is told as that, not as a repair', async () => {
    const { renter, airframe } = school.people;
    const light = await report(deadLandingLight(school));
    const deferral = { ...deferralOf(light.discrepancyId), deactivationIsMaintenance: true };
    const { deferralId } = valueOf(await beginDeferral(airframe, deferral, now));
    expect(await toldOf(renter, light.discrepancyId)).toMatchObject([
      {
        done: 'Deferred',
        words: 'Landing light breaker pulled and collared.\nNo hazard to the aircraft; not needed by day.',
        byName: PEOPLE.airframe.name,
      },
    ]);
    const work = await writeInOperator(school.operatorId, (tx) =>
      tx.maintenanceAction.findFirstOrThrow({ where: { deferralId } }),
    );
    const entry = {
      ...entryOf(work.id, PEOPLE.airframe.name),
      description: 'Breaker collared, lead stowed.',
    };
    const { entryHash } = valueOf(await enterWork(airframe, entry, now));
    valueOf(await signWork(airframe, signatureOf(work.id, entryHash), now));
    const told = await toldOf(renter, light.discrepancyId);
    expect(told.map(({ done }) => done).sort()).toEqual(['Deferred', 'Taken out of use, and signed']);
    expect(told.find(({ done }) => done.startsWith('Taken'))).toMatchObject({
      words: 'Breaker collared, lead stowed.',
      meaning: expect.stringContaining('not repaired yet') as string,
    });
  });

  test('repaired: the entry', async () => {
    const nick = await report(nickedPropeller(school));
    await signedWork(nick.discrepancyId);
    expect(await toldOf(school.people.renter, nick.discrepancyId)).toMatchObject([
      { done: 'Repaired and signed', words: entryOf('', '').description, byName: PEOPLE.powerplant.name },
    ]);
  });

  test('serviced: what was done', async () => {
    const oil = await report({ ...nickedPropeller(school), station: 'nose-right', findingKey: 'oil-low' });
    const input = { requestId: randomUUID(), discrepancyId: oil.discrepancyId, words: 'One quart added.' };
    valueOf(await recordServicing(school.people.airframe, input, now));
    expect(await toldOf(school.people.renter, oil.discrepancyId)).toMatchObject([
      { done: 'Serviced', words: 'One quart added.', byName: PEOPLE.airframe.name },
    ]);
  });
});

describe('who is told', () => {
  test('not whoever did it', async () => {
    const { powerplant } = school.people;
    const nick = await report(nickedPropeller(school), powerplant);
    valueOf(await judgeSeverity(powerplant, judgement(nick.discrepancyId), now));
    expect(await toldOf(powerplant, nick.discrepancyId)).toEqual([]);
  });

  test('observers, each once; not somebody who wrote up the same thing anew, and not somebody who left', async () => {
    const { renter, student, dispatcher, manager, powerplant, gone } = school.people;
    const nick = await report(nickedPropeller(school));
    await observe(student.personId, nick.discrepancyId);
    await observe(student.personId, nick.discrepancyId);
    await observe(renter.personId, nick.discrepancyId);
    await observe(gone.personId, nick.discrepancyId);
    const again = await report({ ...nickedPropeller(school), relatedId: nick.discrepancyId }, dispatcher);
    valueOf(await judgeSeverity(powerplant, judgement(nick.discrepancyId), now));
    expect(await toldOf(renter, nick.discrepancyId)).toHaveLength(1);
    expect(await toldOf(student, nick.discrepancyId)).toHaveLength(1);
    expect(await toldOf(dispatcher, nick.discrepancyId)).toEqual([]);
    expect(await toldOf(manager, nick.discrepancyId)).toEqual([]);
    expect(await rowsFor(nick.discrepancyId)).toBe(2);
    // The one who wrote it up anew is told of that one.
    valueOf(await judgeSeverity(powerplant, judgement(again.discrepancyId), now));
    expect(await toldOf(dispatcher, again.discrepancyId)).toHaveLength(1);
    expect(await toldOf(renter, again.discrepancyId)).toEqual([]);
  });

  test('once, however often it is sent; and an act that was refused tells nobody', async () => {
    const { renter, powerplant, uncertificated } = school.people;
    const nick = await report(nickedPropeller(school));
    const refusal = await judgeSeverity(uncertificated, judgement(nick.discrepancyId), now);
    expect(problemOf(refusal).code).toBe('signature_refused');
    expect(await toldOf(renter, nick.discrepancyId)).toEqual([]);
    const input = judgement(nick.discrepancyId);
    const [first] = await Promise.all([1, 2, 3].map(() => judgeSeverity(powerplant, input, now)));
    expect(await toldOf(renter, nick.discrepancyId)).toHaveLength(1);
    // The same event told again, as by a verb that runs a second time.
    await writeInOperator(school.operatorId, (tx) =>
      tellReporters(
        {
          tx,
          operatorId: school.operatorId,
          actor: { ...powerplant, name: PEOPLE.powerplant.name, roles: ['mechanic'] },
          now: NOW,
          requestId: randomUUID(),
        },
        {
          discrepancyId: nick.discrepancyId,
          what: 'judged',
          eventId: valueOf(first!).determinationId,
          byName: PEOPLE.powerplant.name,
          words: 'Other words.',
        },
      ),
    );
    expect(await toldOf(renter, nick.discrepancyId)).toMatchObject([{ words: input.statement }]);
  });

  test('nobody of another school', async () => {
    for (const ref of Object.values(other.people).filter(
      ({ personId }) => personId !== other.people.gone.personId,
    )) {
      expect(await unreadOf(ref)).toEqual([]);
    }
  });
});

const asApp = (sql: string, operatorId = school.operatorId) =>
  withClient(database.appUrl, async (client) => {
    await client.query('BEGIN');
    await client.query(`SELECT set_config('app.operator_id', $1, true)`, [operatorId]);
    return client.query<{ n: string }>(sql).finally(() => client.query('ROLLBACK'));
  });
const asOwner = (sql: string) => withClient(database.adminUrl, (client) => client.query<{ n: string }>(sql));

const rowsFor = async (discrepancyId: string): Promise<number> => {
  const { rows } = await asOwner(
    `SELECT count(*) AS n FROM notice WHERE discrepancy_id = '${discrepancyId}'`,
  );
  return Number(rows[0]?.n);
};

describe('a notice stays as it was given', () => {
  test('the app may not change its words or take it away; the owner neither', async () => {
    expect((await asApp('SELECT 1 FROM notice')).rowCount).toBeGreaterThan(0);
    await expect(asApp(`UPDATE notice SET words = 'other'`)).rejects.toThrow(/permission denied/);
    await expect(asApp('DELETE FROM notice')).rejects.toThrow(/permission denied/);
    await expect(asOwner(`UPDATE notice SET words = 'other'`)).rejects.toThrow(/stays as it was given/);
    await expect(asOwner(`UPDATE notice SET words = 'other', read_at = now()`)).rejects.toThrow(
      /stays as it was given/,
    );
    await expect(asOwner('DELETE FROM notice')).rejects.toThrow(/stays as it was given/);
  });

  test('what was read is not made unread, nor read at another time', async () => {
    const { renter } = school.people;
    const [one] = await unreadOf(renter);
    valueOf(await markNoticesRead(renter, { requestId: randomUUID(), noticeIds: [one!.id] }, now));
    for (const value of ['NULL', 'now()']) {
      const sql = `UPDATE notice SET read_at = ${value} WHERE id = '${one!.id}'`;
      await expect(asApp(sql)).rejects.toThrow(/stays as it was given/);
    }
  });

  test('another school sees no row of it', async () => {
    expect((await asApp('SELECT 1 FROM notice', other.operatorId)).rowCount).toBe(0);
    expect((await asApp('UPDATE notice SET read_at = now()', other.operatorId)).rowCount).toBe(0);
  });
});

describe('seen', () => {
  test('several at once, exactly once, and the count in the head of every screen goes down', async () => {
    const fresh = await foundSchool('seen', trainer());
    const { renter, powerplant } = fresh.people;
    const count = async () => valueOf(await whoAmI(renter, {}, now)).unreadNews;
    expect(await count()).toBe(0);
    for (const words of ['First.', 'Second.', 'Third.']) {
      const nick = valueOf(await reportFinding(renter, nickedPropeller(fresh), now));
      valueOf(await judgeSeverity(powerplant, judgement(nick.discrepancyId, words), now));
    }
    expect(await count()).toBe(3);
    expect(valueOf(await whoAmI(powerplant, {}, now)).unreadNews).toBe(0);
    const [one, two, three] = await unreadOf(renter);
    const input = { requestId: randomUUID(), noticeIds: [one!.id, two!.id, two!.id] };
    expect(valueOf(await markNoticesRead(renter, input, now))).toEqual({ read: 2 });
    // Sent again, the same answer; in another request, nothing left to do.
    expect(valueOf(await markNoticesRead(renter, input, now))).toEqual({ read: 2 });
    const later = { ...input, requestId: randomUUID() };
    expect(valueOf(await markNoticesRead(renter, later, { now: new Date(NOW.getTime() + 60_000) }))).toEqual({
      read: 0,
    });
    expect(await count()).toBe(1);
    const { unread, unreadCount, earlier } = valueOf(await readNotices(renter, {}, now));
    expect(unread.map(({ id }) => id)).toEqual([three!.id]);
    expect(unreadCount).toBe(1);
    expect(earlier.map(({ id }) => id).sort()).toEqual([one!.id, two!.id].sort());
  });

  test('not by somebody else, and one of somebody else’s among them marks none', async () => {
    const { renter, student, powerplant } = school.people;
    const mine = await report(nickedPropeller(school));
    const theirs = await report(nickedPropeller(school), student);
    for (const { discrepancyId } of [mine, theirs]) {
      valueOf(await judgeSeverity(powerplant, judgement(discrepancyId), now));
    }
    const [own] = await toldOf(renter, mine.discrepancyId);
    const [foreign] = await toldOf(student, theirs.discrepancyId);
    const both = { requestId: randomUUID(), noticeIds: [own!.id, foreign!.id] };
    expect(problemOf(await markNoticesRead(renter, both, now)).code).toBe('not_found');
    expect(await toldOf(renter, mine.discrepancyId)).toHaveLength(1);
    expect(await toldOf(student, theirs.discrepancyId)).toHaveLength(1);
  });
});
