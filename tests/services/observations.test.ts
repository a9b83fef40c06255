/**
 * A write-up seen again. Source: issue 3, "asks 'is it this one?' and adds an observation to it instead of a twin". That an
 * observation never hides that something is worse or back is our design; that a border value is within: triage of issue 2.
 * Limits and people are invented.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { ActorRef } from '@/lib/access/actor';
import { dateColumn } from '@/lib/db/dates';
import { readInOperator, writeInOperator } from '@/lib/db/scope';
import { beginDeferral } from '@/lib/determinations/begin-deferral';
import { findWithinLimits } from '@/lib/determinations/find-within-limits';
import { readWriteUp } from '@/lib/determinations/read-write-up';
import { addObservation } from '@/lib/findings/add-observation';
import { readOwnFindings } from '@/lib/findings/own-findings';
import { recordServicing } from '@/lib/findings/record-servicing';
import { reportFinding } from '@/lib/findings/report-finding';
import { readAircraftFile } from '@/lib/fleet/read-aircraft-file';
import { readBoard } from '@/lib/fleet/read-board';
import { startWalkaround } from '@/lib/walkarounds/start-walkaround';
import { deadLandingLight, deferralOf, nickedPropeller, problemOf, valueOf } from '../fixtures/acts';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import {
  closeSchools,
  foundSchool,
  NOW,
  openSchools,
  PASSWORD,
  PEOPLE,
  register,
  type School,
} from '../fixtures/school';

let database: FreshDatabase;
let other: School;
const now = { now: NOW };
const LATER = { now: new Date(NOW.getTime() + 3_600_000) };

beforeAll(async () => {
  ({ database, other } = await openSchools());
});
afterAll(() => closeSchools(database));

let schools = 0;
/** A school of its own for a test that counts. */
const ownSchool = () => foundSchool(`seen-again-${(schools += 1)}`, trainer());

const seen = (discrepancyId: string, facts: Record<string, unknown> = {}) => ({
  requestId: randomUUID(),
  discrepancyId,
  walkaroundId: null,
  station: 'propeller',
  itemKey: null,
  words: 'Still there, looks the same.',
  measurements: {},
  foundAt: LATER.now.toISOString(),
  phase: 'before-flight',
  ...facts,
});

const reported = async (at: School, input: object = nickedPropeller(at), by: ActorRef = at.people.renter) =>
  valueOf(await reportFinding(by, input, now));
const add = (at: School, input: object, by: ActorRef = at.people.student) => addObservation(by, input, LATER);
const view = async (at: School, discrepancyId: string) =>
  valueOf(await readWriteUp(at.people.powerplant, { discrepancyId }, LATER));
const versionOf = (at: School) =>
  readInOperator(at.operatorId, async (tx) => {
    const row = await tx.aircraft.findUniqueOrThrow({
      where: { operatorId_id: { operatorId: at.operatorId, id: at.aircraftId } },
    });
    return row.factsVersion;
  });
const writeUpsOf = (at: School) =>
  readInOperator(at.operatorId, (tx) =>
    tx.discrepancy.findMany({ where: { operatorId: at.operatorId }, orderBy: { number: 'asc' } }),
  );
const outcome = async (at: School) =>
  valueOf(await readBoard(at.people.dispatcher, {}, LATER)).rows[0]?.cells[0]?.outcome;

/** At most 0.031 in deep and wide, stored for this aircraft. */
const storeLimits = (at: School) =>
  writeInOperator(at.operatorId, async (tx) => {
    for (const measurement of ['propeller-nick-depth', 'propeller-nick-width'])
      await tx.storedLimit.create({
        data: {
          id: randomUUID(),
          operatorId: at.operatorId,
          aircraftId: at.aircraftId,
          findingKey: 'propeller-nick',
          measurement,
          unit: 'thousandth-inch',
          min: null,
          max: 31,
          source: 'Invented propeller manual',
          sourceDate: dateColumn('2020-05-01'),
        },
      });
  });

/** A nick that a mechanic has found within limits: open, watched, and flown with. */
async function watchedNick(at: School) {
  const nick = await reported(at);
  valueOf(
    await findWithinLimits(
      at.people.powerplant,
      {
        requestId: randomUUID(),
        discrepancyId: nick.discrepancyId,
        measured: '0.020 in deep',
        limitText: '0.031 in',
        limitSource: 'Invented propeller manual',
        statement: 'Within limits.',
        password: PASSWORD,
      },
      now,
    ),
  );
  // Stored after it: before, the finding is held against them by number, which within-limits-by-number.test.ts is about.
  await storeLimits(at);
  return nick;
}

describe('of a write-up that is open', () => {
  test('it is kept beside it: no twin, no other severity, no new facts', async () => {
    const at = await ownSchool();
    const nick = await reported(at);
    const before = await versionOf(at);
    const added = valueOf(await add(at, seen(nick.discrepancyId, { phase: 'after-flight' })));
    expect(added).toMatchObject({
      discrepancyId: nick.discrepancyId,
      number: nick.number,
      title: nick.title,
      openedAnew: false,
      why: null,
      severity: nick.severity,
      reasons: nick.reasons,
      settledBy: nick.settledBy,
    });
    expect(await writeUpsOf(at)).toHaveLength(1);
    expect(await versionOf(at)).toBe(before);
    const shown = await view(at, nick.discrepancyId);
    expect(shown.summary).toMatchObject({ observations: 1, severity: nick.severity });
    expect(shown.observations).toEqual([
      {
        id: added.observationId,
        by: PEOPLE.student.name,
        byId: at.people.student.personId,
        foundAt: LATER.now.toISOString(),
        phase: 'after-flight',
        station: 'propeller',
        words: 'Still there, looks the same.',
        measurements: {},
        photos: [],
      },
    ]);
  });

  test('several stand oldest first by when they were seen, whenever they arrived', async () => {
    const at = await ownSchool();
    const { discrepancyId } = await reported(at);
    for (const [words, minute] of [
      ['second', 20],
      ['first', 10],
      ['third', 30],
    ] as const)
      valueOf(await add(at, seen(discrepancyId, { words, foundAt: `2026-11-25T16:${minute}:00Z` })));
    const { observations } = await view(at, discrepancyId);
    expect(observations.map(({ words }) => words)).toEqual(['first', 'second', 'third']);
  });

  test('sent twice, also at once, it is written once with the same answer; other words under its number are refused', async () => {
    const at = await ownSchool();
    const { discrepancyId } = await reported(at);
    const message = seen(discrepancyId);
    const [one, two] = await Promise.all([add(at, message), add(at, message)]);
    expect(valueOf(two)).toEqual(valueOf(one));
    expect(valueOf(await add(at, message))).toEqual(valueOf(one));
    expect((await view(at, discrepancyId)).summary.observations).toBe(1);
    expect(problemOf(await add(at, { ...message, words: 'Something else.' })).code).toBe('conflict');
  });

  test('it leaves an audit row that names write-up, aircraft and observation', async () => {
    const at = await ownSchool();
    const nick = await reported(at);
    const message = seen(nick.discrepancyId);
    valueOf(await add(at, message));
    const rows = await readInOperator(at.operatorId, (tx) =>
      tx.auditRow.findMany({ where: { operatorId: at.operatorId, verb: 'observation.add' } }),
    );
    expect(rows).toHaveLength(1);
    expect(rows[0]).toMatchObject({
      subjectKind: 'discrepancy',
      subjectId: nick.discrepancyId,
      requestId: message.requestId,
      personId: at.people.student.personId,
      detail: {
        number: nick.number,
        aircraft: trainer().registration,
        observationId: message.requestId,
        of: nick.number,
        openedAnew: false,
      },
    });
  });
});

describe('of a write-up that is deferred', () => {
  async function deferred(at: School) {
    const light = await reported(at, deadLandingLight(at));
    valueOf(await beginDeferral(at.people.powerplant, deferralOf(light.discrepancyId), now));
    return light;
  }

  test('words alone leave the deferral as it is', async () => {
    const at = await ownSchool();
    const light = await deferred(at);
    const added = valueOf(await add(at, seen(light.discrepancyId, { station: 'left-leading-edge' })));
    expect(added.openedAnew).toBe(false);
    expect((await view(at, light.discrepancyId)).summary.state).toBe('deferred');
  });

  test.each([
    [30, false],
    [31, false],
    [32, true],
  ])('a value of %s thousandths against a stored limit of 31 opens a new one: %s', async (depth, anew) => {
    const at = await ownSchool();
    await storeLimits(at);
    const light = await deferred(at);
    const added = valueOf(
      await add(at, seen(light.discrepancyId, { measurements: { 'propeller-nick-depth': depth } })),
    );
    expect(added.openedAnew).toBe(anew);
    expect((await view(at, light.discrepancyId)).summary.state).toBe('deferred');
  });
});

describe('of a watch, measured again against the stored limit of 0.031 in', () => {
  test.each([
    [30, false, 'go'],
    [31, false, 'go'],
    [32, true, 'no-go'],
  ])('%s thousandths: a new write-up %s, and the board says %s', async (depth, anew, board) => {
    const at = await ownSchool();
    const nick = await watchedNick(at);
    expect(await outcome(at)).toBe('go');
    const before = await versionOf(at);
    const measurements = { 'propeller-nick-depth': depth, 'propeller-nick-width': 10 };
    const added = valueOf(await add(at, seen(nick.discrepancyId, { measurements })));
    expect(added.openedAnew).toBe(anew);
    expect(await outcome(at)).toBe(board);
    expect((await versionOf(at)) > before).toBe(anew);
    const old = await view(at, nick.discrepancyId);
    expect(old.summary).toMatchObject({ severity: 'watch', state: 'open', observations: anew ? 0 : 1 });
    if (!anew) {
      expect(old.observations[0]?.measurements).toEqual(measurements);
      return;
    }
    expect(added.why).toContain('0.032 in is over the most allowed');
    expect(added).toMatchObject({ severity: 'grounding', title: nick.title });
    expect(added.discrepancyId).not.toBe(nick.discrepancyId);
    expect(old.later).toEqual([
      { id: added.discrepancyId, number: added.number, title: added.title, state: 'open', how: 'worse' },
    ]);
    const fresh = await view(at, added.discrepancyId);
    expect(fresh.earlier).toMatchObject({ id: nick.discrepancyId, number: nick.number, how: 'worse' });
    expect(fresh.measurements).toEqual(measurements);
    expect(fresh.summary.place).toBe(nickedPropeller(at).place);
  });
});

describe('of a write-up closed by the time it arrives', () => {
  test('what is closed stays closed; a new one is opened, names the old one, and grounds', async () => {
    const at = await ownSchool();
    const low = await reported(at, {
      ...nickedPropeller(at),
      station: 'nose-right',
      findingKey: 'oil-low',
      place: 'dipstick',
      words: 'Four quarts.',
    });
    valueOf(
      await recordServicing(
        at.people.renter,
        { requestId: randomUUID(), discrepancyId: low.discrepancyId, words: 'Two quarts added.' },
        now,
      ),
    );
    expect(await outcome(at)).toBe('go');
    const message = seen(low.discrepancyId, { station: 'nose-right', words: 'Low again.' });
    const added = valueOf(await add(at, message));
    expect(added).toMatchObject({
      observationId: message.requestId,
      openedAnew: true,
      title: low.title,
      severity: 'grounding',
      settledBy: 'pilot-servicing',
    });
    expect(added.why).toContain(`${low.number} is closed`);
    expect(added.number).not.toBe(low.number);
    expect(await outcome(at)).toBe('no-go');

    const old = await view(at, low.discrepancyId);
    expect(old.summary).toMatchObject({ state: 'closed', closedHow: 'serviced', observations: 0 });
    expect(old.later).toMatchObject([{ id: added.discrepancyId, how: 'back' }]);
    const fresh = await view(at, added.discrepancyId);
    expect(fresh.earlier).toMatchObject({ id: low.discrepancyId, state: 'closed', how: 'back' });
    expect(fresh.findingKey).toBe('oil-low');
    expect(fresh.summary).toMatchObject({ words: 'Low again.', place: 'dipstick', jasc: old.summary.jasc });
    expect(valueOf(await add(at, message))).toEqual(added);
    expect(await writeUpsOf(at)).toHaveLength(2);
  });

  test('equipment and how many of it go over to the new one', async () => {
    const at = await ownSchool();
    const light = await reported(at, deadLandingLight(at));
    await writeInOperator(at.operatorId, (tx) =>
      tx.discrepancy.update({
        where: { operatorId_id: { operatorId: at.operatorId, id: light.discrepancyId } },
        data: { state: 'closed', closedAt: NOW, closedHow: 'repaired' },
      }),
    );
    const added = valueOf(await add(at, seen(light.discrepancyId, { station: 'left-leading-edge' })));
    const fresh = await view(at, added.discrepancyId);
    expect(fresh).toMatchObject({
      equipmentId: at.equipment.get('landing-light'),
      inoperativeCount: 1,
      findingKey: 'landing-light-dead',
    });
    expect(fresh.summary).toMatchObject({ kind: 'inoperative', severity: 'limiting' });
  });
});

describe('refused, with nothing written', () => {
  test('a write-up of another operator is not there', async () => {
    const at = await ownSchool();
    const theirs = await reported(other);
    expect(problemOf(await add(at, seen(theirs.discrepancyId))).code).toBe('not_found');
    expect((await view(other, theirs.discrepancyId)).summary.observations).toBe(0);
  });

  test('a write-up that never was', async () => {
    const at = await ownSchool();
    expect(problemOf(await add(at, seen(randomUUID()))).code).toBe('not_found');
  });

  test('a walkaround of another aircraft; one of its own is taken', async () => {
    const at = await ownSchool();
    const second = await writeInOperator(at.operatorId, (tx) =>
      register(tx, at.operatorId, at.baseId, { ...trainer(), registration: 'N0TWO' }),
    );
    const nick = await reported(at);
    const walkOf = async (aircraftId: string) =>
      valueOf(
        await startWalkaround(
          at.people.student,
          { requestId: randomUUID(), aircraftId, startedAt: NOW.toISOString() },
          now,
        ),
      ).walkaroundId;
    const wrong = seen(nick.discrepancyId, { walkaroundId: await walkOf(second.aircraftId) });
    expect(problemOf(await add(at, wrong)).code).toBe('not_found');
    const right = seen(nick.discrepancyId, { walkaroundId: await walkOf(at.aircraftId) });
    expect(valueOf(await add(at, right)).openedAnew).toBe(false);
    expect((await view(at, nick.discrepancyId)).summary.observations).toBe(1);
  });

  test('no words, with the field named', async () => {
    const at = await ownSchool();
    const nick = await reported(at);
    const problem = problemOf(await add(at, seen(nick.discrepancyId, { words: '  ' })));
    expect(problem.code).toBe('invalid');
    expect(Object.keys(problem.fields ?? {})).toEqual(['words']);
  });
});

test('an observation is no discrepancy: what the rules and the file are given does not grow', async () => {
  const at = await ownSchool();
  const nick = await watchedNick(at);
  valueOf(await add(at, seen(nick.discrepancyId)));
  const file = valueOf(await readAircraftFile(at.people.renter, { aircraftId: at.aircraftId }, LATER));
  expect(JSON.stringify(file).match(/"number":"W-\d+"/g)).toEqual([`"number":"${nick.number}"`]);
  expect(await outcome(at)).toBe('go');
});

test('who has seen it finds it among the own ones, with what became of it', async () => {
  const at = await ownSchool();
  const nick = await watchedNick(at);
  const mineBefore = valueOf(await readOwnFindings(at.people.student, {}, LATER));
  expect(mineBefore).toEqual([]);
  valueOf(await add(at, seen(nick.discrepancyId, { words: 'I see it too.' })));
  const own = await reported(at, deadLandingLight(at), at.people.student);
  const mine = valueOf(await readOwnFindings(at.people.student, {}, LATER));
  // The observation came an hour after the finding.
  expect(mine.map(({ writeUp, isMine }) => [writeUp.number, isMine])).toEqual([
    [nick.number, false],
    [own.number, true],
  ]);
  expect(mine[0]).toMatchObject({
    writeUp: { reportedBy: PEOPLE.renter.name },
    seenAgain: [{ words: 'I see it too.' }],
    events: [{ words: 'Within limits.' }],
  });
  const theirs = valueOf(await readOwnFindings(at.people.renter, {}, LATER));
  expect(theirs.map(({ isMine, seenAgain }) => [isMine, seenAgain.length])).toEqual([[true, 0]]);
});
