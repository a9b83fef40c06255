/**
 * Special flight permits from record to flight. Sources: 14 CFR 21.197(a), 21.199(a) and (b), 91.409(c); that a permit is for
 * one flight and good on both its end days is from memory, see lib/rules/special-flight-permit.ts.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { writeInOperator } from '@/lib/db/scope';
import { judgeSeverity } from '@/lib/determinations/judge-severity';
import { addObservation } from '@/lib/findings/add-observation';
import { reportFinding } from '@/lib/findings/report-finding';
import { inspectForPermit } from '@/lib/permits/inspect-for-permit';
import { readPermit, readPermitChoices } from '@/lib/permits/read-permit';
import { recordPermit } from '@/lib/permits/record-permit';
import { contentHash } from '@/lib/records/canonical';
import { answerFlight } from '@/lib/releases/answer-flight';
import { readDeskChoices } from '@/lib/releases/read-desk';
import { releaseFlight } from '@/lib/releases/release-flight';
import { dayLesson, ferry, nickedPropeller, permitOf, problemOf, valueOf } from '../fixtures/acts';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, NOW, openSchools, PASSWORD, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let nickId: string;
let permitId: string;
const now = { now: NOW };

beforeAll(async () => {
  ({ database, school } = await openSchools());
  nickId = valueOf(await reportFinding(school.people.renter, nickedPropeller(school), now)).discrepancyId;
  // Judged, so that the permit can name it: undecided is not known, and no permit stands in for that.
  await writeInOperator(school.operatorId, (tx) =>
    tx.discrepancy.update({
      where: { operatorId_id: { operatorId: school.operatorId, id: nickId } },
      data: { severity: 'grounding' },
    }),
  );
});
afterAll(() => closeSchools(database));

const record = (change: object = {}) =>
  recordPermit(school.people.manager, { ...permitOf(school, [nickId]), ...change }, now);
const inspection = (id: string, change: object = {}) => ({
  requestId: randomUUID(),
  permitId: id,
  safe: true,
  statement: 'Blade under the loupe, no crack; run-up smooth.',
  password: PASSWORD,
  ...change,
});
const answered = async (id: string, change: object = {}) =>
  valueOf(await answerFlight(school.people.dispatcher, { ...ferry(school, id), ...change }, now));
const release = async (id: string, times: { departLocal?: string; arriveLocal?: string } = {}) => {
  const { factsVersion } = await answered(id);
  return releaseFlight(
    school.people.dispatcher,
    { ...ferry(school, id), ...times, requestId: randomUUID(), factsVersion, limitsPassedOn: true },
    now,
  );
};

describe('the record of the paper', () => {
  test('the choices name what bars today, and what no permit stands in for is told apart', async () => {
    const choices = valueOf(
      await readPermitChoices(school.people.manager, { aircraftId: school.aircraftId }, now),
    );
    expect(choices.application.doesNotComply.map(({ covers }) => covers)).toContain(nickId);
    expect(choices.coverable.map(({ id }) => id)).toContain(nickId);
    expect(
      choices.coverable.some(({ kind, label }) => kind === 'requirement' && label === 'Annual inspection'),
    ).toBe(true);
  });

  test.each([
    ['goodThrough', { goodThrough: '2026-11-23', goodFrom: '2026-11-24' }],
    ['goodFrom', { goodFrom: '2026-11-20' }],
    ['goodThrough', { issuedOn: '2026-11-01', goodFrom: '2026-11-02', goodThrough: '2026-11-24' }],
    ['issuedOn', { issuedOn: '2026-11-26', goodFrom: '2026-11-26' }],
    ['covers', { covers: [] }],
    ['covers', { covers: [randomUUID()] }],
    ['limits', { limits: [] }],
    ['fromBaseId', { fromBaseId: randomUUID() }],
    ['asksInspection', { asksInspection: undefined }],
  ])('refused at %s (%#)', async (field, change) => {
    expect(problemOf(await record(change)).fields).toHaveProperty(field);
  });

  test('the last good day may be today', async () => {
    const { permitId: today } = valueOf(
      await record({
        reference: 'SFP 26-011',
        issuedOn: '2026-11-20',
        goodFrom: '2026-11-20',
        goodThrough: '2026-11-25',
      }),
    );
    expect(valueOf(await readPermit(school.people.renter, { permitId: today }, now)).standing).toBe(
      'inspection-owed',
    );
  });

  test('recorded: signed over everything it says', async () => {
    ({ permitId } = valueOf(await record()));
    const row = await writeInOperator(school.operatorId, (tx) =>
      tx.specialFlightPermit.findFirstOrThrow({ where: { id: permitId } }),
    );
    expect(contentHash(row.content)).toBe(row.hash);
    expect(row.content).toMatchObject({
      reference: 'SFP 26-014',
      limits: ['Day VFR only.', 'Direct, not over a town.'],
    });
    const { aircraft } = valueOf(await readDeskChoices(school.people.dispatcher, {}, now));
    expect(aircraft[0]?.permits.map(({ id }) => id)).toContain(permitId);
  });
});

describe('the inspection it asks for (21.199(b))', () => {
  test('owed: no go', async () => {
    const { answer } = await answered(permitId);
    expect(answer.lines).toContainEqual(expect.objectContaining({ effect: 'bars', cite: '14cfr21.199(b)' }));
  });

  test.each([
    // A propeller is powerplant work: 65.87(a).
    ['airframe', '14cfr65.87(a)'],
    // 65.83.
    ['stale', '14cfr65.83'],
    ['uncertificated', '14cfr21.199(b)'],
  ] as const)('not by %s', async (who, cite) => {
    const problem = problemOf(await inspectForPermit(school.people[who], inspection(permitId), now));
    expect(problem.code).toBe('signature_refused');
    expect(problem.lines?.map((line) => line.cite)).toContain(cite);
  });

  test('not unless found safe', async () => {
    const unsafe = inspection(permitId, { safe: false });
    expect(problemOf(await inspectForPermit(school.people.powerplant, unsafe, now)).fields).toHaveProperty(
      'safe',
    );
  });

  test('signed once by a mechanic with the rating', async () => {
    valueOf(await inspectForPermit(school.people.powerplant, inspection(permitId), now));
    expect(problemOf(await inspectForPermit(school.people.powerplant, inspection(permitId), now)).code).toBe(
      'conflict',
    );
    expect(valueOf(await readPermit(school.people.renter, { permitId }, now))).toMatchObject({
      standing: 'ready',
      inspection: { by: 'Pim Castlewick', certificateKind: 'mechanic' },
    });
  });

  test('a permit that covers an inspection asks a mechanic for both ratings', async () => {
    const annual = await writeInOperator(school.operatorId, (tx) =>
      tx.requirement.findFirstOrThrow({ where: { aircraftId: school.aircraftId, kind: 'annual' } }),
    );
    const other = valueOf(await record({ reference: 'SFP 26-015', covers: [annual.id] })).permitId;
    expect(problemOf(await inspectForPermit(school.people.airframe, inspection(other), now)).code).toBe(
      'signature_refused',
    );
    valueOf(await inspectForPermit(school.people.powerplant, inspection(other), now));
  });
});

describe('its flight', () => {
  test('without the permit no go, under it go with its conditions as limits', async () => {
    const { permitId: none, ...bare } = ferry(school, permitId);
    void none;
    expect(valueOf(await answerFlight(school.people.dispatcher, bare, now)).answer.outcome).toBe('no-go');
    const { answer } = await answered(permitId);
    expect(answer.outcome).toBe('go-with-limits');
    const limits = answer.lines.filter(({ cite }) => cite === '14cfr21.199').map(({ because }) => because);
    expect(limits).toEqual([
      'Special flight permit SFP 26-014: Day VFR only.',
      'Special flight permit SFP 26-014: Direct, not over a town.',
      'Special flight permit SFP 26-014: Aboard: One pilot, nobody else.',
    ]);
  });

  test('not for hire, not with passengers, and not for another aircraft', async () => {
    for (const change of [{ crewOnly: 'no' }, { ...dayLesson(school), crewOnly: 'yes', permitId }]) {
      expect((await answered(permitId, change)).answer.outcome).toBe('no-go');
    }
    const stranger = { ...ferry(school, randomUUID()) };
    expect(problemOf(await answerFlight(school.people.dispatcher, stranger, now)).fields).toHaveProperty(
      'permitId',
    );
  });

  test('released once; the second is refused plainly', async () => {
    const { releaseId, outcome } = valueOf(await release(permitId));
    expect(outcome).toBe('go-with-limits');
    const row = await writeInOperator(school.operatorId, (tx) =>
      tx.release.findFirstOrThrow({ where: { id: releaseId } }),
    );
    expect(row.permitId).toBe(permitId);
    const second = problemOf(await release(permitId));
    expect(second.code).toBe('conflict');
    expect(second.say).toContain('was for one flight');
    expect((await answered(permitId)).answer.outcome).toBe('no-go');
    expect(valueOf(await readPermit(school.people.renter, { permitId }, now))).toMatchObject({
      standing: 'used',
      releaseId,
    });
    const { aircraft } = valueOf(await readDeskChoices(school.people.dispatcher, {}, now));
    expect(aircraft[0]?.permits.map(({ id }) => id)).not.toContain(permitId);
  });

  test('an inspection is not signed after its flight', async () => {
    const used = valueOf(await record({ reference: 'SFP 26-016', asksInspection: false })).permitId;
    // After the flight before it: one aircraft is not released for two at once.
    valueOf(await release(used, { departLocal: '2026-11-25T13:00', arriveLocal: '2026-11-25T14:12' }));
    expect(problemOf(await inspectForPermit(school.people.powerplant, inspection(used), now)).code).toBe(
      'conflict',
    );
  });
});

describe('what it names becomes another matter afterwards (21.199(a), read strictly)', () => {
  const minutes = (count: number) => ({ now: new Date(NOW.getTime() + count * 60_000) });
  const named = async (reference: string, asksInspection: boolean) => {
    const id = valueOf(await record({ reference, asksInspection })).permitId;
    if (asksInspection) {
      valueOf(await inspectForPermit(school.people.powerplant, inspection(id), minutes(10)));
    }
    return id;
  };
  const outcomeOf = async (id: string, at: { now: Date }) =>
    valueOf(await answerFlight(school.people.dispatcher, ferry(school, id), at)).answer.outcome;
  const judged = (at: { now: Date }) =>
    judgeSeverity(
      school.people.powerplant,
      {
        requestId: randomUUID(),
        discrepancyId: nickId,
        kind: 'damage',
        jasc: '6111',
        equipmentId: null,
        inoperativeCount: null,
        severity: 'grounding',
        statement: 'It has run into a crack.',
        password: PASSWORD,
      },
      at,
    );
  const observed = (at: { now: Date }) =>
    addObservation(
      school.people.student,
      {
        requestId: randomUUID(),
        discrepancyId: nickId,
        walkaroundId: null,
        station: 'propeller',
        itemKey: null,
        phase: null,
        words: 'It looks longer than yesterday.',
        measurements: {},
        foundAt: at.now.toISOString(),
      },
      at,
    );

  test('judged again after it: refused at release, told on its page; an inspection after it covers it', async () => {
    const before = await named('SFP 26-020', false);
    expect(await outcomeOf(before, minutes(1))).toBe('go-with-limits');
    const inspectedLater = await named('SFP 26-021', true);
    valueOf(await judged(minutes(5)));

    const { answer, factsVersion } = valueOf(
      await answerFlight(school.people.dispatcher, ferry(school, before), minutes(6)),
    );
    expect(answer.outcome).toBe('no-go');
    expect(answer.lines.filter(({ effect }) => effect === 'bars').map(({ about }) => about?.id)).toContain(
      nickId,
    );
    const refused = problemOf(
      await releaseFlight(
        school.people.dispatcher,
        { ...ferry(school, before), requestId: randomUUID(), factsVersion, limitsPassedOn: true },
        minutes(6),
      ),
    );
    expect(refused.lines?.length).toBeGreaterThan(0);
    const view = valueOf(await readPermit(school.people.renter, { permitId: before }, minutes(6)));
    expect(view.covers).toEqual([expect.objectContaining({ id: nickId, changed: true })]);
    // Signed at minute 10: whoever inspected for the other permit saw what it had become.
    expect(await outcomeOf(inspectedLater, minutes(11))).toBe('go-with-limits');
  });

  test('observed again after its inspection: no go', async () => {
    const id = await named('SFP 26-022', true);
    expect(await outcomeOf(id, minutes(11))).toBe('go-with-limits');
    valueOf(await observed(minutes(12)));
    expect(await outcomeOf(id, minutes(13))).toBe('no-go');
  });
});
