/**
 * The entry of 43.9(a) and its signature through the services, on a real PostgreSQL. Paragraphs are named beside each check:
 * part 43 Appendix A(b), 43.3(d), 43.5, 43.9, Appendix B; parts, hours and outcome are issue 4.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { dateColumn } from '@/lib/db/dates';
import { readInOperator } from '@/lib/db/scope';
import { judgeSeverity } from '@/lib/determinations/judge-severity';
import { verifyAudit } from '@/lib/operate/audit-verify';
import { contentHash } from '@/lib/records/canonical';
import { entryContent, requireWork } from '@/lib/work/entry';
import { enterWork } from '@/lib/work/enter-work';
import { signWork } from '@/lib/work/sign-work';
import { startWork } from '@/lib/work/start-work';
import { entryOf, NOTHING_MAJOR, problemOf, signatureOf, startOf, valueOf } from '../fixtures/acts';
import {
  begun,
  certify,
  entered,
  enteredAndSigned,
  mechanicOf,
  somethingElse,
  workSeen,
  writtenUp,
  type Mechanic,
} from '../fixtures/bench-work';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, NOW, openSchools, PASSWORD, PEOPLE, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let ap: Mechanic;
const now = { now: NOW };
const NICK = 'propeller-nick';

beforeAll(async () => {
  ({ database, school } = await openSchools());
  ap = mechanicOf(school, 'powerplant');
});
afterAll(() => closeSchools(database));

const work = async (finding: object = {}, change: object = {}) => {
  const id = await writtenUp(school, { findingKey: NICK, ...finding });
  return { id, workId: await begun(ap.ref, id, change) };
};

describe('parts and hours (issue 4)', () => {
  const tube = {
    did: 'fitted',
    name: 'Tube',
    number: '92-500-6',
    serial: '',
    batch: 'L7',
    quantity: '1',
    release: '8130-3 no. 4',
  };

  test('number, batch, paper and hours stand in the entry, and are signed', async () => {
    const { id, workId } = await work();
    const old = { ...tube, did: 'removed', batch: '', serial: '4471' };
    const hash = await entered(ap, workId, { parts: [tube, old], laborHours: '1.5' });
    const { work: seen } = await workSeen(ap.ref, id, workId);
    expect(seen.entry.parts).toEqual([
      { ...tube, serial: null },
      { ...old, batch: null },
    ]);
    expect(seen.entry.laborTenths).toBe(15);
    valueOf(await signWork(ap.ref, signatureOf(workId, hash), now));
    const signed = await readInOperator(school.operatorId, async (tx) => {
      const row = await requireWork(tx, school.operatorId, workId);
      return { now: entryContent(row), kept: row.signOff?.content as { entry: object } };
    });
    expect(signed.kept.entry).toMatchObject({
      parts: [{ number: '92-500-6' }, { serial: '4471' }],
      laborTenths: 15,
    });
    // What the row says now is what was signed, to the letter: the binding of AC 120-78B.
    expect(contentHash(signed.now)).toBe(contentHash(signed.kept.entry));
    expect(await verifyAudit(database.adminUrl)).toMatchObject([{ faults: [] }, { faults: [] }]);
  });

  test.each([
    ['1', 10],
    ['0.1', 1],
    ['12.3', 123],
    ['', undefined],
  ])('hours "%s" are %s tenths', async (laborHours, tenths) => {
    const { id, workId } = await work();
    await entered(ap, workId, { laborHours });
    expect((await workSeen(ap.ref, id, workId)).work.entry.laborTenths).toBe(tenths);
    await enteredAndSigned(ap, workId);
  });

  test.each(['1.55', '-1', '1,5', 'an hour', '1:30'])(
    'hours "%s" are refused in their field',
    async (laborHours) => {
      const { workId } = await work();
      const problem = problemOf(await enterWork(ap.ref, { ...entryOf(workId, ap.name), laborHours }, now));
      expect(problem.fields).toHaveProperty('laborHours');
      await enteredAndSigned(ap, workId);
    },
  );

  test('a part without its number or name is refused in its own field', async () => {
    const { workId } = await work();
    const parts = [tube, { ...tube, number: ' ', name: '' }];
    const problem = problemOf(await enterWork(ap.ref, { ...entryOf(workId, ap.name), parts }, now));
    expect(Object.keys(problem.fields ?? {}).sort()).toEqual(['parts.1.name', 'parts.1.number']);
    await enteredAndSigned(ap, workId);
  });
});

describe('minor or major: part 43 Appendix A(b)', () => {
  test('not answered is refused, and so is one question left out', async () => {
    const { workId } = await work();
    const { 'propeller-hub': left, ...rest } = NOTHING_MAJOR;
    expect(left).toBe(false);
    for (const majorAnswers of [undefined, {}, rest]) {
      const problem = problemOf(await enterWork(ap.ref, { ...entryOf(workId, ap.name), majorAnswers }, now));
      expect(problem.fields).toHaveProperty('majorAnswers');
    }
    await enteredAndSigned(ap, workId);
  });

  test('a yes on a minor repair is refused with its paragraph; entered as major it wants its papers', async () => {
    const { id, workId } = await work();
    const yes = {
      ...entryOf(workId, ap.name),
      majorAnswers: { ...NOTHING_MAJOR, 'propeller-deep-damage': true },
    };
    const refused = problemOf(await enterWork(ap.ref, yes, now));
    expect(refused.fields).toHaveProperty('majorAnswers');
    expect(refused.lines?.map(({ cite }) => cite)).toEqual(['14cfr43appA(b)(3)']);

    const bare = problemOf(await enterWork(ap.ref, { ...yes, workKind: 'major' }, now));
    // 43.9(d), Appendix B; 65.95(a)(1); 43.5(c); Appendix B(d): all asked at once.
    expect(Object.keys(bare.fields ?? {}).sort()).toEqual([
      'approvedData',
      'cabinTank',
      'form337',
      'limitsChanged',
      'majorRecord',
    ]);
    const whole = { ...yes, ...PAPERS, workKind: 'major' };
    const { entryHash } = valueOf(await enterWork(ap.ref, whole, now));
    expect((await workSeen(ap.ref, id, workId)).work.entry).toMatchObject({
      workKind: 'major',
      form337: 'Form 337 of 25 November',
    });
    // A mechanic does not approve it (65.81(a) for a propeller).
    const problem = problemOf(await signWork(ap.ref, signatureOf(workId, entryHash), now));
    expect(problem.lines?.map(({ cite }) => cite)).toContain('14cfr65.81(a)');
  });

  test('an inspector signs a major repair on approved data and Form 337 (65.95(a)(1), 43.9(d))', async () => {
    const inspector = mechanicOf(school, 'stale');
    // Not the stale one: recent experience is vouched for, and the authorization runs (65.83, 65.92(a)).
    const ia = mechanicOf(school, 'powerplant');
    await certify(school, ia.ref, {
      kind: 'inspection-authorization',
      number: 'IA-1',
      ratings: [],
      expiresOn: dateColumn('2027-03-31'),
      firstYearActivityMet: true,
    });
    expect(inspector.name).not.toBe(ia.name);
    const { id, workId } = await work(somethingElse('damage', '5730'), { workKind: 'major' });
    const entry = {
      majorAnswers: { ...NOTHING_MAJOR, 'airframe-primary-structure': true },
      ...PAPERS,
      limitsChanged: true,
    };
    const unrevised = problemOf(await enterWork(ia.ref, { ...entryOf(workId, ia.name), ...entry }, now));
    expect(unrevised.fields).toHaveProperty('limitsRevised');
    const hash = await entered(ia, workId, { ...entry, limitsRevised: 'Supplement 4 put into the manual' });
    valueOf(await signWork(ia.ref, signatureOf(workId, hash), now));
    expect((await workSeen(ia.ref, id, workId)).view.summary.closedHow).toBe('repaired');
  });

  test('a work order does not stand in for Form 337 under an inspection authorization (Appendix B(b))', async () => {
    const { workId } = await work(somethingElse('damage', '5730'), { workKind: 'major' });
    const hash = await entered(ap, workId, { ...PAPERS, majorRecord: 'work-order' });
    const problem = problemOf(await signWork(ap.ref, signatureOf(workId, hash), now));
    expect(problem.lines?.map(({ cite }) => cite)).toEqual(['14cfr43appB(b)']);
  });

  test('judged to be something else, what was reported still says that it is major', async () => {
    const id = await writtenUp(school, { findingKey: 'propeller-bent', words: 'Blade bent at the tip.' });
    const judged = {
      requestId: randomUUID(),
      discrepancyId: id,
      kind: 'wear',
      jasc: '6111',
      equipmentId: null,
      inoperativeCount: null,
      severity: 'grounding',
      statement: 'Tip worn.',
      password: PASSWORD,
    };
    valueOf(await judgeSeverity(ap.ref, judged, now));
    const problem = problemOf(await startWork(ap.ref, startOf(id), now));
    expect(problem.fields).toHaveProperty('workKind');
    const workId = await begun(ap.ref, id, { workKind: 'major' });
    const smaller = problemOf(
      await enterWork(ap.ref, { ...entryOf(workId, ap.name), workKind: 'minor' }, now),
    );
    expect(smaller.fields).toHaveProperty('workKind');
  });
});

const PAPERS = {
  majorRecord: 'form-337',
  form337: 'Form 337 of 25 November',
  approvedData: 'Invented repair data 57-1',
  limitsChanged: false,
  cabinTank: false,
} as const;

describe('work of one person approved by another: 43.3(d)', () => {
  test('the signer says how they could do it, and signs that', async () => {
    const { id, workId } = await work();
    const hash = await entered(ap, workId, { performedBy: PEOPLE.uncertificated.name });
    expect((await workSeen(ap.ref, id, workId)).work.mySignature?.workerAsked).toBe(true);
    const unsaid = problemOf(await signWork(ap.ref, signatureOf(workId, hash), now));
    expect(unsaid.code).toBe('invalid');
    expect(unsaid.fields).toHaveProperty('worker');
    expect(unsaid.lines?.map(({ cite }) => cite)).toEqual(['14cfr43.3(d)']);
    valueOf(await signWork(ap.ref, { ...signatureOf(workId, hash), worker: 'supervised' }, now));
    const content = await readInOperator(school.operatorId, async (tx) => {
      const row = await requireWork(tx, school.operatorId, workId);
      return row.signOff?.content as { entry: { supervised?: boolean; performedBy: string } };
    });
    expect(content.entry).toMatchObject({ supervised: true, performedBy: PEOPLE.uncertificated.name });
  });

  test('a certificated worker is the other answer; whose own work it is, nobody asks', async () => {
    const other = await work();
    const hash = await entered(ap, other.workId, { performedBy: PEOPLE.airframe.name });
    valueOf(await signWork(ap.ref, { ...signatureOf(other.workId, hash), worker: 'certificated' }, now));
    expect((await workSeen(ap.ref, other.id, other.workId)).work.entry.supervised).toBe(false);
    const own = await work();
    await entered(ap, own.workId);
    expect((await workSeen(ap.ref, own.id, own.workId)).work.mySignature?.workerAsked).toBe(false);
    await enteredAndSigned(ap, own.workId);
    expect((await workSeen(ap.ref, own.id, own.workId)).work.entry).not.toHaveProperty('supervised');
  });
});

describe('two at one entry (issue 4: nothing typed is lost)', () => {
  test('what somebody else wrote since is not written over unseen', async () => {
    const { id, workId } = await work();
    const seen = (await workSeen(ap.ref, id, workId)).work.entryHash;
    await entered(ap, workId, { description: 'By the first.' });
    const late = { ...entryOf(workId, 'Somebody'), description: 'By the second.', entryHash: seen };
    const airframe = school.people.airframe;
    expect(problemOf(await enterWork(airframe, late, now)).code).toBe('superseded');
    expect((await workSeen(ap.ref, id, workId)).work.entry.description).toBe('By the first.');
    const fresh = (await workSeen(ap.ref, id, workId)).work.entryHash;
    valueOf(await enterWork(airframe, { ...late, requestId: randomUUID(), entryHash: fresh }, now));
    expect((await workSeen(ap.ref, id, workId)).work.entry.description).toBe('By the second.');
  });
});
