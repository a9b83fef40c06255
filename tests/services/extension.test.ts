/**
 * Extending a repair interval in a real database. Sources: the head of lib/rules/advisory/mmel-extension.ts (from memory),
 * 91.213(a)(5), 91.405(c); one extension a deferral is also the database's own rule.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { writeInOperator } from '@/lib/db/scope';
import { beginDeferral } from '@/lib/determinations/begin-deferral';
import { extendInterval } from '@/lib/determinations/extend-interval';
import { readWriteUp } from '@/lib/determinations/read-write-up';
import { reportFinding } from '@/lib/findings/report-finding';
import { contentHash } from '@/lib/records/canonical';
import { deadLandingLight, deferralOf, problemOf, valueOf } from '../fixtures/acts';
import type { FreshDatabase } from '../fixtures/database';
import { giveList, letterNames } from '../fixtures/minimum-list';
import { closeSchools, NOW, openSchools, PASSWORD, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let other: School;
let discrepancyId: string;
let deferralId: string;
/** Written up on 25 November in category C: through 5 December, extended at most through 15 December 2026. */
const LAST_DAY = new Date('2026-12-05T18:00:00Z');
const extension = (change: object = {}) => ({
  requestId: randomUUID(),
  deferralId,
  until: '2026-12-15',
  reason: 'Bulb on order, due 9 December.',
  password: PASSWORD,
  ...change,
});

beforeAll(async () => {
  ({ database, school, other } = await openSchools());
  await giveList(school, null);
  const light = valueOf(await reportFinding(school.people.renter, deadLandingLight(school), { now: NOW }));
  discrepancyId = light.discrepancyId;
  const input = { ...deferralOf(discrepancyId), melProceduresDone: true };
  ({ deferralId } = valueOf(await beginDeferral(school.people.airframe, input, { now: NOW })));
});
afterAll(() => closeSchools(database));

describe('extending', () => {
  test('the write-up shows the entry of the list whole, with its clock (91.213(a)(3) to (a)(5))', async () => {
    const view = valueOf(await readWriteUp(school.people.airframe, { discrepancyId }, { now: NOW }));
    expect(view.eligibility?.listEntry).toMatchObject({
      title: 'Landing light',
      installed: 1,
      requiredForDispatch: 0,
      working: { known: true, value: 0 },
      maintenanceProcedure: 'Collar the breaker.',
      clock: { lastDay: { known: true, value: '2026-12-05' }, daysLeft: 10, extended: false },
    });
  });

  test('refused, with the reason, where the letter gives no authority', async () => {
    const problem = problemOf(await extendInterval(school.people.airframe, extension(), { now: NOW }));
    expect(problem).toMatchObject({ code: 'signature_refused' });
    expect(problem.lines).toEqual([
      expect.objectContaining({
        cite: 'mmel-extension',
        because: expect.stringMatching(/gives no authority/),
      }),
    ]);
  });

  test('refused on the day after the interval', async () => {
    await letterNames(database, school, ['C']);
    const now = new Date('2026-12-06T18:00:00Z');
    const problem = problemOf(await extendInterval(school.people.airframe, extension(), { now }));
    expect(problem.code).toBe('signature_refused');
  });

  test('a day too far is refused beside the day, and the wrong password signs nothing', async () => {
    const far = extension({ until: '2026-12-16' });
    const problem = problemOf(await extendInterval(school.people.airframe, far, { now: LAST_DAY }));
    expect(problem.fields).toHaveProperty('until');
    const wrong = extension({ password: 'not mine' });
    expect(problemOf(await extendInterval(school.people.airframe, wrong, { now: LAST_DAY })).code).toBe(
      'wrong_password',
    );
  });

  test('on the last day, through the last possible day: signed, hashed, shown, and the facts have moved', async () => {
    const version = () =>
      writeInOperator(school.operatorId, (tx) =>
        tx.aircraft.findFirstOrThrow({ where: { id: school.aircraftId }, select: { factsVersion: true } }),
      );
    const before = await version();
    const sent = extension();
    const done = valueOf(await extendInterval(school.people.airframe, sent, { now: LAST_DAY }));
    expect((await version()).factsVersion).toBe(before.factsVersion + 1);
    // The same request again is answered again and written once.
    expect(valueOf(await extendInterval(school.people.airframe, sent, { now: LAST_DAY }))).toEqual(done);
    const rows = await writeInOperator(school.operatorId, (tx) =>
      tx.melExtension.findMany({ where: { deferralId } }),
    );
    expect(rows).toHaveLength(1);
    expect(contentHash(rows[0]?.content)).toBe(rows[0]?.hash);
    const view = valueOf(await readWriteUp(school.people.airframe, { discrepancyId }, { now: LAST_DAY }));
    expect(view.deferral?.extension).toMatchObject({ until: '2026-12-15', by: 'Ash Ironweed' });
    expect(view.eligibility?.listEntry?.clock).toMatchObject({ daysLeft: 10, extended: true });
  });

  test('there is no second time', async () => {
    const again = extension({ until: '2026-12-14' });
    const problem = problemOf(await extendInterval(school.people.airframe, again, { now: LAST_DAY }));
    expect(problem.lines?.[0]?.because).toMatch(/no second time/);
  });

  test('a deferral that is not there, or another school’s, is not found', async () => {
    const stranger = other.people.airframe;
    expect(problemOf(await extendInterval(stranger, extension(), { now: LAST_DAY })).code).toBe('not_found');
  });
});
