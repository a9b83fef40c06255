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
import { correctMeters } from '@/lib/releases/correct-meters';
import { readOwnFlights } from '@/lib/releases/not-back';
import { readRelease, readReleases } from '@/lib/releases/read-desk';
import { readMetersIn, readMetersOut } from '@/lib/releases/record-meters';
import { releaseFlight } from '@/lib/releases/release-flight';
import { reportFinding } from '@/lib/findings/report-finding';
import { enterWork } from '@/lib/work/enter-work';
import { startWork } from '@/lib/work/start-work';
import { readPack } from '@/lib/walkarounds/read-pack';
import { dayLesson, entryOf, nickedPropeller, problemOf, startOf, valueOf } from '../fixtures/acts';
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

/** The same lesson in the afternoon: one aircraft is not released for two flights at once. */
const AFTERNOON = { departLocal: '2026-11-25T13:00', arriveLocal: '2026-11-25T14:12' };

/** Releases a lesson now, on the facts as they are. */
async function release(of: School = school, times: Partial<typeof AFTERNOON> = {}): Promise<string> {
  const lesson = { ...dayLesson(of), ...times };
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
      id: expect.any(String) as string,
      superseded: [],
    },
    back: {
      hobbsTenths: HOBBS + 12,
      tachTenths: TACH + 10,
      ttisTenths: TTIS + 10,
      at: at(75 * MINUTE).toISOString(),
      by: 'Rue Fernhollow',
      id: expect.any(String) as string,
      superseded: [],
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
    hobbsTenths: [
      'Hobbs cannot run back: the reading before it is 2123.4 h. If that is mistyped, the desk can correct it.',
    ],
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
  const [morning, evening] = [await release(), await release(school, AFTERNOON)];
  valueOf(await out(morning, 0, 0));
  valueOf(await out(evening, 10 * HOUR, 15, 15));
  const standing = await aircraft();
  // The return of the morning's flight was read after two hours and comes in after eleven.
  const late = (hobbs: number, tach = hobbs) =>
    readMetersIn(school.people.renter, reading(morning, 'in', 2 * HOUR, hobbs, tach), { now: at(11 * HOUR) });
  expect(problemOf(await late(16, 15)).fields).toEqual({
    hobbsTenths: [
      'Hobbs cannot run back: a later reading is 2124.9 h. If that is mistyped, the desk can correct it.',
    ],
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
    say: 'The departure of this flight was written down before, by Rue Fernhollow: Hobbs 2123.4, Tach 1987.6. If that is mistyped, the desk can correct it.',
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

/**
 * Corrections. Records are append-only and meters never run back, so a mistyped reading would refuse every true one after
 * it. The way out is our own design, no source: as in any log book the wrong entry stays and a new one says why.
 */
const metersOf = async (releaseId: string) =>
  valueOf(await readRelease(school.people.dispatcher, { releaseId })).meters;
const DESK = 'If that is mistyped, the desk can correct it.';

interface Typed {
  readonly hobbs: number;
  readonly tach?: number;
  readonly back?: { readonly hobbs: number; readonly tach?: number };
  readonly readingId?: string;
  readonly why?: string;
}

/** What corrects the reading that stands at this end of the flight, so many tenths above the figures as entered. */
async function correction(releaseId: string, moment: 'out' | 'in', typed: Typed) {
  const { out: departure, back: returned } = await metersOf(releaseId);
  const figures = ({ hobbs, tach = hobbs }: { hobbs: number; tach?: number }) => ({
    hobbsTenths: HOBBS + hobbs,
    tachTenths: TACH + tach,
  });
  return {
    requestId: randomUUID(),
    readingId: typed.readingId ?? (moment === 'out' ? departure : returned)?.id,
    ...figures(typed),
    back: typed.back ? { readingId: returned?.id, ...figures(typed.back) } : null,
    why: typed.why ?? 'Two digits swapped.',
  };
}
const correct = async (releaseId: string, moment: 'out' | 'in', typed: Typed, ms = 10 * HOUR) =>
  correctMeters(school.people.dispatcher, await correction(releaseId, moment, typed), { now: at(ms) });

const rows = () =>
  readInOperator(school.operatorId, (tx) =>
    tx.meterReading.findMany({ where: { operatorId: school.operatorId }, orderBy: { hobbsTenths: 'asc' } }),
  );

test('a mistyped departure is superseded: it stays on record, the hours fall, and the true return is taken', async () => {
  const releaseId = await release();
  valueOf(await out(releaseId, 0, 900, 0));
  expect(await aircraft()).toMatchObject({ hobbsTenths: HOBBS + 900, ttisTenths: TTIS + 900 });
  expect(problemOf(await back(releaseId, HOUR, 10)).fields?.hobbsTenths).toEqual([
    `Hobbs cannot run back: at departure it was 2213.4 h. ${DESK}`,
  ]);
  const [wrong] = await rows();
  const { factsVersion } = await aircraft();

  const sent = await correction(releaseId, 'out', { hobbs: 0 });
  const given = valueOf(await correctMeters(school.people.dispatcher, sent, { now: at(HOUR) }));
  expect(given).toEqual({ releaseId, moment: 'out', isBackToo: false, notes: [], ttisTenths: TTIS });
  expect(await aircraft()).toEqual({
    hobbsTenths: HOBBS,
    tachTenths: TACH,
    ttisTenths: TTIS,
    factsVersion: factsVersion + 1,
  });
  // Unchanged, and the new one names it.
  const [right, still] = await rows();
  expect(still).toEqual(wrong);
  expect(right).toMatchObject({
    id: sent.requestId,
    supersedesId: wrong?.id,
    why: 'Two digits swapped.',
    at: at(0),
    correctedAt: at(HOUR),
    readById: school.people.dispatcher.personId,
    ttisTenths: TTIS,
  });
  expect((await metersOf(releaseId)).out).toMatchObject({
    hobbsTenths: HOBBS,
    at: at(0).toISOString(),
    superseded: [
      {
        id: wrong?.id,
        hobbsTenths: HOBBS + 900,
        tachTenths: TACH,
        by: 'Rue Fernhollow',
        supersededAt: at(HOUR).toISOString(),
        because: 'Two digits swapped.',
      },
    ],
  });
  // Whoever reads the figures finds the true ones: the phone's pack, one's own flights, the last on record.
  const pack = valueOf(await readPack(school.people.renter, {}, { now: at(HOUR) })).aircraft[0];
  expect(pack?.meters).toMatchObject({ hobbsTenths: HOBBS, at: at(0).toISOString() });
  expect(pack?.flights.map((flight) => flight.out?.hobbsTenths)).toEqual([HOBBS]);
  const { aircraftId, people } = school;
  const [own] = valueOf(await readOwnFlights(people.renter, { aircraftId }, { now: at(HOUR) }));
  expect(own?.out?.hobbsTenths).toBe(HOBBS);
  expect(valueOf(await readRelease(people.dispatcher, { releaseId })).lastOnRecord.hobbsTenths).toBe(HOBBS);
  expect(valueOf(await back(releaseId, HOUR, 10))).toMatchObject({
    flown: { hobbsTenths: 10, tachTenths: 10 },
    ttisTenths: TTIS + 10,
  });
});

test.each([
  ['down', 4, TTIS + 4],
  ['up', 9, TTIS + 9],
])(
  'a return corrected %s: hours flown and of the aircraft follow (14 CFR 1.1), and the 100 hours (91.409(b))',
  async (_, hobbs, ttisTenths) => {
    const releaseId = await release();
    valueOf(await out(releaseId, 0, 0));
    valueOf(await back(releaseId, HOUR, 7));
    expect(valueOf(await correct(releaseId, 'in', { hobbs })).ttisTenths).toBe(ttisTenths);
    expect((await metersOf(releaseId)).flown).toEqual({ hobbsTenths: hobbs, tachTenths: hobbs });
    expect(await aircraft()).toMatchObject({
      hobbsTenths: HOBBS + hobbs,
      tachTenths: TACH + hobbs,
      ttisTenths,
    });
    const file = valueOf(
      await readAircraftFile(school.people.dispatcher, { aircraftId: school.aircraftId }, { now: NOW }),
    );
    expect(file.requirements.find(({ kind }) => kind === 'hundred-hour')?.remainingTenths).toBe(477 - hobbs);
  },
);

test('the first reading of an aircraft is held against the figures it was entered with, whatever was read since', async () => {
  await say('tach');
  const releaseId = await release();
  // Nobody read the departure.
  valueOf(await back(releaseId, HOUR, 90, 80));
  expect((await metersOf(releaseId)).flown).toEqual({ hobbsTenths: 90, tachTenths: 80 });
  expect(problemOf(await correct(releaseId, 'in', { hobbs: -1, tach: 0 })).fields).toEqual({
    hobbsTenths: [`Hobbs cannot run back: the reading before it is 2123.4 h. ${DESK}`],
  });
  expect(valueOf(await correct(releaseId, 'in', { hobbs: 9, tach: 8 })).ttisTenths).toBe(TTIS + 8);
  expect((await metersOf(releaseId)).flown).toEqual({ hobbsTenths: 9, tachTenths: 8 });
  // A correction of the correction knows them still, and so does a departure that comes in late, and a correction after it.
  expect(valueOf(await correct(releaseId, 'in', { hobbs: 10, tach: 9 })).ttisTenths).toBe(TTIS + 9);
  const lateOut = (hobbs: number) =>
    readMetersOut(school.people.renter, reading(releaseId, 'out', 0, hobbs), { now: at(2 * HOUR) });
  expect(Object.keys(problemOf(await lateOut(-1)).fields ?? {})).toEqual(['hobbsTenths', 'tachTenths']);
  valueOf(await lateOut(1));
  expect(valueOf(await correct(releaseId, 'in', { hobbs: 8, tach: 7 })).ttisTenths).toBe(TTIS + 7);
  expect(valueOf(await correct(releaseId, 'out', { hobbs: 0 })).ttisTenths).toBe(TTIS + 7);
  expect((await metersOf(releaseId)).flown).toEqual({ hobbsTenths: 8, tachTenths: 7 });
});

test('a chain: a correction is corrected, each once; all of them stay, and one stands', async () => {
  const releaseId = await release();
  valueOf(await out(releaseId, 0, 900));
  const first = (await metersOf(releaseId)).out?.id;
  valueOf(await correct(releaseId, 'out', { hobbs: 90, why: 'A digit too many.' }));
  valueOf(await correct(releaseId, 'out', { hobbs: 9, why: 'And one more.' }));
  const { out: stands } = await metersOf(releaseId);
  expect(stands?.superseded.map(({ hobbsTenths, because }) => [hobbsTenths - HOBBS, because])).toEqual([
    [90, 'And one more.'],
    [900, 'A digit too many.'],
  ]);
  expect(await countReadings()).toBe(3);
  // Somebody else who still sees the first.
  expect(problemOf(await correct(releaseId, 'out', { hobbs: 8, readingId: first })).code).toBe('conflict');
  expect(await aircraft()).toMatchObject({ hobbsTenths: HOBBS + 9, ttisTenths: TTIS + 9 });
});

test('twice is once: sent again under its number, it answers the same and writes nothing', async () => {
  const releaseId = await release();
  valueOf(await out(releaseId, 0, 900));
  const sent = await correction(releaseId, 'out', { hobbs: 0 });
  const answer = valueOf(await correctMeters(school.people.manager, sent, { now: at(HOUR) }));
  const again = await correctMeters(school.people.manager, sent, { now: at(2 * HOUR) });
  expect(valueOf(again)).toEqual(answer);
  expect(await countReadings()).toBe(2);
  const audited = await readInOperator(school.operatorId, (tx) =>
    tx.auditRow.findMany({ where: { operatorId: school.operatorId, verb: 'meters.correct' } }),
  );
  expect(audited.map(({ detail }) => detail)).toMatchObject([
    { why: sent.why, superseded: sent.readingId, hobbsTenths: HOBBS, was: { hobbsTenths: HOBBS + 900 } },
  ]);
});

test('what was read later stands in the way, and is named; it takes no harm', async () => {
  const morning = await release();
  valueOf(await out(morning, 0, 0));
  valueOf(await back(morning, 2 * HOUR, 12));
  const noon = await release();
  valueOf(await out(noon, 3 * HOUR, 12));
  const standing = await aircraft();
  for (const moment of ['out', 'in'] as const) {
    expect(problemOf(await correct(morning, moment, { hobbs: 5 }))).toMatchObject({
      code: 'conflict',
      say:
        'The aircraft was read again after this: the departure of 2026-11-25, by Rue Fernhollow: Hobbs 2124.6, Tach 1988.8. ' +
        'A reading can be corrected only while no later flight stands on it.',
    });
  }
  expect(await aircraft()).toEqual(standing);
  // The newest one can be corrected, but not below what stands before it: just under, on.
  expect(Object.keys(problemOf(await correct(noon, 'out', { hobbs: 11, tach: 13 })).fields ?? {})).toEqual([
    'hobbsTenths',
  ]);
  expect(valueOf(await correct(noon, 'out', { hobbs: 12, tach: 13 })).ttisTenths).toBe(TTIS + 13);
});

test.each([
  ['1.0 h in an hour', 10, 'ok'],
  ['1.1 h in an hour', 11, 'ok'],
  ['1.2 h in an hour', 12, 'hobbsTenths'],
])('a correction may not outrun the clock either (our design): %s', async (_, hobbs, outcome) => {
  const releaseId = await release();
  valueOf(await out(releaseId, 0, 0));
  valueOf(await back(releaseId, HOUR, 2));
  // However much later it is corrected: when it was read stays.
  const result = await correct(releaseId, 'in', { hobbs, tach: 9 }, 90 * HOUR);
  expect(result.ok ? 'ok' : Object.keys(result.problem.fields ?? {}).join()).toBe(outcome);
});

test('a departure beside its return: it fits between them or is refused; both are put right together', async () => {
  const releaseId = await release();
  valueOf(await out(releaseId, 0, 900));
  valueOf(await back(releaseId, HOUR, 910));
  // The same slip twice: neither fits beside the other.
  expect(Object.keys(problemOf(await correct(releaseId, 'in', { hobbs: 10 })).fields ?? {})).toEqual([
    'hobbsTenths',
    'tachTenths',
  ]);
  const beside = problemOf(await correct(releaseId, 'out', { hobbs: 0 }));
  expect(beside.say).toContain('Correct the return first, or both together.');
  expect(beside.fields?.hobbsTenths).toEqual([
    `Hobbs would have run 91.0 h up to the later reading, 2214.4 h. The clock allows 1.1 h. ${DESK}`,
  ]);
  // 1.1 h in the hour is the most the return may stand above the departure: just over is refused at its own field.
  const both = (hobbs: number) => correct(releaseId, 'out', { hobbs: 0, back: { hobbs, tach: 10 } });
  expect(Object.keys(problemOf(await both(12)).fields ?? {})).toEqual(['back.hobbsTenths']);
  expect(Object.keys(problemOf(await both(-1)).fields ?? {})).toEqual(['back.hobbsTenths']);
  expect(await countReadings()).toBe(2);
  expect(valueOf(await both(10))).toMatchObject({ isBackToo: true, ttisTenths: TTIS + 10 });
  expect(await aircraft()).toMatchObject({ hobbsTenths: HOBBS + 10, ttisTenths: TTIS + 10 });
  const { out: departure, back: returned, flown } = await metersOf(releaseId);
  expect(flown).toEqual({ hobbsTenths: 10, tachTenths: 10 });
  expect([departure?.superseded.length, returned?.superseded.length]).toEqual([1, 1]);
  // Alone, between what stands before it and the return: hours flown follow, the hours of the aircraft go by the return.
  expect(valueOf(await correct(releaseId, 'out', { hobbs: 4 })).ttisTenths).toBe(TTIS + 10);
  expect((await metersOf(releaseId)).flown).toEqual({ hobbsTenths: 6, tachTenths: 6 });
  expect(problemOf(await correct(releaseId, 'out', { hobbs: 11, tach: 10 })).fields?.hobbsTenths).toEqual([
    `Hobbs cannot run back: a later reading is 2124.4 h. ${DESK}`,
  ]);
  expect(await aircraft()).toMatchObject({ hobbsTenths: HOBBS + 10, ttisTenths: TTIS + 10 });
});

test('a departure and a return read in the same minute keep their order', async () => {
  const releaseId = await release();
  valueOf(await out(releaseId, 0, 0));
  valueOf(await back(releaseId, 0, 1));
  expect(Object.keys(problemOf(await correct(releaseId, 'out', { hobbs: 2, tach: 0 })).fields ?? {})).toEqual(
    ['hobbsTenths'],
  );
  expect(valueOf(await correct(releaseId, 'out', { hobbs: 1, tach: 0 })).ttisTenths).toBe(TTIS + 1);
  expect(valueOf(await correct(releaseId, 'in', { hobbs: 1, tach: 0 })).ttisTenths).toBe(TTIS + 1);
});

test('who and with what: the desk, with words; no pilot, no other school, no figures that stand already', async () => {
  const releaseId = await release();
  valueOf(await out(releaseId, 0, 900));
  const { renter, airframe } = school.people;
  const sent = await correction(releaseId, 'out', { hobbs: 0 });
  for (const ref of [renter, airframe]) {
    expect(problemOf(await correctMeters(ref, sent, { now: at(HOUR) })).code).toBe('not_allowed');
  }
  expect(problemOf(await correctMeters(other.people.dispatcher, sent, { now: at(HOUR) })).code).toBe(
    'not_found',
  );
  const asked = async (typed: Typed) =>
    Object.keys(problemOf(await correct(releaseId, 'out', typed)).fields ?? {});
  expect(await asked({ hobbs: 0, why: '  ' })).toEqual(['why']);
  expect(await asked({ hobbs: 900 })).toEqual(['hobbsTenths']);
  expect(await countReadings()).toBe(1);
});

test('work that was entered at too many hours is named when they fall', async () => {
  const releaseId = await release();
  valueOf(await out(releaseId, 0, 900));
  const { powerplant } = school.people;
  const nick = valueOf(await reportFinding(powerplant, nickedPropeller(school), { now: at(HOUR) }));
  const { workId } = valueOf(await startWork(powerplant, startOf(nick.discrepancyId), { now: at(HOUR) }));
  valueOf(await enterWork(powerplant, entryOf(workId, 'Pim Castlewick'), { now: at(HOUR) }));
  const { notes } = valueOf(await correct(releaseId, 'out', { hobbs: 0 }));
  expect(notes).toHaveLength(1);
  expect(notes[0]).toContain('is on record at 4602.3 h, more than the aircraft has now.');
});

test('the database itself: one first reading of a moment, superseded once, by one of the same flight, with words', async () => {
  const releaseId = await release();
  const elsewhere = await release(school, AFTERNOON);
  valueOf(await out(releaseId, 0, 900));
  valueOf(await correct(releaseId, 'out', { hobbs: 0 }));
  const [right, wrong] = await rows();
  if (!right || !wrong) throw new Error('two readings were written');
  const insert = (change: Partial<typeof right>) =>
    writeInOperator(school.operatorId, (tx) =>
      tx.meterReading.create({ data: { ...right, id: randomUUID(), ...change } }),
    );
  const first = { supersedesId: null, why: null, correctedAt: null };
  await expect(insert(first)).rejects.toThrow(/Unique constraint/);
  await expect(insert({ supersedesId: wrong.id })).rejects.toThrow(/Unique constraint/);
  await expect(insert({ supersedesId: right.id, releaseId: elsewhere })).rejects.toThrow(/something else/);
  await expect(insert({ supersedesId: right.id, moment: 'in' })).rejects.toThrow(/something else/);
  await expect(insert({ supersedesId: right.id, why: null })).rejects.toThrow(/correction_whole/);
  await expect(insert({ supersedesId: right.id, why: '' })).rejects.toThrow(/correction_whole/);
  await insert({ supersedesId: right.id });
});
