/**
 * What recurs and what is aboard, kept by mechanics and managers, on a real PostgreSQL. Sources stand beside the checks; the
 * rest is issue 4 and common practice.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { readInOperator, writeInOperator } from '@/lib/db/scope';
import { readDue } from '@/lib/due/read-due';
import { addRequirement } from '@/lib/fleet/add-requirement';
import { endRequirement } from '@/lib/fleet/end-requirement';
import { readBoard } from '@/lib/fleet/read-board';
import { renewPaper } from '@/lib/fleet/renew-paper';
import { contentHash } from '@/lib/records/canonical';
import { problemOf, valueOf } from '../fixtures/acts';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, foundSchool, NOW, openSchools, PASSWORD, type School } from '../fixtures/school';

const now = { now: NOW };
let database: FreshDatabase;
let school: School;
let founded = 0;

beforeAll(async () => {
  ({ database } = await openSchools());
});
afterAll(() => closeSchools(database));
beforeEach(async () => {
  school = await foundSchool(`requirements-${(founded += 1)}`, trainer());
});

const added = (overrides: object = {}) => ({
  requestId: randomUUID(),
  aircraftId: school.aircraftId,
  kind: 'directive',
  name: 'Heat valve',
  reference: 'Invented directive 9',
  binding: null,
  intervalMonths: '12',
  intervalDays: '',
  intervalHours: '100',
  fixedExpiry: '',
  ...overrides,
});
const add = (overrides: object = {}) => addRequirement(school.people.airframe, added(overrides), now);

const rows = async () => valueOf(await readDue(school.people.airframe, {}, now)).lines;
const inDb = <T>(work: Parameters<typeof readInOperator<T>>[1]) => readInOperator(school.operatorId, work);
const lastAudit = (verb: string) =>
  inDb((tx) => tx.auditRow.findFirstOrThrow({ where: { verb }, orderBy: { seq: 'desc' } }));
const dayVfr = async () => {
  const board = valueOf(await readBoard(school.people.dispatcher, {}, now));
  return board.rows[0]?.cells.find(({ id }) => id === 'day-vfr-private')?.outcome;
};

describe('adding', () => {
  test('both intervals, whichever first; until it is recorded it is not known and bars (39.7)', async () => {
    expect(await dayVfr()).toBe('go');
    const { requirementId } = valueOf(await add());
    const row = (await rows()).find(({ id }) => id === requirementId);
    expect(row).toMatchObject({
      group: 'unknown',
      cite: '14cfr39.7',
      missing: 'when "Heat valve" was last done',
    });
    expect(
      await inDb((tx) => tx.requirement.findFirstOrThrow({ where: { id: requirementId } })),
    ).toMatchObject({
      intervalMonths: 12,
      intervalTenths: 1000,
      binding: true,
      addedById: school.people.airframe.personId,
    });
    expect(await dayVfr()).toBe('no-go');
  });

  test('sent twice it stands once', async () => {
    const input = added();
    const first = valueOf(await addRequirement(school.people.airframe, input, now));
    expect(valueOf(await addRequirement(school.people.airframe, input, now))).toEqual(first);
    expect(await inDb((tx) => tx.requirement.count({ where: { name: 'Heat valve' } }))).toBe(1);
  });

  test.each([
    ['no interval and no date', { intervalMonths: '', intervalHours: '' }, 'intervalMonths'],
    ['months that are no number', { intervalMonths: 'twelve' }, 'intervalMonths'],
    ['hours that are no hours', { intervalHours: '1.25' }, 'intervalHours'],
    ['nought hours', { intervalHours: '0' }, 'intervalHours'],
    ['a maker’s interval without saying whether it binds', { kind: 'maker-interval' }, 'binding'],
    // 91.207(c)(2): the date marked on the battery.
    [
      'a battery without its date',
      { kind: 'elt-battery', intervalMonths: '', intervalHours: '' },
      'fixedExpiry',
    ],
    // 91.409(a): twelve calendar months, and no other figure.
    ['an annual with an interval of its own', { kind: 'annual' }, 'intervalMonths'],
    // One annual is enough: a second could only hide that the first ran out.
    ['a second annual', { kind: 'annual', intervalMonths: '', intervalHours: '' }, 'kind'],
    ['no name', { name: ' ' }, 'name'],
  ])('refuses %s at its field', async (_, overrides, field) => {
    const problem = problemOf(await add(overrides));
    expect(problem.code).toBe('invalid');
    expect(Object.keys(problem.fields ?? {})).toContain(field);
  });

  test('a date alone is enough, and a recommendation bars nothing', async () => {
    valueOf(
      await add({
        kind: 'maker-interval',
        binding: false,
        intervalMonths: '',
        intervalHours: '',
        fixedExpiry: '2026-11-24',
      }),
    );
    expect((await rows()).find(({ name }) => name === 'Heat valve')).toMatchObject({
      group: 'overdue',
      binding: false,
    });
    expect(await dayVfr()).toBe('go');
  });
});

describe('ending', () => {
  const end = (requirementId: string, why = 'Superseded by invented directive 10.', change: object = {}) =>
    endRequirement(
      school.people.manager,
      {
        requestId: randomUUID(),
        requirementId,
        why,
        reference: 'Invented directive 10, paragraph (c)',
        password: PASSWORD,
        ...change,
      },
      now,
    );
  const idOf = async (kind: string) =>
    (await inDb((tx) => tx.requirement.findFirstOrThrow({ where: { aircraftId: school.aircraftId, kind } })))
      .id;

  test('a directive ends with its reason, counts nowhere, and stays on record', async () => {
    const { requirementId } = valueOf(await add());
    valueOf(await end(requirementId));
    expect((await rows()).some(({ id }) => id === requirementId)).toBe(false);
    expect(await dayVfr()).toBe('go');
    expect(
      await inDb((tx) => tx.requirement.findFirstOrThrow({ where: { id: requirementId } })),
    ).toMatchObject({
      endedWhy: 'Superseded by invented directive 10.; Invented directive 10, paragraph (c)',
      endedById: school.people.manager.personId,
    });
    // The audit row keeps what was signed, and its hash over it (RFC 8785).
    const content = {
      requirement: 'Heat valve',
      kind: 'directive',
      why: 'Superseded by invented directive 10.',
      reference: 'Invented directive 10, paragraph (c)',
      endedOn: '2026-11-25',
    };
    expect((await lastAudit('requirement.end')).detail).toMatchObject({
      ...content,
      hash: contentHash(content),
    });
    expect(problemOf(await end(requirementId)).code).toBe('conflict');
  });

  // It is a signature: AC 120-78B asks who signs again; the document behind it is house caution.
  test('not without the password, nor without the document that says so', async () => {
    const { requirementId } = valueOf(await add());
    const wrong = problemOf(await end(requirementId, undefined, { password: 'not-the-password' }));
    expect(wrong.code).toBe('wrong_password');
    for (const reference of [undefined, ' ', 'AD']) {
      expect(problemOf(await end(requirementId, undefined, { reference })).fields).toHaveProperty(
        'reference',
      );
    }
    expect((await rows()).some(({ id }) => id === requirementId)).toBe(true);
  });

  test.each(['annual', 'hundred-hour', 'static-and-altimeter', 'transponder', 'elt-inspection', 'vor-check'])(
    'what a regulation asks for stays: %s',
    async (kind) => {
      const problem = problemOf(await end(await idOf(kind)));
      expect(problem.code).toBe('conflict');
      expect(problem.lines?.length).toBeGreaterThan(0);
    },
  );

  test('a transponder test ends once the transponder is out (91.413)', async () => {
    const id = await idOf('transponder');
    await writeInOperator(school.operatorId, (tx) =>
      tx.equipment.updateMany({
        where: { aircraftId: school.aircraftId, function: 'transponder' },
        data: { installed: 0 },
      }),
    );
    valueOf(await end(id, 'Transponder taken out for good.'));
  });

  test('without a reason it is refused', async () => {
    const { requirementId } = valueOf(await add());
    expect(problemOf(await end(requirementId, ' ')).fields).toHaveProperty('why');
  });
});

describe('renewing a paper', () => {
  const paperOf = (kind: string) =>
    inDb((tx) => tx.paper.findFirstOrThrow({ where: { aircraftId: school.aircraftId, kind } }));
  const renewal = async (overrides: object = {}) => ({
    requestId: randomUUID(),
    paperId: (await paperOf('registration')).id,
    issuedOn: '2026-11-10',
    validThrough: '2033-11-30',
    expires: true,
    reference: 'Certificate N0-77',
    aboard: true,
    ...overrides,
  });

  test('the new day counts at once, and the audit keeps what stood before', async () => {
    const before = await paperOf('registration');
    valueOf(await renewPaper(school.people.manager, await renewal(), now));
    expect((await rows()).find(({ kind }) => kind === 'paper')).toMatchObject({
      on: '2033-11-30',
      group: 'later',
    });
    const { detail } = await lastAudit('paper.renew');
    expect(detail).toMatchObject({
      before: { validThrough: before.validThrough?.toISOString().slice(0, 10), aboard: true },
      after: { validThrough: '2033-11-30', reference: 'Certificate N0-77' },
      issuedOn: '2026-11-10',
    });
  });

  // 47.40(a): seven years after the last day of the month of issue. Under, on, over.
  test.each([
    { validThrough: '2033-11-29', field: null },
    { validThrough: '2033-11-30', field: null },
    { validThrough: '2033-12-01', field: 'validThrough' },
  ])('issued 10 Nov 2026, through $validThrough: refused $field', async ({ validThrough, field }) => {
    const result = await renewPaper(school.people.airframe, await renewal({ validThrough }), now);
    if (field === null) valueOf(result);
    else expect(problemOf(result).fields).toHaveProperty(field);
  });

  test.each([
    ['no day of issue', { issuedOn: null }, 'issuedOn'],
    ['a day of issue to come', { issuedOn: '2026-11-26' }, 'issuedOn'],
    ['no last day', { validThrough: null }, 'validThrough'],
    ['a registration without an end', { validThrough: null, expires: false }, 'validThrough'],
    ['before its issue', { validThrough: '2026-11-09' }, 'validThrough'],
    ['nobody said whether it is aboard', { aboard: undefined }, 'aboard'],
  ])('refuses %s', async (_, overrides, field) => {
    const problem = problemOf(await renewPaper(school.people.airframe, await renewal(overrides), now));
    expect(problem.fields).toHaveProperty(field);
  });

  test('a paper that is not aboard bars, whatever its date (91.203(a)(2))', async () => {
    valueOf(await renewPaper(school.people.airframe, await renewal({ aboard: false }), now));
    expect(await dayVfr()).toBe('no-go');
  });
});
