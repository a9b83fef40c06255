/**
 * The queue from real rows. Source: issue 4, "ordered by what it does to flying (grounded aircraft with flights soon first)".
 * The order itself is tested row by row in tests/rules/queue-order.test.ts; here it is held against what people did.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { writeInOperator } from '@/lib/db/scope';
import { beginDeferral } from '@/lib/determinations/begin-deferral';
import { judgeSeverity } from '@/lib/determinations/judge-severity';
import { placePlacard } from '@/lib/determinations/place-placard';
import { reportFinding } from '@/lib/findings/report-finding';
import { cancelPlannedFlight } from '@/lib/flights/cancel-planned-flight';
import { planFlight } from '@/lib/flights/plan-flight';
import { readBench } from '@/lib/work/read-bench';
import { startWork } from '@/lib/work/start-work';
import { trainer } from '../fixtures/aircraft';
import { deadLandingLight, deferralOf, nickedPropeller, startOf, valueOf } from '../fixtures/acts';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, NOW, openSchools, PASSWORD, register, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
/** The same trainer once more. */
let second: School;

beforeAll(async () => {
  const opened = await openSchools();
  ({ database, school } = opened);
  const facts = { ...trainer(), registration: 'N099ZZ' };
  const { aircraftId, typeId, equipment } = await writeInOperator(school.operatorId, (tx) =>
    register(tx, school.operatorId, school.baseId, {
      ...facts,
      type: { ...facts.type, name: 'Second of its kind' },
    }),
  );
  second = { ...school, aircraftId, typeId, equipment };
});
afterAll(() => closeSchools(database));

const minutes = (count: number) => ({ now: new Date(NOW.getTime() + count * 60_000) });
const queue = async (at = minutes(60)) => {
  const { rows } = valueOf(await readBench(school.people.airframe, {}, at));
  return rows.map(({ registration, group, why }) => [registration, group, why]);
};
const planOf = (aircraftId: string, departLocal: string, arriveLocal: string) => ({
  requestId: randomUUID(),
  aircraftId,
  pilotId: null,
  departLocal,
  arriveLocal,
  plannedHours: '',
  words: '',
});
const FIRST = trainer().registration;

test('grounded first, then by the flight that waits; deferring and placarding move it down', async () => {
  const { renter, airframe, powerplant, dispatcher } = school.people;
  // The older one, on the first aircraft: judged grounding by whoever looked.
  const nick = valueOf(await reportFinding(renter, nickedPropeller(school), minutes(0)));
  valueOf(
    await judgeSeverity(
      powerplant,
      {
        requestId: randomUUID(),
        discrepancyId: nick.discrepancyId,
        kind: 'damage',
        jasc: '6111',
        equipmentId: null,
        inoperativeCount: null,
        severity: 'grounding',
        statement: 'Sharp.',
        password: PASSWORD,
      },
      minutes(1),
    ),
  );
  const light = valueOf(await reportFinding(renter, deadLandingLight(second), minutes(2)));
  expect(await queue()).toEqual([
    [FIRST, 'grounds', 'Grounds it; no flight planned'],
    // 91.213(a): not deferred yet, so it may not take off.
    ['N099ZZ', 'grounds', 'Grounds it until repaired or deferred; no flight planned'],
  ]);

  // A flight beyond 48 hours changes nothing, one within puts its aircraft first.
  const far = valueOf(
    await planFlight(
      dispatcher,
      planOf(second.aircraftId, '2026-11-27T10:01', '2026-11-27T11:00'),
      minutes(3),
    ),
  );
  expect((await queue()).map(([registration]) => registration)).toEqual([FIRST, 'N099ZZ']);
  const near = valueOf(
    await planFlight(
      dispatcher,
      planOf(second.aircraftId, '2026-11-27T10:00', '2026-11-27T11:00'),
      minutes(4),
    ),
  );
  expect(await queue()).toEqual([
    ['N099ZZ', 'grounds-flight-soon', 'Grounds it until repaired or deferred; next flight Fri 27 Nov 10:00'],
    [FIRST, 'grounds', 'Grounds it; no flight planned'],
  ]);

  // Sooner flight first.
  valueOf(
    await planFlight(
      dispatcher,
      planOf(school.aircraftId, '2026-11-25T16:00', '2026-11-25T17:00'),
      minutes(5),
    ),
  );
  expect((await queue())[0]).toEqual([FIRST, 'grounds-flight-soon', 'Grounds it; next flight today 16:00']);
  for (const plan of [far, near]) {
    valueOf(await cancelPlannedFlight(dispatcher, { requestId: randomUUID(), ...plan }, minutes(6)));
  }

  // 91.213(d)(3)(ii): deferred, and grounded until the placard is up.
  const { placardId } = valueOf(await beginDeferral(airframe, deferralOf(light.discrepancyId), minutes(10)));
  expect((await queue())[1]).toEqual([
    'N099ZZ',
    'grounds',
    'Grounds it until the placard is up; no flight planned',
  ]);
  valueOf(await placePlacard(renter, { requestId: randomUUID(), placardId }, minutes(12)));
  const { rows } = valueOf(await readBench(airframe, {}, minutes(60)));
  const deferredRow = rows.find(({ registration }) => registration === 'N099ZZ');
  // 91.405(c): at the next required inspection at the latest, here the annual.
  expect(deferredRow).toMatchObject({
    group: 'deferred',
    chapter: { code: '33', title: 'Lights' },
    ageDays: 0,
    nextFlight: null,
    visit: null,
  });
  expect(deferredRow?.deferralEnds?.on).toMatch(/^\d{4}-\d{2}-(28|29|30|31)$/);
  expect(deferredRow?.deferralEnds?.inDays).toBeGreaterThan(7);

  // A week before its last day it is near; the day after, it grounds.
  const end = Date.parse(`${deferredRow?.deferralEnds?.on}T15:00:00Z`);
  const days = (count: number) => ({ now: new Date(end + count * 86_400_000) });
  const groupIn = async (count: number) =>
    (await queue(days(count))).find(([registration]) => registration === 'N099ZZ')?.[1];
  expect([await groupIn(-8), await groupIn(-7), await groupIn(-6)]).toEqual([
    'deferred',
    'deferral-near-end',
    'deferral-near-end',
  ]);
  expect([await groupIn(-1), await groupIn(0), await groupIn(1)]).toEqual([
    'deferral-near-end',
    'deferral-near-end',
    'grounds',
  ]);

  // 91.407(a)(1): work begun and not signed.
  valueOf(await startWork(powerplant, startOf(nick.discrepancyId), minutes(20)));
  expect((await queue())[0]).toEqual([
    FIRST,
    'grounds-flight-soon',
    'Work not signed off; next flight today 16:00',
  ]);
});
