/**
 * Inspections from beginning to end on a real PostgreSQL: 43.11, 43.15, 91.405(c) and 91.409 as the service holds them.
 * Sources are named beside the checks; the rest is issue 4.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { ActorRef } from '@/lib/access/actor';
import { readInOperator } from '@/lib/db/scope';
import { beginDeferral } from '@/lib/determinations/begin-deferral';
import { findWithinLimits } from '@/lib/determinations/find-within-limits';
import { judgeSeverity } from '@/lib/determinations/judge-severity';
import { placePlacard } from '@/lib/determinations/place-placard';
import { reportFinding } from '@/lib/findings/report-finding';
import { aircraftFacts, readAircraft } from '@/lib/fleet/facts';
import { beginInspection } from '@/lib/inspections/begin-inspection';
import { disposeDeferral } from '@/lib/inspections/dispose-deferral';
import { enterInspection } from '@/lib/inspections/enter-inspection';
import { giveUpInspection } from '@/lib/inspections/give-up-inspection';
import { readInspection } from '@/lib/inspections/read-inspection';
import { recordRequirement } from '@/lib/inspections/record-requirement';
import { signInspection } from '@/lib/inspections/sign-inspection';
import { signList } from '@/lib/inspections/sign-list';
import { withClient } from '@/lib/operate/connection';
import { verifyOperator } from '@/lib/records/verify';
import { answerFlight } from '@/lib/releases/answer-flight';
import { dueOf } from '@/lib/rules/due';
import { known } from '@/lib/rules/facts';
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
import { trainer, trainerRequirements, withRow } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import {
  beginOf,
  certify,
  disposalOf,
  inspectionEntryOf,
  listSeen,
  makeInspector,
  paperRecordOf,
  partSignature,
  requirementsOf,
  runUpOf,
} from '../fixtures/inspections';
import { closeSchools, foundSchool, NOW, openSchools, PASSWORD, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let inspector: ActorRef;
let due: ReadonlyMap<string, string>;
let schools = 0;
const now = { now: NOW };
const PARTS = ['airframe', 'powerplant', 'propeller'] as const;

beforeAll(async () => {
  ({ database } = await openSchools());
});
afterAll(() => closeSchools(database));

beforeEach(async () => {
  school = await foundSchool(`inspected-${(schools += 1)}`, trainer());
  inspector = await makeInspector(school);
  due = await requirementsOf(school);
});

const idsOf = (...kinds: readonly string[]) => kinds.map((kind) => due.get(kind) ?? 'none');
const begun = async (kind: 'annual' | 'hundred-hour', who = inspector) =>
  valueOf(
    await beginInspection(
      who,
      beginOf(school, kind, kind === 'annual' ? idsOf('annual', 'hundred-hour') : idsOf('hundred-hour')),
      now,
    ),
  ).inspectionId;
const entered = async (kind: 'annual' | 'hundred-hour', ttis = '4512.3', change: object = {}) => {
  const inspectionId = await begun(kind);
  valueOf(await enterInspection(inspector, inspectionEntryOf(inspectionId, ttis, change), now));
  return inspectionId;
};
const sign = async (
  who: ActorRef,
  inspectionId: string,
  part: (typeof PARTS)[number],
  airworthy = true,
  change: object = {},
) =>
  // A minute later: what was deferred at the same instant as it was inspected would have been deferred after it.
  signInspection(
    who,
    { ...(await partSignature(inspector, inspectionId, part, airworthy)), ...change },
    { now: new Date(NOW.getTime() + 60_000) },
  );
const signAll = async (inspectionId: string, airworthy = true) => {
  for (const part of PARTS) valueOf(await sign(inspector, inspectionId, part, airworthy));
};
const answer = async () =>
  valueOf(await answerFlight(school.people.dispatcher, dayLesson(school), now)).answer;
const cites = (problem: { lines?: readonly { cite: string }[] }) => problem.lines?.map(({ cite }) => cite);
/** As the owner of the database: the application may not change a certificate. */
const revoke = (person: ActorRef, number: string) =>
  withClient(database.adminUrl, (client) =>
    client.query('UPDATE certificate SET revoked_on = $3 WHERE person_id = $1 AND number = $2', [
      person.personId,
      number,
      '2026-11-01',
    ]),
  );
const facts = () =>
  readInOperator(school.operatorId, async (tx) => {
    const row = await readAircraft(tx, school.operatorId, school.aircraftId);
    if (!row) throw new Error('the aircraft is not there');
    return aircraftFacts(row);
  });
const hundredHourDueAt = async () => {
  const { requirements } = await facts();
  const row = requirements.find(({ kind }) => kind === 'hundred-hour');
  return row && dueOf(row, known(0), requirements).tenths;
};

/** Something dead on the equipment list, written up by its function. */
const dead = async (fn: 'landing-light' | 'intercom' | 'taxi-light') =>
  valueOf(
    await reportFinding(
      school.people.renter,
      fn === 'landing-light'
        ? deadLandingLight(school)
        : {
            ...deadLandingLight(school),
            findingKey: null,
            kind: 'inoperative' as const,
            jasc: fn === 'intercom' ? '2340' : '3340',
            equipmentId: school.equipment.get(fn) ?? null,
            words: `The ${fn} is dead.`,
          },
      now,
    ),
  ).discrepancyId;

/** The landing light, or something else, written up, deferred and placarded. */
async function deferredLight(
  method: 'deactivated' | 'removed' = 'deactivated',
  fn: Parameters<typeof dead>[0] = 'landing-light',
) {
  const { airframe } = school.people;
  const discrepancyId = await dead(fn);
  const { deferralId, placardId } = valueOf(
    await beginDeferral(
      airframe,
      { ...deferralOf(discrepancyId), method, deactivationIsMaintenance: method === 'removed' },
      now,
    ),
  );
  valueOf(await placePlacard(airframe, { requestId: randomUUID(), placardId }, now));
  return { discrepancyId, deferralId };
}

/** Enters and signs the work a removal stands on. */
async function signRemoval(deferralId: string) {
  const { airframe } = school.people;
  const work = await readInOperator(school.operatorId, (tx) =>
    tx.maintenanceAction.findFirstOrThrow({ where: { deferralId } }),
  );
  const { entryHash } = valueOf(await enterWork(airframe, entryOf(work.id, 'Ash Ironweed'), now));
  valueOf(await signWork(airframe, signatureOf(work.id, entryHash), now));
}
const equipmentNow = async (fn: string) =>
  (await facts()).equipment.find((item) => item.function === fn)?.installed;

describe('a 100-hour inspection', () => {
  test('each rating signs its half (65.85, 65.87), nothing flies meanwhile (91.407(a)), then it goes again', async () => {
    const { airframe, stale } = school.people;
    await certify(school, stale, { kind: 'mechanic', number: 'M-P', ratings: ['powerplant'] });
    await revoke(stale, 'M-airframepowerplant');
    const inspectionId = await entered('hundred-hour');
    expect((await answer()).outcome).toBe('no-go');

    expect(cites(problemOf(await sign(airframe, inspectionId, 'powerplant')))).toContain('14cfr65.87(a)');
    expect(cites(problemOf(await sign(stale, inspectionId, 'airframe')))).toContain('14cfr65.85(a)');

    expect(valueOf(await sign(airframe, inspectionId, 'airframe')).complete).toBe(false);
    expect(valueOf(await sign(stale, inspectionId, 'powerplant')).complete).toBe(false);
    expect((await answer()).outcome).toBe('no-go');
    expect(problemOf(await sign(airframe, inspectionId, 'airframe')).code).toBe('conflict');
    expect(valueOf(await sign(stale, inspectionId, 'propeller')).complete).toBe(true);

    expect((await answer()).outcome).toBe('go');
    // 4512.3 + 100.0: 91.409(b), done early.
    expect(await hundredHourDueAt()).toBe(46_123);
    const record = await readInOperator(school.operatorId, (tx) =>
      tx.compliance.findFirstOrThrow({ where: { inspectionId } }),
    );
    expect(record).toMatchObject({ wasDueTenths: 45_600, ttisTenths: 45_123, approvedByAuthorised: true });
    expect(record.approvedBy).toBe(
      'Ash Ironweed, mechanic, airframe M-airframe; Stig Longago, mechanic, powerplant M-P',
    );
  });

  test('an excess is paid back: due 1100.0, done 1104.0, next 1200.0 (91.409(b))', async () => {
    const at = (ttisTenths: number) => (row: ReturnType<typeof trainerRequirements>[number]) => ({
      ...row,
      lastDone: row.lastDone.known ? known({ ...row.lastDone.value, ttisTenths }) : row.lastDone,
    });
    school = await foundSchool(
      'overflown',
      trainer({ ttisTenths: known(11_040), requirements: trainerRequirements().map(at(10_000)) }),
    );
    inspector = await makeInspector(school);
    due = await requirementsOf(school);
    expect(await hundredHourDueAt()).toBe(11_000);
    await signAll(await entered('hundred-hour', '1104.0'));
    expect(await hundredHourDueAt()).toBe(12_000);
  });

  test('does not answer an annual, nor anything else that is due', async () => {
    for (const kinds of [['annual'], ['hundred-hour', 'annual'], ['hundred-hour', 'elt-inspection']]) {
      const refused = await beginInspection(inspector, beginOf(school, 'hundred-hour', idsOf(...kinds)), now);
      expect(problemOf(refused).fields).toHaveProperty('requirementIds');
    }
  });
});

describe('an annual', () => {
  test('is signed under an inspection authorization only (65.95(a)(2)), and answers the 100-hour too (91.409(b))', async () => {
    const inspectionId = await entered('annual');
    const plain = await sign(school.people.powerplant, inspectionId, 'airframe');
    expect(problemOf(plain).code).toBe('signature_refused');
    expect(cites(problemOf(plain))).toContain('14cfr65.95(a)(2)');
    const refusals = await readInOperator(school.operatorId, (tx) =>
      tx.auditRow.count({ where: { verb: 'inspection.sign:refused' } }),
    );
    expect(refusals).toBe(1);

    await signAll(inspectionId);
    expect((await answer()).outcome).toBe('go');
    const records = await readInOperator(school.operatorId, (tx) =>
      tx.compliance.findMany({ where: { inspectionId }, select: { requirementId: true } }),
    );
    expect(records.map((row) => row.requirementId).sort()).toEqual(idsOf('annual', 'hundred-hour').sort());
    expect(await hundredHourDueAt()).toBe(46_123);
    // 43.11(a)(4), in the words of the regulation, signed.
    const signOff = await readInOperator(school.operatorId, (tx) =>
      tx.signOff.findFirstOrThrow({ where: { work: { inspectionId, part: 'airframe' } } }),
    );
    expect(signOff).toMatchObject({ airworthy: true, listId: null });
    expect(signOff.statement).toBe(
      'I certify that this aircraft has been inspected in accordance with an annual inspection and was determined to be in airworthy condition.',
    );
    const report = await readInOperator(school.operatorId, (tx) => verifyOperator(tx, school.operatorId));
    expect(report.faults).toEqual([]);
  });

  test('made by a helper it is not signed (43.3(d))', async () => {
    const inspectionId = await entered('annual');
    const refused = await sign(inspector, inspectionId, 'airframe', true, { madeByMe: false });
    expect(cites(problemOf(refused))).toContain('14cfr43.3(d)');
  });

  test('one at a time, and nobody signs what is not entered or was changed unseen', async () => {
    const inspectionId = await begun('annual');
    const second = await beginInspection(inspector, beginOf(school, 'annual', idsOf('annual')), now);
    expect(problemOf(second).code).toBe('conflict');
    expect(problemOf(await sign(inspector, inspectionId, 'airframe')).code).toBe('conflict');
    valueOf(await enterInspection(inspector, inspectionEntryOf(inspectionId, '4512.3'), now));
    const seen = await partSignature(inspector, inspectionId, 'airframe', true);
    const change = { extent: 'Less than it was.' };
    valueOf(await enterInspection(inspector, inspectionEntryOf(inspectionId, '4512.3', change), now));
    expect(problemOf(await signInspection(inspector, seen, now)).code).toBe('superseded');
    valueOf(await sign(inspector, inspectionId, 'airframe'));
    const again = await enterInspection(inspector, inspectionEntryOf(inspectionId, '4512.3'), now);
    expect(problemOf(again).code).toBe('conflict');
  });

  test.each([
    ['4512.2', 'more than this'],
    ['4512.4', 'put right first'],
    ['4512.33', 'one decimal'],
  ])('total time %s is refused at its field (43.11(a)(2))', async (ttis, words) => {
    const inspectionId = await begun('annual');
    const refused = await enterInspection(inspector, inspectionEntryOf(inspectionId, ttis), now);
    expect(problemOf(refused).fields?.['ttis']?.join()).toContain(words);
  });

  test.each([
    ['2026-11-24', 'began on 25 Nov 2026'],
    ['2026-11-26', 'not come yet'],
  ])('dated %s is refused at its field', async (completedOn, words) => {
    const inspectionId = await begun('annual');
    const refused = await enterInspection(
      inspector,
      inspectionEntryOf(inspectionId, '4512.3', { completedOn }),
      now,
    );
    expect(problemOf(refused).fields?.['completedOn']?.join()).toContain(words);
  });

  test('an engine run that was not satisfactory bars the approval (43.15(c)(2))', async () => {
    const runUp = runUpOf({ magnetos: { answer: 'not-satisfactory', reading: '250 rpm drop, left' } });
    const inspectionId = await entered('annual', '4512.3', { runUp });
    expect(cites(problemOf(await sign(inspector, inspectionId, 'powerplant')))).toEqual(['14cfr43.15(c)(2)']);
  });

  test('is given up while nothing is signed, and the due date stays', async () => {
    const inspectionId = await entered('annual');
    const words = { requestId: randomUUID(), inspectionId, words: 'Wrong aircraft.' };
    valueOf(await giveUpInspection(inspector, words, now));
    expect((await answer()).outcome).toBe('go');
    expect(await hundredHourDueAt()).toBe(45_600);
    const next = await entered('annual');
    valueOf(await sign(inspector, next, 'airframe'));
    const late = { ...words, requestId: randomUUID(), inspectionId: next };
    expect(problemOf(await giveUpInspection(inspector, late, now)).code).toBe('conflict');
  });
});

describe('what was found', () => {
  test('the list (43.11(b)), the entry not approved (43.11(a)(5)), and each item cleared by a 43.9 entry', async () => {
    const { renter, powerplant } = school.people;
    const { discrepancyId } = valueOf(await reportFinding(renter, nickedPropeller(school), now));
    const inspectionId = await entered('annual');
    expect(cites(problemOf(await sign(inspector, inspectionId, 'airframe')))).toContain('14cfr43.11(a)(4)');
    const unlisted = await sign(inspector, inspectionId, 'airframe', false);
    expect(cites(problemOf(unlisted))).toEqual(['14cfr43.11(b)', '14cfr43.11(a)(5)', '14cfr43.11(a)(5)']);

    // An owed repair is listed or settled; saying no is not enough, nor saying nothing.
    const field = `standings.${discrepancyId}`;
    expect(
      problemOf(await signList(inspector, await listSeen(inspector, inspectionId), now)).fields,
    ).toHaveProperty([field]);
    const denied = await signList(
      inspector,
      await listSeen(inspector, inspectionId, { [discrepancyId]: false }),
      now,
    );
    expect(problemOf(denied).fields).toHaveProperty([field]);
    const plain = await signList(
      powerplant,
      await listSeen(powerplant, inspectionId, { [discrepancyId]: true }),
      now,
    );
    expect(cites(problemOf(plain))).toContain('14cfr65.95(a)(2)');
    const list = valueOf(
      await signList(inspector, await listSeen(inspector, inspectionId, { [discrepancyId]: true }), now),
    );

    await signAll(inspectionId, false);
    const view = valueOf(await readInspection(inspector, { inspectionId }, now));
    expect(view).toMatchObject({ state: 'complete', list: { id: list.listId, dated: '2026-11-25' } });
    expect(view.parts[0]?.signed?.statement).toContain(
      'a list of discrepancies and unairworthy items dated 25 Nov 2026',
    );
    // Done, so the dates run anew; not flyable, because the item grounds.
    const { requirements, discrepancies } = await facts();
    const annual = requirements.find(({ kind }) => kind === 'annual');
    expect(annual?.lastDone).toMatchObject({ value: { on: '2026-11-25' } });
    expect(discrepancies[0]?.severity).toEqual(known('grounding'));
    expect((await answer()).outcome).toBe('no-go');

    // Anybody rated for it clears the item; no second inspection: AMT handbook, chapter 12, and 43.11(a)(5).
    const { workId } = valueOf(await startWork(powerplant, startOf(discrepancyId), now));
    const { entryHash } = valueOf(await enterWork(powerplant, entryOf(workId, 'Pim Castlewick'), now));
    valueOf(await signWork(powerplant, signatureOf(workId, entryHash), now));
    expect((await answer()).outcome).toBe('go');
    const report = await readInOperator(school.operatorId, (tx) => verifyOperator(tx, school.operatorId));
    expect(report.faults).toEqual([]);
  });

  test('repaired before the signature it is airworthy; a new list takes the place of the one before', async () => {
    const { renter, powerplant } = school.people;
    const { discrepancyId } = valueOf(await reportFinding(renter, nickedPropeller(school), now));
    const inspectionId = await entered('annual');
    const first = valueOf(
      await signList(inspector, await listSeen(inspector, inspectionId, { [discrepancyId]: true }), now),
    );
    const second = valueOf(
      await signList(inspector, await listSeen(inspector, inspectionId, { [discrepancyId]: true }), now),
    );
    const lists = await readInOperator(school.operatorId, (tx) =>
      tx.discrepancyList.findMany({ where: { inspectionId }, orderBy: { supersedesId: 'asc' } }),
    );
    expect(lists.map(({ id, supersedesId }) => [id, supersedesId])).toEqual([
      [second.listId, first.listId],
      [first.listId, null],
    ]);
    const { workId } = valueOf(await startWork(powerplant, startOf(discrepancyId), now));
    const { entryHash } = valueOf(await enterWork(powerplant, entryOf(workId, 'Pim Castlewick'), now));
    valueOf(await signWork(powerplant, signatureOf(workId, entryHash), now));
    await signAll(inspectionId);
    expect((await answer()).outcome).toBe('go');
  });

  test('what is listed as unairworthy is cleared by work only: no judgement, limit or deferral (43.11(b), (a)(5))', async () => {
    const { renter, airframe, powerplant } = school.people;
    const light = await dead('taxi-light');
    const nick = valueOf(await reportFinding(renter, nickedPropeller(school), now)).discrepancyId;
    const inspectionId = await entered('annual');
    const seen = await listSeen(inspector, inspectionId, { [light]: true, [nick]: true });
    valueOf(await signList(inspector, seen, now));
    await signAll(inspectionId, false);

    const own = () => ({ requestId: randomUUID(), password: PASSWORD });
    const judged = {
      ...own(),
      discrepancyId: light,
      kind: 'inoperative' as const,
      jasc: '3340',
      equipmentId: school.equipment.get('taxi-light') ?? null,
      inoperativeCount: 1,
      severity: 'limiting' as const,
      statement: 'Only a taxi light.',
    };
    const within = {
      ...own(),
      discrepancyId: nick,
      measured: '0.010 in',
      limitText: '0.031 in',
      limitSource: 'Invented manual',
      statement: 'Within.',
    };
    for (const refused of [
      await judgeSeverity(airframe, judged, now),
      await findWithinLimits(powerplant, within, now),
      await beginDeferral(airframe, deferralOf(light), now),
    ]) {
      expect(problemOf(refused)).toMatchObject({ code: 'conflict' });
      expect(problemOf(refused).say).toContain('43.11(b)');
    }
    expect((await answer()).outcome).toBe('no-go');
  });

  test('the list is signed over what was shown (43.11(b)); what came in, or was judged, since is read first', async () => {
    const { renter, powerplant } = school.people;
    const nick = valueOf(await reportFinding(renter, nickedPropeller(school), now)).discrepancyId;
    const inspectionId = await entered('annual');
    const early = await listSeen(inspector, inspectionId, { [nick]: true });
    const light = await dead('landing-light');
    expect(problemOf(await signList(inspector, early, now)).code).toBe('superseded');
    const before = await listSeen(inspector, inspectionId, { [nick]: true, [light]: true });
    const within = {
      requestId: randomUUID(),
      discrepancyId: nick,
      measured: '0.010 in',
      limitText: '0.031 in',
      limitSource: 'Invented manual',
      statement: 'Within.',
      password: PASSWORD,
    };
    valueOf(await findWithinLimits(powerplant, within, now));
    expect(problemOf(await signList(inspector, before, now)).code).toBe('superseded');
    const seen = await listSeen(inspector, inspectionId, { [nick]: true, [light]: true });
    valueOf(await signList(inspector, seen, now));

    // Before a part is signed the inspector may think again; after it the list only grows.
    const again = async (standings: Record<string, boolean>) =>
      signList(inspector, await listSeen(inspector, inspectionId, standings), now);
    valueOf(await again({ [nick]: false, [light]: true }));
    valueOf(await again({ [nick]: true, [light]: true }));
    valueOf(await sign(inspector, inspectionId, 'airframe', false));
    const fewer = problemOf(await again({ [nick]: false, [light]: true }));
    expect(fewer).toMatchObject({ code: 'conflict' });
    expect(fewer.say).toContain('43.11(b)');
    const taxi = await dead('taxi-light');
    valueOf(await again({ [nick]: true, [light]: true, [taxi]: true }));
    // Put right and signed it drops out.
    const { workId } = valueOf(await startWork(powerplant, startOf(nick), now));
    const { entryHash } = valueOf(await enterWork(powerplant, entryOf(workId, 'Pim Castlewick'), now));
    valueOf(await signWork(powerplant, signatureOf(workId, entryHash), now));
    valueOf(await again({ [light]: true, [taxi]: true }));
  });

  test('an engine run that did not go well is on the list before a part is signed as not airworthy (43.15(c)(2), 43.11(b))', async () => {
    const runUp = runUpOf({ magnetos: { answer: 'not-satisfactory', reading: '250 rpm drop, left' } });
    const light = await dead('landing-light');
    const inspectionId = await entered('annual', '4512.3', { runUp });
    valueOf(await signList(inspector, await listSeen(inspector, inspectionId, { [light]: true }), now));
    const refused = await sign(inspector, inspectionId, 'powerplant', false);
    expect(cites(problemOf(refused))).toEqual(['14cfr43.15(c)(2)']);
    const magneto = { ...nickedPropeller(school), findingKey: null, kind: 'wear' as const, jasc: '7414' };
    const found = valueOf(await reportFinding(school.people.renter, magneto, now)).discrepancyId;
    const seen = await listSeen(inspector, inspectionId, { [light]: true, [found]: true });
    valueOf(await signList(inspector, seen, now));
    valueOf(await sign(inspector, inspectionId, 'powerplant', false));
    const signOff = await readInOperator(school.operatorId, (tx) =>
      tx.signOff.findFirstOrThrow({ where: { work: { inspectionId, part: 'powerplant' } } }),
    );
    // 43.3(d): who made it is part of what is signed.
    expect(signOff.content).toMatchObject({ madeByMe: true });
  });

  test('there is no list of nothing', async () => {
    const inspectionId = await entered('annual');
    expect(problemOf(await signList(inspector, await listSeen(inspector, inspectionId), now)).code).toBe(
      'conflict',
    );
  });
});

describe('a deferral at an inspection, 91.405(c)', () => {
  test('without a word on it nothing is signed; inspected, placarded and listed it stays deferred', async () => {
    const { deferralId } = await deferredLight();
    const inspectionId = await entered('hundred-hour');
    const refused = problemOf(await sign(inspector, inspectionId, 'airframe'));
    expect(cites(refused)).toEqual(['14cfr91.405(c)', '14cfr43.11(b)']);

    const student = await disposeDeferral(
      school.people.student,
      disposalOf(deferralId, { inspectionId }),
      now,
    );
    expect(problemOf(student).code).toBe('not_allowed');
    valueOf(await disposeDeferral(inspector, disposalOf(deferralId, { inspectionId }), now));
    const twice = await disposeDeferral(inspector, disposalOf(deferralId, { inspectionId }), now);
    expect(problemOf(twice).code).toBe('conflict');
    // 43.11(b): added to the list.
    expect(cites(problemOf(await sign(inspector, inspectionId, 'airframe')))).toEqual(['14cfr43.11(b)']);
    valueOf(await signList(inspector, await listSeen(inspector, inspectionId), now));
    await signAll(inspectionId);

    const [light] = (await facts()).discrepancies;
    expect(light?.deferral?.inspectionsSince).toEqual([
      { name: '100-hour inspection', on: '2026-11-25', disposition: 'inspected' },
    ]);
    expect((await answer()).outcome).toBe('go-with-limits');
    const report = await readInOperator(school.operatorId, (tx) => verifyOperator(tx, school.operatorId));
    expect(report.faults).toEqual([]);
  });

  test('every answer of a deferral is signed (91.213(a), (d)(3), (d)(4))', async () => {
    const { deferralId } = await deferredLight();
    const { determination } = await readInOperator(school.operatorId, (tx) =>
      tx.deferral.findFirstOrThrow({ where: { id: deferralId }, include: { determination: true } }),
    );
    expect(determination.content).toMatchObject({
      nature: 'equipment',
      deactivationIsMaintenance: false,
      melProceduresDone: null,
      eltFirstRemovedOn: null,
      eltRecordComplete: null,
    });
    const unsaid = { ...deferralOf(await dead('intercom')), nature: undefined };
    const refused = await beginDeferral(school.people.airframe, unsaid, now);
    expect(problemOf(refused).fields).toHaveProperty('nature');
  });

  test('work does not close what is closed already', async () => {
    const { deferralId, discrepancyId } = await deferredLight('removed', 'taxi-light');
    await signRemoval(deferralId);
    const { airframe } = school.people;
    const { workId } = valueOf(await startWork(airframe, startOf(discrepancyId), now));
    const { entryHash } = valueOf(await enterWork(airframe, entryOf(workId, 'Ash Ironweed'), now));
    const inspectionId = await entered('hundred-hour');
    const removed = disposalOf(deferralId, { inspectionId }, 'removed');
    expect(problemOf(await disposeDeferral(inspector, removed, now)).code).toBe('conflict');
    // As the owner: what two acts at once would have left.
    await withClient(database.adminUrl, (client) =>
      client.query(
        "UPDATE discrepancy SET state = 'closed', closed_at = now(), closed_how = 'removed' WHERE id = $1",
        [discrepancyId],
      ),
    );
    const late = { ...signatureOf(workId, entryHash), placardRemoved: true };
    const problem = problemOf(await signWork(airframe, late, now));
    expect(problem).toMatchObject({ code: 'conflict' });
    expect(problem.say).toContain('closed already');
  });

  test('its determination needs somebody who may: 91.213(d)(4)', async () => {
    const { deferralId } = await deferredLight();
    const inspectionId = await entered('hundred-hour');
    await revoke(inspector, 'M-IA');
    const refused = await disposeDeferral(inspector, disposalOf(deferralId, { inspectionId }), now);
    expect(problemOf(refused)).toMatchObject({ code: 'signature_refused' });
    const noWord = { ...disposalOf(deferralId, { inspectionId }), noHazard: null };
    expect(problemOf(await disposeDeferral(inspector, noWord, now)).fields).toHaveProperty('noHazard');
  });

  test('removed for good: only once its removal is signed; the deferral ends and the list of equipment is one shorter', async () => {
    const { discrepancyId, deferralId } = await deferredLight('removed', 'taxi-light');
    const inspectionId = await entered('hundred-hour');
    const disposal = () => disposalOf(deferralId, { inspectionId }, 'removed');
    expect(problemOf(await disposeDeferral(inspector, disposal(), now)).say).toContain('is under way');
    // Nor is it inspected while its removal is not signed: that work would be closed over, or sign over it.
    const inspected = await disposeDeferral(inspector, disposalOf(deferralId, { inspectionId }), now);
    expect(problemOf(inspected).code).toBe('conflict');
    await signRemoval(deferralId);
    const unrevised = { ...disposal(), listsRevised: false };
    expect(problemOf(await disposeDeferral(inspector, unrevised, now)).fields).toHaveProperty('listsRevised');
    valueOf(await disposeDeferral(inspector, disposal(), now));
    await signAll(inspectionId);

    expect((await facts()).discrepancies).toEqual([]);
    expect(await equipmentNow('taxi-light')).toBe(0);
    const row = await readInOperator(school.operatorId, (tx) =>
      tx.discrepancy.findUniqueOrThrow({
        where: { operatorId_id: { operatorId: school.operatorId, id: discrepancyId } },
        include: { deferrals: { include: { end: true } } },
      }),
    );
    expect(row).toMatchObject({
      state: 'closed',
      closedHow: 'removed',
      deferrals: [{ end: { how: 'removed' } }],
    });
    const audit = await readInOperator(school.operatorId, (tx) =>
      tx.auditRow.findFirstOrThrow({ where: { verb: 'deferral.dispose' } }),
    );
    expect(audit.detail).toMatchObject({
      equipment: { id: school.equipment.get('taxi-light'), installedBefore: 1, installedAfter: 0 },
    });
    expect((await answer()).outcome).toBe('go');
  });

  test.each([
    // 91.213(d)(2)(ii): asked of what is written up only, so the night flight would have gone without a word.
    ['asked for at night by the equipment list', { dayVfr: 0, nightVfr: 1, dayIfr: 0, nightIfr: 1 }],
    ['asked for under IFR by the equipment list', { dayVfr: 0, nightVfr: 0, dayIfr: 1, nightIfr: 1 }],
  ])('removed for good is refused while it is %s', async (_words, requiredByList) => {
    school = await foundSchool(
      `listed-${(schools += 1)}`,
      withRow(trainer(), 'taxi-light', { requiredByList: known(requiredByList) }),
    );
    inspector = await makeInspector(school);
    due = await requirementsOf(school);
    const { deferralId } = await deferredLight('removed', 'taxi-light');
    await signRemoval(deferralId);
    const inspectionId = await entered('hundred-hour');
    const disposal = disposalOf(deferralId, { inspectionId }, 'removed');
    const problem = problemOf(await disposeDeferral(inspector, disposal, now));
    expect(problem).toMatchObject({ code: 'signature_refused' });
    expect(problem.say).toContain('it stays deferred, or the list is revised first');
    expect(cites(problem)).toContain('14cfr91.213(d)(2)(ii)');
    expect((await facts()).discrepancies[0]?.deferral).not.toBeNull();
    expect(await equipmentNow('taxi-light')).toBe(1);
  });

  test('inspected, the hazard is asked together with what else is out, and signed so (91.213(d)(4))', async () => {
    const { deferralId } = await deferredLight();
    const other = await dead('taxi-light');
    const inspectionId = await entered('hundred-hour');
    const view = valueOf(await readInspection(inspector, { inspectionId }, now));
    expect(view.deferred[0]?.together.map(({ id }) => id)).toEqual([other]);
    const alone = disposalOf(deferralId, { inspectionId });
    expect(problemOf(await disposeDeferral(inspector, alone, now)).fields).toHaveProperty('together');
    const unseen = { ...disposalOf(deferralId, { inspectionId }), together: true, togetherWith: [] };
    expect(problemOf(await disposeDeferral(inspector, unseen, now)).fields).toHaveProperty('together');
    const both = { ...disposalOf(deferralId, { inspectionId }), together: true, togetherWith: [other] };
    const { determinationId } = valueOf(await disposeDeferral(inspector, both, now));
    const row = await readInOperator(school.operatorId, (tx) =>
      tx.determination.findFirstOrThrow({ where: { id: determinationId } }),
    );
    expect(row.content).toMatchObject({ together: [{ why: 'limiting' }] });
  });

  test('what is only deactivated is not removed for good', async () => {
    const { deferralId } = await deferredLight();
    const inspectionId = await entered('hundred-hour');
    const refused = await disposeDeferral(
      inspector,
      disposalOf(deferralId, { inspectionId }, 'removed'),
      now,
    );
    expect(problemOf(refused).code).toBe('conflict');
  });

  test('an annual entered from papers leaves it owed, until somebody says what became of it', async () => {
    const { deferralId } = await deferredLight();
    const { complianceId } = valueOf(
      await recordRequirement(
        school.people.manager,
        paperRecordOf(due.get('annual') ?? '', '2026-11-25', '4512.3'),
        // After the deferral was begun.
        { now: new Date(NOW.getTime() + 60_000) },
      ),
    );
    const later = { now: new Date(NOW.getTime() + 120_000) };
    expect((await answer()).lines.filter(({ effect }) => effect === 'bars').map(({ cite }) => cite)).toEqual([
      '14cfr91.405(c)',
    ]);
    valueOf(await disposeDeferral(inspector, disposalOf(deferralId, { complianceId }), later));
    expect((await answer()).outcome).toBe('go-with-limits');
  });
});
