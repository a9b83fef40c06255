/**
 * Insight through the service on a real PostgreSQL: a small school with a known story, its figures by hand. Source of what is
 * to be shown: issue 5, "Insight"; the definitions are our own and are tested in tests/rules/insight-*.test.ts.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { writeInOperator } from '@/lib/db/scope';
import { beginDeferral } from '@/lib/determinations/begin-deferral';
import { judgeSeverity } from '@/lib/determinations/judge-severity';
import { placePlacard } from '@/lib/determinations/place-placard';
import { reportFinding } from '@/lib/findings/report-finding';
import { parse } from 'csv-parse/sync';
import { csvOf, definitionsCsv, fileNameOf } from '@/lib/insight/csv';
import { pictureOf } from '@/lib/insight/draw';
import { FIGURES } from '@/lib/insight/figures';
import { svgOf } from '@/lib/insight/picture';
import { readInsight } from '@/lib/insight/read-insight';
import { abandonWork } from '@/lib/work/abandon-work';
import { enterWork } from '@/lib/work/enter-work';
import { signWork } from '@/lib/work/sign-work';
import { startWork } from '@/lib/work/start-work';
import {
  deadLandingLight,
  deferralOf,
  entryOf,
  nickedPropeller,
  problemOf,
  signatureOf,
  startOf,
  valueOf,
} from '../fixtures/acts';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, NOW, openSchools, PASSWORD, register, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let other: School;
/** A second aircraft of the school, which came on 20 November and was never written up. */
let second: string;

/** A moment of November 2026 in UTC; midnight at the base is 06:00. */
const at = (text: string) => ({ now: new Date(`2026-11-${text}:00Z`) });
const PERIOD = { from: '2026-11-02', until: '2026-11-24' };

const report = async (of: School, finding: object, when: { now: Date }) =>
  valueOf(await reportFinding(of.people.renter, { ...finding, foundAt: when.now.toISOString() }, when));

async function repaired(
  discrepancyId: string,
  begun: { now: Date },
  signed: { now: Date },
  placardRemoved?: true,
) {
  const mechanic = school.people.powerplant;
  const { workId } = valueOf(await startWork(mechanic, startOf(discrepancyId), begun));
  const entry = {
    ...entryOf(workId, 'Pim Castlewick'),
    completedOn: signed.now.toISOString().slice(0, 10),
  };
  const { entryHash } = valueOf(await enterWork(mechanic, entry, signed));
  const signature = { ...signatureOf(workId, entryHash), placardRemoved: placardRemoved ?? null };
  valueOf(await signWork(mechanic, signature, signed));
}

async function givenUp(discrepancyId: string, begun: { now: Date }, ended: { now: Date }) {
  const mechanic = school.people.powerplant;
  const { workId } = valueOf(await startWork(mechanic, startOf(discrepancyId), begun));
  const mistaken = { requestId: randomUUID(), workId, words: 'Wrong one.' };
  valueOf(await abandonWork(mechanic, mistaken, ended));
}

const read = async (asked: object = PERIOD, now = NOW) =>
  valueOf(await readInsight(school.people.dispatcher, asked, { now }));

/**
 * The story, hours held in brackets:
 * - a nick found 3 November 18:00, judged 20:00, repaired 4 November 18:00 (24 h, chapter 61);
 * - the same nick again 14 November 18:00, ten days after: a repeat; work begun by mistake and given up; open until repaired
 *   15 November 06:00 (12 h, chapter 61);
 * - a dead landing light 16 November 18:00, deferred 18:30, placard up 19:00 (1 h, chapter 33), repaired 20 November 20:00 by
 *   work begun at 18:00 (2 h, chapter 33);
 * - a dead landing light on 21 November 18:00, deferred at 18:10 and placarded at 18:40 (40 min), deferred still; work on it
 *   begun 22 November 16:00 and given up at 16:30 (30 min).
 */
beforeAll(async () => {
  ({ database, school, other } = await openSchools());
  await writeInOperator(school.operatorId, async (tx) => {
    const facts = { ...trainer(), registration: 'N0002X', requirements: [] };
    second = (await register(tx, school.operatorId, school.baseId, facts)).aircraftId;
    await tx.meterReading.create({
      data: {
        id: randomUUID(),
        operatorId: school.operatorId,
        aircraftId: second,
        at: at('20T06:00').now,
        hobbsTenths: 10,
        tachTenths: 10,
        ttisTenths: 10,
        readById: school.people.renter.personId,
      },
    });
  });
  const { airframe, powerplant, renter } = school.people;
  const nick = await report(school, nickedPropeller(school), at('03T18:00'));
  const judgement = {
    requestId: randomUUID(),
    discrepancyId: nick.discrepancyId,
    kind: 'damage',
    jasc: '6111',
    equipmentId: null,
    inoperativeCount: null,
    severity: 'grounding',
    statement: 'Sharp, over the limit.',
    password: PASSWORD,
  };
  valueOf(await judgeSeverity(powerplant, judgement, at('03T20:00')));
  await repaired(nick.discrepancyId, at('04T16:00'), at('04T18:00'));
  const again = await report(school, nickedPropeller(school), at('14T18:00'));
  await givenUp(again.discrepancyId, at('14T19:00'), at('14T19:30'));
  await repaired(again.discrepancyId, at('15T05:00'), at('15T06:00'));
  const deferred = async (found: string, begun: string, placarded: string) => {
    const { discrepancyId } = await report(school, deadLandingLight(school), at(found));
    const { placardId } = valueOf(await beginDeferral(airframe, deferralOf(discrepancyId), at(begun)));
    valueOf(await placePlacard(renter, { requestId: randomUUID(), placardId }, at(placarded)));
    return discrepancyId;
  };
  const light = await deferred('16T18:00', '16T18:30', '16T19:00');
  await repaired(light, at('20T18:00'), at('20T20:00'), true);
  const open = await deferred('21T18:00', '21T18:10', '21T18:40');
  await givenUp(open, at('22T16:00'), at('22T16:30'));
  // Another school's propeller, grounded all the while: counts nowhere here.
  await report(other, nickedPropeller(other), at('03T18:00'));
}, 120_000);
afterAll(() => closeSchools(database));

test('availability by hand: 40 h 10 min of 23 days held, the other aircraft counts from its first reading', async () => {
  const { availability, about, period } = await read();
  expect([about, period.days]).toEqual(['all 2 aircraft', 23]);
  const [newer, trainerRow] = [second, school.aircraftId].map((id) =>
    availability.rows.find(({ aircraftId }) => aircraftId === id),
  );
  // 24 + 12 + 1 + 2 h and 40 + 30 min = 2410 of 23 × 1440 = 33120 minutes: 30710 / 33120 = 0.92723…
  expect(trainerRow).toMatchObject({
    minutes: 33_120,
    heldMinutes: 2410,
    permille: 927,
    heldBy: { writeUps: 2410, work: 0, requirements: 0 },
    writeUps: 4,
  });
  // 20 to 24 November, nothing against it.
  expect(newer).toMatchObject({ minutes: 5 * 1440, heldMinutes: 0, permille: 1000 });
  expect(availability.counts).toEqual({ aircraft: 2, writeUps: 4 });
});

test('days lost: propeller 36 h = 1.5 d, lights 4 h 10 min = 0.2 d', async () => {
  const { daysLost } = await read();
  expect(daysLost.rows).toMatchObject([
    { chapter: '61', minutes: 36 * 60, tenthsOfDays: 15, writeUps: 2, aircraft: 1 },
    { chapter: '33', title: 'Lights', minutes: 250, tenthsOfDays: 2, writeUps: 2 },
  ]);
});

test('times: to the first answer 10, 30, 120 and 720 minutes; to repair 12 h, 24 h and 98 h, one open', async () => {
  const { timeToAnswer, timeToRepair } = await read();
  expect(timeToAnswer.rows.map(({ minutes, by }) => [minutes, by])).toEqual([
    [10, 'deferred'],
    [30, 'deferred'],
    [120, 'judged'],
    [720, 'repaired'],
  ]);
  // Four are too few for a median.
  expect(timeToAnswer.spread).toMatchObject({ count: 4, median: null, most: 720 });
  expect(timeToRepair.rows.map(({ minutes }) => minutes)).toEqual([720, 1440, 98 * 60, null]);
  expect(timeToRepair.counts).toEqual({ opened: 4, waiting: 1, otherwise: 0 });
});

test('repeats: the nick after ten days and the light after one, of four; too few for a percentage', async () => {
  const { repeatRate } = await read();
  expect(repeatRate.rows).toMatchObject([
    { number: 'W-0002', earlierNumber: 'W-0001', days: 10, how: 'repaired' },
    { number: 'W-0004', earlierNumber: 'W-0003', days: 1, how: 'repaired' },
  ]);
  expect(repeatRate).toMatchObject({ percent: null, counts: { opened: 4, repeats: 2 } });
});

test('deferrals: one open since four days with the next inspection as its end, one ended after four', async () => {
  const { deferralAge } = await read();
  expect(deferralAge.rows).toMatchObject([{ number: 'W-0004', begunOn: '2026-11-21', days: 4 }]);
  expect(deferralAge.rows[0]?.endsOn).toMatch(/^\d{4}-\d\d-\d\d$/);
  expect(deferralAge.endedRows).toMatchObject([{ number: 'W-0003', days: 4, endedOn: '2026-11-20' }]);
});

test('two periods that meet add up; work given up counts where nothing else holds', async () => {
  const first = await read({ from: '2026-11-02', until: '2026-11-14' });
  const rest = await read({ from: '2026-11-15', until: '2026-11-24' });
  const held = (view: typeof first) =>
    view.availability.rows.find(({ aircraftId }) => aircraftId === school.aircraftId)?.heldMinutes ?? NaN;
  expect(held(first) + held(rest)).toBe(2410);
  // Until midnight of the 14th at the base: 24 h + 12 h. It was repaired at that very minute.
  expect(held(first)).toBe(36 * 60);
  // The deferral stood; only the work given up after half an hour held.
  expect(held(await read({ from: '2026-11-22', until: '2026-11-22' }))).toBe(30);
});

test('asked for one aircraft or one base; another school’s are not there', async () => {
  const one = await read({ ...PERIOD, aircraftId: second });
  expect(one.availability.rows.map(({ aircraftId }) => aircraftId)).toEqual([second]);
  expect([one.about, one.timeToAnswer.counts.opened]).toEqual(['N0002X', 0]);
  const base = await read({ ...PERIOD, baseId: school.baseId });
  expect(base.availability.rows).toHaveLength(2);
  for (const foreign of [{ aircraftId: other.aircraftId }, { baseId: other.baseId }]) {
    const result = await readInsight(school.people.dispatcher, { ...PERIOD, ...foreign }, { now: NOW });
    expect(problemOf(result).code).toBe('not_found');
  }
});

test('unless asked: ninety days up to today at the base, and of today only what has passed', async () => {
  const view = await read({});
  expect(view.period).toEqual({ from: '2026-08-28', until: '2026-11-25', days: 90 });
  expect((await read({ days: '30' })).period).toMatchObject({ from: '2026-10-27', days: 30 });
  const today = await read({ from: '2026-11-25', until: '2026-11-25' });
  // 06:00 to 15:00 in UTC.
  expect(today.availability.rows.map(({ minutes }) => minutes)).toEqual([540, 540]);
});

test.each([
  { asked: { until: '2026-11-26' }, field: 'until', says: 'not come yet' },
  { asked: { until: '2026-11-25' }, field: null, says: '' },
  { asked: { from: '2026-11-25', until: '2026-11-24' }, field: 'from', says: 'after the last' },
  { asked: { from: '2025-10-21', until: '2026-11-24' }, field: null, says: '' },
  { asked: { from: '2025-10-20', until: '2026-11-24' }, field: 'from', says: 'At most 400 days' },
  { asked: { from: '2026-02-30' }, field: 'from', says: 'Enter a day' },
  { asked: { days: '7' }, field: 'days', says: '30, 90 or 365' },
])('$asked: refused at $field', async ({ asked, field, says }) => {
  const result = await readInsight(school.people.manager, asked, { now: NOW });
  if (field === null) expect(result.ok).toBe(true);
  else expect(problemOf(result).fields?.[field]?.[0]).toContain(says);
});

test('mechanic, dispatcher and manager read it, a pilot does not', async () => {
  const { airframe, dispatcher, manager, renter } = school.people;
  for (const ref of [airframe, dispatcher, manager]) {
    expect((await readInsight(ref, {}, { now: NOW })).ok).toBe(true);
  }
  expect(problemOf(await readInsight(renter, {}, { now: NOW })).code).toBe('not_allowed');
});

const rowsOf = (file: string) => parse(file, { bom: true, columns: true }) as Record<string, string>[];

test('files: read back by csv-parse with units in the header, the period in each row', async () => {
  const view = await read();
  expect(rowsOf(csvOf(view, 'availability'))[1]).toMatchObject({
    'period from': '2026-11-02',
    'period until': '2026-11-24',
    aircraft: view.availability.rows[1]?.registration,
    'looked at (minutes)': String(view.availability.rows[1]?.minutes),
    'available (per mille of the time)': String(view.availability.rows[1]?.permille),
  });
  expect(rowsOf(csvOf(view, 'time-to-repair')).map((row) => row['took (minutes)'])).toEqual([
    '720',
    '1440',
    '5880',
    '',
  ]);
  expect(rowsOf(definitionsCsv(view))).toHaveLength(FIGURES.length);
  expect(fileNameOf(view, 'availability', 'csv')).toBe('insight-availability-2026-11-02-to-2026-11-24.csv');
});

test('a title that begins like a formula stays text in a spreadsheet, and is no markup in a chart', async () => {
  const view = await read();
  const [first] = view.deferralAge.rows;
  const title = '=HYPERLINK("x")<script>';
  const poisoned = { ...view, deferralAge: { ...view.deferralAge, rows: [{ ...first!, title }] } };
  expect(rowsOf(csvOf(poisoned, 'deferral-age'))[0]?.what).toBe(`'${title}`);
  const picture = pictureOf(poisoned, 'deferral-age');
  const svg = svgOf(picture!, [title]);
  expect(svg).toContain('&lt;script&gt;');
  expect(svg).not.toContain('<script');
});

test('every value of a chart is written in it, and its words say the same', async () => {
  const view = await read();
  const words = (figure: (typeof FIGURES)[number]) =>
    pictureOf(view, figure)?.marks.flatMap((mark) => (mark.is === 'text' ? [mark.text] : []));
  expect(words('availability')).toEqual(expect.arrayContaining(['92.7 %', '100 %']));
  expect(words('days-lost')).toEqual(['61 Propellers/Propulsors', '1.5 days', '33 Lights', '0.2 days']);
  // 10 and 30 minutes; 2 h; 12 h.
  const counts = (words('time-to-answer') ?? []).filter((one) => /^\d+$/.test(one));
  expect(counts).toEqual(['2', '1', '1', '0', '0', '0', '0']);
  expect(pictureOf(view, 'days-lost')?.description).toContain('33 Lights: 0.2 days');
});
