/**
 * Equipment lists: starting sets that nobody trusts before they are confirmed, lines typed, taken in from files, and taken off. Source:
 * issue 6 ("confirm against the aircraft's own documents, item by item, before the engine trusts them"), 91.205(a), 91.213(d)(2).
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { addAircraft } from '@/lib/aircraft/add-aircraft';
import { addType } from '@/lib/types/add-type';
import { readInOperator } from '@/lib/db/scope';
import { beginSet } from '@/lib/equipment/begin-set';
import { equipmentTemplate } from '@/lib/equipment/columns-of-file';
import { confirmLines } from '@/lib/equipment/confirm-lines';
import { enterLine } from '@/lib/equipment/enter-line';
import { checkEquipment, importEquipment } from '@/lib/equipment/import-equipment';
import { readEquipment, type LineView } from '@/lib/equipment/read-equipment';
import { removeLine } from '@/lib/equipment/remove-line';
import { aircraftFacts, readAircraft } from '@/lib/fleet/facts';
import { reportFinding } from '@/lib/findings/report-finding';
import { verifyAudit } from '@/lib/operate/audit-verify';
import { answersByOperation } from '@/lib/rules/answer';
import { basePlace } from '@/lib/fleet/facts';
import { deadLandingLight, problemOf, valueOf } from '../fixtures/acts';
import type { FreshDatabase } from '../fixtures/database';
import {
  aircraftOf,
  CSV,
  enterOf,
  fileOf,
  HEAD,
  importOf,
  lineOf,
  own,
  typeOf,
} from '../fixtures/fleet-office';
import { closeSchools, NOW, openSchools, PASSWORD, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let other: School;
const now = { now: NOW };
const SOURCE = 'Invented equipment list, revision B';

beforeAll(async () => {
  ({ database, school, other } = await openSchools());
});
afterAll(() => closeSchools(database));

const manager = () => school.people.manager;
async function newAircraft(): Promise<string> {
  const { typeId } = valueOf(await addType(manager(), typeOf(), now));
  const input = aircraftOf({ typeId, baseId: school.baseId });
  return valueOf(await addAircraft(manager(), input, now)).aircraftId;
}
const list = async (aircraftId: string) => valueOf(await readEquipment(manager(), { aircraftId }, now));
const factsOf = (aircraftId: string) =>
  readInOperator(school.operatorId, async (tx) => {
    const row = (await readAircraft(tx, school.operatorId, aircraftId))!;
    return { facts: aircraftFacts(row), base: basePlace(row.base), version: row.factsVersion };
  });
/** Names of the items nobody has confirmed that the day VFR answer complains of. */
async function distrusted(aircraftId: string): Promise<string[]> {
  const { facts, base } = await factsOf(aircraftId);
  const [first] = answersByOperation(facts, base, '2026-11-25', NOW.toISOString());
  return (first?.answer.lines ?? [])
    .filter(({ missing }) => missing?.startsWith('nobody has confirmed'))
    .map(({ about }) => about?.label ?? '');
}
const begin = (aircraftId: string, sets = ['day-vfr', 'night-vfr', 'ifr']) =>
  beginSet(manager(), { ...own(), aircraftId, sets }, now);
const asInput = (line: LineView) =>
  lineOf({
    name: line.name,
    function: line.function,
    jasc: line.jasc,
    installed: String(line.installed),
    vfrDayTypeDesign: line.vfrDayTypeDesign === null ? 'not-known' : line.vfrDayTypeDesign ? 'yes' : 'no',
    requiredDayVfr: line.requiredDayVfr?.toString() ?? '',
    requiredNightVfr: line.requiredNightVfr?.toString() ?? '',
    requiredDayIfr: line.requiredDayIfr?.toString() ?? '',
    requiredNightIfr: line.requiredNightIfr?.toString() ?? '',
    authority: line.authority,
  });
const agrees = (line: LineView, some: object = {}) => ({
  kind: 'agrees',
  equipmentId: line.id,
  source: SOURCE,
  line: { ...asInput(line), ...some },
});
const confirm = (aircraftId: string, decisions: object[], some: object = {}) =>
  confirmLines(manager(), { ...own(), aircraftId, decisions, password: PASSWORD, ...some }, now);
const vouchingsOf = (subjectId: string) =>
  readInOperator(school.operatorId, (tx) => tx.vouching.findMany({ where: { subjectId } }));

describe('a starting set', () => {
  test('stands unconfirmed, adapted to the type, and the engine trusts none of it', async () => {
    const aircraftId = await newAircraft();
    const { added } = valueOf(await begin(aircraftId));
    const { lines } = await list(aircraftId);
    expect(lines).toHaveLength(added);
    expect(lines.every(({ confirmed }) => !confirmed)).toBe(true);
    const of = (fn: string) => lines.find((line) => line.function === fn);
    expect(of('fuel-quantity-gauge')?.installed).toBe(2);
    expect(of('seat-belts')?.installed).toBe(4);
    // The type is known to have air cooling, fixed gear, no altitude engine and breakers.
    for (const fn of [
      'coolant-temperature-gauge',
      'gear-position-indicator',
      'manifold-pressure-gauge',
      'spare-fuses',
    ]) {
      expect(of(fn)).toBeUndefined();
    }
    expect((await distrusted(aircraftId)).sort()).toEqual(lines.map(({ name }) => name).sort());
  });

  test('comes once: what is on the list is not put there again', async () => {
    const aircraftId = await newAircraft();
    valueOf(await begin(aircraftId, ['night-vfr']));
    valueOf(await begin(aircraftId, ['night-vfr', 'ifr']));
    const { lines } = await list(aircraftId);
    expect(lines.filter((line) => line.function === 'generator')).toHaveLength(1);
    expect(problemOf(await begin(aircraftId, ['ifr'])).code).toBe('conflict');
  });

  test('is confirmed item by item: each its own signed record, put right or taken off on the way', async () => {
    const aircraftId = await newAircraft();
    valueOf(await begin(aircraftId));
    const before = await factsOf(aircraftId);
    const { lines } = await list(aircraftId);
    const [first, second, third] = lines as [LineView, LineView, LineView];
    const done = valueOf(
      await confirm(aircraftId, [
        agrees(first),
        agrees(second, { installed: '3' }),
        { kind: 'not-installed', equipmentId: third.id, source: SOURCE },
      ]),
    );
    expect(done).toMatchObject({ confirmed: 2, removed: 1, left: lines.length - 3 });
    const after = await list(aircraftId);
    expect(after.lines.find(({ id }) => id === second.id)).toMatchObject({
      installed: 3,
      confirmed: true,
      vouched: { by: 'Max Overfield', on: '2026-11-25', source: SOURCE },
    });
    expect(after.removed).toMatchObject([{ id: third.id, on: '2026-11-25' }]);
    expect(await distrusted(aircraftId)).not.toContain(first.name);
    expect(await distrusted(aircraftId)).toHaveLength(lines.length - 3);
    for (const { id } of [first, second, third]) expect(await vouchingsOf(id)).toHaveLength(1);
    expect((await factsOf(aircraftId)).version).toBe(before.version + 1);
  });

  test('is signed for by a password, and by nobody twice', async () => {
    const aircraftId = await newAircraft();
    valueOf(await begin(aircraftId, ['day-vfr']));
    const [line] = (await list(aircraftId)).lines as [LineView];
    expect(problemOf(await confirm(aircraftId, [agrees(line)], { password: 'not it' })).code).toBe(
      'wrong_password',
    );
    expect(await vouchingsOf(line.id)).toEqual([]);
    valueOf(await confirm(aircraftId, [agrees(line)]));
    expect(problemOf(await confirm(aircraftId, [agrees(line)])).code).toBe('superseded');
    const twice = (await list(aircraftId)).lines.find(({ confirmed }) => !confirmed)!;
    const problem = problemOf(await confirm(aircraftId, [agrees(twice), agrees(twice)]));
    expect(problem.fields).toHaveProperty('decisions');
    const half = problemOf(await confirm(aircraftId, [agrees(twice, { requiredDayIfr: '' })]));
    expect(half.fields).toHaveProperty(['decisions.0.line.requiredDayIfr']);
    expect(problemOf(await confirm(aircraftId, [])).code).toBe('invalid');
  });
});

describe('a line', () => {
  test('is entered and changed, each time signed anew', async () => {
    const aircraftId = await newAircraft();
    const { equipmentId } = valueOf(await enterLine(manager(), enterOf(aircraftId), now));
    const changed = enterOf(aircraftId, lineOf({ installed: '2', authority: ['koel', 'type-design'] }), {
      equipmentId,
    });
    valueOf(await enterLine(manager(), changed, now));
    const { lines } = await list(aircraftId);
    expect(lines).toMatchObject([
      { id: equipmentId, installed: 2, authority: ['type-design', 'koel'], origin: 'typed', confirmed: true },
    ]);
    expect(await vouchingsOf(equipmentId)).toHaveLength(2);
  });

  test('may say that the aircraft has none', async () => {
    const aircraftId = await newAircraft();
    const none = lineOf({ name: 'VOR receiver', function: 'vor-receiver', jasc: '3454', installed: '0' });
    valueOf(await enterLine(manager(), enterOf(aircraftId, none), now));
    expect((await factsOf(aircraftId)).facts.equipment).toMatchObject([
      { installed: 0, confirmed: { known: true } },
    ]);
  });

  test.each([
    ['line.name', lineOf({ name: '' })],
    ['line.jasc', lineOf({ jasc: '9999' })],
    ['line.installed', lineOf({ installed: '51' })],
    ['line.function', lineOf({ function: 'espresso' })],
    ['line.requiredNightIfr', lineOf({ requiredNightIfr: '' })],
    ['line.authority.0', lineOf({ authority: ['hearsay'] })],
  ])('is refused at %s', async (path, line) => {
    const problem = problemOf(await enterLine(manager(), enterOf(school.aircraftId, line), now));
    expect(Object.keys(problem.fields ?? {})).toEqual([path]);
  });

  test('has a name of its own in its list', async () => {
    const problem = problemOf(
      await enterLine(manager(), enterOf(school.aircraftId, lineOf({ name: ' landing  LIGHT' })), now),
    );
    expect(problem.fields).toHaveProperty(['line.name']);
  });

  test('from before the question is trusted as it was, and changing it signs it', async () => {
    const line = (await list(school.aircraftId)).lines.find((one) => one.function === 'clock')!;
    expect(line).toMatchObject({ origin: null, confirmed: true, vouched: null });
    const input = enterOf(school.aircraftId, asInput(line), { equipmentId: line.id });
    valueOf(await enterLine(manager(), input, now));
    expect(await vouchingsOf(line.id)).toHaveLength(1);
  });

  test('of another school is not there', async () => {
    expect(problemOf(await enterLine(manager(), enterOf(other.aircraftId), now)).code).toBe('not_found');
    expect(problemOf(await readEquipment(manager(), { aircraftId: other.aircraftId }, now)).code).toBe(
      'not_found',
    );
    const theirs = {
      ...own(),
      equipmentId: other.equipment.get('clock'),
      why: 'None there.',
      source: SOURCE,
      password: PASSWORD,
    };
    expect(problemOf(await removeLine(manager(), theirs, now)).code).toBe('not_found');
  });
});

describe('taking a line off', () => {
  const removal = (equipmentId: string) => ({
    ...own(),
    equipmentId,
    why: 'Taken out with the last annual.',
    source: SOURCE,
    password: PASSWORD,
  });

  test('is refused while an open write-up names it, and a late report on it is not lost', async () => {
    const light = school.equipment.get('landing-light')!;
    const report = { ...deadLandingLight(school), station: 'left-leading-edge' };
    valueOf(await reportFinding(school.people.renter, report, now));
    const problem = problemOf(await removeLine(manager(), removal(light), now));
    expect(problem).toMatchObject({ code: 'conflict', say: expect.stringContaining('is open on it') });

    const taxi = school.equipment.get('taxi-light')!;
    valueOf(await removeLine(manager(), removal(taxi), now));
    expect((await factsOf(school.aircraftId)).facts.equipment.some(({ id }) => id === taxi)).toBe(false);
    expect(problemOf(await removeLine(manager(), removal(taxi), now)).code).toBe('not_found');
    // Written on a phone before the line was taken off: the write-up counts, and a mechanic says what it is about.
    const late = {
      ...deadLandingLight(school),
      requestId: randomUUID(),
      findingKey: 'taxi-light-dead',
      equipmentId: taxi,
    };
    const { discrepancyId } = valueOf(
      await reportFinding(school.people.renter, { ...late, findingKey: null, kind: 'inoperative' }, now),
    );
    const { facts } = await factsOf(school.aircraftId);
    expect(facts.discrepancies.find(({ id }) => id === discrepancyId)).toMatchObject({ equipmentId: null });
  });
});

describe('a file', () => {
  const check = (aircraftId: string, text: string, some: object = {}) =>
    checkEquipment(manager(), fileOf(aircraftId, text, some), now);
  const take = (aircraftId: string, text: string, some: object = {}) =>
    importEquipment(manager(), importOf(aircraftId, text, some), now);

  test('is looked at, taken in whole and signed for, and changes nothing the second time', async () => {
    const aircraftId = await newAircraft();
    const found = valueOf(await check(aircraftId, CSV));
    expect(found.rows.map(({ row, does }) => [row, does])).toEqual([
      [2, 'add'],
      [3, 'add'],
    ]);
    expect(valueOf(await take(aircraftId, CSV))).toEqual({
      added: 2,
      changed: 0,
      confirmed: 0,
      unchanged: 0,
    });
    const { lines } = await list(aircraftId);
    expect(lines).toMatchObject([
      {
        name: 'Second altimeter',
        origin: 'imported',
        confirmed: true,
        authority: ['equipment-list', 'koel'],
      },
      { name: 'Taxi lamp', origin: 'imported', confirmed: true },
    ]);
    for (const { id } of lines) expect(await vouchingsOf(id)).toHaveLength(1);
    const { version } = await factsOf(aircraftId);
    expect(valueOf(await take(aircraftId, CSV))).toEqual({
      added: 0,
      changed: 0,
      confirmed: 0,
      unchanged: 2,
    });
    expect((await factsOf(aircraftId)).version).toBe(version);
    for (const { id } of lines) expect(await vouchingsOf(id)).toHaveLength(1);
  });

  test('changes and confirms what it names and leaves the rest', async () => {
    const aircraftId = await newAircraft();
    valueOf(await begin(aircraftId, ['day-vfr']));
    const { lines } = await list(aircraftId);
    const text = [
      HEAD,
      'airspeed INDICATOR,airspeed-indicator,3414,1,yes,1,1,1,1,type-design; 91.205',
      'Airspeed indicator 2,airspeed-indicator,3414,1,no,0,0,0,0,',
    ].join('\n');
    const found = valueOf(await check(aircraftId, text));
    expect(found.rows.map(({ does, differs }) => [does, differs])).toEqual([
      ['change', ['name']],
      ['add', []],
    ]);
    expect(found.notInFile).toHaveLength(lines.length - 1);
    const same = text.replace('airspeed INDICATOR', 'Airspeed indicator');
    expect(valueOf(await check(aircraftId, same)).rows[0]?.does).toBe('confirm');
    valueOf(await take(aircraftId, same));
    expect(await distrusted(aircraftId)).toHaveLength(lines.length - 1);
  });

  test('says everything that is wrong, row and column, and takes in nothing of it', async () => {
    const text = [
      HEAD,
      'Good,other,2560,1,no,0,0,0,0,',
      ',other,2560,1,no,0,0,0,0,',
      'Bad code,other,9999,one,maybe,0,0,0,,hearsay',
      'Good,other,2560,1,no,0,0,0,0,',
      'Short,other',
    ].join('\n');
    const found = valueOf(await check(school.aircraftId, text));
    expect(found.errors.map(({ row, field }) => [row, field])).toEqual([
      [3, 'name'],
      [4, 'vfr_day_type_design'],
      [4, 'jasc'],
      [4, 'installed'],
      [4, 'authority'],
      [5, 'name'],
      [6, null],
    ]);
    const problem = problemOf(await take(school.aircraftId, text));
    expect(problem.fields).toHaveProperty(['rows.4.jasc']);
    expect((await list(school.aircraftId)).lines.some(({ name }) => name === 'Good')).toBe(false);
  });

  test.each(['csv', 'json'] as const)(
    'the %s template is refused as long as its examples are in it',
    async (format) => {
      const found = valueOf(await check(school.aircraftId, equipmentTemplate(format), { format }));
      expect(found.errors.map(({ field }) => field)).toEqual(['aircraft', 'aircraft']);
      // Without the aircraft column the rows themselves are in order.
      const text = equipmentTemplate(format).replaceAll('N0EXAMPLE', '');
      expect(valueOf(await check(school.aircraftId, text, { format })).errors).toEqual([]);
    },
  );

  test('JSON says the same as CSV, and what looks like a formula stays text', async () => {
    const aircraftId = await newAircraft();
    const name = '=HYPERLINK("http://x")';
    const rows = [
      { name, function: 'other', jasc: 2560, installed: 1, vfr_day_type_design: false, authority: ['mel'] },
    ];
    valueOf(await take(aircraftId, JSON.stringify({ rows }), { format: 'json' }));
    expect((await list(aircraftId)).lines).toMatchObject([
      { name, authority: ['mel'], requiredDayVfr: null },
    ]);
    const csv = `${HEAD}\n"'=HYPERLINK(""http://x"")",other,2560,1,no,,,,,mel`;
    expect(valueOf(await check(aircraftId, csv)).rows[0]?.does).toBe('keep');
  });

  test.each([
    ['not json', 'json', '{'],
    ['no array', 'json', '{"rows": 3}'],
    ['no head', 'csv', '\n1,2'],
    ['no row', 'csv', HEAD],
    ['a column too few', 'csv', 'name,function\nA,other'],
  ])('that is broken as a whole (%s) is told as one', async (_what, format, text) => {
    const found = valueOf(await check(school.aircraftId, text, { format }));
    expect(found.errors.length).toBeGreaterThan(0);
    expect(found.errors.every(({ row }) => row === 0)).toBe(true);
  });

  test('of more than 1 MB, 1 MB, and just under', async () => {
    const pad = (bytes: number) => `${CSV}\r\n`.padEnd(bytes, '\n');
    expect(problemOf(await check(school.aircraftId, pad(1_048_577))).fields).toHaveProperty('text');
    for (const bytes of [1_048_576, 1_048_575]) {
      expect((await check(school.aircraftId, pad(bytes))).ok).toBe(true);
    }
  });
});

test('everything above stands in the chain as it was signed', async () => {
  const reports = await verifyAudit(database.adminUrl);
  expect(reports.flatMap(({ faults }) => faults)).toEqual([]);
});
