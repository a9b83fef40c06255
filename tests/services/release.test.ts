/**
 * What a release stands on beside the facts of the moment: hours that flights released before it will have spent (91.409(b)
 * for the limit; counting ahead is common practice, no source), the plan it comes from, airports as ends, other releases at
 * the same time, and what the desk is offered instead of a no go (issue 5, "propose what would make it go").
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { airportByIdent } from '@/lib/airports/find-airport';
import { readInOperator, writeInOperator } from '@/lib/db/scope';
import { beginDeferral } from '@/lib/determinations/begin-deferral';
import { reportFinding } from '@/lib/findings/report-finding';
import { cancelPlannedFlight } from '@/lib/flights/cancel-planned-flight';
import { planFlight } from '@/lib/flights/plan-flight';
import { verifyAudit } from '@/lib/operate/audit-verify';
import { withClient } from '@/lib/operate/connection';
import { contentHash } from '@/lib/records/canonical';
import { answerFlight } from '@/lib/releases/answer-flight';
import { correctMeters } from '@/lib/releases/correct-meters';
import { logFlight } from '@/lib/releases/log-flight';
import { readMetersIn } from '@/lib/releases/record-meters';
import { releaseFlight } from '@/lib/releases/release-flight';
import { composedFlight, releaseFlightInput } from '@/lib/releases/schema';
import {
  dayLesson,
  deadLandingLight,
  deferralOf,
  nickedPropeller,
  nightLesson,
  problemOf,
  valueOf,
} from '../fixtures/acts';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import { at, fileOf, minutes, released, releaseOf, standing } from '../fixtures/flights';
import { closeSchools, foundSchool, openSchools, register, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let founded = 0;

beforeAll(async () => {
  ({ database } = await openSchools());
});
afterAll(() => closeSchools(database));
beforeEach(async () => {
  founded += 1;
  school = await foundSchool(`release-${founded}`, trainer());
});

const own = () => ({ requestId: randomUUID() });
/** The 100-hour of the fixtures is due at 4560.0 h; both lessons are planned with 1.2 h. */
const DUE = 45_600;
const hoursAre = (ttisTenths: number) =>
  writeInOperator(school.operatorId, (tx) =>
    tx.aircraft.update({
      where: { operatorId_id: { operatorId: school.operatorId, id: school.aircraftId } },
      data: { ttisTenths },
    }),
  );
/** Afternoon lesson with somebody else, 14:00 to 15:12 at the base. */
const afternoon = () => ({
  departLocal: '2026-11-25T14:00',
  arriveLocal: '2026-11-25T15:12',
});
const answer = async (change: object = {}, after = 0) =>
  valueOf(await answerFlight(school.people.dispatcher, { ...dayLesson(school), ...change }, minutes(after)));
const release = async (change: Readonly<Record<string, unknown>> = {}, after = 0) =>
  releaseFlight(school.people.dispatcher, await releaseOf(school, change), minutes(after));
const plan = async (change: object = {}) =>
  valueOf(
    await planFlight(
      school.people.dispatcher,
      {
        ...own(),
        aircraftId: school.aircraftId,
        pilotId: null,
        departLocal: '2026-11-25T10:00',
        arriveLocal: '2026-11-25T11:12',
        plannedHours: '1.2',
        words: 'Lesson',
        ...change,
      },
      minutes(0),
    ),
  ).plannedFlightId;
const faults = async () =>
  (await verifyAudit(database.adminUrl)).find((one) => one.operatorId === school.operatorId)?.faults;

describe('hours that flights released before it will have spent', () => {
  test.each([
    ['a tenth to spare', DUE - 25, 'go'],
    ['to the last tenth', DUE - 24, 'go'],
    ['a tenth over', DUE - 23, 'no-go'],
  ])('%s: the second lesson is %s', async (_, ttis, outcome) => {
    await hoursAre(ttis);
    expect((await answer(afternoon())).answer.outcome).toBe('go');
    const first = await released(school);
    const second = await answer(afternoon(), 1);
    expect(second.answer.outcome).toBe(outcome);
    expect(second.spentAhead).toEqual({
      recordedTenths: ttis,
      flights: [{ id: first, label: expect.any(String) as string, tenths: 12 }],
    });
    const result = await release(afternoon(), 1);
    expect(result.ok ? 'go' : result.problem.code).toBe(outcome === 'go' ? 'go' : 'no_go');
    expect(await faults()).toEqual([]);
    if (!result.ok) return;
    const kept = await fileOf(school, result.value.releaseId);
    expect(kept.spentAhead).toEqual(second.spentAhead);
    expect(kept.facts.ttisTenths).toEqual({ known: true, value: ttis + 12 });
  });

  test('a flight that departs later spends none of them', async () => {
    await hoursAre(DUE - 24);
    await released(school, afternoon());
    const morning = await answer();
    expect(morning.spentAhead).toBeNull();
    expect(morning.answer.outcome).toBe('go');
  });

  test('a plan only warns', async () => {
    await hoursAre(DUE - 23);
    await plan();
    const second = await answer(afternoon());
    expect(second.answer.outcome).toBe('go');
    expect(second.spentAhead).toBeNull();
    expect(second.warnings.map(({ kind }) => kind)).toContain('runs-past-inspection');
  });

  test('a release before an earlier one voids the later when its hours are gone', async () => {
    await hoursAre(DUE - 23);
    const later = await released(school, afternoon());
    expect((await answer()).warnings.map(({ kind }) => kind)).toContain('leaves-too-few-hours');
    await released(school, {}, minutes(1));
    expect(await standing(school, later)).toMatchObject({ state: 'void' });
  });

  test('closed without being flown, it spends none', async () => {
    await hoursAre(DUE - 23);
    const first = await released(school);
    expect((await answer(afternoon(), 1)).answer.outcome).toBe('no-go');
    const ended = { ...own(), releaseId: first, what: 'closed', at: 'now', words: 'Not flown: fog.' };
    valueOf(await logFlight(school.people.dispatcher, ended, minutes(2)));
    expect((await answer(afternoon(), 3)).answer.outcome).toBe('go');
  });

  test.each([
    ['a tenth less than planned', 11, 'released'],
    ['as planned', 12, 'released'],
    ['a tenth more than planned', 13, 'void'],
  ])('back with %s, the later release is %s', async (_, flown, state) => {
    await hoursAre(DUE - 24);
    const first = await released(school);
    const later = await released(school, afternoon());
    const reading = { ...own(), releaseId: first, moment: 'in', readAt: at(140) };
    const figures = { hobbsTenths: 21_234 + flown, tachTenths: 19_876 + 10 };
    valueOf(await readMetersIn(school.people.renter, { ...reading, ...figures }, minutes(140)));
    expect((await standing(school, first)).state).toBe('closed');
    expect((await standing(school, later)).state).toBe(state);
  });

  test('a correction of the return asks again', async () => {
    await hoursAre(DUE - 24);
    const first = await released(school);
    const later = await released(school, afternoon());
    const reading = { ...own(), releaseId: first, moment: 'in', readAt: at(140) };
    const figures = { hobbsTenths: 21_246, tachTenths: 19_886 };
    valueOf(await readMetersIn(school.people.renter, { ...reading, ...figures }, minutes(140)));
    expect((await standing(school, later)).state).toBe('released');
    const corrected = {
      ...own(),
      readingId: reading.requestId,
      ...figures,
      hobbsTenths: 21_247,
      back: null,
      why: 'Read between two marks.',
    };
    valueOf(await correctMeters(school.people.dispatcher, corrected, minutes(141)));
    expect((await standing(school, later)).state).toBe('void');
  });

  test('are covered by the hash; without any it is the hash of before', async () => {
    const first = await fileOf(school, await released(school));
    const { flight, facts, answer: kept, rulesVersion, factsVersion } = first;
    const by = school.people.dispatcher.personId;
    expect(first.hash).toBe(contentHash({ flight, facts, answer: kept, rulesVersion, factsVersion, by }));
    const second = await released(school, afternoon());
    const spoil = (sql: string) =>
      withClient(database.adminUrl, async (client) => {
        await client.query('BEGIN');
        await client.query('SET LOCAL session_replication_role = replica');
        await client.query(sql, [second]);
        await client.query('COMMIT');
      });
    await spoil(`UPDATE release SET spent_ahead = NULL WHERE id = $1`);
    expect(await faults()).toEqual([`release ${second} was changed after it was given`]);
  });
});

describe('two flights at once', () => {
  test.each([
    ['11:11', false],
    ['11:12', true],
    ['11:13', true],
  ])('one that departs at %s, when the other is to be back at 11:12', async (time, may) => {
    await released(school);
    const next = { departLocal: `2026-11-25T${time}`, arriveLocal: '2026-11-25T12:20', plannedHours: '1.1' };
    const result = await release(next);
    if (may) valueOf(result);
    else expect(Object.keys(problemOf(result).fields ?? {}).sort()).toEqual(['aircraftId', 'pilotId']);
  });

  test('a pilot in command is not released in two aircraft, another pilot is', async () => {
    const { aircraftId } = await anotherTrainer('N0419W');
    await released(school);
    expect(problemOf(await release({ aircraftId })).fields).toEqual({
      pilotId: [expect.stringContaining('N0417W') as string],
    });
    valueOf(await release({ aircraftId, pilotId: school.people.student.personId }));
  });
});

describe('the plan it comes from', () => {
  test.each(['of another aircraft', 'that was cancelled', 'that nobody made'])(
    'refuses one %s',
    async (which) => {
      const { aircraftId } = await anotherTrainer('N0419W');
      let plannedFlightId = await plan(which === 'of another aircraft' ? { aircraftId } : {});
      if (which === 'that was cancelled')
        valueOf(
          await cancelPlannedFlight(school.people.dispatcher, { ...own(), plannedFlightId }, minutes(0)),
        );
      if (which === 'that nobody made') plannedFlightId = randomUUID();
      expect(problemOf(await release({ plannedFlightId })).fields).toHaveProperty('plannedFlightId');
    },
  );

  test('does not count its own hours against it', async () => {
    await hoursAre(DUE - 12);
    const plannedFlightId = await plan({ departLocal: '2026-11-25T09:59' });
    const composed = await answer({ plannedFlightId });
    expect(composed.warnings).toEqual([]);
    valueOf(await release({ plannedFlightId }));
  });
});

describe('ends that are airports', () => {
  const toAirport = { toBaseId: '', toIdent: 'KMSP' };

  test('are found by their letters, with their own zone; what the file does not say is unknown', async () => {
    const airport = airportByIdent('KMSP');
    expect(airport).not.toBeNull();
    const file = await fileOf(school, await released(school, { ...toAirport, toIdent: ' kmsp' }));
    expect(file.flight.to).toMatchObject({
      ident: 'KMSP',
      zone: 'America/Chicago',
      latitudeDeg: airport?.latitudeDeg,
      repairAvailable: { known: false },
    });
  });

  test('that nobody knows are refused by field', async () => {
    expect(problemOf(await release({ toBaseId: '', toIdent: 'ZZZZZZ' })).fields).toHaveProperty('toIdent');
  });

  test.each([
    ['neither', { toBaseId: '' }, 'toBaseId'],
    ['both', { toIdent: 'KMSP' }, 'toIdent'],
  ])('%s base and airport is refused', (_, change, field) => {
    const parsed = composedFlight.safeParse({ ...dayLesson(school), ...change });
    expect(parsed.success ? [] : parsed.error.issues.map(({ path }) => path.join('.'))).toEqual([field]);
  });

  test('a request from before them says the same as it did', () => {
    const before = { ...dayLesson(school), ...own(), factsVersion: 1, limitsPassedOn: false };
    expect(releaseFlightInput.parse(before)).toEqual(before);
  });
});

/** One more trainer of the very same type. */
async function anotherTrainer(registration: string): Promise<{ aircraftId: string }> {
  return writeInOperator(school.operatorId, async (tx) => {
    const made = await register(tx, school.operatorId, school.baseId, {
      ...trainer(),
      registration,
      type: { ...trainer().type, name: `Made with ${registration}` },
    });
    await tx.aircraft.update({
      where: { operatorId_id: { operatorId: school.operatorId, id: made.aircraftId } },
      data: { typeId: school.typeId },
    });
    return { aircraftId: made.aircraftId };
  });
}

describe('what would make it go', () => {
  test('another trainer of the type that is free and may; one that is booked or grounded is not offered', async () => {
    const free = await anotherTrainer('N0418W');
    const booked = await anotherTrainer('N0419W');
    const grounded = await anotherTrainer('N0420W');
    valueOf(await reportFinding(school.people.renter, nickedPropeller(school), minutes(0)));
    const nick = { ...nickedPropeller(school), aircraftId: grounded.aircraftId };
    valueOf(await reportFinding(school.people.renter, nick, minutes(0)));
    await released(school, { aircraftId: booked.aircraftId, pilotId: school.people.student.personId });
    const { answer: judged, proposals } = await answer({}, 1);
    expect(judged.outcome).toBe('no-go');
    const others = proposals.filter(({ kind }) => kind === 'other-aircraft');
    expect(others).toMatchObject([
      { registration: 'N0418W', outcome: 'go', apply: { aircraftId: free.aircraftId } },
    ]);
    // What is offered holds: released as offered it goes.
    valueOf(await release({ ...others[0]?.apply }, 2));
  });

  test('an earlier return, as wall-clock time to put into the form', async () => {
    const light = valueOf(await reportFinding(school.people.renter, deadLandingLight(school), minutes(0)));
    valueOf(await beginDeferral(school.people.airframe, deferralOf(light.discrepancyId), minutes(0)));
    await writeInOperator(school.operatorId, (tx) =>
      tx.placard.updateMany({
        where: { operatorId: school.operatorId },
        data: { placedAt: minutes(0).now, placedById: school.people.airframe.personId },
      }),
    );
    // From before dusk into the night, for hire: 91.205(c)(4) asks for the light.
    const dusk = { departLocal: '2026-11-25T16:20', arriveLocal: '2026-11-25T17:30', plannedHours: '1.1' };
    const judged = await answer(dusk);
    expect(judged.answer.outcome).toBe('no-go');
    const sooner = judged.proposals.find(({ kind }) => kind === 'earlier-return');
    expect(sooner?.apply?.arriveLocal).toMatch(/^2026-11-25T(16:5|17:0)\d$/);
    const taken = await answer({ ...dusk, ...sooner?.apply });
    expect(taken.answer.outcome).toBe('go-with-limits');
  });

  test('nothing when it goes', async () => {
    await anotherTrainer('N0418W');
    expect((await answer()).proposals).toEqual([]);
    expect((await answer(nightLesson(school))).proposals).toEqual([]);
  });

  test('asks nothing of another school’s aircraft', async () => {
    valueOf(await reportFinding(school.people.renter, nickedPropeller(school), minutes(0)));
    await foundSchool(`neighbour-${founded}`, trainer());
    expect((await answer()).proposals.filter(({ kind }) => kind === 'other-aircraft')).toEqual([]);
    const kept = await readInOperator(school.operatorId, (tx) => tx.aircraft.count());
    expect(kept).toBe(1);
  });
});
