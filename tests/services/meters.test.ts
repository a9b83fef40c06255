/**
 * Meters at departure and return on a real PostgreSQL. Sources: issue 3, "Hobbs and tach out/in are taken at release and
 * return, with sanity checks (never backwards, not more than the clock allows), and feed hours and inspections"; 14 CFR
 * 1.1 (time in service) and 91.409(b) beside their checks; the rest is our own design.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { readInOperator, writeInOperator } from '@/lib/db/scope';
import { readAircraftFile } from '@/lib/fleet/read-aircraft-file';
import { withClient } from '@/lib/operate/connection';
import { answerFlight } from '@/lib/releases/answer-flight';
import { readOwnFlights } from '@/lib/releases/not-back';
import { readRelease, readReleases } from '@/lib/releases/read-desk';
import { readMetersIn, readMetersOut } from '@/lib/releases/record-meters';
import { releaseFlight } from '@/lib/releases/release-flight';
import { dayLesson, problemOf, valueOf } from '../fixtures/acts';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, foundSchool, NOW, openSchools, type School } from '../fixtures/school';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;

/** The trainer as it was entered: no reading on record, only figures. */
const HOBBS = 21234;
const TACH = 19876;
const TTIS = 45123;

let database: FreshDatabase;
let other: School;
let school: School;
let founded = 0;

beforeAll(async () => {
  ({ database, other } = await openSchools());
});
afterAll(() => closeSchools(database));
// A school of its own for each test: readings are never taken back.
beforeEach(async () => {
  school = await foundSchool(`meters-${(founded += 1)}`, trainer());
});

const at = (ms: number) => new Date(NOW.getTime() + ms);

/** Releases a lesson now, on the facts as they are. */
async function release(of: School = school): Promise<string> {
  const lesson = dayLesson(of);
  const { factsVersion } = valueOf(await answerFlight(of.people.dispatcher, lesson, { now: NOW }));
  const input = { ...lesson, requestId: randomUUID(), factsVersion, limitsPassedOn: false };
  return valueOf(await releaseFlight(of.people.dispatcher, input, { now: NOW })).releaseId;
}

/** A reading so many tenths above the figures the aircraft was entered with, `ms` after the release. */
const reading = (releaseId: string, moment: 'out' | 'in', ms: number, hobbs: number, tach = hobbs) => ({
  requestId: randomUUID(),
  releaseId,
  moment,
  hobbsTenths: HOBBS + hobbs,
  tachTenths: TACH + tach,
  readAt: at(ms).toISOString(),
});

/** Reads as the pilot in command at that very moment. */
const out = (releaseId: string, ms: number, hobbs: number, tach = hobbs) =>
  readMetersOut(school.people.renter, reading(releaseId, 'out', ms, hobbs, tach), { now: at(ms) });
const back = (releaseId: string, ms: number, hobbs: number, tach = hobbs) =>
  readMetersIn(school.people.renter, reading(releaseId, 'in', ms, hobbs, tach), { now: at(ms) });

const aircraft = () =>
  readInOperator(school.operatorId, (tx) =>
    tx.aircraft.findUniqueOrThrow({
      where: { operatorId_id: { operatorId: school.operatorId, id: school.aircraftId } },
      select: { hobbsTenths: true, tachTenths: true, ttisTenths: true, factsVersion: true },
    }),
  );
const countReadings = () =>
  readInOperator(school.operatorId, (tx) =>
    tx.meterReading.count({ where: { operatorId: school.operatorId } }),
  );
const say = async (meter: 'hobbs' | 'tach') =>
  writeInOperator(school.operatorId, (tx) =>
    tx.aircraft.update({
      where: { operatorId_id: { operatorId: school.operatorId, id: school.aircraftId } },
      data: { ttisMeter: meter },
    }),
  );

test('out and in: hours flown, hours of the aircraft, and what is left of the 100 hours move (91.409(b))', async () => {
  const releaseId = await release();
  const left = async () =>
    valueOf(
      await readAircraftFile(school.people.dispatcher, { aircraftId: school.aircraftId }, { now: NOW }),
    ).requirements.find(({ kind }) => kind === 'hundred-hour')?.remainingTenths;
  // Done at 4460.0, due at 4560.0; the aircraft stands at 4512.3.
  expect(await left()).toBe(477);
  await say('tach');

  const departed = valueOf(await out(releaseId, 0, 0));
  expect(departed).toMatchObject({ wasThere: false, notes: [], flown: null, ttisTenths: TTIS });
  const returned = valueOf(await back(releaseId, 75 * MINUTE, 12, 10));
  expect(returned).toMatchObject({
    notes: [],
    flown: { hobbsTenths: 12, tachTenths: 10 },
    ttisTenths: TTIS + 10,
  });
  expect(await aircraft()).toMatchObject({
    hobbsTenths: HOBBS + 12,
    tachTenths: TACH + 10,
    ttisTenths: TTIS + 10,
  });
  expect(await left()).toBe(467);

  const file = valueOf(await readRelease(school.people.dispatcher, { releaseId }));
  expect(file.meters).toEqual({
    out: {
      hobbsTenths: HOBBS,
      tachTenths: TACH,
      ttisTenths: TTIS,
      at: at(0).toISOString(),
      by: 'Rue Fernhollow',
    },
    back: {
      hobbsTenths: HOBBS + 12,
      tachTenths: TACH + 10,
      ttisTenths: TTIS + 10,
      at: at(75 * MINUTE).toISOString(),
      by: 'Rue Fernhollow',
    },
    flown: { hobbsTenths: 12, tachTenths: 10 },
  });
  expect(file.lastOnRecord).toMatchObject({ hobbsTenths: HOBBS + 12, at: at(75 * MINUTE).toISOString() });
  const [listed] = valueOf(await readReleases(school.people.dispatcher, {}));
  expect(listed?.meters.flown).toEqual({ hobbsTenths: 12, tachTenths: 10 });
});

test('never backwards: each meter is refused at its own field, and nothing is written', async () => {
  const releaseId = await release();
  expect(problemOf(await out(releaseId, 0, -1, 0)).fields).toEqual({
    hobbsTenths: ['Hobbs cannot run back: the reading before it is 2123.4 h.'],
  });
  expect(Object.keys(problemOf(await out(releaseId, 0, 0, -1)).fields ?? {})).toEqual(['tachTenths']);
  expect(await countReadings()).toBe(0);
  valueOf(await out(releaseId, 0, 0));
  const { factsVersion } = await aircraft();
  expect(Object.keys(problemOf(await back(releaseId, HOUR, -1, 5)).fields ?? {})).toEqual(['hobbsTenths']);
  expect(await aircraft()).toMatchObject({ hobbsTenths: HOBBS, factsVersion });
});

test.each([
  ['1.0 h in an hour', 10, 'ok'],
  ['1.1 h in an hour', 11, 'ok'],
  ['1.2 h in an hour', 12, 'hobbsTenths'],
])('not more than the clock allows (our design): %s', async (_, hobbs, outcome) => {
  const releaseId = await release();
  valueOf(await out(releaseId, 0, 0));
  const result = await back(releaseId, HOUR, hobbs, 9);
  expect(result.ok ? 'ok' : Object.keys(result.problem.fields ?? {}).join()).toBe(outcome);
});

test('times: a return before its departure and an instant to come are refused; a clock five minutes ahead is not', async () => {
  const releaseId = await release();
  valueOf(await out(releaseId, HOUR, 0));
  const early = reading(releaseId, 'in', HOUR - MINUTE, 0);
  expect(problemOf(await readMetersIn(school.people.renter, early, { now: at(HOUR) })).fields).toEqual({
    readAt: ['The return cannot be earlier than the departure.'],
  });
  const ahead = (ms: number) =>
    readMetersIn(school.people.renter, reading(releaseId, 'in', 2 * HOUR + ms, 5), { now: at(2 * HOUR) });
  expect(problemOf(await ahead(5 * MINUTE + 1)).fields).toEqual({ readAt: ['This time is still to come.'] });
  // It is kept at our clock, so that what is read here a minute later is not "before" it.
  expect(valueOf(await ahead(5 * MINUTE)).readAt).toBe(at(2 * HOUR).toISOString());
});

test('hours between the last reading and a departure are told as a gap with its size, and count', async () => {
  const first = await release();
  valueOf(await out(first, 0, 0));
  valueOf(await back(first, HOUR, 8, 8));
  const second = await release();
  const { notes, ttisTenths } = valueOf(await out(second, 9 * HOUR, 22, 20));
  expect(notes.map(({ because }) => because)).toEqual([
    'Hobbs stands 1.4 h above the last reading: hours that nobody wrote down. They count.',
    'Tach stands 1.2 h above the last reading: hours that nobody wrote down. They count.',
    // 14 CFR 1.1: a meter only stands in for time in service; nobody has said which one here.
    'Which meter counts time in service is not known. Strict reading: the larger gain counts, 1.4 h.',
  ]);
  expect(ttisTenths).toBe(TTIS + 22);
});

test('a return of which nobody read the departure is counted from the last reading, and says so', async () => {
  const first = await release();
  valueOf(await out(first, 0, 0));
  valueOf(await back(first, HOUR, 8, 8));
  const second = await release();
  const { notes, flown } = valueOf(await back(second, 3 * HOUR, 20, 19));
  expect(flown).toEqual({ hobbsTenths: 12, tachTenths: 11 });
  expect(notes[0]?.because).toBe(
    'Nobody read the meters at departure. The last reading stands for it: Hobbs 2124.2 h, Tach 1988.4 h.',
  );
  expect(valueOf(await readRelease(school.people.dispatcher, { releaseId: second })).meters).toMatchObject({
    out: null,
    flown: { hobbsTenths: 12, tachTenths: 11 },
  });
});

test('a phone that was long without signal: a late reading fits between its neighbours and sets nothing back', async () => {
  const [morning, evening] = [await release(), await release()];
  valueOf(await out(morning, 0, 0));
  valueOf(await out(evening, 10 * HOUR, 15, 15));
  const standing = await aircraft();
  // The return of the morning's flight was read after two hours and comes in after eleven.
  const late = (hobbs: number, tach = hobbs) =>
    readMetersIn(school.people.renter, reading(morning, 'in', 2 * HOUR, hobbs, tach), { now: at(11 * HOUR) });
  expect(problemOf(await late(16, 15)).fields).toEqual({
    hobbsTenths: ['Hobbs cannot run back: a later reading is 2124.9 h.'],
  });
  expect(Object.keys(problemOf(await late(-1, 15)).fields ?? {})).toEqual(['hobbsTenths']);
  const { notes, flown, ttisTenths } = valueOf(await late(15));
  expect(notes.map(({ kind }) => kind)).toEqual(['late']);
  expect(flown).toEqual({ hobbsTenths: 15, tachTenths: 15 });
  expect(ttisTenths).toBe(TTIS + 15);
  expect(await aircraft()).toEqual({ ...standing, factsVersion: standing.factsVersion + 1 });
  expect(
    valueOf(await readRelease(school.people.dispatcher, { releaseId: morning })).meters.back?.ttisTenths,
  ).toBe(TTIS + 15);
});

test('a departure that comes in after its return is held before it', async () => {
  const releaseId = await release();
  valueOf(await back(releaseId, 2 * HOUR, 12));
  const lateOut = (ms: number, hobbs: number) =>
    readMetersOut(school.people.renter, reading(releaseId, 'out', ms, hobbs), { now: at(4 * HOUR) });
  expect(problemOf(await lateOut(3 * HOUR, 12)).fields).toEqual({
    readAt: ['The departure cannot be later than the return.'],
  });
  valueOf(await lateOut(HOUR, 2));
  expect(valueOf(await readRelease(school.people.dispatcher, { releaseId })).meters.flown).toEqual({
    hobbsTenths: 10,
    tachTenths: 10,
  });
  expect(await aircraft()).toMatchObject({ hobbsTenths: HOBBS + 12, ttisTenths: TTIS + 12 });
});

test.each([
  ['hobbs', TTIS + 9],
  ['tach', TTIS + 7],
  // Nobody has said: the strict reading.
  [null, TTIS + 9],
] as const)('time in service by the meter of the aircraft (14 CFR 1.1): %s', async (meter, ttisTenths) => {
  if (meter) await say(meter);
  const releaseId = await release();
  valueOf(await out(releaseId, 0, 0));
  const returned = valueOf(await back(releaseId, HOUR, 9, 7));
  expect(returned.ttisTenths).toBe(ttisTenths);
  expect(returned.notes.map(({ kind }) => kind)).toEqual(meter ? [] : ['strict']);
});

test('a total that is not known stays so, on the reading too; meters not known are taken as they are', async () => {
  const releaseId = await release();
  await withClient(database.adminUrl, (client) =>
    client.query(
      'UPDATE aircraft SET ttis_tenths = NULL, hobbs_tenths = NULL, tach_tenths = NULL WHERE id = $1',
      [school.aircraftId],
    ),
  );
  const departed = valueOf(await out(releaseId, 0, 7000, 0));
  expect(departed.notes.map(({ kind }) => kind)).toEqual(['first', 'first']);
  expect(valueOf(await back(releaseId, HOUR, 7009, 9)).ttisTenths).toBeNull();
  expect(await aircraft()).toMatchObject({ hobbsTenths: HOBBS + 7009, ttisTenths: null });
});

test('twice: the same figures are there already, whoever sends them; other figures are a conflict in words', async () => {
  const releaseId = await release();
  const { renter, dispatcher } = school.people;
  const first = reading(releaseId, 'out', 0, 0);
  const answer = valueOf(await readMetersOut(renter, first, { now: at(0) }));
  // An answer that was lost, sent again under its number.
  expect(valueOf(await readMetersOut(renter, first, { now: at(HOUR) }))).toEqual(answer);
  const again = await readMetersOut(dispatcher, reading(releaseId, 'out', MINUTE, 0), { now: at(MINUTE) });
  expect(valueOf(again)).toMatchObject({ wasThere: true, readAt: at(0).toISOString() });
  const differing = problemOf(
    await readMetersOut(dispatcher, reading(releaseId, 'out', MINUTE, 1), { now: at(MINUTE) }),
  );
  expect(differing).toMatchObject({
    code: 'conflict',
    say: 'The departure of this flight was written down before, by Rue Fernhollow: Hobbs 2123.4, Tach 1987.6. It stays as it is.',
  });
  valueOf(await back(releaseId, HOUR, 5));
  expect(problemOf(await back(releaseId, HOUR, 6)).code).toBe('conflict');
  expect(await countReadings()).toBe(2);
});

test('who: the pilot in command and the desk; another pilot is told in words, another school that it is not there', async () => {
  const releaseId = await release();
  const asks = (ref: School['people']['renter']) =>
    readMetersOut(ref, reading(releaseId, 'out', 0, 0), { now: at(0) });
  expect(problemOf(await asks(school.people.student))).toMatchObject({
    code: 'not_allowed',
    say: 'The meters of a flight are written down by its pilot in command or at the desk.',
  });
  expect(problemOf(await asks(school.people.airframe)).code).toBe('not_allowed');
  expect(problemOf(await asks(other.people.dispatcher)).code).toBe('not_found');
  expect(await countReadings()).toBe(0);
  const { aircraftId, people } = school;
  const own = async (ref: School['people']['renter'], ms = 0) =>
    valueOf(await readOwnFlights(ref, { aircraftId }, { now: at(ms) })).map((flight) => flight.releaseId);
  expect(await own(people.renter)).toEqual([releaseId]);
  expect(await own(people.student)).toEqual([]);
  valueOf(await asks(people.dispatcher));
  // Out and never read in: it stays in sight, however long ago it was to be back.
  expect(await own(people.renter, 90 * 24 * HOUR)).toEqual([releaseId]);
  valueOf(await readMetersIn(people.manager, reading(releaseId, 'in', HOUR, 9), { now: at(HOUR) }));
  expect(await own(people.renter)).toEqual([]);
});

test('an inspection that is overrun: the hours are recorded, and the next answer is no go (91.409(b))', async () => {
  const releaseId = await release();
  const { dispatcher } = school.people;
  const lesson = dayLesson(school);
  const answer = async () => valueOf(await answerFlight(dispatcher, lesson, { now: NOW })).answer;
  const before = valueOf(await answerFlight(dispatcher, lesson, { now: NOW }));
  valueOf(await out(releaseId, 0, 0));
  // 47.7 h left of the 100 hours. A lesson of 1.2 h still fits after 46.5 h, and no more.
  valueOf(await back(releaseId, 60 * HOUR, 465));
  expect((await answer()).outcome).toBe('go');
  const second = await release();
  valueOf(await out(second, 61 * HOUR, 466));
  const now = await answer();
  expect(now.outcome).toBe('no-go');
  expect(now.lines.filter(({ effect }) => effect === 'bars').map(({ cite }) => cite)).toEqual([
    '14cfr91.409(b)',
  ]);
  // Over the limit itself the hours are taken all the same.
  expect(valueOf(await back(second, 75 * HOUR, 480)).ttisTenths).toBe(TTIS + 480);
  // What was answered before the readings cannot be released on any more.
  const stale = await releaseFlight(
    dispatcher,
    { ...lesson, requestId: randomUUID(), factsVersion: before.factsVersion, limitsPassedOn: false },
    { now: NOW },
  );
  expect(['no_go', 'superseded']).toContain(problemOf(stale).code);
});

test('an answer given before a reading is superseded, also when nothing else changed', async () => {
  const releaseId = await release();
  const { dispatcher } = school.people;
  const lesson = dayLesson(school);
  const { factsVersion } = valueOf(await answerFlight(dispatcher, lesson, { now: NOW }));
  valueOf(await out(releaseId, 0, 0));
  const input = { ...lesson, requestId: randomUUID(), factsVersion, limitsPassedOn: false };
  expect(problemOf(await releaseFlight(dispatcher, input, { now: NOW })).code).toBe('superseded');
});

test('a reading can be neither changed nor taken away (append-only)', async () => {
  const releaseId = await release();
  valueOf(await out(releaseId, 0, 0));
  for (const sql of ['UPDATE meter_reading SET hobbs_tenths = 1', 'DELETE FROM meter_reading']) {
    await expect(withClient(database.adminUrl, (client) => client.query(sql))).rejects.toThrow(
      /never changed/,
    );
  }
});
