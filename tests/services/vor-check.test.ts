/** The VOR check of 91.171 recorded by whoever made it: 91.171(a)(2), (b), (c), (d), as the service holds them. */
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { readInOperator } from '@/lib/db/scope';
import { readRequirement } from '@/lib/inspections/read-requirement';
import { recordVorCheck } from '@/lib/inspections/record-vor-check';
import { verifyOperator } from '@/lib/records/verify';
import { problemOf, valueOf } from '../fixtures/acts';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import { requirementsOf, vorCheckOf } from '../fixtures/inspections';
import { closeSchools, foundSchool, NOW, openSchools, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let due: ReadonlyMap<string, string>;
let schools = 0;
const now = { now: NOW };

beforeAll(async () => {
  ({ database } = await openSchools());
});
afterAll(() => closeSchools(database));
beforeEach(async () => {
  school = await foundSchool(`checked-${(schools += 1)}`, trainer());
  due = await requirementsOf(school);
});

const record = (change: object = {}) =>
  recordVorCheck(school.people.renter, vorCheckOf(due.get('vor-check') ?? '', change), now);
const read = async () =>
  valueOf(await readRequirement(school.people.renter, { requirementId: due.get('vor-check') ?? '' }, now));

test('date, place, error and signature by a pilot; good for thirty days (91.171(a)(2), (d))', async () => {
  valueOf(await record());
  const view = await read();
  expect(view.due.on).toBe('2026-12-25');
  expect(view.history[0]).toMatchObject({
    doneOn: '2026-11-25',
    approvedBy: 'Rue Fernhollow',
    details: [
      { name: 'How', value: 'test signal' },
      { name: 'Place', value: 'Home, test signal on the ramp' },
      { name: 'Bearing error', value: '1.5°' },
    ],
  });
  const report = await readInOperator(school.operatorId, (tx) => verifyOperator(tx, school.operatorId));
  expect(report).toMatchObject({ faults: [], signatures: 1 });
});

test.each([
  ['test-signal', '4', '', null],
  ['test-signal', '4.5', '', '14cfr91.171(b)(1)'],
  ['surface-point', '-4.5', '', '14cfr91.171(b)(2)'],
  ['airborne-point', '6', '-6', null],
  ['airborne-point', '0', '6.5', '14cfr91.171(b)(3)'],
  ['airway', '6.5', '', '14cfr91.171(b)(4)'],
  ['dual', '358', '2', null],
  ['dual', '90', '94.5', '14cfr91.171(c)'],
])('%s, %s and %s: %s', async (method, first, second, cite) => {
  const result = await record({ method, first, second });
  if (cite === null) {
    valueOf(result);
    return;
  }
  const problem = problemOf(result);
  expect(problem.code).toBe('signature_refused');
  expect(problem.lines?.map((line) => line.cite)).toContain(cite);
  expect(problem.say).toContain('finding');
  expect((await read()).history).toHaveLength(1);
});

test.each([
  [{ first: '' }, 'first'],
  [{ first: '1.2' }, 'first'],
  [{ method: 'dual', first: '90', second: '' }, 'second'],
  [{ method: 'dual', first: '-90', second: '90' }, 'first'],
  [{ checkedOn: '2026-11-26' }, 'checkedOn'],
  [{ place: ' ' }, 'place'],
  [{ method: 'by ear' }, 'method'],
])('%o is refused at its field', async (change, field) => {
  expect(problemOf(await record(change)).fields).toHaveProperty([field]);
});

test('nothing else is recorded as a VOR check', async () => {
  expect(problemOf(await record({ requirementId: due.get('transponder') })).code).toBe('conflict');
});
