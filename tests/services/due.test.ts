/**
 * What falls due, read through the service on a real PostgreSQL. Source: issue 4, "forecast of the due date from flying pace
 * with a band, what is due in the next 30 days / 25 hours, and which deferrals end with it"; paragraphs beside the checks.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { writeInOperator } from '@/lib/db/scope';
import { beginDeferral } from '@/lib/determinations/begin-deferral';
import { readDue } from '@/lib/due/read-due';
import { reportFinding } from '@/lib/findings/report-finding';
import { known } from '@/lib/rules/facts';
import { readAircraftBench } from '@/lib/work/read-aircraft-bench';
import { deadLandingLight, deferralOf, problemOf, valueOf } from '../fixtures/acts';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, foundSchool, NOW, openSchools, register, type School } from '../fixtures/school';

const now = { now: NOW };
const A_DAY = 86_400_000;
let database: FreshDatabase;
let school: School;
let founded = 0;

beforeAll(async () => {
  ({ database } = await openSchools());
});
afterAll(() => closeSchools(database));
beforeEach(async () => {
  school = await foundSchool(`due-${(founded += 1)}`, trainer());
});

const read = async () => valueOf(await readDue(school.people.dispatcher, {}, now));

/** A reading a week for so many weeks, ending today at the time the aircraft has. */
const readings = (weeks: number, tenthsAWeek: number, supersededByOne = false) =>
  writeInOperator(school.operatorId, async (tx) => {
    const { ttisTenths } = await tx.aircraft.findFirstOrThrow({ where: { id: school.aircraftId } });
    for (let week = weeks; week >= 0; week -= 1) {
      const ttis = (ttisTenths ?? 0) - week * tenthsAWeek;
      const row = {
        operatorId: school.operatorId,
        aircraftId: school.aircraftId,
        at: new Date(NOW.getTime() - week * 7 * A_DAY),
        readById: school.people.renter.personId,
      };
      const figures = (value: number) => ({ hobbsTenths: value, tachTenths: value, ttisTenths: value });
      const id = randomUUID();
      if (supersededByOne && week === 2) {
        await tx.meterReading.create({ data: { ...row, id, ...figures(ttis + 9000) } });
        await tx.meterReading.create({
          data: {
            ...row,
            id: randomUUID(),
            ...figures(ttis),
            supersedesId: id,
            why: 'Two digits swapped.',
            correctedAt: NOW,
          },
        });
      } else await tx.meterReading.create({ data: { ...row, id, ...figures(ttis) } });
    }
  });

const hundredHour = async () => {
  const line = (await read()).lines.find(({ requirementKind }) => requirementKind === 'hundred-hour');
  if (!line) throw new Error('no 100-hour inspection');
  return line;
};

test('hours become a date at the pace of the last weeks; without readings there is none, and it says so', async () => {
  expect(await hundredHour()).toMatchObject({
    noForecast: expect.stringContaining('how much it flies') as string,
  });
  await readings(12, 50);
  const line = await hundredHour();
  const days = Math.floor(((line.remainingTenths ?? 0) / 50) * 7);
  const on = new Date(Date.parse('2026-11-25T00:00:00Z') + days * A_DAY).toISOString().slice(0, 10);
  expect(line).toMatchObject({ noForecast: null, first: { by: 'hours', on, earliest: on } });
  expect(line.aircraft).toMatchObject({ tenthsAWeek: 50, paceWeeks: 12, today: '2026-11-25' });
});

test('a mistyped reading that was corrected does not count in the pace', async () => {
  await readings(12, 50, true);
  expect((await hundredHour()).aircraft.tenthsAWeek).toBe(50);
});

test('a parked aircraft: no date for its hours, and that is said', async () => {
  await readings(12, 0);
  expect(await hundredHour()).toMatchObject({ noForecast: 'no date: it has not flown in 12 weeks' });
});

test('the annual and the 100-hour name the live deferral that ends with them (91.405(c)); a test does not', async () => {
  const { discrepancyId } = valueOf(await reportFinding(school.people.renter, deadLandingLight(school), now));
  valueOf(await beginDeferral(school.people.airframe, deferralOf(discrepancyId), now));
  const ends = new Map((await read()).lines.map((line) => [line.requirementKind, line.endsDeferrals]));
  expect(ends.get('annual')).toMatchObject([{ discrepancyId }]);
  expect(ends.get('hundred-hour')).toMatchObject([{ discrepancyId }]);
  expect(ends.get('transponder')).toEqual([]);
});

test('overdue first, then what nobody knows, then soon, then later; over the whole fleet', async () => {
  const base = trainer({ registration: 'N0DUE2' });
  const vor = base.requirements.find(({ kind }) => kind === 'vor-check');
  if (!vor?.lastDone.known) throw new Error('the trainer has a VOR check');
  const lapsed = { ...vor, lastDone: known({ ...vor.lastDone.value, on: '2026-10-01' }) };
  await writeInOperator(school.operatorId, (tx) =>
    register(tx, school.operatorId, school.baseId, {
      ...base,
      requirements: [...base.requirements.filter(({ kind }) => kind !== 'vor-check'), lapsed],
    }),
  );
  const { lines, aircraft } = await read();
  expect(aircraft.map(({ registration }) => registration)).toContain('N0DUE2');
  expect(lines[0]).toMatchObject({
    requirementKind: 'vor-check',
    group: 'overdue',
    aircraft: { registration: 'N0DUE2' },
  });
  const order = ['overdue', 'unknown', 'soon', 'later'];
  const places = lines.map(({ group }) => order.indexOf(group));
  expect(places).toEqual(places.toSorted((a, b) => a - b));
});

test('a retired aircraft falls due no more', async () => {
  await writeInOperator(school.operatorId, (tx) =>
    tx.aircraft.update({
      where: { operatorId_id: { operatorId: school.operatorId, id: school.aircraftId } },
      data: { retiredOn: NOW },
    }),
  );
  expect((await read()).lines).toEqual([]);
});

test('the bench’s page of one aircraft has the same lines, and is the mechanic’s and manager’s', async () => {
  const input = { aircraftId: school.aircraftId };
  const page = valueOf(await readAircraftBench(school.people.airframe, input, now));
  expect(page.due).toEqual((await read()).lines);
  expect(page.papers.map(({ kind }) => kind)).toContain('registration');
  expect(problemOf(await readAircraftBench(school.people.renter, input, now)).code).toBe('not_allowed');
  const nowhere = { aircraftId: randomUUID() };
  expect(problemOf(await readAircraftBench(school.people.airframe, nowhere, now)).code).toBe('not_found');
});
