/** Work that ends without the finding being found again. Source: issue 4; the kinds that cannot are our own strict list. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { beginDeferral } from '@/lib/determinations/begin-deferral';
import { placePlacard } from '@/lib/determinations/place-placard';
import { readNotices } from '@/lib/notices/read-notices';
import { enterWork } from '@/lib/work/enter-work';
import { signWork } from '@/lib/work/sign-work';
import { randomUUID } from 'node:crypto';
import { deadLandingLight, deferralOf, entryOf, problemOf, signatureOf, valueOf } from '../fixtures/acts';
import {
  begun,
  entered,
  enteredAndSigned,
  mechanicOf,
  somethingElse,
  workSeen,
  writtenUp,
  type Mechanic,
} from '../fixtures/bench-work';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, NOW, openSchools, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let ap: Mechanic;
const now = { now: NOW };
const NOT_THERE = {
  outcome: 'could-not-duplicate',
  lookedFor: 'Three ground runs, warm and cold; harness wiggled.',
  description: 'Connector reseated.',
} as const;

beforeAll(async () => {
  ({ database, school } = await openSchools());
  ap = mechanicOf(school, 'powerplant');
});
afterAll(() => closeSchools(database));

test('closes the write-up as such, and tells the reporter so', async () => {
  const id = await writtenUp(school, somethingElse('leak', '7310'));
  const workId = await begun(ap.ref, id);
  await enteredAndSigned(ap, workId, NOT_THERE);
  const { view, work } = await workSeen(ap.ref, id, workId);
  expect(view.summary).toMatchObject({ state: 'closed', closedHow: 'could-not-duplicate' });
  expect(work.entry).toMatchObject({
    outcome: 'could-not-duplicate',
    details: { lookedFor: NOT_THERE.lookedFor },
  });
  const told = valueOf(await readNotices(school.people.renter, {}, now)).unread.find(
    (notice) => notice.discrepancyId === id,
  );
  // Never "repaired": nothing was.
  expect(told?.done).toBe('Judged');
  expect(told?.words).toContain('could not be found again');
  expect(told?.words).toContain(NOT_THERE.lookedFor);
});

test('how it was looked for has to be said, and the outcome chosen', async () => {
  const id = await writtenUp(school, somethingElse('leak', '7310'));
  const workId = await begun(ap.ref, id);
  const entry = { ...entryOf(workId, ap.name), ...NOT_THERE };
  expect(problemOf(await enterWork(ap.ref, { ...entry, lookedFor: ' ' }, now)).fields).toHaveProperty(
    'lookedFor',
  );
  expect(problemOf(await enterWork(ap.ref, { ...entry, outcome: undefined }, now)).fields).toHaveProperty(
    'outcome',
  );
  await enteredAndSigned(ap, workId, NOT_THERE);
});

test.each(['damage', 'wear', 'fastener', 'document'])('%s does not vanish by itself', async (kind) => {
  const id = await writtenUp(school, somethingElse(kind, '5310'));
  const workId = await begun(ap.ref, id);
  const problem = problemOf(await enterWork(ap.ref, { ...entryOf(workId, ap.name), ...NOT_THERE }, now));
  expect(problem.fields).toHaveProperty('outcome');
  await enteredAndSigned(ap, workId);
});

test('a deferred item that works again: the deferral ends as not found again, its placard down', async () => {
  const id = await writtenUp(school, deadLandingLight(school));
  const deferred = valueOf(await beginDeferral(school.people.airframe, deferralOf(id), now));
  valueOf(
    await placePlacard(
      school.people.airframe,
      { requestId: randomUUID(), placardId: deferred.placardId },
      now,
    ),
  );
  const workId = await begun(ap.ref, id);
  const hash = await entered(ap, workId, NOT_THERE);
  const standing = problemOf(await signWork(ap.ref, signatureOf(workId, hash), now));
  expect(standing.fields).toHaveProperty('placardRemoved');
  valueOf(await signWork(ap.ref, { ...signatureOf(workId, hash), placardRemoved: true }, now));
  const { view } = await workSeen(ap.ref, id, workId);
  expect(view.summary.closedHow).toBe('could-not-duplicate');
  expect(view.pastDeferrals.map(({ how }) => how)).toEqual(['could-not-duplicate']);
});
