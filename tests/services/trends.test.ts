/**
 * Trends read through the service on a real PostgreSQL. Source: issue 4, "trends for measured things (oil used an hour, strut,
 * tyre)"; the arithmetic is in tests/rules/trend.test.ts. Common practice, no other source.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { readInOperator, writeInOperator } from '@/lib/db/scope';
import { recordServicing } from '@/lib/findings/record-servicing';
import { reportFinding } from '@/lib/findings/report-finding';
import { verifyOperator } from '@/lib/records/verify';
import { NO_ANSWER } from '@/lib/rules/walkaround/answers';
import { STARTING_LIST } from '@/lib/rules/walkaround/starting-list';
import { readTrends } from '@/lib/trends/read-trends';
import { finishWalkaround } from '@/lib/walkarounds/finish-walkaround';
import { newestLists } from '@/lib/walkarounds/newest-list';
import { startWalkaround } from '@/lib/walkarounds/start-walkaround';
import { writeList } from '@/lib/walkarounds/write-list';
import { nickedPropeller, problemOf, valueOf } from '../fixtures/acts';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, foundSchool, NOW, openSchools, type School } from '../fixtures/school';

const A_DAY = 86_400_000;
let database: FreshDatabase;
let school: School;
let planId: string;
let founded = 0;

beforeAll(async () => {
  ({ database } = await openSchools());
});
afterAll(() => closeSchools(database));
beforeEach(async () => {
  school = await foundSchool(`trends-${(founded += 1)}`, trainer());
  const list = { typeId: school.typeId, fromVersion: 0, list: STARTING_LIST, why: 'Fitted.' };
  valueOf(await writeList(school.people.manager, { ...list, requestId: randomUUID() }, { now: before(60) }));
  const lists = await readInOperator(school.operatorId, (tx) => newestLists(tx, school.operatorId));
  planId = lists.get(school.typeId)?.id ?? '';
});

const before = (days: number) => new Date(NOW.getTime() - days * A_DAY);

const metersRead = (days: number, ttisTenths: number) =>
  writeInOperator(school.operatorId, (tx) =>
    tx.meterReading.create({
      data: {
        id: randomUUID(),
        operatorId: school.operatorId,
        aircraftId: school.aircraftId,
        at: before(days),
        hobbsTenths: ttisTenths,
        tachTenths: ttisTenths,
        ttisTenths,
        readById: school.people.renter.personId,
      },
    }),
  );

const itemOf = (measurement: string) =>
  STARTING_LIST.stations
    .flatMap(({ items }) => items)
    .find((item) => item.kind === 'number' && item.measurement === measurement)?.key ?? '';

/** A walkaround at which only this was measured. */
async function walked(
  days: number,
  measurement: string,
  values: readonly { value: number; struck?: boolean }[],
): Promise<void> {
  const when = { now: before(days) };
  const at = when.now.toISOString();
  const start = { requestId: randomUUID(), aircraftId: school.aircraftId, startedAt: at, planId };
  const { walkaroundId } = valueOf(await startWalkaround(school.people.renter, start, when));
  const readings = values.map(({ value, struck = false }) => ({ value, at, struck }));
  const finish = {
    requestId: randomUUID(),
    walkaroundId,
    answers: { items: { [itemOf(measurement)]: { ...NO_ANSWER, readings } }, placards: {} },
    finishedAt: at,
  };
  valueOf(await finishWalkaround(school.people.renter, finish, when));
}

const lowOil = async (days: number, value: number): Promise<string> => {
  const input = {
    ...nickedPropeller(school),
    station: 'nose-right',
    findingKey: 'oil-low',
    measurements: { 'oil-quantity': value },
    foundAt: before(days).toISOString(),
  };
  return valueOf(await reportFinding(school.people.renter, input, { now: before(days) })).discrepancyId;
};

const serviced = (discrepancyId: string, days: number, oilAddedTenths?: number) =>
  recordServicing(
    school.people.renter,
    {
      requestId: randomUUID(),
      discrepancyId,
      words: 'A quart added.',
      ...(oilAddedTenths === undefined ? {} : { oilAddedTenths }),
    },
    { now: before(days) },
  );

const read = async () =>
  valueOf(await readTrends(school.people.renter, { aircraftId: school.aircraftId }, { now: NOW }));

test('walkarounds give levels and oil used an hour; a struck reading counts nowhere', async () => {
  await metersRead(20, 1000);
  await walked(20, 'oil-quantity', [{ value: 600, struck: true }, { value: 60 }]);
  await metersRead(15, 1040);
  await walked(15, 'oil-quantity', [{ value: 55 }]);
  const { series, oil } = await read();
  expect(
    series.map(({ measurement, points }) => [measurement.key, points.map(({ value }) => value)]),
  ).toEqual([['oil-quantity', [60, 55]]]);
  expect(oil?.spans).toMatchObject([{ usedTenths: 5, flownTenths: 40, rateThousandths: 125 }]);
  expect(oil?.use).toMatchObject({ recent: 125 });
});

test('oil added at servicing is signed content, counts in the span, and its record verifies', async () => {
  await metersRead(20, 1000);
  const low = await lowOil(20, 45);
  valueOf(await serviced(low, 19.9, 10));
  await metersRead(10, 1050);
  await walked(10, 'oil-quantity', [{ value: 50 }]);
  const { oil } = await read();
  // 4.5 + 1.0 − 5.0 in 5.0 h.
  expect(oil?.added).toMatchObject([{ tenths: 10 }]);
  expect(oil?.spans).toMatchObject([
    { addedTenths: 10, usedTenths: 5, flownTenths: 50, rateThousandths: 100 },
  ]);
  const signed = await readInOperator(school.operatorId, (tx) =>
    tx.determination.findFirstOrThrow({ where: { discrepancyId: low } }),
  );
  expect(signed.content).toMatchObject({ oilAddedTenths: 10 });
  const report = await readInOperator(school.operatorId, (tx) => verifyOperator(tx, school.operatorId));
  expect(report).toMatchObject({ signatures: 1, faults: [] });
});

test('servicing without saying how much: the level rose, the span is left out and said', async () => {
  await metersRead(20, 1000);
  valueOf(await serviced(await lowOil(20, 45), 19));
  await metersRead(10, 1050);
  await walked(10, 'oil-quantity', [{ value: 60 }]);
  const { oil } = await read();
  expect(oil?.spans).toMatchObject([{ leftOut: 'addition-not-recorded', rateThousandths: null }]);
  expect(oil?.use).toBeNull();
});

test.each([0, -5, 201, 0.5])('%s tenths of oil is refused at its field', async (tenths) => {
  const problem = problemOf(await serviced(await lowOil(20, 45), 19, tenths));
  expect(problem.fields).toHaveProperty('oilAddedTenths');
});

test('a stored limit of this aircraft is drawn before its type’s', async () => {
  await writeInOperator(school.operatorId, (tx) =>
    tx.storedLimit.create({
      data: {
        id: randomUUID(),
        operatorId: school.operatorId,
        aircraftId: school.aircraftId,
        findingKey: 'strut-low',
        measurement: 'nose-strut-extension',
        unit: 'tenth-inch',
        min: 22,
        max: 34,
        source: 'Invented manual, section 32',
      },
    }),
  );
  await walked(5, 'nose-strut-extension', [{ value: 28 }]);
  const { series } = await read();
  expect(series).toMatchObject([
    {
      measurement: { key: 'nose-strut-extension' },
      limit: { min: 22, max: 34, source: 'Invented manual, section 32' },
    },
  ]);
});

test('nothing measured is an empty view, older than a year is not shown, another school’s aircraft is not there', async () => {
  await walked(50, 'nose-strut-extension', [{ value: 28 }]);
  const nextYear = new Date(NOW.getTime() + 316 * A_DAY);
  const input = { aircraftId: school.aircraftId };
  expect(valueOf(await readTrends(school.people.renter, input, { now: nextYear }))).toMatchObject({
    series: [],
    oil: null,
  });
  const foreign = { aircraftId: randomUUID() };
  expect(problemOf(await readTrends(school.people.renter, foreign, { now: NOW })).code).toBe('not_found');
});
