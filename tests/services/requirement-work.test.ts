/**
 * What recurs, answered by work, by papers, and by use of the transmitter, on a real PostgreSQL. Paragraphs are named beside
 * the checks; the rest is issue 4.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { ActorRef } from '@/lib/access/actor';
import { readInOperator, writeInOperator } from '@/lib/db/scope';
import { aircraftFacts, readAircraft } from '@/lib/fleet/facts';
import { readRequirement } from '@/lib/inspections/read-requirement';
import { recordEltUse } from '@/lib/inspections/record-elt-use';
import { recordRequirement } from '@/lib/inspections/record-requirement';
import { startRequirementWork } from '@/lib/inspections/start-requirement-work';
import { verifyOperator } from '@/lib/records/verify';
import { answerFlight } from '@/lib/releases/answer-flight';
import type { RequirementKind } from '@/lib/rules/aircraft';
import { dueOf } from '@/lib/rules/due';
import { enterWork } from '@/lib/work/enter-work';
import { signWork } from '@/lib/work/sign-work';
import { dayLesson, entryOf, problemOf, signatureOf, valueOf } from '../fixtures/acts';
import { requirementRow, trainer, trainerRequirements } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import { certify, paperRecordOf, requirementsOf } from '../fixtures/inspections';
import { closeSchools, foundSchool, NOW, openSchools, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let station: ActorRef;
let due: ReadonlyMap<string, string>;
let schools = 0;
const now = { now: NOW };
const later = { now: new Date(NOW.getTime() + 60_000) };

const REQUIREMENTS = [
  ...trainerRequirements(),
  requirementRow('directive', 'Heat valve', '2026-10-10', 44_500, { intervalTenths: 1000 }),
  requirementRow('maker-interval', 'Oil change', '2026-09-01', 44_300, {
    intervalTenths: 500,
    binding: false,
  }),
];

beforeAll(async () => {
  ({ database } = await openSchools());
});
afterAll(() => closeSchools(database));

beforeEach(async () => {
  school = await foundSchool(`recurring-${(schools += 1)}`, trainer({ requirements: REQUIREMENTS }));
  station = school.people.uncertificated;
  await certify(school, station, { kind: 'repair-station', number: 'R-1', ratings: ['radio', 'instrument'] });
  due = await requirementsOf(school);
});

const idOf = (kind: RequirementKind) => due.get(kind) ?? 'none';
const started = (kind: RequirementKind, change: object = {}) => ({
  requestId: randomUUID(),
  requirementId: idOf(kind),
  title: `Do it: ${kind}`,
  workKind: null,
  preventiveItem: null,
  jasc: null,
  swapOnly: null,
  ...change,
});
const begin = async (who: ActorRef, kind: RequirementKind, change: object = {}) =>
  valueOf(await startRequirementWork(who, started(kind, change), now)).workId;
const ANSWERED = { majorAnswers: {}, outcome: undefined };
async function asksAnswered(who: ActorRef, kind: RequirementKind) {
  const view = valueOf(await readRequirement(who, { requirementId: idOf(kind) }, now));
  const [work] = view.work;
  return {
    ...ANSWERED,
    majorAnswers: Object.fromEntries(work?.asks.majorQuestions.map(({ key }) => [key, false]) ?? []),
    tests: Object.fromEntries(work?.asks.testQuestions.map(({ key }) => [key, false]) ?? []),
  };
}
async function enteredBy(
  who: ActorRef,
  name: string,
  kind: RequirementKind,
  workId: string,
  details: object,
) {
  const entry = { ...entryOf(workId, name), ...(await asksAnswered(who, kind)), details };
  return enterWork(who, entry, now);
}
async function signedBy(who: ActorRef, name: string, kind: RequirementKind, workId: string, details: object) {
  const { entryHash } = valueOf(await enteredBy(who, name, kind, workId, details));
  return signWork(who, signatureOf(workId, entryHash), later);
}
const facts = () =>
  readInOperator(school.operatorId, async (tx) => {
    const row = await readAircraft(tx, school.operatorId, school.aircraftId);
    if (!row) throw new Error('the aircraft is not there');
    return aircraftFacts(row);
  });
async function dueNow(kind: RequirementKind) {
  const { requirements, ttisTenths } = await facts();
  const row = requirements.find((one) => one.kind === kind);
  if (!row) throw new Error(`no ${kind}`);
  const { on, tenths } = dueOf(row, ttisTenths, requirements);
  return { on, tenths, row };
}
const answer = async () =>
  valueOf(await answerFlight(school.people.dispatcher, dayLesson(school), later)).answer;
const cites = (problem: { lines?: readonly { cite: string }[] }) => problem.lines?.map(({ cite }) => cite);

describe('by work', () => {
  test('a transponder test: no mechanic (91.413(c)), the repair station; it stands between until signed (91.407(a))', async () => {
    const workId = await begin(school.people.powerplant, 'transponder');
    expect((await answer()).outcome).toBe('no-go');
    const refused = await signedBy(school.people.powerplant, 'Pim Castlewick', 'transponder', workId, {});
    expect(cites(problemOf(refused))).toContain('14cfr91.413(c)');
    valueOf(await signedBy(station, 'Una Handwell', 'transponder', workId, {}));
    expect((await dueNow('transponder')).on).toBe('2028-11-30');
    expect((await answer()).outcome).toBe('go');
  });

  test('an altimeter test says how high (91.411(d))', async () => {
    const workId = await begin(station, 'static-and-altimeter');
    const silent = await enteredBy(station, 'Una Handwell', 'static-and-altimeter', workId, {});
    expect(problemOf(silent).fields).toHaveProperty(['details.testedToFt']);
    expect(cites(problemOf(silent))).toContain('14cfr91.411(d)');
    valueOf(await signedBy(station, 'Una Handwell', 'static-and-altimeter', workId, { testedToFt: 18_000 }));
    const { on, row } = await dueNow('static-and-altimeter');
    expect(on).toBe('2028-11-30');
    expect(row.testedToFt).toMatchObject({ value: 18_000 });
  });

  test('a directive says how it was met and by which revision (91.417(a)(2)(v)), and is never preventive', async () => {
    const { powerplant } = school.people;
    const preventive = started('directive', {
      workKind: 'preventive',
      preventiveItem: 6,
      jasc: '8520',
      swapOnly: false,
    });
    expect(problemOf(await startRequirementWork(powerplant, preventive, now)).fields).toHaveProperty(
      'workKind',
    );
    const workId = await begin(powerplant, 'directive', { workKind: 'minor', jasc: '8520', swapOnly: false });
    const silent = await enteredBy(powerplant, 'Pim Castlewick', 'directive', workId, {
      method: 'Inspected.',
    });
    expect(problemOf(silent).fields).toHaveProperty(['details.revision']);
    valueOf(
      await signedBy(powerplant, 'Pim Castlewick', 'directive', workId, {
        method: 'Inspected by paragraph (g); no crack.',
        revision: '12 March 2024',
      }),
    );
    expect((await dueNow('directive')).tenths).toBe(46_123);
    const view = valueOf(await readRequirement(powerplant, { requirementId: idOf('directive') }, later));
    expect(view.history[0]).toMatchObject({
      doneOn: '2026-11-25',
      approvedBy: expect.stringContaining('Pim Castlewick') as string,
      details: [
        { name: 'How', value: 'Inspected by paragraph (g); no crack.' },
        { name: 'Revision', value: '12 March 2024' },
      ],
    });
  });

  test('an oil change by a pilot the operator has named (43.3(g), Appendix A(c)); not by another', async () => {
    const { renter, powerplant } = school.people;
    const oil = { workKind: 'preventive', preventiveItem: 23, jasc: '7900', swapOnly: false };
    const notAnItem = started('maker-interval', { ...oil, preventiveItem: null });
    expect(problemOf(await startRequirementWork(renter, notAnItem, now)).fields).toHaveProperty(
      'preventiveItem',
    );
    const workId = await begin(renter, 'maker-interval', oil);
    const refused = await signedBy(renter, 'Rue Fernhollow', 'maker-interval', workId, {});
    expect(cites(problemOf(refused))).toContain('14cfr43.3(g)');
    await writeInOperator(school.operatorId, (tx) =>
      tx.preventiveAuthorization.create({
        data: {
          id: randomUUID(),
          operatorId: school.operatorId,
          personId: renter.personId,
          grantedById: school.people.manager.personId,
          grantedAt: NOW,
          words: 'Oil changes.',
        },
      }),
    );
    valueOf(await signedBy(renter, 'Rue Fernhollow', 'maker-interval', workId, {}));
    expect((await dueNow('maker-interval')).tenths).toBe(45_623);
    const again = await enteredBy(powerplant, 'Pim Castlewick', 'maker-interval', workId, {});
    expect(problemOf(again).code).toBe('conflict');
  });

  test.each(['annual', 'hundred-hour', 'vor-check'] as const)('%s is not answered by work', async (kind) => {
    expect(problemOf(await startRequirementWork(station, started(kind), now)).code).toBe('conflict');
  });

  test('begun once', async () => {
    await begin(station, 'transponder');
    expect(problemOf(await startRequirementWork(station, started('transponder'), now)).code).toBe('conflict');
  });
});

describe('the emergency locator transmitter, 91.207(c)', () => {
  const use = (minutes: number, usedOn = '2026-11-24') =>
    recordEltUse(
      school.people.renter,
      {
        requestId: randomUUID(),
        aircraftId: school.aircraftId,
        usedOn,
        minutes,
        words: 'Left on after a hard landing.',
      },
      now,
    );

  test('more than an hour of use limits or bars until the battery is replaced, whose new date counts', async () => {
    valueOf(await use(40));
    valueOf(await use(20));
    expect((await answer()).outcome).toBe('go');
    valueOf(await use(1));
    // The lesson of the fixture stays within 50 nautical miles: 91.207(f)(3).
    expect((await answer()).lines.map(({ cite }) => cite)).toContain('14cfr91.207(f)(3)');
    expect((await answer()).outcome).toBe('go-with-limits');

    const { airframe } = school.people;
    const workId = await begin(airframe, 'elt-battery');
    const silent = await enteredBy(airframe, 'Ash Ironweed', 'elt-battery', workId, {});
    expect(problemOf(silent).fields).toHaveProperty(['details.newExpiry']);
    valueOf(await signedBy(airframe, 'Ash Ironweed', 'elt-battery', workId, { newExpiry: '2030-06-30' }));
    expect((await facts()).eltUseMinutes).toBe(0);
    expect((await dueNow('elt-battery')).on).toBe('2030-06-30');
    expect((await answer()).outcome).toBe('go');
  });

  test('minutes are whole, and the day has come', async () => {
    expect(problemOf(await use(0)).fields).toHaveProperty('minutes');
    expect(problemOf(await use(1.5)).fields).toHaveProperty('minutes');
    expect(problemOf(await use(5, '2026-11-26')).fields).toHaveProperty('usedOn');
  });
});

describe('from papers of another shop', () => {
  const record = (kind: RequirementKind, doneOn: string, ttis: string, change: object = {}) =>
    recordRequirement(school.people.manager, paperRecordOf(idOf(kind), doneOn, ttis, change), later);

  test('is signed as copied, counts only when whoever approved it was authorized, and is verified', async () => {
    valueOf(await record('elt-inspection', '2026-11-20', '4500.0'));
    expect((await dueNow('elt-inspection')).on).toBe('2027-11-30');
    valueOf(await record('annual', '2026-11-21', '4501.0', { authorised: false }));
    const barred = (await answer()).lines.filter(({ effect }) => effect === 'bars');
    // Decision 20 of the worked table: an annual signed without authority.
    expect(barred.map(({ cite }) => cite)).toContain('14cfr91.409(a)');
    const report = await readInOperator(school.operatorId, (tx) => verifyOperator(tx, school.operatorId));
    expect(report.faults).toEqual([]);
    expect(report.signatures).toBe(2);
  });

  test('a wrong record is superseded with a reason, stays in the history, and its pay-back is reckoned anew', async () => {
    const wrong = valueOf(await record('hundred-hour', '2026-11-20', '4500.0'));
    expect((await dueNow('hundred-hour')).tenths).toBe(46_000);
    const noReason = await record('hundred-hour', '2026-11-20', '4490.0', {
      supersedesId: wrong.complianceId,
    });
    expect(problemOf(noReason).fields).toHaveProperty('why');
    valueOf(
      await record('hundred-hour', '2026-11-20', '4490.0', {
        supersedesId: wrong.complianceId,
        why: 'Ten hours too many were copied.',
      }),
    );
    expect((await dueNow('hundred-hour')).tenths).toBe(45_900);
    const view = valueOf(
      await readRequirement(school.people.manager, { requirementId: idOf('hundred-hour') }, later),
    );
    expect(view.history.map(({ ttisTenths, superseded }) => [ttisTenths, superseded])).toEqual(
      expect.arrayContaining([
        [44_900, false],
        [45_000, true],
      ]),
    );
    const again = await record('hundred-hour', '2026-11-20', '4480.0', {
      supersedesId: wrong.complianceId,
      why: 'Once more.',
    });
    expect(problemOf(again).code).toBe('conflict');
  });

  test.each([
    ['a day that has not come', 'transponder', '2026-11-26', '4512.3', 'doneOn'],
    ['more hours than the aircraft has', 'transponder', '2026-11-20', '4512.4', 'ttis'],
    ['fewer hours than a record before it', 'hundred-hour', '2026-11-20', '4459.9', 'ttis'],
    ['an altimeter test without its altitude', 'static-and-altimeter', '2026-11-20', '4500.0', 'testedToFt'],
    ['a directive without its revision', 'directive', '2026-11-20', '4500.0', 'method'],
  ] as const)('%s is refused at its field', async (_words, kind, doneOn, ttis, field) => {
    expect(problemOf(await record(kind, doneOn, ttis)).fields).toHaveProperty([field]);
  });
});
