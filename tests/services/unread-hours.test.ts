/**
 * Hours that were flown and that nobody read: they count ahead until a reading takes them in. Source: 91.409(b) and 91.417(a)(2)(i)
 * want the time in service that was flown, not what was read; how it is counted meanwhile is house caution, no source.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { readInOperator, writeInOperator } from '@/lib/db/scope';
import { bookedFlights } from '@/lib/fleet/booked-flights';
import { planFlight } from '@/lib/flights/plan-flight';
import { readOwnFlights } from '@/lib/releases/not-back';
import { logFlight } from '@/lib/releases/log-flight';
import { readMetersIn, readMetersOut } from '@/lib/releases/record-meters';
import { reportFinding } from '@/lib/findings/report-finding';
import { readPack } from '@/lib/walkarounds/read-pack';
import { nickedPropeller, valueOf } from '../fixtures/acts';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import { at, minutes, released } from '../fixtures/flights';
import { closeSchools, foundSchool, openSchools, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let founded = 0;

beforeAll(async () => {
  ({ database } = await openSchools());
});
afterAll(() => closeSchools(database));
beforeEach(async () => {
  founded += 1;
  school = await foundSchool(`unread-${founded}`, trainer());
});

const DAY = 24 * 60;
const own = () => ({ requestId: randomUUID() });
const bookedAt = (after: number) =>
  readInOperator(
    school.operatorId,
    async (tx) =>
      (await bookedFlights(tx, school.operatorId, minutes(after).now)).get(school.aircraftId) ?? [],
  );
const countsAt = async (releaseId: string, after: number) =>
  (await bookedAt(after)).some(({ id }) => id === releaseId);
const asked = async (after: number) =>
  valueOf(await readOwnFlights(school.people.renter, { aircraftId: school.aircraftId }, minutes(after))).map(
    ({ releaseId }) => releaseId,
  );
const log = async (releaseId: string, what: string, after: number) =>
  valueOf(
    await logFlight(
      school.people.renter,
      { ...own(), releaseId, what, at: at(after), words: 'As it was.' },
      minutes(after),
    ),
  );
const readOut = async (releaseId: string, after: number, more = 0) =>
  valueOf(
    await readMetersOut(
      school.people.renter,
      {
        ...{ ...own(), releaseId, moment: 'out', readAt: at(after) },
        ...{ hobbsTenths: 21_234 + more, tachTenths: 19_876 + more },
      },
      minutes(Math.max(after, 300)),
    ),
  );
const afternoon = { departLocal: '2026-11-25T14:00', arriveLocal: '2026-11-25T15:12' };
/** What a service would refuse today, and rows from before may hold. */
const recorded = (releaseId: string, what: string, after: number) =>
  writeInOperator(school.operatorId, (tx) =>
    tx.flightEvent.create({
      data: {
        ...{ id: randomUUID(), operatorId: school.operatorId, releaseId, what, words: 'From before.' },
        at: minutes(after).now,
        recordedById: school.people.dispatcher.personId,
        recordedAt: minutes(after).now,
      },
    }),
  );

// The lesson is planned for 72 minutes, 12 tenths; it takes off at minute 61.
test.each([
  [71, 12],
  [72, 12],
  [73, 13],
])('in the air for %i minutes so far counts %i tenths', async (out, plannedTenths) => {
  const releaseId = await released(school);
  await log(releaseId, 'airborne', 61);
  expect(await bookedAt(61 + out)).toMatchObject([{ id: releaseId, state: 'out', plannedTenths }]);
});

test.each([
  [71, 12],
  [72, 12],
  [73, 13],
])(
  'landed after %i minutes and closed without meters counts %i tenths, however long ago',
  async (out, plannedTenths) => {
    const releaseId = await released(school);
    await log(releaseId, 'airborne', 61);
    await log(releaseId, 'landed', 61 + out);
    await log(releaseId, 'closed', 61 + out);
    for (const after of [200, 2 * DAY + 131, 2 * DAY + 132, 2 * DAY + 133, 90 * DAY]) {
      expect(await bookedAt(after)).toMatchObject([
        { id: releaseId, label: 'Rue Fernhollow, meters not read', plannedTenths, hasEnded: true },
      ]);
      expect(await asked(after)).toEqual([releaseId]);
    }
  },
);

test.each([
  ['closed', false],
  ['withdrawn', false],
  ['void', false],
  ['closed', true],
  ['withdrawn', true],
  ['void', true],
])('%s on the ground; the meters were read at departure: %s', async (what, out) => {
  const releaseId = await released(school);
  if (out) await readOut(releaseId, 55);
  await recorded(releaseId, what, 58);
  expect(await countsAt(releaseId, 59)).toBe(out);
  expect(await countsAt(releaseId, 9 * DAY)).toBe(out);
  expect(await asked(9 * DAY)).toEqual(out ? [releaseId] : []);
});

test('its own meters at return end it', async () => {
  const releaseId = await released(school);
  await log(releaseId, 'airborne', 61);
  await log(releaseId, 'landed', 130);
  await log(releaseId, 'closed', 131);
  const read = { ...own(), releaseId, moment: 'in', hobbsTenths: 21_246, tachTenths: 19_886 };
  valueOf(await readMetersIn(school.people.renter, { ...read, readAt: at(140) }, minutes(140)));
  expect(await countsAt(releaseId, 141)).toBe(false);
  expect(await asked(141)).toEqual([]);
});

test.each([
  [-1, true],
  [0, false],
  [1, false],
])('a later flight read %i ms after it landed: its hours count on %s', async (ms, counts) => {
  const first = await released(school);
  const second = await released(school, afternoon, minutes(1));
  await log(first, 'airborne', 61);
  await log(first, 'landed', 121);
  await log(first, 'closed', 122 - 1);
  await readOut(second, 121 + ms / 60_000, 10);
  expect(await countsAt(first, 301)).toBe(counts);
  expect(await asked(301)).toEqual(counts ? [first, second] : [second]);
});

test.each([
  ['airborne', 0, true],
  ['airborne', 1, false],
  ['airborne', 2, false],
  // Nobody saw it fly, and the meters stand where they stood: it did not.
  ['not airborne', 0, false],
])('%s; read later with %i tenths more: its hours count on %s', async (how, more, counts) => {
  const first = await released(school);
  const second = await released(school, afternoon, minutes(1));
  await readOut(first, 55);
  if (how === 'airborne') {
    await log(first, 'airborne', 61);
    await log(first, 'landed', 121);
  }
  await log(first, 'closed', 122);
  await readOut(second, 290, more);
  expect(await countsAt(first, 301)).toBe(counts);
});

test.each([
  [69, ['out']],
  [70, ['planned']],
  [71, ['planned']],
])('in the air from minute %i, void at minute 70: its plan counts as %j', async (took, states) => {
  const plan = {
    ...{ ...own(), aircraftId: school.aircraftId, pilotId: null, words: '', plannedHours: '1.2' },
    ...{ departLocal: '2026-11-25T10:00', arriveLocal: '2026-11-25T11:12' },
  };
  const { plannedFlightId } = valueOf(await planFlight(school.people.dispatcher, plan, minutes(0)));
  const releaseId = await released(school, { plannedFlightId });
  await recorded(releaseId, 'void', 70);
  // Only a take-off before it went void is taken down.
  const late = { ...own(), releaseId, what: 'airborne', at: at(took), words: '' };
  const logged = await logFlight(school.people.renter, late, minutes(80));
  expect(logged.ok).toBe(states[0] === 'out');
  expect((await bookedAt(80)).map(({ state }) => state)).toEqual(states);
});

test('a flight before it that is read late does not know of its hours', async () => {
  const first = await released(school);
  const second = await released(school, afternoon, minutes(1));
  await readOut(first, 55);
  await log(second, 'airborne', 270);
  await log(second, 'landed', 280);
  await log(second, 'closed', 281);
  const read = { ...own(), releaseId: first, moment: 'in', hobbsTenths: 21_246, tachTenths: 19_886 };
  valueOf(await readMetersIn(school.people.renter, { ...read, readAt: at(290) }, minutes(290)));
  expect(await countsAt(second, 301)).toBe(true);
});

test('what a phone takes along says no go of a void release, and what its pilot was warned of', async () => {
  const releaseId = await released(school);
  await readOut(releaseId, 55);
  valueOf(await reportFinding(school.people.renter, nickedPropeller(school), minutes(301)));
  const [mine] = valueOf(
    await readOwnFlights(school.people.renter, { aircraftId: school.aircraftId }, minutes(302)),
  );
  expect(mine).toMatchObject({ releaseId, state: 'void', outcome: 'no-go' });
  expect(mine?.limits.map(({ cite }) => cite)).toEqual(['house-caution', '14cfr91.7(a)', '14cfr91.405(a)']);
  const [aircraft] = valueOf(await readPack(school.people.renter, {}, minutes(302))).aircraft;
  expect(aircraft?.flights).toMatchObject([{ releaseId, state: 'void', outcome: 'no-go', out: {} }]);
});
