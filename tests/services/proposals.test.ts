/**
 * What is proposed for a flight that is no go, with what the database knows of its pilot and of where aircraft stand.
 * Source: issue 5 ("propose what would make it go"); that nobody flies two aircraft at once needs none.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { writeInOperator } from '@/lib/db/scope';
import { beginDeferral } from '@/lib/determinations/begin-deferral';
import { planFlight } from '@/lib/flights/plan-flight';
import { reportFinding } from '@/lib/findings/report-finding';
import { answerFlight } from '@/lib/releases/answer-flight';
import { withdrawRelease } from '@/lib/releases/withdraw-release';
import { dayLesson, deadLandingLight, deferralOf, valueOf } from '../fixtures/acts';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import { minutes, released } from '../fixtures/flights';
import { closeSchools, foundSchool, openSchools, register, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let founded = 0;

beforeAll(async () => {
  ({ database } = await openSchools());
});
afterAll(() => closeSchools(database));
beforeEach(async () => {
  school = await foundSchool(`proposals-${(founded += 1)}`, trainer());
  // 91.205(c)(4): without the landing light no night for hire.
  const light = valueOf(await reportFinding(school.people.renter, deadLandingLight(school), minutes(0)));
  valueOf(await beginDeferral(school.people.airframe, deferralOf(light.discrepancyId), minutes(0)));
  await writeInOperator(school.operatorId, (tx) =>
    tx.placard.updateMany({
      where: { operatorId: school.operatorId },
      data: { placedAt: minutes(0).now, placedById: school.people.airframe.personId },
    }),
  );
});

/** For hire, 18:00 to 18:30: night began soon after 17:00. */
const asked = (change: object = {}) => ({
  ...dayLesson(school),
  departLocal: '2026-11-25T18:00',
  arriveLocal: '2026-11-25T18:30',
  plannedHours: '0.5',
  ...change,
});
const proposed = async (change: object = {}) =>
  valueOf(await answerFlight(school.people.dispatcher, asked(change), minutes(0))).proposals;
const earlier = async (change: object = {}) =>
  (await proposed(change)).find(({ kind }) => kind === 'leave-earlier')?.apply?.departLocal;

/** Another trainer of the same type. */
const other = (baseId = school.baseId, registration = 'N0418W') =>
  writeInOperator(school.operatorId, async (tx) => {
    const type = { ...trainer().type, name: `Made with ${registration}` };
    const { aircraftId } = await register(tx, school.operatorId, baseId, {
      ...trainer(),
      registration,
      type,
    });
    await tx.aircraft.update({
      where: { operatorId_id: { operatorId: school.operatorId, id: aircraftId } },
      data: { typeId: school.typeId },
    });
    return { aircraftId };
  });
/** Over dusk, in another aircraft. */
const busy = { departLocal: '2026-11-25T16:45', arriveLocal: '2026-11-25T17:45', plannedHours: '1.0' };

test('leaving earlier is not proposed over what the pilot flies in another aircraft, while it counts', async () => {
  const { aircraftId } = await other();
  const atDusk = await earlier();
  expect(atDusk).toMatch(/^2026-11-25T16:[345]\d$/);
  const releaseId = await released(school, { ...busy, aircraftId });
  const instead = await earlier();
  expect(instead === undefined || instead <= '2026-11-25T16:15').toBe(true);
  // Another pilot is not held by it.
  expect(await earlier({ pilotId: school.people.student.personId })).toBe(atDusk);
  const withdraw = { requestId: randomUUID(), releaseId, words: 'Weather.' };
  valueOf(await withdrawRelease(school.people.dispatcher, withdraw, minutes(1)));
  expect(await earlier()).toBe(atDusk);
});

test('nor over a plan of the pilot; the plan that this flight comes from does not count', async () => {
  const { aircraftId } = await other();
  const atDusk = await earlier();
  const plan = {
    requestId: randomUUID(),
    aircraftId,
    pilotId: school.people.renter.personId,
    ...busy,
    words: '',
  };
  const { plannedFlightId } = valueOf(await planFlight(school.people.dispatcher, plan, minutes(0)));
  expect(await earlier()).not.toBe(atDusk);
  expect(await earlier({ plannedFlightId })).toBe(atDusk);
});

test('an aircraft of the base comes before one that has to be fetched', async () => {
  const away = await writeInOperator(school.operatorId, async (tx) => {
    const {
      id: _id,
      ident: _ident,
      ...home
    } = await tx.base.findFirstOrThrow({ where: { id: school.baseId } });
    return tx.base.create({ data: { ...home, id: randomUUID(), ident: '0WZ' } });
  });
  await other(away.id, 'N0101W');
  await other(school.baseId, 'N0999W');
  const found = (await proposed()).filter(({ kind }) => kind === 'other-aircraft');
  expect(found.map(({ registration }) => registration)).toEqual(['N0999W', 'N0101W']);
});
