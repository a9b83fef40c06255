/**
 * The main job through the real services on a real PostgreSQL: the two ways a finding can go.
 * Sources: issue 2, "Browser journey"; 91.405(a), 91.407(a), 91.213(d), 91.205(c)(4), 65.85(a), 65.87(a), 43.9(a).
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { beginDeferral } from '@/lib/determinations/begin-deferral';
import { findWithinLimits } from '@/lib/determinations/find-within-limits';
import { judgeSeverity } from '@/lib/determinations/judge-severity';
import { placePlacard } from '@/lib/determinations/place-placard';
import { readWriteUp } from '@/lib/determinations/read-write-up';
import { readOwnFindings } from '@/lib/findings/own-findings';
import { reportFinding } from '@/lib/findings/report-finding';
import { readBoard } from '@/lib/fleet/read-board';
import { verifyAudit } from '@/lib/operate/audit-verify';
import { answerFlight } from '@/lib/releases/answer-flight';
import { readReleases } from '@/lib/releases/read-desk';
import { releaseFlight } from '@/lib/releases/release-flight';
import { enterWork } from '@/lib/work/enter-work';
import { readBench } from '@/lib/work/read-bench';
import { signWork } from '@/lib/work/sign-work';
import { startWork } from '@/lib/work/start-work';
import { randomUUID } from 'node:crypto';
import {
  dayLesson,
  deadLandingLight,
  deferralOf,
  entryOf,
  nickedPropeller,
  nightLesson,
  problemOf,
  signatureOf,
  startOf,
  valueOf,
} from '../fixtures/acts';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, NOW, openSchools, PASSWORD, PEOPLE, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
const now = { now: NOW };

beforeAll(async () => {
  ({ database, school } = await openSchools());
});
afterAll(() => closeSchools(database));

const outcomes = async () => {
  const board = valueOf(await readBoard(school.people.dispatcher, {}, now));
  return Object.fromEntries((board.rows[0]?.cells ?? []).map((cell) => [cell.id, cell.outcome]));
};

test('the healthy trainer is go for every kind of operation', async () => {
  expect(await outcomes()).toEqual({
    'day-vfr-private': 'go',
    'day-vfr-hire': 'go',
    'night-vfr-private': 'go',
    'night-vfr-hire': 'go',
    'day-ifr-private': 'go',
    'day-ifr-hire': 'go',
    'night-ifr-private': 'go',
    'night-ifr-hire': 'go',
  });
});

describe('a nicked propeller', () => {
  let discrepancyId: string;
  let workId: string;
  let entryHash: string;

  test('written up by the renter it grounds the aircraft at once', async () => {
    const reported = valueOf(await reportFinding(school.people.renter, nickedPropeller(school), now));
    discrepancyId = reported.discrepancyId;
    expect(reported.number).toBe('W-0001');
    expect(new Set(Object.values(await outcomes()))).toEqual(new Set(['no-go']));
    const bench = valueOf(await readBench(school.people.airframe, {}, now));
    expect(bench.rows.map((row) => row.writeUp.number)).toEqual(['W-0001']);
  });

  test('it is never deferrable: the report says it is not equipment that does not work', async () => {
    const view = valueOf(await readWriteUp(school.people.powerplant, { discrepancyId }, now));
    expect(view.eligibility?.path).toBe('not-equipment');
    expect(view.eligibility?.deferrable).toBe(false);
  });

  test('a release is refused with the paragraph', async () => {
    const asked = valueOf(await answerFlight(school.people.dispatcher, dayLesson(school), now));
    expect(asked.answer.outcome).toBe('no-go');
    const input = {
      ...dayLesson(school),
      requestId: randomUUID(),
      factsVersion: asked.factsVersion,
      limitsPassedOn: true,
    };
    const problem = problemOf(await releaseFlight(school.people.dispatcher, input, now));
    expect(problem.code).toBe('no_go');
    expect(problem.lines?.map((line) => line.cite)).toContain('14cfr91.405(a)');
  });

  test('a mechanic without powerplant rating can neither find it within limits nor sign for it (65.87(a))', async () => {
    const within = {
      requestId: randomUUID(),
      discrepancyId,
      measured: '0.020 in deep',
      limitText: '0.031 in',
      limitSource: 'Invented propeller manual',
      statement: 'Within limits.',
      password: PASSWORD,
    };
    expect(problemOf(await findWithinLimits(school.people.airframe, within, now)).code).toBe(
      'signature_refused',
    );

    workId = valueOf(await startWork(school.people.airframe, startOf(discrepancyId), now)).workId;
    entryHash = valueOf(
      await enterWork(school.people.airframe, entryOf(workId, PEOPLE.airframe.name), now),
    ).entryHash;
    const problem = problemOf(await signWork(school.people.airframe, signatureOf(workId, entryHash), now));
    expect(problem.code).toBe('signature_refused');
    expect(problem.lines?.map((line) => line.cite)).toContain('14cfr65.87(a)');
    expect(problem.say).toContain('powerplant');
    expect((await outcomes())['day-vfr-private']).toBe('no-go');
  });

  test('nor can a powerplant mechanic whose recent experience ended yesterday (65.83)', async () => {
    const problem = problemOf(await signWork(school.people.stale, signatureOf(workId, entryHash), now));
    expect(problem.lines?.map((line) => line.cite)).toContain('14cfr65.83');
  });

  test('a wrong password signs nothing', async () => {
    const input = { ...signatureOf(workId, entryHash), password: 'guess' };
    expect(problemOf(await signWork(school.people.powerplant, input, now)).code).toBe('wrong_password');
  });

  test('an entry changed after it was read is not signed', async () => {
    const changed = entryOf(workId, PEOPLE.powerplant.name);
    const newer = valueOf(await enterWork(school.people.powerplant, changed, now)).entryHash;
    expect(newer).not.toBe(entryHash);
    expect(
      problemOf(await signWork(school.people.powerplant, signatureOf(workId, entryHash), now)).code,
    ).toBe('superseded');
    entryHash = newer;
  });

  test('the powerplant mechanic signs, the write-up closes, the aircraft is go', async () => {
    valueOf(await signWork(school.people.powerplant, signatureOf(workId, entryHash), now));
    expect(new Set(Object.values(await outcomes()))).toEqual(new Set(['go']));
    const mine = valueOf(await readOwnFindings(school.people.renter, {}, now));
    expect(mine[0]?.writeUp.closedHow).toBe('repaired');
    expect(mine[0]?.events.at(-1)?.words).toContain('dressed out');
  });
});

describe('a dead landing light', () => {
  let discrepancyId: string;

  test('grounds until somebody has dealt with it (91.213(a))', async () => {
    const reported = valueOf(await reportFinding(school.people.renter, deadLandingLight(school), now));
    discrepancyId = reported.discrepancyId;
    expect(reported.severity).toBe('limiting');
    expect((await outcomes())['day-vfr-hire']).toBe('no-go');
  });

  test('the table allows day VFR and bars night for hire by 91.205(c)(4)', async () => {
    const view = valueOf(await readWriteUp(school.people.airframe, { discrepancyId }, now));
    const row = (light: string, hire: boolean) =>
      view.eligibility?.table.find(
        ({ kind }) => kind.light === light && kind.rules === 'VFR' && kind.hire === hire,
      );
    expect(row('day', true)?.allowed).toBe(true);
    expect(row('night', false)?.allowed).toBe(true);
    expect(row('night', true)?.allowed).toBe(false);
    expect(
      row('night', true)
        ?.lines.filter((line) => line.effect === 'bars')
        .map((line) => line.cite),
    ).toContain('14cfr91.205(c)(4)');
  });

  test('a person without any certificate may not determine that it is no hazard (91.213(d)(4))', async () => {
    const problem = problemOf(
      await beginDeferral(school.people.uncertificated, deferralOf(discrepancyId), now),
    );
    expect(problem.code).toBe('signature_refused');
    expect(problem.lines?.map((line) => line.cite)).toContain('14cfr91.213(d)(4)');
  });

  test('deferred without its placard it stays no go (91.213(d)(3))', async () => {
    const { placardId } = valueOf(
      await beginDeferral(school.people.airframe, deferralOf(discrepancyId), now),
    );
    expect((await outcomes())['day-vfr-hire']).toBe('no-go');
    const byStudent = await placePlacard(school.people.student, { requestId: randomUUID(), placardId }, now);
    expect(problemOf(byStudent).code).toBe('signature_refused');
    valueOf(await placePlacard(school.people.renter, { requestId: randomUUID(), placardId }, now));
    expect(await outcomes()).toMatchObject({
      'day-vfr-private': 'go-with-limits',
      'day-vfr-hire': 'go-with-limits',
      'night-vfr-hire': 'no-go',
    });
  });

  test('a release by day needs the limits passed on and keeps the facts; by night it is refused', async () => {
    const asked = valueOf(await answerFlight(school.people.dispatcher, dayLesson(school), now));
    expect(asked.answer.outcome).toBe('go-with-limits');
    const input = {
      ...dayLesson(school),
      requestId: randomUUID(),
      factsVersion: asked.factsVersion,
      limitsPassedOn: false,
    };
    expect(problemOf(await releaseFlight(school.people.dispatcher, input, now)).fields).toHaveProperty(
      'limitsPassedOn',
    );
    const released = valueOf(
      await releaseFlight(
        school.people.dispatcher,
        { ...input, requestId: randomUUID(), limitsPassedOn: true },
        now,
      ),
    );
    const [kept] = valueOf(
      await readReleases(school.people.dispatcher, { releaseId: released.releaseId }, now),
    );
    expect(kept?.outcome).toBe('go-with-limits');
    expect(kept?.pilot).toBe(PEOPLE.renter.name);

    const night = valueOf(await answerFlight(school.people.dispatcher, nightLesson(school), now));
    expect(night.light).toBe('night');
    const late = {
      ...nightLesson(school),
      requestId: randomUUID(),
      factsVersion: night.factsVersion,
      limitsPassedOn: true,
    };
    const problem = problemOf(await releaseFlight(school.people.dispatcher, late, now));
    expect(problem.lines?.map((line) => line.cite)).toContain('14cfr91.205(c)(4)');
  });

  test('a new write-up after the dispatcher looked makes the release look again', async () => {
    const asked = valueOf(await answerFlight(school.people.dispatcher, dayLesson(school), now));
    const scratch = {
      ...nickedPropeller(school),
      station: 'right-tip-leading-edge',
      findingKey: null,
      kind: 'cosmetic' as const,
      words: 'Paint chipped.',
    };
    const { discrepancyId: paint } = valueOf(await reportFinding(school.people.renter, scratch, now));
    const judged = {
      requestId: randomUUID(),
      discrepancyId: paint,
      kind: 'cosmetic' as const,
      jasc: '5730',
      equipmentId: null,
      inoperativeCount: null,
      severity: 'note' as const,
      statement: 'Paint only.',
      password: PASSWORD,
    };
    valueOf(await judgeSeverity(school.people.airframe, judged, now));
    const input = {
      ...dayLesson(school),
      requestId: randomUUID(),
      factsVersion: asked.factsVersion,
      limitsPassedOn: true,
    };
    expect(problemOf(await releaseFlight(school.people.dispatcher, input, now)).code).toBe('superseded');
  });
});

test('the audit chain and every signature verify afterwards', async () => {
  const reports = await verifyAudit(database.adminUrl);
  expect(reports.flatMap((report) => report.faults)).toEqual([]);
  const ours = reports.find((report) => report.operatorId === school.operatorId);
  expect(ours?.rows).toBeGreaterThan(10);
  expect(ours?.signatures).toBeGreaterThanOrEqual(4);
});
