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
import { newExpiryRefused } from '@/lib/inspections/new-expiry';
import { recordEltUse } from '@/lib/inspections/record-elt-use';
import { recordRequirement } from '@/lib/inspections/record-requirement';
import { startRequirementWork } from '@/lib/inspections/start-requirement-work';
import { verifyOperator } from '@/lib/records/verify';
import { answerFlight } from '@/lib/releases/answer-flight';
import type { RequirementKind } from '@/lib/rules/aircraft';
import { dueOf } from '@/lib/rules/due';
import { correctWork } from '@/lib/work/correct-work';
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
const minutesOn = (minutes: number) => ({ now: new Date(NOW.getTime() + minutes * 60_000) });
const later = { now: new Date(NOW.getTime() + 60_000) };

const REQUIREMENTS = [
  ...trainerRequirements(),
  requirementRow('directive', 'Heat valve', '2026-10-10', 44_500, { intervalTenths: 1000 }),
  requirementRow('life-limit', 'Gear leg', '2020-01-10', 10_000, { intervalTenths: 50_000 }),
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

  // 65.85(a), 65.87(a); that both are asked where the record names no part is our strict reading.
  test.each(['directive', 'life-limit'] as const)(
    'a %s: whoever starts it does not choose who signs; both ratings, whatever system was named',
    async (kind) => {
      const { airframe, powerplant } = school.people;
      const workId = await begin(airframe, kind, { workKind: 'minor', jasc: '3210', swapOnly: false });
      const details = { method: 'Replaced.', revision: '12 March 2024' };
      const refused = problemOf(await signedBy(airframe, 'Ash Ironweed', kind, workId, details));
      expect(refused.code).toBe('signature_refused');
      expect(refused.say).toContain('a mechanic with airframe and powerplant ratings');
      expect(refused.lines?.map(({ cite }) => cite)).toEqual(['14cfr65.87(a)']);
      const seen = valueOf(await readRequirement(airframe, { requirementId: idOf(kind) }, later));
      // The screen says what the signature would.
      expect(seen.work[0]?.mySignature).toMatchObject({ allowed: false, certificate: null });
      expect(seen.work[0]?.mySignature?.lines[0]?.strictReading).toContain('does not say which part');
      valueOf(await signedBy(powerplant, 'Pim Castlewick', kind, workId, details));
    },
  );

  test('a repair station signs a directive on what it is rated for (43.7(c))', async () => {
    const radio = await begin(station, 'directive', { workKind: 'minor', jasc: '3452', swapOnly: false });
    const details = { method: 'Replaced.', revision: '12 March 2024' };
    valueOf(await signedBy(station, 'Una Handwell', 'directive', radio, details));
    const wing = await begin(station, 'life-limit', { workKind: 'minor', jasc: '5700', swapOnly: false });
    const refused = problemOf(await signedBy(station, 'Una Handwell', 'life-limit', wing, details));
    expect(refused.code).toBe('signature_refused');
  });

  test('an interval that binds is never preventive, a recommended one may be (43.7(f))', async () => {
    const requirements = REQUIREMENTS.map((row) => ({ ...row, binding: true }));
    school = await foundSchool(`recurring-${(schools += 1)}`, trainer({ requirements }));
    due = await requirementsOf(school);
    const oil = { workKind: 'preventive', preventiveItem: 23, jasc: '7900', swapOnly: false };
    const problem = problemOf(
      await startRequirementWork(school.people.renter, started('maker-interval', oil), now),
    );
    expect(problem.fields).toHaveProperty('workKind');
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

  test('a correction of the work takes the place of the record that stands, once (AC 120-78B by way of issue 4)', async () => {
    const workId = await begin(station, 'transponder');
    valueOf(await signedBy(station, 'Una Handwell', 'transponder', workId, {}));
    const records = () =>
      readInOperator(school.operatorId, (tx) =>
        tx.compliance.findMany({
          where: { requirementId: idOf('transponder') },
          orderBy: { recordedAt: 'asc' },
        }),
      );
    const byWork = (await records()).find((one) => one.workId === workId);
    const copied = paperRecordOf(idOf('transponder'), '2026-11-24', '4512.0', {
      supersedesId: byWork?.id,
      why: 'It was done the day before.',
    });
    const paper = valueOf(await recordRequirement(school.people.manager, copied, minutesOn(2)));
    const why = { requestId: randomUUID(), workId, why: 'The unit was named wrong.' };
    const correction = valueOf(await correctWork(station, why, minutesOn(3))).workId;
    const asked = await asksAnswered(station, 'transponder');
    const entry = { ...entryOf(correction, 'Una Handwell'), ...asked, details: {} };
    const { entryHash } = valueOf(await enterWork(station, entry, minutesOn(4)));
    valueOf(await signWork(station, signatureOf(correction, entryHash), minutesOn(5)));
    const after = await records();
    expect(after.find((one) => one.workId === correction)?.supersedesId).toBe(paper.complianceId);
    const superseded = after.flatMap(({ supersedesId }) => supersedesId ?? []);
    expect(new Set(superseded).size).toBe(superseded.length);
    // The database refuses a second correction of the same record, whoever writes it.
    const [first] = after.filter((one) => one.workId === correction);
    await expect(
      writeInOperator(school.operatorId, (tx) =>
        tx.compliance.create({
          data: {
            id: randomUUID(),
            operatorId: school.operatorId,
            requirementId: idOf('transponder'),
            doneOn: first?.doneOn ?? NOW,
            ttisTenths: 45_000,
            approvedBy: 'X',
            recordedById: school.people.manager.personId,
            recordedAt: NOW,
            supersedesId: paper.complianceId,
          },
        }),
      ),
    ).rejects.toThrow(/Unique constraint/);
    const report = await readInOperator(school.operatorId, (tx) => verifyOperator(tx, school.operatorId));
    expect(report.faults).toEqual([]);
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

  // Strict reading: 91.207(c)(1) counts use since the battery was fitted, and of that day nobody knows the hour.
  test.each([
    ['2026-11-24', 0],
    ['2026-11-25', 61],
  ] as const)(
    'a use of %s recorded before the battery fitted on 25 November counts %i min',
    async (day, counted) => {
      valueOf(await use(61, day));
      const { airframe } = school.people;
      const workId = await begin(airframe, 'elt-battery');
      valueOf(await signedBy(airframe, 'Ash Ironweed', 'elt-battery', workId, { newExpiry: '2030-06-30' }));
      expect((await facts()).eltUseMinutes).toBe(counted);
    },
  );

  test('a use after the battery counts, though the day is the same', async () => {
    const { airframe } = school.people;
    const workId = await begin(airframe, 'elt-battery');
    valueOf(await signedBy(airframe, 'Ash Ironweed', 'elt-battery', workId, { newExpiry: '2030-06-30' }));
    valueOf(await use(61, '2026-11-25'));
    expect((await facts()).eltUseMinutes).toBe(61);
  });

  test.each([
    ['not later than the day it was done', '2026-11-25'],
    ['more than 15 years on (our own bound)', '2041-11-26'],
  ])('a new date %s is refused at its field', async (_words, newExpiry) => {
    const { airframe } = school.people;
    const workId = await begin(airframe, 'elt-battery');
    const wrong = await enteredBy(airframe, 'Ash Ironweed', 'elt-battery', workId, { newExpiry });
    expect(problemOf(wrong).fields).toHaveProperty(['details.newExpiry']);
    const copied = paperRecordOf(idOf('elt-battery'), '2026-11-25', '4512.3', { newExpiry });
    const paper = await recordRequirement(school.people.manager, copied, later);
    expect(problemOf(paper).fields).toHaveProperty('newExpiry');
  });

  // Limits of the rule by itself: the day after, 15 years to the day, and a day on; 29 February too. Our own bound.
  test.each([
    ['2026-11-25', '2026-11-26', true],
    ['2026-11-25', '2041-11-24', true],
    ['2026-11-25', '2041-11-25', true],
    ['2026-11-25', '2041-11-26', false],
    ['2028-02-29', '2043-02-28', true],
    ['2028-02-29', '2043-03-01', false],
  ])('done %s, new date %s: %s', (doneOn, newExpiry, taken) => {
    const battery = { kind: 'elt-battery', fixedExpiry: null };
    expect(newExpiryRefused(battery, doneOn, newExpiry) === null).toBe(taken);
  });

  test('nothing but a battery or what ends on a fixed date has a new date', () => {
    const refused = (kind: string, fixedExpiry: Date | null) =>
      newExpiryRefused({ kind, fixedExpiry }, '2026-11-25', '2030-06-30');
    expect(refused('transponder', null)).toContain('fixed date');
    expect(refused('life-limit', new Date('2027-01-01'))).toBeNull();
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

  test('a record corrected twice does not come back for the pay-back (91.409(b))', async () => {
    // Done at 4400.0 h, so the next was due at 4500.0.
    const requirements = trainerRequirements().map((row) =>
      row.kind === 'hundred-hour'
        ? requirementRow('hundred-hour', '100-hour inspection', '2026-10-20', 44_000, {
            intervalTenths: 1000,
          })
        : row,
    );
    school = await foundSchool(`recurring-${(schools += 1)}`, trainer({ requirements }));
    due = await requirementsOf(school);
    const c0 = valueOf(await record('hundred-hour', '2026-11-20', '4490.0'));
    const corrected = (supersedesId: string, ttis: string, minutes: number) =>
      recordRequirement(
        school.people.manager,
        paperRecordOf(idOf('hundred-hour'), '2026-11-20', ttis, { supersedesId, why: 'Copied wrong.' }),
        minutesOn(minutes),
      );
    const c1 = valueOf(await corrected(c0.complianceId, '4495.0', 2));
    expect((await dueNow('hundred-hour')).tenths).toBe(45_950);
    valueOf(await corrected(c1.complianceId, '4505.0', 3));
    // Five hours over, paid back: 4600.0, not 4605.0.
    expect((await dueNow('hundred-hour')).tenths).toBe(46_000);
  });

  test('a date that nothing here ends on is refused', async () => {
    const wrong = await record('transponder', '2026-11-20', '4500.0', { newExpiry: '2030-06-30' });
    expect(problemOf(wrong).fields).toHaveProperty('newExpiry');
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
