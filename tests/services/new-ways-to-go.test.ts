/**
 * Ways to a go that opening day brought, each tried against a real PostgreSQL: confirmations that outlive what they were given for, papers of
 * before that say too much, signatures of people whose certificate ran out, and two who write at the same instant. Paragraphs beside the checks.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { addAircraft } from '@/lib/aircraft/add-aircraft';
import { changeAircraft } from '@/lib/aircraft/change-aircraft';
import { bringBackAircraft, retireAircraft } from '@/lib/aircraft/retire-aircraft';
import { addUsualSet } from '@/lib/carry-over/add-usual-set';
import { carryOverLastDone } from '@/lib/carry-over/carry-over-last-done';
import { carryOverWriteUp } from '@/lib/carry-over/carry-over-write-up';
import { importHistory } from '@/lib/carry-over/import-history';
import { readInOperator } from '@/lib/db/scope';
import { reviewDirectives } from '@/lib/directives/review-directives';
import { beginSet } from '@/lib/equipment/begin-set';
import { confirmLines } from '@/lib/equipment/confirm-lines';
import { enterLine } from '@/lib/equipment/enter-line';
import { importEquipment } from '@/lib/equipment/import-equipment';
import { reportFinding } from '@/lib/findings/report-finding';
import { aircraftFacts, readAircraft } from '@/lib/fleet/facts';
import { importMel } from '@/lib/mel/import-mel';
import { enterCertificate } from '@/lib/people/certificates';
import { leavePerson } from '@/lib/people/leave-and-return';
import { readSigner, signerFacts } from '@/lib/people/signer';
import { verifyOperator } from '@/lib/records/verify';
import { mayDetermineNoHazard, mayPlacePlacard } from '@/lib/rules/who-may-determine';
import { addType } from '@/lib/types/add-type';
import { deadLandingLight, problemOf, valueOf } from '../fixtures/acts';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import { aircraftOf, enterOf, HEAD, importOf, lineOf, own, typeOf } from '../fixtures/fleet-office';
import { deferredLight, historyFile, lastDoneOnPaper, melFile, writeUpOnPaper } from '../fixtures/history';
import { closeSchools, foundSchool, NOW, openSchools, PASSWORD, type School } from '../fixtures/school';

const now = { now: NOW };
const later = (days: number) => ({ now: new Date(NOW.getTime() + days * 86_400_000) });
let database: FreshDatabase;
let school: School;
let founded = 0;

beforeAll(async () => {
  ({ database } = await openSchools());
});
afterAll(() => closeSchools(database));
beforeEach(async () => {
  school = await foundSchool(`ways-to-go-${(founded += 1)}`, trainer());
});

const manager = () => school.people.manager;
const signed = (input: object) => ({ ...own(), ...input, password: PASSWORD });
const factsOf = (aircraftId: string) =>
  readInOperator(school.operatorId, async (tx) =>
    aircraftFacts((await readAircraft(tx, school.operatorId, aircraftId))!),
  );
const faults = () =>
  readInOperator(school.operatorId, async (tx) => (await verifyOperator(tx, school.operatorId)).faults);

/** An aircraft with one confirmed line and its directives gone through. */
async function confirmedAircraft(some: object = {}) {
  const input = aircraftOf(school, { ttis: '4500.0', ...some });
  const { aircraftId } = valueOf(await addAircraft(manager(), input, now));
  valueOf(await enterLine(manager(), enterOf(aircraftId), now));
  const review = signed({ aircraftId, reviewedOn: '2026-11-20', document: 'Invented directive list' });
  valueOf(await reviewDirectives(manager(), review, now));
  return { aircraftId, input };
}
const trusted = async (aircraftId: string) => {
  const { equipment, directives, ttisTenths } = await factsOf(aircraftId);
  return {
    lines: equipment.every(({ confirmed }) => confirmed.known),
    directives: directives.known,
    hours: ttisTenths.known,
  };
};

describe('what was confirmed of an aircraft', () => {
  test('does not outlive its type, nor the directives its serial number', async () => {
    const { aircraftId, input } = await confirmedAircraft();
    const change = (some: object) =>
      changeAircraft(manager(), { ...input, ...own(), aircraftId, ...some }, now);
    valueOf(await change({ ttisMeter: 'tach' }));
    expect(await trusted(aircraftId)).toEqual({ lines: true, directives: true, hours: true });
    valueOf(await change({ serial: 'INVENTED-78' }));
    expect(await trusted(aircraftId)).toEqual({ lines: true, directives: false, hours: true });
    const { typeId } = valueOf(await addType(manager(), typeOf(), now));
    valueOf(await change({ serial: 'INVENTED-78', typeId }));
    expect(await trusted(aircraftId)).toEqual({ lines: false, directives: false, hours: true });
    expect(await faults()).toEqual([]);
  });

  test('nor do lines older than the question, which counted without a confirmation', async () => {
    const { aircraftId } = school;
    expect((await trusted(aircraftId)).lines).toBe(true);
    const { typeId } = valueOf(await addType(manager(), typeOf(), now));
    const input = aircraftOf(school, { aircraftId, registration: trainer().registration, typeId });
    valueOf(await changeAircraft(manager(), input, now));
    expect((await trusted(aircraftId)).lines).toBe(false);
  });

  test('keeps its type while a minimum equipment list of that type is in force (91.213(a))', async () => {
    valueOf(await importMel(manager(), signed(melFile(school.aircraftId)), now));
    const { typeId } = valueOf(await addType(manager(), typeOf(), now));
    const registration = trainer().registration;
    const input = aircraftOf(school, { aircraftId: school.aircraftId, registration, typeId });
    expect(Object.keys(problemOf(await changeAircraft(manager(), input, now)).fields ?? {})).toEqual([
      'typeId',
    ]);
  });

  test.each([
    ['the same day', 0, true],
    ['the next day', 1, false],
    ['two years on', 730, false],
  ] as const)('is asked again of one that was away: %s', async (_words, days, still) => {
    const { aircraftId } = await confirmedAircraft();
    valueOf(await retireAircraft(manager(), { ...own(), aircraftId, why: 'Sold.' }, now));
    const back = { ...own(), aircraftId, why: 'Bought back.' };
    valueOf(await bringBackAircraft(manager(), back, later(days)));
    expect(await trusted(aircraftId)).toEqual({ lines: still, directives: still, hours: still });
    expect(await faults()).toEqual([]);
  });

  test.each([
    ['4499.9', ['ttis']],
    ['4500.0', []],
    ['4500.1', []],
  ] as const)('hours filled in after a record of 4500.0 h: %s', async (ttis, wrong) => {
    const { aircraftId, input } = await confirmedAircraft({ ttis: '' });
    const { added } = valueOf(
      await addUsualSet(manager(), { ...own(), aircraftId, kinds: ['annual'], batteryThrough: '' }, now),
    );
    const done = signed({ requirementId: added[0]!.id, ...lastDoneOnPaper() });
    valueOf(await carryOverLastDone(manager(), done, now));
    const result = await changeAircraft(manager(), { ...input, ...own(), aircraftId, ttis }, now);
    expect(result.ok ? [] : Object.keys(result.problem.fields ?? {})).toEqual(wrong);
  });
});

describe('a line that something names', () => {
  test('is made no other thing: typed, confirmed or from a file', async () => {
    valueOf(
      await reportFinding(
        school.people.renter,
        { ...deadLandingLight(school), station: 'left-leading-edge' },
        now,
      ),
    );
    const equipmentId = school.equipment.get('landing-light')!;
    const tray = lineOf({ name: 'Landing light', function: 'other' });
    const typed = enterOf(school.aircraftId, tray, { equipmentId });
    expect(problemOf(await enterLine(manager(), typed, now))).toMatchObject({
      code: 'conflict',
      say: expect.stringContaining('is open on it'),
    });
    const file = importOf(school.aircraftId, `${HEAD}\r\nLanding light,other,2560,1,no,0,0,0,0,`);
    expect(problemOf(await importEquipment(manager(), file, now)).code).toBe('conflict');
    // Anything else of it can be put right.
    const more = lineOf({ name: 'Landing light, left wing', function: 'landing-light', jasc: '3340' });
    valueOf(await enterLine(manager(), enterOf(school.aircraftId, more, { equipmentId }), now));
    // And one that nothing names becomes what it is.
    const taxi = school.equipment.get('taxi-light')!;
    const free = lineOf({ name: 'Ash tray' });
    valueOf(await enterLine(manager(), enterOf(school.aircraftId, free, { equipmentId: taxi }), now));
  });

  test('stays so while it is confirmed', async () => {
    const { aircraftId } = valueOf(await addAircraft(manager(), aircraftOf(school), now));
    valueOf(await beginSet(manager(), { ...own(), aircraftId, sets: ['night-vfr'] }, now));
    const rows = await readInOperator(school.operatorId, (tx) =>
      tx.equipment.findMany({ where: { aircraftId } }),
    );
    const [row] = rows;
    const words = {
      equipment: row!.name,
      how_many: '1',
      kind: 'inoperative',
      severity: 'limiting',
      jasc: row!.jasc,
    };
    valueOf(await carryOverWriteUp(manager(), signed({ aircraftId, ...writeUpOnPaper(words) }), now));
    const line = lineOf({ name: row!.name, function: 'other' });
    const decisions = [{ kind: 'agrees', equipmentId: row!.id, source: 'Invented list', line }];
    expect(problemOf(await confirmLines(manager(), signed({ aircraftId, decisions }), now)).code).toBe(
      'conflict',
    );
  });
});

describe('papers of before', () => {
  test.each([
    ['no', { known: true, value: false }],
    ['not-known', { known: false }],
  ] as const)(
    'the same list with its letter %s is no repetition (91.213(a)(2))',
    async (letterAboard, fact) => {
      const take = (change: object) =>
        importMel(manager(), signed(melFile(school.aircraftId, undefined, change)), now);
      valueOf(await take({}));
      expect(valueOf(await take({ letterAboard })).unchanged).toBe(false);
      const { mel } = await factsOf(school.aircraftId);
      expect(mel.known && mel.value?.letterAboard).toMatchObject(fact);
      expect(await faults()).toEqual([]);
    },
  );

  test('a mechanic on paper has looked at nothing here', async () => {
    const input = signed({ aircraftId: school.aircraftId, ...deferredLight() });
    valueOf(await carryOverWriteUp(manager(), input, now));
    const { discrepancies } = await factsOf(school.aircraftId);
    expect(discrepancies).toMatchObject([
      { mechanicJudged: null, deferral: { determination: { known: true } } },
    ]);
  });

  test('a second find in the words of the first is no repetition of it', async () => {
    const take = (change: Readonly<Record<string, string>>) =>
      importHistory(
        manager(),
        signed(historyFile([writeUpOnPaper({ words: 'Does not work.', ...change })])),
        now,
      );
    const light = { kind: 'inoperative', severity: 'limiting', jasc: '3340', how_many: '1' };
    valueOf(await take({ ...light, equipment: 'Landing light' }));
    expect(valueOf(await take({ ...light, equipment: 'Landing light' })).unchanged).toBe(1);
    for (const other of [
      { equipment: 'Taxi light' },
      { equipment: 'Landing light', severity: 'grounding' },
    ]) {
      const problem = problemOf(await take({ ...light, ...other }));
      expect(Object.keys(problem.fields ?? {})).toEqual(['rows.2.words']);
    }
  });
});

describe('a pilot certificate that names its last day', () => {
  test.each([
    ['2026-11-24', false],
    ['2026-11-25', true],
    ['2026-11-26', true],
    ['', true],
  ] as const)('good through "%s", asked on the 25th', async (expiresOn, allowed) => {
    const { personId } = school.people.renter;
    const held = await readInOperator(school.operatorId, (tx) =>
      tx.certificate.findFirstOrThrow({ where: { personId, kind: 'pilot' } }),
    );
    const renewal = {
      ...own(),
      personId,
      kind: 'pilot',
      renewsId: held.id,
      number: 'P-77',
      grade: 'private',
      ratings: held.ratings,
      issuedOn: '2019-05-01',
      expiresOn,
      recentExperienceThrough: '',
      firstYearActivityMet: 'not-said',
      authorisedToSign: 'not-said',
    };
    valueOf(await enterCertificate(manager(), renewal, now));
    const facts = await readInOperator(school.operatorId, async (tx) =>
      signerFacts(await readSigner(tx, school.operatorId, personId)),
    );
    const rating = 'airplane-single-engine-land';
    expect(mayDetermineNoHazard(facts, rating, '2026-11-25').allowed).toBe(allowed);
    expect(mayPlacePlacard(facts, '2026-11-25').allowed).toBe(allowed);
  });
});

describe('at the same instant', () => {
  test('a line confirmed by one and put right by another is one after the other, and signed as it stands', async () => {
    const { aircraftId } = valueOf(await addAircraft(manager(), aircraftOf(school), now));
    valueOf(await beginSet(manager(), { ...own(), aircraftId, sets: ['night-vfr'] }, now));
    const rows = await readInOperator(school.operatorId, (tx) =>
      tx.equipment.findMany({ where: { aircraftId } }),
    );
    const { id: equipmentId, name, function: fn, jasc } = rows[0]!;
    const line = (installed: string) => lineOf({ name, function: fn, jasc, installed });
    const decisions = [{ kind: 'agrees', equipmentId, source: 'Invented list', line: line('1') }];
    const [confirmed, changed] = await Promise.all([
      confirmLines(manager(), signed({ aircraftId, decisions }), now),
      enterLine(manager(), enterOf(aircraftId, line('2'), { equipmentId }), now),
    ]);
    expect(changed.ok).toBe(true);
    if (!confirmed.ok) expect(confirmed.problem.code).toBe('superseded');
    const { equipment } = await factsOf(aircraftId);
    expect(equipment.find(({ id }) => id === equipmentId)).toMatchObject({
      installed: 2,
      confirmed: { known: true },
    });
    expect(await faults()).toEqual([]);
  });

  test('somebody who leaves while signing has signed before it or not at all', async () => {
    const { airframe } = school.people;
    const texts = { aircraftId: school.aircraftId, ...deferredLight() };
    const [left, kept] = await Promise.all([
      leavePerson(manager(), { ...own(), personId: airframe.personId, leftOn: '2026-11-25' }, now),
      carryOverWriteUp(airframe, signed(texts), now),
    ]);
    expect(left.ok).toBe(true);
    if (!kept.ok) expect(kept.problem.code).toBe('not_signed_in');
    const again = await carryOverWriteUp(airframe, signed({ ...texts, words: randomUUID() }), now);
    expect(problemOf(again).code).toBe('not_signed_in');
    const rows = await readInOperator(school.operatorId, (tx) =>
      tx.auditRow.findMany({ orderBy: { seq: 'asc' }, select: { verb: true, personId: true } }),
    );
    const gone = rows.findIndex(({ verb }) => verb === 'person.leave');
    expect(rows.slice(gone + 1).filter(({ personId }) => personId === airframe.personId)).toEqual([]);
  });
});
