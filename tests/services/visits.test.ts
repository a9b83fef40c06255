/** Visits: several write-ups and what falls due, in one stay. Source: issue 4, "group several discrepancies into one visit with the inspection due". */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { dateColumn } from '@/lib/db/dates';
import { writeInOperator } from '@/lib/db/scope';
import { recordServicing } from '@/lib/findings/record-servicing';
import { reportFinding } from '@/lib/findings/report-finding';
import { changeVisit } from '@/lib/visits/change-visit';
import { closeVisit } from '@/lib/visits/close-visit';
import { openVisit } from '@/lib/visits/open-visit';
import { readVisitChoices } from '@/lib/visits/read-choices';
import { readVisit } from '@/lib/visits/read-visit';
import { readBench } from '@/lib/work/read-bench';
import { startWork } from '@/lib/work/start-work';
import { deadLandingLight, nickedPropeller, problemOf, startOf, valueOf } from '../fixtures/acts';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, NOW, openSchools, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let other: School;
let nick: string;
let light: string;
let oil: string;
let vor: string;
const now = { now: NOW };
/** The VOR check of the trainer is due soonest of all: 91.171(a)(2), 30 days. */
const LATER = new Date(NOW.getTime() + 60_000);

beforeAll(async () => {
  ({ database, school, other } = await openSchools());
  const { renter } = school.people;
  nick = valueOf(await reportFinding(renter, nickedPropeller(school), now)).discrepancyId;
  light = valueOf(await reportFinding(renter, deadLandingLight(school), now)).discrepancyId;
  const low = {
    ...nickedPropeller(school),
    requestId: randomUUID(),
    station: 'nose-right',
    findingKey: 'oil-low',
  };
  oil = valueOf(await reportFinding(renter, { ...low, words: 'Five quarts.' }, now)).discrepancyId;
  vor = (await choices()).due.find(({ kind }) => kind === 'vor-check')?.requirementId ?? '';
  expect(vor).not.toBe('');
});
afterAll(() => closeSchools(database));

const mechanic = () => school.people.powerplant;
const choices = async () =>
  valueOf(await readVisitChoices(mechanic(), { aircraftId: school.aircraftId }, now));
const aVisit = (some: object = {}) => ({
  requestId: randomUUID(),
  aircraftId: school.aircraftId,
  title: 'Propeller and light',
  words: '',
  plannedOn: '2026-11-27',
  discrepancyIds: [nick],
  requirementIds: [],
  ...some,
});
const aChange = (visitId: string, some: object = {}) => ({
  requestId: randomUUID(),
  visitId,
  title: 'Propeller, light and VOR',
  words: 'Bring the loupe.',
  plannedOn: null,
  addDiscrepancyIds: [],
  addRequirementIds: [],
  removeItemIds: [],
  ...some,
});
const open = (some: object = {}) => openVisit(mechanic(), aVisit(some), now);
const read = async (visitId: string) => valueOf(await readVisit(mechanic(), { visitId }, { now: LATER }));
const close = (visitId: string) => closeVisit(mechanic(), { requestId: randomUUID(), visitId }, now);

test('a visit is opened, changed, and shows where everything in it stands', async () => {
  const { visitId } = valueOf(await open());
  expect(await read(visitId)).toMatchObject({
    title: 'Propeller and light',
    plannedOn: '2026-11-27',
    registration: expect.stringMatching(/^N0/) as string,
    openedBy: 'Pim Castlewick',
    closedAt: null,
    requirements: [],
    writeUps: [{ discrepancyId: nick, state: 'open', work: null, done: false, signedWorkIds: [] }],
  });
  valueOf(
    await changeVisit(
      mechanic(),
      aChange(visitId, { addDiscrepancyIds: [light, oil], addRequirementIds: [vor] }),
      now,
    ),
  );
  valueOf(await startWork(mechanic(), startOf(nick), now));
  valueOf(
    await recordServicing(
      mechanic(),
      { requestId: randomUUID(), discrepancyId: oil, words: 'Oil added.' },
      now,
    ),
  );
  const changed = await read(visitId);
  expect(changed).toMatchObject({
    title: 'Propeller, light and VOR',
    words: 'Bring the loupe.',
    plannedOn: null,
  });
  expect(
    Object.fromEntries(changed.writeUps.map((one) => [one.discrepancyId, [one.work, one.done]])),
  ).toEqual({
    [nick]: ['started', false],
    [light]: [null, false],
    [oil]: [null, true],
  });
  expect(changed.requirements).toMatchObject([{ requirementId: vor, byInspection: false, done: false }]);

  // Taken out it is free again.
  const out = changed.writeUps.find(({ discrepancyId }) => discrepancyId === light)!.itemId;
  expect((await choices()).writeUps).toEqual([]);
  valueOf(await changeVisit(mechanic(), aChange(visitId, { removeItemIds: [out] }), now));
  expect((await choices()).writeUps.map(({ id }) => id)).toEqual([light]);
  expect((await read(visitId)).writeUps.map(({ discrepancyId }) => discrepancyId).includes(light)).toBe(
    false,
  );

  // A requirement answered since it was put in is done.
  await writeInOperator(school.operatorId, (tx) =>
    tx.compliance.create({
      data: {
        id: randomUUID(),
        operatorId: school.operatorId,
        requirementId: vor,
        doneOn: dateColumn('2026-11-25'),
        ttisTenths: 0,
        approvedBy: 'Rue Fernhollow',
        recordedById: school.people.renter.personId,
        recordedAt: LATER,
      },
    }),
  );
  expect((await read(visitId)).requirements).toMatchObject([{ doneOn: '2026-11-25', done: true }]);

  // The bench names the visit beside its write-up.
  const bench = valueOf(await readBench(mechanic(), {}, now));
  expect(bench.visits).toMatchObject([{ id: visitId, items: 3 }]);
  const inVisit = bench.rows.map(({ writeUp, visit }) => [writeUp.id, visit?.id ?? null]);
  expect(Object.fromEntries(inVisit)).toEqual({ [nick]: visitId, [light]: null });

  // It closes with work open; that work stays in the queue.
  valueOf(await close(visitId));
  const closed = await read(visitId);
  expect(closed.closedBy).toBe('Pim Castlewick');
  expect(closed.writeUps.find(({ discrepancyId }) => discrepancyId === nick)?.done).toBe(false);
  const after = valueOf(await readBench(mechanic(), {}, now));
  expect(after.visits).toEqual([]);
  expect(after.rows.map(({ writeUp }) => writeUp.id)).toContain(nick);
  expect(problemOf(await close(visitId)).code).toBe('conflict');
  expect(problemOf(await changeVisit(mechanic(), aChange(visitId), now)).say).toContain('closed');
});

describe('what is refused', () => {
  test('a visit with nothing in it, without a name, or on no day', async () => {
    expect(problemOf(await open({ discrepancyIds: [] })).say).toContain('at least one thing');
    expect(Object.keys(problemOf(await open({ title: ' ' })).fields ?? {})).toEqual(['title']);
    expect(Object.keys(problemOf(await open({ plannedOn: '2026-02-30' })).fields ?? {})).toEqual([
      'plannedOn',
    ]);
  });

  test('a closed write-up, one of another aircraft or school, and what another open visit holds', async () => {
    expect(problemOf(await open({ discrepancyIds: [oil] })).say).toContain('is closed');
    const foreign = valueOf(await reportFinding(other.people.renter, nickedPropeller(other), now));
    expect(problemOf(await open({ discrepancyIds: [foreign.discrepancyId] })).code).toBe('not_found');
    expect(problemOf(await open({ requirementIds: [randomUUID()] })).code).toBe('not_found');
    const { visitId } = valueOf(await open({ title: 'Light', discrepancyIds: [light] }));
    const twice = problemOf(await open({ discrepancyIds: [nick, light] }));
    expect(twice.code).toBe('conflict');
    expect(twice.say).toContain('is in the visit “Light” already.');
    valueOf(await close(visitId));
  });

  test('another school sees no such visit, and a pilot has none', async () => {
    const { visitId } = valueOf(await open({ discrepancyIds: [light] }));
    expect(problemOf(await readVisit(other.people.powerplant, { visitId }, now)).code).toBe('not_found');
    expect(problemOf(await readVisit(school.people.renter, { visitId }, now)).code).toBe('not_allowed');
    valueOf(await close(visitId));
  });

  test('sent twice it is opened once', async () => {
    const input = aVisit({ discrepancyIds: [light] });
    const first = valueOf(await openVisit(mechanic(), input, now));
    expect(valueOf(await openVisit(mechanic(), input, now))).toEqual(first);
    expect(valueOf(await readBench(mechanic(), {}, now)).visits).toHaveLength(1);
    valueOf(await close(first.visitId));
  });
});
