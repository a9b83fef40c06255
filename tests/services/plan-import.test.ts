/**
 * Flights taken in from a file, against a real database: all or nothing, once, for this school alone. Source: issue 5 ("row-level errors
 * and nothing half-imported") and our own limits. What each reader makes of a file is in tests/rules/plan-import-*.test.ts.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { readInOperator, writeInOperator } from '@/lib/db/scope';
import { cancelPlannedFlight } from '@/lib/flights/cancel-planned-flight';
import { checkImport } from '@/lib/flights/import/check-import';
import { importPlans } from '@/lib/flights/import/import-plans';
import { MOST_BYTES } from '@/lib/flights/import/schema';
import { planFlight } from '@/lib/flights/plan-flight';
import { readPlannedFlights } from '@/lib/flights/read-planned-flights';
import { dayLesson, problemOf, valueOf } from '../fixtures/acts';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import { calendarOf } from '../fixtures/plan-files';
import { closeSchools, NOW, openSchools, register, type School } from '../fixtures/school';
import { releaseFlight } from '@/lib/releases/release-flight';

let database: FreshDatabase;
let school: School;
let other: School;
let registration: string;
const now = { now: NOW };

beforeAll(async () => {
  ({ database, school, other } = await openSchools());
  ({ registration } = await readInOperator(school.operatorId, (tx) =>
    tx.aircraft.findFirstOrThrow({ where: { id: school.aircraftId } }),
  ));
});
afterAll(() => closeSchools(database));
beforeEach(() =>
  writeInOperator(school.operatorId, (tx) =>
    tx.plannedFlight.updateMany({
      where: { cancelledAt: null },
      data: { cancelledAt: NOW, cancelledById: school.people.manager.personId },
    }),
  ),
);

const HEAD = 'aircraft,pilot_email,depart,arrive,hours,words,id';
/** One flight an hour from 1 December on, each of half an hour. */
const row = (
  at: number,
  some: { words?: string; id?: string; depart?: string; pilot?: string; reg?: string } = {},
) => {
  const start = new Date(Date.UTC(2026, 11, 1, 14 + at));
  const text = (ms: number) => new Date(ms).toISOString().slice(0, 16).replace('T', ' ');
  const depart = some.depart ?? `${text(start.getTime())}Z`;
  const arrive = `${text(start.getTime() + 1_800_000)}Z`;
  return `${some.reg ?? registration},${some.pilot ?? ''},${depart},${arrive},0.5,${some.words ?? `Flight ${at}`},${some.id ?? `id-${at}`}`;
};
const file = (...rows: readonly string[]) => [HEAD, ...rows, ''].join('\r\n');
const csv = (text: string) => ({ requestId: randomUUID(), kind: 'csv', fileName: 'week.csv', text });
const take = (text: string, as = school.people.dispatcher) => importPlans(as, csv(text), now);
const look = (text: string, as = school.people.dispatcher) =>
  checkImport(as, { kind: 'csv', fileName: 'week.csv', text }, now);
const standing = (of = school) =>
  readInOperator(of.operatorId, (tx) =>
    tx.plannedFlight.findMany({ where: { cancelledAt: null }, orderBy: { departAt: 'asc' } }),
  );
const imports = () => readInOperator(school.operatorId, (tx) => tx.planImport.count());

describe('all or nothing', () => {
  test('fifty rows go in, with who, when and out of which file', async () => {
    const rows = Array.from({ length: 50 }, (_none, at) => row(at));
    const input = csv(file(...rows));
    const done = valueOf(await importPlans(school.people.dispatcher, input, now));
    expect(done).toMatchObject({ added: 50, replaced: 0, unchanged: 0, cancelled: 0 });
    const planned = await standing();
    expect(planned).toHaveLength(50);
    expect(planned[0]).toMatchObject({
      aircraftId: school.aircraftId,
      departAt: new Date('2026-12-01T14:00:00Z'),
      plannedTenths: 5,
      words: 'Flight 0',
      importId: input.requestId,
      outsideUid: 'csv: id-0',
      plannedById: school.people.dispatcher.personId,
    });
    const kept = await readInOperator(school.operatorId, (tx) =>
      tx.planImport.findFirstOrThrow({ where: { id: input.requestId } }),
    );
    // SHA-256 of the file by node's own crypto, as the audit row has it, too.
    const audit = await readInOperator(school.operatorId, (tx) =>
      tx.auditRow.findFirstOrThrow({ where: { subjectId: input.requestId } }),
    );
    expect(kept).toMatchObject({ kind: 'csv', fileName: 'week.csv', added: 50, unchanged: 0, cancelled: 0 });
    expect(audit).toMatchObject({ verb: 'plan.import', detail: { sha256: kept.sha256, added: 50 } });
    // The same request again is the same import.
    expect(valueOf(await importPlans(school.people.dispatcher, input, now))).toEqual(done);
    expect(await standing()).toHaveLength(50);
  });

  test('one bad row of fifty: nothing is in the database, and the row is named', async () => {
    const before = await imports();
    const rows = Array.from({ length: 50 }, (_none, at) => row(at, at === 30 ? { depart: 'noon' } : {}));
    const problem = problemOf(await take(file(...rows)));
    expect(problem).toMatchObject({
      code: 'invalid',
      say: 'Nothing was taken in. Put right what is wrong below.',
    });
    expect(problem.fields).toEqual({
      'rows.30.depart': ['Row 32, depart: "noon" is no time. Write it like 2026-12-01 14:30.'],
    });
    expect(await standing()).toEqual([]);
    expect(await imports()).toBe(before);
  });

  test('the look beforehand says the same and writes nothing', async () => {
    const text = file(row(0), row(1, { pilot: 'nobody@else.example' }));
    const checked = valueOf(await look(text));
    expect(checked.rows.map(({ does, errors }) => [does, errors.length])).toEqual([
      ['add', 0],
      ['wrong', 1],
    ]);
    expect(await standing()).toEqual([]);
  });

  test.each([
    [500, true],
    [501, false],
  ])('%d flights: %s', async (count, goes) => {
    const text = file(...Array.from({ length: count }, (_none, at) => row(at)));
    const result = await take(text);
    expect(result.ok).toBe(goes);
    expect(await standing()).toHaveLength(goes ? count : 0);
    if (!result.ok) {
      expect(result.problem.fields).toEqual({ text: ['The file has 501 flights; 500 at most. Split it.'] });
    }
  });

  // An é is two bytes: it is bytes that count.
  test.each([
    [MOST_BYTES - 1, true],
    [MOST_BYTES, true],
    [MOST_BYTES + 1, false],
  ])('%d bytes: %s', async (bytes, goes) => {
    const one = file(row(0));
    const filler = 'é'.repeat(10);
    const padding = bytes - Buffer.byteLength(`${one}${filler}`);
    // Empty lines: they are in the file and no flight.
    const result = await look(`${one.replace('Flight 0', `Flight 0${filler}`)}${'\n'.repeat(padding)}`);
    if (goes) expect(valueOf(result).errors.join()).not.toContain('1 MB');
    else expect(problemOf(result).fields).toEqual({ text: ['The file is larger than 1 MB. Split it.'] });
  });
});

describe('the same file again', () => {
  test('changes nothing', async () => {
    const text = file(row(0), row(1));
    valueOf(await take(text));
    const before = await standing();
    expect(valueOf(await take(text))).toMatchObject({ added: 0, replaced: 0, unchanged: 2, cancelled: 0 });
    expect(await standing()).toEqual(before);
  });

  test('a changed row replaces, and what was there stays on record as cancelled', async () => {
    valueOf(await take(file(row(0), row(1))));
    const [first, second] = await standing();
    const done = valueOf(await take(file(row(0, { words: 'Another' }), row(1))));
    expect(done).toMatchObject({ added: 0, replaced: 1, unchanged: 1 });
    const after = await standing();
    expect(after.map(({ words }) => words)).toEqual(['Another', 'Flight 1']);
    expect(after[1]?.id).toBe(second?.id);
    const old = await readInOperator(school.operatorId, (tx) =>
      tx.plannedFlight.findFirstOrThrow({ where: { id: first!.id } }),
    );
    expect(old).toMatchObject({ words: 'Flight 0', cancelledById: school.people.dispatcher.personId });
  });

  test('plans typed by hand are not its business', async () => {
    const typed = valueOf(
      await planFlight(
        school.people.dispatcher,
        {
          requestId: randomUUID(),
          aircraftId: school.aircraftId,
          pilotId: null,
          departLocal: '2026-12-01T08:00',
          arriveLocal: '2026-12-01T08:30',
          plannedHours: '',
          words: 'By hand',
        },
        now,
      ),
    );
    valueOf(await take(file(row(0))));
    valueOf(await take(file(row(1))));
    expect((await standing()).map(({ words }) => words)).toEqual(['By hand', 'Flight 0', 'Flight 1']);
    expect((await standing()).map(({ id }) => id)).toContain(typed.plannedFlightId);
  });

  test('one that was cancelled here by hand comes back, and the look says so', async () => {
    valueOf(await take(file(row(0))));
    const [first] = await standing();
    const cancel = { requestId: randomUUID(), plannedFlightId: first!.id };
    valueOf(await cancelPlannedFlight(school.people.dispatcher, cancel, now));
    expect(valueOf(await look(file(row(0)))).rows[0]).toMatchObject({
      does: 'add',
      notes: ['It was planned and cancelled before. It will be planned again.'],
    });
  });

  test('a released one is not touched, and that is said', async () => {
    const today = file(
      row(0, { depart: '2026-11-30 16:00Z' }).replace('2026-12-01 14:30Z', '2026-11-30 17:00Z'),
    );
    valueOf(await take(today));
    const [planned] = await standing();
    valueOf(
      await releaseFlight(
        school.people.dispatcher,
        {
          ...dayLesson(school),
          departLocal: '2026-11-30T10:00',
          arriveLocal: '2026-11-30T11:00',
          plannedHours: '0.5',
          requestId: randomUUID(),
          factsVersion: 1,
          limitsPassedOn: false,
          plannedFlightId: planned!.id,
        },
        now,
      ),
    );
    expect(valueOf(await look(today)).rows[0]?.does).toBe('keep');
    const changed = today.replace('Flight 0', 'Another');
    expect(valueOf(await look(changed)).rows[0]).toMatchObject({ does: 'released' });
    expect(valueOf(await take(changed))).toMatchObject({ replaced: 0, cancelled: 0, released: 1 });
    expect((await standing()).map(({ words }) => words)).toEqual(['Flight 0']);
  });

  // As lib/releases/active-releases.ts has it: a release that went void in the air holds its plan, one on the ground does not.
  test.each([
    [['void'], 'replace'],
    [['withdrawn'], 'replace'],
    [['airborne', 'void'], 'released'],
  ])('one whose release is on record as %j: %s', async (events, does) => {
    const day = file(row(24));
    valueOf(await take(day));
    const [planned] = await standing();
    const { releaseId } = valueOf(
      await releaseFlight(
        school.people.dispatcher,
        {
          ...dayLesson(school),
          departLocal: '2026-12-02T08:00',
          arriveLocal: '2026-12-02T08:30',
          plannedHours: '0.5',
          requestId: randomUUID(),
          factsVersion: 1,
          limitsPassedOn: false,
          plannedFlightId: planned!.id,
        },
        now,
      ),
    );
    await writeInOperator(school.operatorId, (tx) =>
      tx.flightEvent.createMany({
        data: events.map((what) => ({
          id: randomUUID(),
          operatorId: school.operatorId,
          releaseId,
          what,
          at: NOW,
          words: 'As it was.',
          recordedById: school.people.dispatcher.personId,
          recordedAt: NOW,
        })),
      }),
    );
    const changed = day.replace('Flight 24', 'Another');
    expect(valueOf(await look(changed)).rows[0]?.does).toBe(does);
  });
});

describe('whose it is', () => {
  test('another school’s people and aircraft are not known, and its plans not seen', async () => {
    // An aircraft of the other school alone.
    await writeInOperator(other.operatorId, (tx) =>
      register(tx, other.operatorId, other.baseId, { ...trainer(), registration: 'N0OTHER' }),
    );
    expect(Object.keys(problemOf(await take(file(row(0, { reg: 'N0OTHER' })))).fields ?? {})).toEqual([
      'rows.0.aircraft',
    ]);
    expect(valueOf(await look(file(row(0, { reg: 'N0OTHER' })), other.people.dispatcher)).rows[0]?.does).toBe(
      'add',
    );
    const text = file(row(0, { pilot: 'renter@other.example' }));
    expect(problemOf(await take(text)).fields).toEqual({
      'rows.0.pilot_email': ['Row 2, pilot_email: "renter@other.example" is the address of nobody here.'],
    });
    valueOf(await take(file(row(0, { pilot: 'renter@first.example' }))));
    expect(await standing(other)).toEqual([]);
    // The same number in the other school is another flight.
    expect(valueOf(await look(file(row(0)), other.people.dispatcher)).rows[0]?.does).toBe('add');
  });

  test('a mechanic neither looks nor takes in', async () => {
    expect(problemOf(await look(file(row(0)), school.people.airframe)).code).toBe('not_allowed');
    expect(problemOf(await take(file(row(0)), school.people.airframe)).code).toBe('not_allowed');
  });
});

describe('iCalendar', () => {
  const ics = (text: string) =>
    importPlans(
      school.people.manager,
      { requestId: randomUUID(), kind: 'icalendar', fileName: 'week.ics', text },
      now,
    );
  const series = (more: string) =>
    calendarOf([
      `UID:week@school.example
       SUMMARY:Lesson on ${registration}
       ATTENDEE:mailto:renter@first.example
       DTSTART;TZID=America/Chicago:20261201T100000
       DTEND;TZID=America/Chicago:20261201T113000
       RRULE:FREQ=WEEKLY;COUNT=3${more}`,
    ]);

  test('a series goes in, is on the list with its pilot, loses a week, and is called off', async () => {
    expect(valueOf(await ics(series('')))).toMatchObject({ added: 3 });
    const list = valueOf(await readPlannedFlights(school.people.dispatcher, {}, now));
    expect(list.aircraft.flatMap(({ flights }) => flights)).toMatchObject([
      { departAt: '2026-12-01T16:00:00.000Z', pilot: 'Rue Fernhollow', fromFile: 'week.ics' },
    ]);
    expect(valueOf(await ics(series('')))).toMatchObject({ added: 0, unchanged: 3 });
    expect(valueOf(await ics(series('\nEXDATE;TZID=America/Chicago:20261208T100000')))).toMatchObject({
      unchanged: 2,
      cancelled: 1,
    });
    expect(valueOf(await ics(series('\nSTATUS:CANCELLED')))).toMatchObject({ cancelled: 2, added: 0 });
    expect(await standing()).toEqual([]);
  });
});

describe('a plan from one zone to another, typed', () => {
  const typed = (some: object) =>
    planFlight(
      school.people.dispatcher,
      {
        requestId: randomUUID(),
        aircraftId: school.aircraftId,
        pilotId: null,
        departLocal: '2026-12-01T10:00',
        arriveLocal: '2026-12-01T13:30',
        plannedHours: '2.5',
        words: '',
        ...some,
      },
      now,
    );

  test('departs by the clock of the one place and arrives by that of the other', async () => {
    valueOf(await typed({ fromIdent: 'kord', toIdent: 'KJFK', rules: 'IFR', purpose: 'private' }));
    const list = valueOf(await readPlannedFlights(school.people.dispatcher, {}, now));
    expect(list.aircraft.flatMap(({ flights }) => flights)).toMatchObject([
      {
        departAt: '2026-12-01T16:00:00.000Z',
        // New York is an hour ahead of Chicago.
        arriveAt: '2026-12-01T18:30:00.000Z',
        from: { ident: 'KORD', zone: 'America/Chicago' },
        to: { ident: 'KJFK', zone: 'America/New_York' },
        rules: 'IFR',
        purpose: 'private',
        fromFile: null,
      },
    ]);
  });

  test.each([
    [{ fromIdent: 'ZZXX' }, 'fromIdent'],
    [{ toIdent: 'Z-9' }, 'toIdent'],
    [{ rules: 'SVFR' }, 'rules'],
    [{ purpose: 'fun' }, 'purpose'],
    // By the clock three and a half hours, with the zone two and a half.
    [{ fromIdent: 'KORD', toIdent: 'KJFK', plannedHours: '2.6' }, 'plannedHours'],
  ])('refused at its field: %o', async (some, field) => {
    expect(Object.keys(problemOf(await typed(some)).fields ?? {})).toEqual([field]);
  });
});
