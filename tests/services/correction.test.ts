/**
 * A signed entry corrected by another, on a real PostgreSQL. Sources: AC 120-78B (no later change, supersede with reason) by
 * way of issue 4; 91.407(a) for the unsigned correction, 91.407(b) for the check flight, 43.9(a)(2) for the day.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { verifyAudit } from '@/lib/operate/audit-verify';
import { abandonWork } from '@/lib/work/abandon-work';
import { correctWork } from '@/lib/work/correct-work';
import { enterWork } from '@/lib/work/enter-work';
import { logCheckFlight } from '@/lib/work/log-check-flight';
import { signWork } from '@/lib/work/sign-work';
import { entryOf, problemOf, signatureOf, valueOf } from '../fixtures/acts';
import {
  answerFor,
  begun,
  entered,
  enteredAndSigned,
  mechanicOf,
  workSeen,
  writtenUp,
  type Mechanic,
} from '../fixtures/bench-work';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, NOW, openSchools, PASSWORD, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let ap: Mechanic;
const now = { now: NOW };
/** Two days on: the correction is written later than the work was done. */
const later = { now: new Date(NOW.getTime() + 2 * 24 * 3_600_000) };
const why = 'The part number was written wrong.';

beforeAll(async () => {
  ({ database, school } = await openSchools());
  ap = mechanicOf(school, 'powerplant');
});
afterAll(() => closeSchools(database));

async function signedWork(change: object = {}) {
  const id = await writtenUp(school);
  const workId = await begun(ap.ref, id);
  await enteredAndSigned(ap, workId, { laborHours: '1.5', ...change });
  return { id, workId };
}
const correction = async (workId: string) =>
  valueOf(await correctWork(ap.ref, { requestId: randomUUID(), workId, why }, later)).workId;

test('both entries stay in the record, the older marked superseded, by whom and why', async () => {
  const { id, workId } = await signedWork();
  const before = (await workSeen(ap.ref, id, workId)).work;
  const newId = await correction(workId);
  // 91.407(a): work stands unsigned.
  expect((await answerFor(school)).outcome).toBe('no-go');
  const copy = (await workSeen(ap.ref, id, newId)).work;
  expect(copy.entry).toMatchObject({
    description: before.entry.description,
    laborTenths: 15,
    corrects: { why },
  });
  const { entryHash } = valueOf(
    await enterWork(ap.ref, { ...entryOf(newId, ap.name), description: 'With part number 92-500-6.' }, later),
  );
  // The day of completion is the day the work was done, before the correction began: 43.9(a)(2) holds.
  valueOf(await signWork(ap.ref, signatureOf(newId, entryHash), later));
  const { view, work: old } = await workSeen(ap.ref, id, workId);
  expect(old).toMatchObject({ state: 'signed', supersededBy: { id: newId, by: ap.name, why } });
  expect(old.entry).toEqual(before.entry);
  expect(old.signOff).toEqual(before.signOff);
  expect(view.work.map((work) => work.id)).toEqual([workId, newId]);
  // Closing is not repeated.
  expect(view.summary).toMatchObject({ state: 'closed', closedHow: 'repaired' });
  expect((await answerFor(school)).outcome).toBe('go');
  expect(await verifyAudit(database.adminUrl)).toMatchObject([{ faults: [] }, { faults: [] }]);
});

test('one at a time; the newest is the one to correct', async () => {
  const { id, workId } = await signedWork();
  const newId = await correction(workId);
  const again = await correctWork(ap.ref, { requestId: randomUUID(), workId, why }, later);
  expect(problemOf(again).say).toContain('under way');
  const hash = await entered(ap, newId);
  valueOf(await signWork(ap.ref, signatureOf(newId, hash), later));
  const old = await correctWork(ap.ref, { requestId: randomUUID(), workId, why }, later);
  expect(problemOf(old).say).toContain('corrected already');
  expect((await workSeen(ap.ref, id, workId)).work.mayCorrect).toBe(false);
  expect((await workSeen(ap.ref, id, newId)).work.mayCorrect).toBe(true);
});

test('given up, entered or not, the entry before it stands', async () => {
  const { id, workId } = await signedWork();
  for (const written of [false, true]) {
    const newId = await correction(workId);
    if (written) await entered(ap, newId);
    valueOf(
      await abandonWork(ap.ref, { requestId: randomUUID(), workId: newId, words: 'It was right.' }, later),
    );
    const { work } = await workSeen(ap.ref, id, workId);
    expect(work).toMatchObject({ supersededBy: null, mayCorrect: true });
    expect((await answerFor(school)).outcome).toBe('go');
  }
});

test('what came of it is not corrected: the write-up is closed', async () => {
  const { workId } = await signedWork();
  const newId = await correction(workId);
  const entry = { ...entryOf(newId, ap.name), outcome: 'could-not-duplicate', lookedFor: 'Looked.' };
  expect(problemOf(await enterWork(ap.ref, entry, later)).fields).toHaveProperty('outcome');
  valueOf(await abandonWork(ap.ref, { requestId: randomUUID(), workId: newId, words: 'Not so.' }, later));
});

test('unsigned work is not corrected, it is written again', async () => {
  const id = await writtenUp(school);
  const workId = await begun(ap.ref, id);
  await entered(ap, workId);
  const problem = problemOf(await correctWork(ap.ref, { requestId: randomUUID(), workId, why }, now));
  expect(problem.code).toBe('conflict');
  await enteredAndSigned(ap, workId);
});

test('a check flight flown counts for the correction; one owed is owed by it alone (91.407(b))', async () => {
  const owed = { checkFlightNeeded: true, checkFlightReason: 'Blade angle touched.' };
  const flight = { words: 'Flown, good.', flownOn: '2026-11-25', password: PASSWORD };
  const flown = await signedWork(owed);
  valueOf(
    await logCheckFlight(
      school.people.renter,
      { ...flight, requestId: randomUUID(), workId: flown.workId },
      now,
    ),
  );
  const first = await correction(flown.workId);
  const hash = await entered(ap, first, owed);
  valueOf(await signWork(ap.ref, signatureOf(first, hash), later));
  expect((await workSeen(ap.ref, flown.id, first)).work.owes.checkFlight).toBe(false);
  expect((await answerFor(school)).outcome).toBe('go');

  const notFlown = await signedWork(owed);
  const second = await correction(notFlown.workId);
  const hashOfSecond = await entered(ap, second, owed);
  valueOf(await signWork(ap.ref, signatureOf(second, hashOfSecond), later));
  expect((await workSeen(ap.ref, notFlown.id, notFlown.workId)).work.owes.checkFlight).toBe(false);
  expect((await workSeen(ap.ref, notFlown.id, second)).work.owes.checkFlight).toBe(true);
  const onOld = { ...flight, requestId: randomUUID(), workId: notFlown.workId };
  expect(problemOf(await logCheckFlight(school.people.renter, onOld, later)).say).toContain('corrected');
  const onNew = { ...flight, flownOn: '2026-11-27', requestId: randomUUID(), workId: second };
  valueOf(await logCheckFlight(school.people.renter, onNew, later));
  expect((await answerFor(school)).outcome).toBe('go');
});
