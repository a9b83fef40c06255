/** The path after the first page: what is read from the facts, what a person calls done, and what the engine still lacks. */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { startFor } from '@/app/_ui/places';
import { readInOperator, writeInOperator } from '@/lib/db/scope';
import { readLacking } from '@/lib/fleet/read-lacking';
import { makeSetUpToken } from '@/lib/operate/set-up-token';
import type { Result } from '@/lib/problems';
import { markStep } from '@/lib/set-up/mark-step';
import { readIsSettingUp, readSetUp } from '@/lib/set-up/read-set-up';
import { setUp } from '@/lib/set-up/set-up';
import { withClient } from '@/lib/operate/connection';
import type { ActorRef } from '@/lib/access/actor';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, NOW, openSchools, type School } from '../fixtures/school';

const now = { now: NOW };
let database: FreshDatabase;
let school: School;
let other: School;

beforeAll(async () => {
  ({ database, school, other } = await openSchools());
});
afterAll(() => closeSchools(database));

function valueOf<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.value;
}
const stateOf = async (ref: ActorRef, step: string) =>
  valueOf(await readSetUp(ref, {}, now)).steps.find((one) => one.step === step)?.state;

describe('what the engine still lacks', () => {
  test('asks nothing about a complete trainer; a date taken away is asked for at its type', async () => {
    const ofTrainer = async () =>
      valueOf(await readLacking(school.people.manager, { aircraftId: school.aircraftId }, now)).aircraft[0];
    expect((await ofTrainer())?.lacking).toEqual([]);
    await writeInOperator(school.operatorId, (tx) =>
      tx.aircraftType.updateMany({ where: { id: school.typeId }, data: { certificatedOn: null } }),
    );
    expect(await ofTrainer()).toMatchObject({
      typeId: school.typeId,
      lacking: [{ cite: '14cfr91.205(b)(11)', enterAt: 'type' }],
    });
    expect(await stateOf(school.people.manager, 'types')).toBe('begun');
    await writeInOperator(school.operatorId, (tx) =>
      tx.aircraftType.updateMany({
        where: { id: school.typeId },
        data: { certificatedOn: new Date('1998-06-15') },
      }),
    );
    expect(await stateOf(school.people.manager, 'types')).toBe('done');
  });

  test('of the fleet when no aircraft is named, and never of another operator', async () => {
    const { aircraft } = valueOf(await readLacking(school.people.manager, {}, now));
    expect(aircraft.map(({ aircraftId }) => aircraftId)).toEqual([school.aircraftId]);
    expect(await readLacking(school.people.manager, { aircraftId: other.aircraftId }, now)).toMatchObject({
      ok: false,
      problem: { code: 'not_found' },
    });
  });
});

describe('steps', () => {
  test('a person calls the people complete, and takes it back; each is a row and an audit row', async () => {
    const { manager } = school.people;
    expect(await stateOf(manager, 'people')).toBe('begun');
    const request = { requestId: randomUUID(), step: 'people', done: true };
    expect(await markStep(manager, request, now)).toEqual(await markStep(manager, request, now));
    expect(await stateOf(manager, 'people')).toBe('done');
    const later = { now: new Date(NOW.getTime() + 1000) };
    valueOf(await markStep(manager, { requestId: randomUUID(), step: 'people', done: false }, later));
    expect(await stateOf(manager, 'people')).toBe('begun');
    const rows = await readInOperator(school.operatorId, (tx) => tx.setUpStep.findMany());
    expect(rows).toHaveLength(2);
    const audit = await readInOperator(school.operatorId, (tx) =>
      tx.auditRow.findMany({ where: { verb: 'set-up.mark-step' } }),
    );
    expect(audit).toHaveLength(2);
  });

  test.each(['bases', 'types', 'aircraft', 'equipment', 'papers', 'nonsense'])(
    'nobody calls %s done: the facts tell',
    async (step) => {
      const result = await markStep(
        school.people.manager,
        { requestId: randomUUID(), step, done: true },
        now,
      );
      expect(result).toMatchObject({ ok: false, problem: { code: 'invalid' } });
    },
  );
});

describe('where a manager starts', () => {
  test('at the desk in a school that was never set up by the page', async () => {
    expect(valueOf(await readIsSettingUp(school.people.manager, {}, now))).toBe(false);
    expect(startFor(['manager'])).toBe('/desk');
  });

  test('at the office after setting up, until the whole is called done; others where they always did', async () => {
    // Behind the guard of the console's program, which makes no token where there is an operator.
    const ref = await setUpAnother();
    const { isOpen, steps, lacking, facts } = valueOf(await readSetUp(ref, {}, now));
    expect(isOpen).toBe(true);
    expect(facts).toMatchObject({ bases: 1, basesUnsaid: 1, people: 1, aircraft: 0 });
    expect(steps.map(({ state }) => state)).toEqual([
      'begun',
      ...Array.from({ length: 7 }, () => 'not-started'),
    ]);
    expect(lacking).toEqual([]);
    expect(startFor(['manager'], true)).toBe('/office');
    expect(startFor(['manager', 'dispatcher'], true)).toBe('/office');
    expect(startFor(['dispatcher'], true)).toBe('/desk');
    expect(startFor(['pilot'], true)).toBe('/ramp');
    const later = { now: new Date(NOW.getTime() + 1000) };
    valueOf(await markStep(ref, { requestId: randomUUID(), step: 'all', done: true }, later));
    expect(valueOf(await readIsSettingUp(ref, {}, now))).toBe(false);
  });
});

async function setUpAnother(): Promise<ActorRef> {
  const token = await makeTokenAnyway();
  const done = valueOf(
    await setUp(
      {
        requestId: randomUUID(),
        token,
        operatorName: 'Another invented club',
        part141: 'not-said',
        units: 'metric',
        ident: '0WX',
        airportIdent: '',
        name: 'Another field',
        latitudeDeg: '43.3',
        longitudeDeg: '-91.8',
        zone: 'America/Chicago',
        zoneConfirmed: true,
        repairAvailable: 'not-said',
        transponderAirspace: 'not-said',
        adsbAirspace: 'not-said',
        controlledAirspace: 'not-said',
        personName: 'Ona Firstly',
        email: 'ona@another.example',
        password: 'seven grey herons at dusk',
      },
      now,
    ),
  );
  const person = await readInOperator(done.operatorId, (tx) =>
    tx.person.findFirstOrThrow({ select: { sessionVersion: true } }),
  );
  return { ...done, sessionVersion: person.sessionVersion };
}

async function makeTokenAnyway(): Promise<string> {
  expect(await makeSetUpToken(database.adminUrl, NOW)).toBeNull();
  const { newSetUpToken, sha256OfToken } = await import('@/lib/set-up/token');
  const token = newSetUpToken();
  await withClient(database.adminUrl, (client) =>
    client.query('INSERT INTO set_up_token (id, token_sha256, made_at, expires_at) VALUES ($1, $2, $3, $4)', [
      randomUUID(),
      sha256OfToken(token),
      NOW,
      new Date(NOW.getTime() + 3_600_000),
    ]),
  );
  return token;
}
