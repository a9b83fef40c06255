/**
 * Chains of acts, each lawful by itself, that must not add up to a go or a signature the law does not give.
 * Sources: 91.405(a), 91.213(d)(2), 43.3(g) with part 43 appendix A(c), 43.7, 65.81(a), 91.407, 91.207(f)(3), 91.215(b);
 * where no paragraph speaks, it says "common practice, no source".
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { ActorRef } from '@/lib/access/actor';
import { writeInOperator } from '@/lib/db/scope';
import { beginDeferral } from '@/lib/determinations/begin-deferral';
import { findWithinLimits } from '@/lib/determinations/find-within-limits';
import { judgeSeverity } from '@/lib/determinations/judge-severity';
import { readWriteUp } from '@/lib/determinations/read-write-up';
import { recordServicing } from '@/lib/findings/record-servicing';
import { reportFinding } from '@/lib/findings/report-finding';
import { answerFlight } from '@/lib/releases/answer-flight';
import { releaseFlight } from '@/lib/releases/release-flight';
import { abandonWork } from '@/lib/work/abandon-work';
import { enterWork } from '@/lib/work/enter-work';
import { signWork } from '@/lib/work/sign-work';
import { startWork } from '@/lib/work/start-work';
import {
  dayLesson,
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
import {
  closeSchools,
  foundSchool,
  NOW,
  openSchools,
  PASSWORD,
  PEOPLE,
  type School,
} from '../fixtures/school';

let database: FreshDatabase;
let school: School;
const now = { now: NOW };

beforeAll(async () => {
  ({ database, school } = await openSchools());
});
afterAll(() => closeSchools(database));

/** A school of its own, so that one test's open write-ups do not decide another's answer. */
const freshSchool = () => foundSchool(randomUUID().slice(0, 8), trainer());

const write = async (at: School, changes: object) =>
  valueOf(await reportFinding(at.people.renter, { ...nickedPropeller(at), ...changes }, now)).discrepancyId;

const judgement = (discrepancyId: string, changes: object) => ({
  requestId: randomUUID(),
  discrepancyId,
  kind: 'damage' as const,
  jasc: '3246',
  equipmentId: null,
  inoperativeCount: null,
  severity: 'grounding' as const,
  statement: 'Looked at on the ramp.',
  password: PASSWORD,
  ...changes,
});

const stateOf = async (at: School, discrepancyId: string) =>
  valueOf(await readWriteUp(at.people.powerplant, { discrepancyId }, now)).summary.state;

describe('judging a write-up anew', () => {
  const cracked = { station: 'left-gear', findingKey: 'wheel-cracked', words: 'Crack at the rim.' };

  test('damage does not become looks by way of another kind (91.405(a))', async () => {
    const id = await write(school, cracked);
    valueOf(await judgeSeverity(school.people.airframe, judgement(id, { kind: 'document' }), now));
    const problem = problemOf(
      await judgeSeverity(school.people.airframe, judgement(id, { kind: 'cosmetic', severity: 'note' }), now),
    );
    expect(problem.fields).toHaveProperty('kind');
  });

  test('equipment that does not work does not become looks (91.213(a))', async () => {
    const id = await write(school, deadLandingLight(school));
    const problem = problemOf(
      await judgeSeverity(
        school.people.airframe,
        judgement(id, { kind: 'cosmetic', jasc: '3340', severity: 'note' }),
        now,
      ),
    );
    expect(problem.fields).toHaveProperty('kind');
  });

  test('damage with no function behind it does not become equipment by way of another kind (91.213(a))', async () => {
    const id = await write(school, cracked);
    valueOf(await judgeSeverity(school.people.airframe, judgement(id, { kind: 'wear' }), now));
    const problem = problemOf(
      await judgeSeverity(
        school.people.airframe,
        judgement(id, {
          kind: 'inoperative',
          severity: 'limiting',
          equipmentId: school.equipment.get('intercom') ?? school.equipment.get('landing-light'),
          inoperativeCount: 1,
        }),
        now,
      ),
    );
    expect(problem.fields).toHaveProperty('kind');
  });

  test('work under way keeps its system, so that no signature reaches past its rating (43.7, 65.81(a))', async () => {
    const id = await write(school, { findingKey: null, kind: 'damage', jasc: '3246', words: 'Dent.' });
    const { workId } = valueOf(await startWork(school.people.airframe, startOf(id), now));
    const { entryHash } = valueOf(
      await enterWork(school.people.airframe, entryOf(workId, PEOPLE.airframe.name), now),
    );
    const propeller = judgement(id, { jasc: '6111' });
    expect(problemOf(await judgeSeverity(school.people.powerplant, propeller, now)).code).toBe('conflict');
    valueOf(await signWork(school.people.airframe, signatureOf(workId, entryHash), now));
    expect(await stateOf(school, id)).toBe('closed');
  });
});

describe('preventive maintenance', () => {
  let named: School;

  beforeAll(async () => {
    named = await freshSchool();
    await writeInOperator(named.operatorId, (tx) =>
      tx.preventiveAuthorization.create({
        data: {
          id: randomUUID(),
          operatorId: named.operatorId,
          personId: named.people.renter.personId,
          grantedById: named.people.manager.personId,
          grantedAt: NOW,
          words: 'May do preventive maintenance.',
        },
      }),
    );
  });

  const preventive = (id: string, item: number) => ({
    ...startOf(id),
    workKind: 'preventive' as const,
    preventiveItem: item,
  });

  test.each([
    // part 43 appendix A(c)(9) is paint, (c)(1) tyres, (c)(20) spark plugs: none repairs what was found.
    ['wheel-cracked', null, 9],
    ['wheel-cracked', null, 1],
    ['engine-oil-leak', null, 20],
    [null, '5320', 1],
    [null, '8530', 17],
  ])('%s %s is not put right by item %i of appendix A(c)', async (findingKey, jasc, item) => {
    const id = await write(named, { findingKey, jasc, kind: findingKey ? null : 'damage', words: 'Seen.' });
    const problem = problemOf(await startWork(named.people.renter, preventive(id, item), now));
    expect(problem.fields).toHaveProperty('preventiveItem');
  });

  test('a worn tyre is, and the named pilot signs it (appendix A(c)(1), 43.3(g), 43.7(f))', async () => {
    const id = await write(named, { findingKey: 'tyre-worn', words: 'No tread.' });
    const { workId } = valueOf(await startWork(named.people.renter, preventive(id, 1), now));
    const { entryHash } = valueOf(
      await enterWork(named.people.renter, entryOf(workId, PEOPLE.renter.name), now),
    );
    valueOf(await signWork(named.people.renter, signatureOf(workId, entryHash), now));
    expect(await stateOf(named, id)).toBe('closed');
  });

  test('so is a bulb outside the catalogue (appendix A(c)(17))', async () => {
    const id = await write(named, { findingKey: null, kind: 'damage', jasc: '3340', words: 'Bulb black.' });
    valueOf(await startWork(named.people.renter, preventive(id, 17), now));
  });
});

describe('servicing', () => {
  const low = { findingKey: 'oil-low', words: 'Four quarts.' };

  test('closes low oil (common practice, no source)', async () => {
    const id = await write(school, low);
    const input = { requestId: randomUUID(), discrepancyId: id, words: 'Two quarts added.' };
    valueOf(await recordServicing(school.people.renter, input, now));
    expect(await stateOf(school, id)).toBe('closed');
  });

  test('does not close what a mechanic has judged since (91.7(b), 91.405(a))', async () => {
    const id = await write(school, low);
    const judged = judgement(id, {
      kind: 'servicing',
      jasc: '1220',
      statement: 'Six quarts gone in two hours. Engine to be looked at.',
    });
    valueOf(await judgeSeverity(school.people.powerplant, judged, now));
    const input = { requestId: randomUUID(), discrepancyId: id, words: 'Two quarts added.' };
    expect(problemOf(await recordServicing(school.people.renter, input, now)).code).toBe('conflict');
  });
});

describe('work and deferral in odd orders', () => {
  test('a renter does not give up the work a mechanic has begun (91.407(a))', async () => {
    const id = await write(school, { findingKey: 'skin-damage', jasc: '5730', words: 'Dent.' });
    const { workId } = valueOf(await startWork(school.people.airframe, startOf(id), now));
    const input = { requestId: randomUUID(), workId, words: 'Nobody there.' };
    expect(problemOf(await abandonWork(school.people.renter, input, now)).code).toBe('conflict');
    valueOf(await abandonWork(school.people.powerplant, { ...input, requestId: randomUUID() }, now));
  });

  test('an item under repair is not deferred meanwhile (91.213(d)(3), 91.407(a))', async () => {
    const at = await freshSchool();
    const id = await write(at, deadLandingLight(at));
    const repair = { ...startOf(id), title: 'Change the lamp' };
    const { workId } = valueOf(await startWork(at.people.airframe, repair, now));
    expect(problemOf(await beginDeferral(at.people.airframe, deferralOf(id), now)).code).toBe('conflict');
    const input = { requestId: randomUUID(), workId, words: 'No lamp in stock.' };
    valueOf(await abandonWork(at.people.airframe, input, now));
    valueOf(await beginDeferral(at.people.airframe, deferralOf(id), now));
  });

  test('found within limits, then judged grounding: no limit speaks for it any more (91.405(a))', async () => {
    const at = await freshSchool();
    const id = await write(at, {});
    const within = {
      requestId: randomUUID(),
      discrepancyId: id,
      measured: '0.020 in deep',
      limitText: '0.031 in',
      limitSource: 'Invented propeller manual',
      statement: 'Within limits.',
      password: PASSWORD,
    };
    valueOf(await findWithinLimits(at.people.powerplant, within, now));
    const later = { now: new Date(NOW.getTime() + 60_000) };
    valueOf(await judgeSeverity(at.people.powerplant, judgement(id, { jasc: '6111' }), later));
    const { answer } = valueOf(await answerFlight(at.people.dispatcher, dayLesson(at), later));
    expect(answer.outcome).toBe('no-go');
    expect(answer.lines.filter((line) => line.because.includes('found within limits by'))).toEqual([]);
  });
});

test('a determination names the certificate that carried it, not one out of date beside it (91.213(d)(4), 65.83)', async () => {
  const at = await freshSchool();
  await writeInOperator(at.operatorId, (tx) =>
    tx.certificate.create({
      data: {
        id: randomUUID(),
        operatorId: at.operatorId,
        personId: at.people.stale.personId,
        kind: 'pilot',
        number: 'P-beside',
        grade: 'private',
        ratings: ['airplane-single-engine-land'],
      },
    }),
  );
  const id = await write(at, deadLandingLight(at));
  valueOf(await beginDeferral(at.people.stale, deferralOf(id), now));
  const view = valueOf(await readWriteUp(at.people.airframe, { discrepancyId: id }, now));
  expect(view.determinations).toMatchObject([{ certificateKind: 'pilot', certificateNumber: 'P-beside' }]);
});

test('a finding keeps to equipment that can have it (91.213(d)(2)(iii))', async () => {
  const at = await freshSchool();
  const id = await write(at, {
    findingKey: 'fuel-gauge-dead',
    equipmentId: at.equipment.get('landing-light'),
    inoperativeCount: 1,
    words: 'Left gauge stays at empty.',
  });
  const view = valueOf(await readWriteUp(at.people.airframe, { discrepancyId: id }, now));
  expect(view.equipmentId).not.toBe(at.equipment.get('landing-light'));
  expect(view.eligibility?.deferrable).toBe(false);
});

describe('at the desk', () => {
  let at: School;
  let farBaseId: string;

  beforeAll(async () => {
    at = await freshSchool();
    farBaseId = randomUUID();
    await writeInOperator(at.operatorId, (tx) =>
      tx.base.create({
        data: {
          id: farBaseId,
          operatorId: at.operatorId,
          ident: '0WF',
          name: 'Far',
          latitudeDeg: 44.9,
          longitudeDeg: -91.8,
          zone: 'America/Chicago',
          repairAvailable: true,
          transponderAirspace: true,
          adsbAirspace: true,
          controlledAirspace: true,
        },
      }),
    );
  });

  const release = async (by: ActorRef, changes: object) => {
    const flight = { ...dayLesson(at), ...changes };
    const { factsVersion } = valueOf(await answerFlight(by, dayLesson(at), now));
    return releaseFlight(by, { ...flight, requestId: randomUUID(), factsVersion, limitsPassedOn: true }, now);
  };

  test('a release names a pilot in command who is a pilot (common practice, no source)', async () => {
    const problem = problemOf(
      await release(at.people.dispatcher, { pilotId: at.people.uncertificated.personId }),
    );
    expect(problem.fields).toHaveProperty('pilotId');
    valueOf(await release(at.people.dispatcher, {}));
  });

  test('nor one who has left (common practice, no source)', async () => {
    const left = await writeInOperator(at.operatorId, async (tx) => {
      const id = randomUUID();
      await tx.person.create({
        data: {
          id,
          operatorId: at.operatorId,
          name: 'Lil Gonebefore',
          email: `${id}@left.example`,
          passwordHash: 'none',
          roles: ['pilot'],
          leftOn: new Date('2026-11-24'),
        },
      });
      await tx.certificate.create({
        data: {
          id: randomUUID(),
          operatorId: at.operatorId,
          personId: id,
          kind: 'pilot',
          number: 'P-left',
          grade: 'commercial',
          ratings: ['airplane-single-engine-land'],
        },
      });
      return id;
    });
    expect(problemOf(await release(at.people.dispatcher, { pilotId: left })).fields).toHaveProperty(
      'pilotId',
    );
  });

  test.each(['transponderAirspace', 'adsbAirspace'] as const)(
    'a base in airspace cannot be flown to outside it: %s (91.215(b), 91.225)',
    async (question) => {
      const flight = {
        ...dayLesson(at),
        purpose: 'private' as const,
        toBaseId: farBaseId,
        transponderAirspace: 'yes' as const,
        adsbAirspace: 'yes' as const,
      };
      valueOf(await answerFlight(at.people.dispatcher, flight, now));
      const denied = { ...flight, [question]: 'no' as const };
      expect(problemOf(await answerFlight(at.people.dispatcher, denied, now)).fields).toHaveProperty(
        question,
      );
    },
  );

  test('a check flight owed is flown by a pilot rated for the aircraft (91.407(b))', async () => {
    const here = await freshSchool();
    const pilotRated = (rating: string) =>
      writeInOperator(here.operatorId, async (tx) => {
        const id = randomUUID();
        const { operatorId } = here;
        const person = { id, operatorId, name: 'Roy Overhill', email: `${id}@rated.example` };
        await tx.person.create({ data: { ...person, passwordHash: 'none', roles: ['pilot'] } });
        const certificate = { id: randomUUID(), operatorId, personId: id, kind: 'pilot', number: `P-${id}` };
        await tx.certificate.create({ data: { ...certificate, grade: 'commercial', ratings: [rating] } });
        return id;
      });
    const id = await write(here, { findingKey: 'surface-hinge-loose', jasc: '5744', words: 'Play.' });
    const { workId } = valueOf(await startWork(here.people.airframe, startOf(id), now));
    const entry = { ...entryOf(workId, PEOPLE.airframe.name), checkFlightNeeded: true };
    const { entryHash } = valueOf(await enterWork(here.people.airframe, entry, now));
    valueOf(await signWork(here.people.airframe, signatureOf(workId, entryHash), now));
    const outcomeWith = async (rating: string) => {
      const flight = {
        ...dayLesson(here),
        purpose: 'check-flight' as const,
        crewOnly: 'yes' as const,
        pilotId: await pilotRated(rating),
      };
      return valueOf(await answerFlight(here.people.dispatcher, flight, now)).answer.outcome;
    };
    expect(await outcomeWith('rotorcraft-helicopter')).toBe('no-go');
    expect(await outcomeWith('airplane-single-engine-land')).toBe('go-with-limits');
  });

  test('the hours planned fit the times: half of them at least (91.409(b); the half is house caution)', async () => {
    // 10:00 to 14:00 is 4.0 h.
    const flight = (plannedHours: string) => ({
      ...dayLesson(at),
      arriveLocal: '2026-11-25T14:00',
      plannedHours,
    });
    for (const [hours, good] of [
      ['1.9', false],
      ['2.0', true],
      ['2.1', true],
      ['4.0', true],
      ['4.1', false],
    ] as const) {
      const result = await answerFlight(at.people.dispatcher, flight(hours), now);
      expect([hours, result.ok]).toEqual([hours, good]);
      if (!result.ok) expect(result.problem.fields).toHaveProperty('plannedHours');
    }
  });
});
