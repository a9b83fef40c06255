/**
 * Repeat defects through the services on a real PostgreSQL. Source: issue 4, "the same system within 30 days or 10 flights of a
 * sign-off is flagged on the new write-up with its history; could not duplicate closures count".
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { writeInOperator } from '@/lib/db/scope';
import { readWriteUp } from '@/lib/determinations/read-write-up';
import { recordServicing } from '@/lib/findings/record-servicing';
import { reportFinding } from '@/lib/findings/report-finding';
import { enterWork } from '@/lib/work/enter-work';
import { readBench } from '@/lib/work/read-bench';
import { signWork } from '@/lib/work/sign-work';
import { startWork } from '@/lib/work/start-work';
import { deadLandingLight, entryOf, nickedPropeller, signatureOf, startOf, valueOf } from '../fixtures/acts';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, foundSchool, NOW, openSchools, type School } from '../fixtures/school';

const A_DAY = 86_400_000;
let database: FreshDatabase;
let school: School;
let founded = 0;

beforeAll(async () => {
  ({ database } = await openSchools());
});
afterAll(() => closeSchools(database));
beforeEach(async () => {
  school = await foundSchool(`repeats-${(founded += 1)}`, trainer());
});

const later = (days: number) => ({ now: new Date(NOW.getTime() + days * A_DAY) });
const dayOf = ({ now }: { now: Date }) => now.toISOString().slice(0, 10);

async function writtenUp(finding: object, when = later(0)): Promise<string> {
  const input = { ...nickedPropeller(school), ...finding, foundAt: when.now.toISOString() };
  return valueOf(await reportFinding(school.people.renter, input, when)).discrepancyId;
}

async function signed(discrepancyId: string, entry: object = {}, when = later(0)): Promise<void> {
  const mechanic = school.people.powerplant;
  const { workId } = valueOf(await startWork(mechanic, startOf(discrepancyId), when));
  const input = { ...entryOf(workId, 'Pim Castlewick'), completedOn: dayOf(when), ...entry };
  const { entryHash } = valueOf(await enterWork(mechanic, input, when));
  valueOf(await signWork(mechanic, signatureOf(workId, entryHash), when));
}

const read = async (discrepancyId: string, when = later(0)) =>
  valueOf(await readWriteUp(school.people.powerplant, { discrepancyId }, when)).repeat;

/** Eleven flights released and long over, so that the flights alone would not make it a repeat. */
const flown = (count: number, day: number) =>
  writeInOperator(school.operatorId, async (tx) => {
    for (let flight = 0; flight < count; flight += 1) {
      const departAt = new Date(NOW.getTime() + day * A_DAY + flight * 3_600_000);
      await tx.release.create({
        data: {
          id: randomUUID(),
          operatorId: school.operatorId,
          aircraftId: school.aircraftId,
          dispatcherId: school.people.dispatcher.personId,
          departAt,
          arriveAt: new Date(departAt.getTime() + 1_800_000),
          flight: {},
          facts: {},
          factsVersion: 1,
          outcome: 'go',
          answer: {},
          rulesVersion: 'test',
          limitsPassedOn: false,
          hash: 'test',
          releasedAt: departAt,
        },
      });
    }
  });

const readings = (days: readonly (readonly [day: number, ttisTenths: number])[]) =>
  writeInOperator(school.operatorId, (tx) =>
    tx.meterReading.createMany({
      data: days.map(([day, ttisTenths]) => ({
        id: randomUUID(),
        operatorId: school.operatorId,
        aircraftId: school.aircraftId,
        at: new Date(NOW.getTime() + day * A_DAY),
        hobbsTenths: ttisTenths,
        tachTenths: ttisTenths,
        ttisTenths,
        readById: school.people.renter.personId,
      })),
    }),
  );

test('the first is no repeat; the same finding after its sign-off is, with what was signed', async () => {
  const first = await writtenUp({});
  expect(await read(first)).toBeNull();
  await signed(first);
  const again = await writtenUp({}, later(12));
  expect(await read(again, later(12))).toMatchObject({
    earlier: [
      {
        discrepancyId: first,
        how: 'repaired',
        sameBy: 'finding',
        signedBy: 'Pim Castlewick',
        words: expect.stringContaining('Nick on blade 1 dressed out') as string,
        days: 12,
        inWindow: true,
      },
    ],
  });
});

test.each([
  { days: 29, isRepeat: true },
  { days: 30, isRepeat: true },
  { days: 31, isRepeat: false },
])('$days days and eleven flights after: repeat $isRepeat', async ({ days, isRepeat }) => {
  await signed(await writtenUp({}));
  await flown(11, 1);
  const again = await writtenUp({}, later(days));
  expect((await read(again, later(days))) !== null).toBe(isRepeat);
});

test.each([
  { flights: 9, isRepeat: true },
  { flights: 10, isRepeat: true },
  { flights: 11, isRepeat: false },
])('two months and $flights flights on record after: repeat $isRepeat', async ({ flights, isRepeat }) => {
  await signed(await writtenUp({}));
  await flown(flights, 1);
  // The meters ran no further than those flights, of half an hour each, explain.
  await readings([[40, 45_123 + flights * 5]]);
  const again = await writtenUp({}, later(60));
  const repeat = await read(again, later(60));
  expect(repeat !== null).toBe(isRepeat);
  if (repeat) expect(repeat.earlier[0]?.flights).toBe(flights);
});

test('two months later and the meters ran on without a release: flights not known, so no repeat by them', async () => {
  await signed(await writtenUp({}));
  await readings([[40, 45_123 + 300]]);
  expect(await read(await writtenUp({}, later(60)), later(60))).toBeNull();
});

test('could not duplicate counts and is marked; how it was looked for is part of the history', async () => {
  const dead = { ...deadLandingLight(school) };
  const { discrepancyId } = valueOf(await reportFinding(school.people.renter, dead, later(0)));
  await signed(discrepancyId, {
    outcome: 'could-not-duplicate',
    lookedFor: 'Switched forty times, cold and warm.',
    description: 'The light burned every time.',
  });
  const input = { ...deadLandingLight(school), foundAt: later(5).now.toISOString() };
  const again = valueOf(await reportFinding(school.people.renter, input, later(5)));
  expect((await read(again.discrepancyId, later(5)))?.earlier).toMatchObject([
    {
      how: 'could-not-duplicate',
      words: 'Switched forty times, cold and warm. The light burned every time.',
    },
  ]);
});

test('several earlier ones: the one closed last first; another system is left out', async () => {
  const first = await writtenUp({});
  await signed(first);
  const second = await writtenUp({}, later(3));
  await signed(second, {}, later(3));
  valueOf(await reportFinding(school.people.renter, deadLandingLight(school), later(4)));
  const third = await writtenUp({}, later(6));
  expect(
    (await read(third, later(6)))?.earlier.map(({ discrepancyId, days }) => [discrepancyId, days]),
  ).toEqual([
    [second, 3],
    [first, 6],
  ]);
});

test('servicing that nobody signed as work is no earlier sign-off', async () => {
  const oil = { station: 'nose-right', findingKey: 'oil-low', measurements: { 'oil-quantity': 40 } };
  const first = await writtenUp(oil);
  const input = { requestId: randomUUID(), discrepancyId: first, words: 'A quart added.' };
  valueOf(await recordServicing(school.people.renter, input, later(0)));
  expect(await read(await writtenUp(oil, later(2)), later(2))).toBeNull();
});

test('the queue marks the repeat and not what is new', async () => {
  await signed(await writtenUp({}));
  const again = await writtenUp({}, later(5));
  const light = valueOf(await reportFinding(school.people.renter, deadLandingLight(school), later(5)));
  const { rows } = valueOf(await readBench(school.people.powerplant, {}, later(5)));
  const repeats = new Map(rows.map((row) => [row.writeUp.id, row.repeat]));
  expect(repeats.get(again)).toBe(true);
  expect(repeats.get(light.discrepancyId)).toBe(false);
});
