/**
 * Every write is exactly once (binding rule: "Every write is idempotent (client-made UUID)"), and two people at the same
 * moment cannot both have their way. Common practice otherwise, no source.
 */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { randomUUID } from 'node:crypto';
import { reportFinding } from '@/lib/findings/report-finding';
import { readAircraftFile } from '@/lib/fleet/read-aircraft-file';
import { answerFlight } from '@/lib/releases/answer-flight';
import { readReleases } from '@/lib/releases/read-desk';
import { releaseFlight } from '@/lib/releases/release-flight';
import { enterWork } from '@/lib/work/enter-work';
import { signWork } from '@/lib/work/sign-work';
import { startWork } from '@/lib/work/start-work';
import { withClient } from '@/lib/operate/connection';
import {
  dayLesson,
  entryOf,
  nickedPropeller,
  problemOf,
  signatureOf,
  startOf,
  valueOf,
} from '../fixtures/acts';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, foundSchool, NOW, openSchools, PEOPLE, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let other: School;
const now = { now: NOW };

beforeAll(async () => {
  ({ database, school, other } = await openSchools());
});
afterAll(() => closeSchools(database));

const openWriteUps = async () =>
  valueOf(await readAircraftFile(school.people.renter, { aircraftId: school.aircraftId }, now)).writeUps
    .length;

test('the same finding sent ten times at once is one write-up, with one answer', async () => {
  const input = nickedPropeller(school);
  const answers = await Promise.all(
    Array.from({ length: 10 }, () => reportFinding(school.people.renter, input, now)),
  );
  const [first, ...others] = answers.map((answer) => valueOf(answer));
  for (const another of others) expect(another).toEqual(first);
  expect(await openWriteUps()).toBe(1);
});

test('the same number with other content is a conflict, and changes nothing', async () => {
  const input = nickedPropeller(school);
  valueOf(await reportFinding(school.people.renter, input, now));
  const before = await openWriteUps();
  const again = await reportFinding(school.people.renter, { ...input, words: 'Something else.' }, now);
  expect(problemOf(again).code).toBe('conflict');
  const somebodyElse = await reportFinding(school.people.student, input, now);
  expect(problemOf(somebodyElse).code).toBe('conflict');
  const otherSchool = await reportFinding(
    other.people.renter,
    { ...input, aircraftId: other.aircraftId },
    now,
  );
  expect(problemOf(otherSchool).code).toBe('conflict');
  expect(await openWriteUps()).toBe(before);
});

test('write-up numbers have no gaps and no twins under ten reporters at once', async () => {
  const answers = await Promise.all(
    Array.from({ length: 10 }, () => reportFinding(school.people.renter, nickedPropeller(school), now)),
  );
  const numbers = answers.map((answer) => Number(valueOf(answer).number.slice(2))).sort((a, b) => a - b);
  expect(numbers).toEqual(Array.from({ length: 10 }, (_, index) => (numbers[0] ?? 0) + index));
});

test('two mechanics sign one work at the same moment: one signature', async () => {
  const { discrepancyId } = valueOf(await reportFinding(school.people.renter, nickedPropeller(school), now));
  const { workId } = valueOf(await startWork(school.people.powerplant, startOf(discrepancyId), now));
  const { entryHash } = valueOf(
    await enterWork(school.people.powerplant, entryOf(workId, PEOPLE.powerplant.name), now),
  );
  const both = await Promise.all(
    [1, 2].map(() => signWork(school.people.powerplant, signatureOf(workId, entryHash), now)),
  );
  expect(both.filter((result) => result.ok)).toHaveLength(1);
  const count = await withClient(database.adminUrl, (client) =>
    client.query<{ count: string }>('SELECT count(*) FROM sign_off WHERE work_id = $1', [workId]),
  );
  expect(count.rows[0]?.count).toBe('1');
});

test('a release and a grounding write-up at the same moment: never a release on facts already gone', async () => {
  // Whatever the order, a release that went through stands before the write-up in the audit chain.
  for (let round = 0; round < 5; round += 1) {
    const fresh = await foundSchool(`round-${round}`, trainer());
    const asked = valueOf(await answerFlight(fresh.people.dispatcher, dayLesson(fresh), now));
    expect(asked.answer.outcome).toBe('go');
    const release = {
      ...dayLesson(fresh),
      requestId: randomUUID(),
      factsVersion: asked.factsVersion,
      limitsPassedOn: false,
    };
    const [released, reported] = await Promise.all([
      releaseFlight(fresh.people.dispatcher, release, now),
      reportFinding(fresh.people.renter, nickedPropeller(fresh), now),
    ]);
    valueOf(reported);
    const order = await withClient(database.adminUrl, (client) =>
      client.query<{ verb: string }>('SELECT verb FROM audit_row WHERE operator_id = $1 ORDER BY seq', [
        fresh.operatorId,
      ]),
    );
    const verbs = order.rows.map((row) => row.verb);
    if (released.ok) expect(verbs).toEqual(['flight.release', 'finding.report', 'flight.recall']);
    else expect(verbs).toEqual(['finding.report', 'flight.release:refused']);
    expect(valueOf(await readReleases(fresh.people.dispatcher, {}, now))).toHaveLength(released.ok ? 1 : 0);
  }
});
