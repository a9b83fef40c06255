/**
 * Rules of the house in the database: set, changed, ended, read, previewed, and what they do to answers, releases, the phone's
 * pack and finished walkarounds. Source: issue 6 ("stricter than the law ... shown apart from law with their own author and
 * date; they can never loosen the law"); the engine itself is tested in tests/rules and tests/properties.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { beginDeferral } from '@/lib/determinations/begin-deferral';
import { judgeSeverity } from '@/lib/determinations/judge-severity';
import { readInOperator, writeInOperator } from '@/lib/db/scope';
import { reportFinding } from '@/lib/findings/report-finding';
import { aircraftFacts, readAircraft } from '@/lib/fleet/facts';
import { readBoard } from '@/lib/fleet/read-board';
import { composeRule, emptyRule, typedOf } from '@/lib/house-rules/form';
import { endHouseRule } from '@/lib/house-rules/end-house-rule';
import { previewHouseRule } from '@/lib/house-rules/preview-house-rule';
import { readHouseRules } from '@/lib/house-rules/read-house-rules';
import { setHouseRule } from '@/lib/house-rules/set-house-rule';
import { answerFlight } from '@/lib/releases/answer-flight';
import type { HouseSetting } from '@/lib/rules/house/house-rule';
import { NO_ANSWER } from '@/lib/rules/walkaround/answers';
import { finishWalkaround } from '@/lib/walkarounds/finish-walkaround';
import { readPack } from '@/lib/walkarounds/read-pack';
import { startWalkaround } from '@/lib/walkarounds/start-walkaround';
import { dayLesson, deadLandingLight, deferralOf, nightLesson, problemOf, valueOf } from '../fixtures/acts';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import { released, standing, toldOf } from '../fixtures/flights';
import { closeSchools, foundSchool, NOW, openSchools, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let other: School;
let founded = 0;
const now = { now: NOW };

beforeAll(async () => {
  ({ database, other } = await openSchools());
});
beforeEach(async () => {
  school = await foundSchool(`house${(founded += 1)}`, trainer());
});
afterAll(() => closeSchools(database));

const ruleOf = (setting: HouseSetting, some: object = {}) => ({
  requestId: randomUUID(),
  of: null,
  setting,
  reach: null,
  why: 'The board decided so.',
  ...some,
});
const set = async (setting: HouseSetting, some: object = {}) =>
  valueOf(await setHouseRule(school.people.manager, ruleOf(setting, some), now));

/** A landing light that does not work, deferred in good order but for its placard. */
async function deferLight(): Promise<void> {
  const light = valueOf(await reportFinding(school.people.renter, deadLandingLight(school), now));
  valueOf(await beginDeferral(school.people.airframe, deferralOf(light.discrepancyId), now));
  await writeInOperator(school.operatorId, (tx) =>
    tx.placard.updateMany({ data: { placedAt: NOW, placedById: school.people.airframe.personId } }),
  );
}

const answerOf = async (lesson: object) =>
  valueOf(await answerFlight(school.people.dispatcher, lesson, now)).answer;

const factsOf = () =>
  readInOperator(school.operatorId, async (tx) => {
    const row = await readAircraft(tx, school.operatorId, school.aircraftId);
    if (!row) throw new Error('the aircraft is there');
    return { ...aircraftFacts(row), factsVersion: row.factsVersion };
  });

describe('setting a rule', () => {
  test('counts at once, is shown with author, date and reason, and leaves every line of the law', async () => {
    await deferLight();
    const law = await answerOf({ ...nightLesson(school), purpose: 'private' });
    const before = await factsOf();
    const { ruleId } = await set({ kind: 'no-night-with-deferral' });
    const both = await answerOf({ ...nightLesson(school), purpose: 'private' });
    const ofHouse = both.lines.filter(({ house }) => house);
    expect(law.outcome).not.toBe('no-go');
    expect(both.outcome).toBe('no-go');
    expect(both.lines.filter(({ house }) => !house)).toEqual(law.lines);
    expect(ofHouse).toMatchObject([
      {
        effect: 'bars',
        cite: 'house-rule',
        house: { ruleId, version: 1, by: 'Max Overfield', on: '2026-11-25', why: 'The board decided so.' },
      },
    ]);
    expect((await answerOf(dayLesson(school))).lines.some(({ house }) => house)).toBe(false);
    expect((await factsOf()).factsVersion).toBe(before.factsVersion + 1);
  });

  test('makes active releases void that it bars, and tells their people', async () => {
    const releaseId = await released(school);
    await set({ kind: 'limit-in-own-words', purposes: ['private'], words: 'By day only.' });
    expect((await standing(school, releaseId)).state).toBe('released');
    await set({ kind: 'oil-minimum', leastTenthsQuart: 60, oldestHours: 12 });
    expect((await standing(school, releaseId)).state).toBe('void');
    expect(await toldOf(school, releaseId)).toContain('Rue Fernhollow: release-void');
  });

  test('warns of a limit that an active release does not know', async () => {
    const releaseId = await released(school);
    await set({ kind: 'limit-in-own-words', purposes: ['instruction-for-hire'], words: 'Not to 0WA.' });
    expect(await standing(school, releaseId)).toMatchObject({ state: 'released', warned: true });
  });

  test('for named aircraft touches no other', async () => {
    const reach = { aircraftIds: [], typeIds: [school.typeId] };
    await set({ kind: 'most-deferrals', most: 1 }, { reach });
    expect((await factsOf()).houseRules).toHaveLength(1);
    const elsewhere = ruleOf(
      { kind: 'most-deferrals', most: 1 },
      { reach: { aircraftIds: [other.aircraftId], typeIds: [] } },
    );
    expect(problemOf(await setHouseRule(school.people.manager, elsewhere, now)).fields).toHaveProperty(
      'aircraftIds',
    );
    const nothing = ruleOf({ kind: 'most-deferrals', most: 1 }, { reach: { aircraftIds: [], typeIds: [] } });
    expect(problemOf(await setHouseRule(school.people.manager, nothing, now)).code).toBe('invalid');
  });

  test('is asked for a reason, and for settings that can be meant', async () => {
    for (const wrong of [
      ruleOf({ kind: 'most-deferrals', most: 1 }, { why: '  ' }),
      ruleOf({ kind: 'oil-minimum', leastTenthsQuart: 0, oldestHours: 12 }),
      ruleOf({ kind: 'mechanic-looks-at', chapters: [], areas: [] }),
      { ...ruleOf({ kind: 'most-deferrals', most: 1 }), setting: { kind: 'always-go' } },
    ]) {
      expect(problemOf(await setHouseRule(school.people.manager, wrong, now)).code).toBe('invalid');
    }
  });
});

describe('versions', () => {
  test('the next version takes the place of the last; a stale writer is refused; the end ends it', async () => {
    const { ruleId } = await set({ kind: 'most-deferrals', most: 3 });
    await set({ kind: 'most-deferrals', most: 2 }, { of: { ruleId, seenVersion: 1 } });
    const stale = ruleOf({ kind: 'most-deferrals', most: 9 }, { of: { ruleId, seenVersion: 1 } });
    expect(problemOf(await setHouseRule(school.people.manager, stale, now)).code).toBe('conflict');
    expect((await factsOf()).houseRules).toMatchObject([{ version: 2, setting: { most: 2 } }]);

    const end = { requestId: randomUUID(), ruleId, seenVersion: 2, why: 'No longer wanted.' };
    valueOf(await endHouseRule(school.people.manager, end, now));
    expect((await factsOf()).houseRules).toEqual([]);
    const again = { ...end, requestId: randomUUID(), seenVersion: 3 };
    expect(problemOf(await endHouseRule(school.people.manager, again, now)).code).toBe('conflict');

    const { inForce, ended } = valueOf(await readHouseRules(school.people.student, {}, now));
    expect(inForce).toEqual([]);
    expect(ended).toMatchObject([
      {
        newest: { version: 3, holds: false, by: 'Max Overfield' },
        earlier: [{ version: 2 }, { version: 1 }],
      },
    ]);
    await set({ kind: 'most-deferrals', most: 5 }, { of: { ruleId, seenVersion: 3 } });
    expect((await factsOf()).houseRules).toMatchObject([{ version: 4, setting: { most: 5 } }]);
  });

  test('a request sent twice is written once, and rows are never changed', async () => {
    const input = ruleOf({ kind: 'most-deferrals', most: 3 });
    const first = valueOf(await setHouseRule(school.people.manager, input, now));
    expect(valueOf(await setHouseRule(school.people.manager, input, now))).toEqual(first);
    await expect(
      writeInOperator(school.operatorId, (tx) => tx.houseRule.updateMany({ data: { holds: false } })),
    ).rejects.toThrow();
    expect((await factsOf()).houseRules).toHaveLength(1);
  });

  test('a kind that this program does not know bars everything it may reach', async () => {
    await writeInOperator(school.operatorId, (tx) =>
      tx.houseRule.create({
        data: {
          id: randomUUID(),
          operatorId: school.operatorId,
          ruleId: randomUUID(),
          version: 1,
          kind: 'of-a-newer-program',
          settings: { reach: null },
          holds: true,
          why: 'Newer.',
          madeById: school.people.manager.personId,
          madeByName: 'Max Overfield',
          madeAt: NOW,
        },
      }),
    );
    const answer = await answerOf(dayLesson(school));
    expect(answer.outcome).toBe('no-go');
    expect(answer.lines[0]?.missing).toContain('of-a-newer-program');
  });
});

describe('the preview', () => {
  const preview = async (setting: HouseSetting | null, ruleId: string | null = null) =>
    valueOf(await previewHouseRule(school.people.manager, { ruleId, setting, reach: null }, now));

  test('says what changes on the board and which releases go void, and writes nothing', async () => {
    await released(school);
    const before = await factsOf();
    const seen = await preview({ kind: 'oil-minimum', leastTenthsQuart: 60, oldestHours: 12 });
    expect(seen.aircraft).toHaveLength(1);
    expect(seen.aircraft[0]?.changes).toContainEqual({
      name: 'Day VFR, private',
      before: 'go',
      after: 'no-go',
      headline: expect.stringContaining('House rule: Least oil of the house is 6.0 qt'),
    });
    expect(seen.voided).toMatchObject([{ registration: 'N0417W' }]);
    expect(await factsOf()).toEqual(before);
    // What it said comes true.
    const cells = async () => valueOf(await readBoard(school.people.dispatcher, {}, now)).rows[0]?.cells;
    expect((await cells())?.find(({ name }) => name === 'Day VFR, private')?.outcome).toBe('go');
    await set({ kind: 'oil-minimum', leastTenthsQuart: 60, oldestHours: 12 });
    expect((await cells())?.find(({ name }) => name === 'Day VFR, private')?.outcome).toBe('no-go');
  });

  test('asks for students’ solo flights, which stand on no column of the board', async () => {
    const seen = await preview({ kind: 'no-students-at-night', flights: 'solo' });
    expect(seen.aircraft[0]?.changes.map(({ name }) => name)).toEqual(['Student solo at night']);
  });

  test('of a change takes the rule’s place, of an end leaves it out', async () => {
    const { ruleId } = await set({ kind: 'no-students-at-night', flights: 'solo' });
    expect((await preview({ kind: 'no-students-at-night', flights: 'solo' }, ruleId)).aircraft).toEqual([]);
    expect((await preview(null, ruleId)).aircraft[0]?.changes).toMatchObject([
      { name: 'Student solo at night', before: 'no-go', headline: null },
    ]);
  });
});

describe('what walkarounds leave behind', () => {
  const walk = async (oilTenths: number, at: string) => {
    const { walkaroundId } = valueOf(
      await startWalkaround(
        school.people.renter,
        { requestId: randomUUID(), aircraftId: school.aircraftId, startedAt: at, planId: null },
        { now: new Date(at) },
      ),
    );
    const reading = (value: number, struck: boolean) => ({ value, at, struck });
    const items = {
      // The last one was typed by mistake and taken back.
      'oil-quantity': { ...NO_ANSWER, readings: [reading(oilTenths, false), reading(10, true)] },
    };
    const input = { requestId: randomUUID(), walkaroundId, answers: { items, placards: {} }, finishedAt: at };
    valueOf(await finishWalkaround(school.people.renter, input, { now: new Date(at) }));
  };

  test('the newest reading counts, and an older one that comes later does not', async () => {
    await set({ kind: 'oil-minimum', leastTenthsQuart: 60, oldestHours: 12 });
    await walk(70, '2026-11-25T14:00:00.000Z');
    expect((await factsOf()).lastOil).toEqual({
      known: true,
      value: { tenthsQuart: 70, at: '2026-11-25T14:00:00.000Z' },
    });
    await walk(40, '2026-11-25T13:00:00.000Z');
    expect((await factsOf()).lastOil).toMatchObject({ value: { tenthsQuart: 70 } });
    expect((await factsOf()).lastWalkaround).toMatchObject({ value: { at: '2026-11-25T14:00:00.000Z' } });
    expect((await answerOf(dayLesson(school))).lines.some(({ house }) => house)).toBe(false);
  });

  test('a finding that measured oil is a reading as well', async () => {
    await set({ kind: 'oil-minimum', leastTenthsQuart: 60, oldestHours: 12 });
    await walk(70, '2026-11-25T14:00:00.000Z');
    const low = {
      ...deadLandingLight(school),
      station: 'cowling-left',
      findingKey: 'oil-low',
      equipmentId: null,
      inoperativeCount: null,
      measurements: { 'oil-quantity': 55 },
      foundAt: '2026-11-25T14:30:00.000Z',
    };
    valueOf(await reportFinding(school.people.renter, low, now));
    expect((await factsOf()).lastOil).toMatchObject({ value: { tenthsQuart: 55 } });
  });

  test('a walkaround that ends changes the facts where a rule asks, and only there', async () => {
    const before = await factsOf();
    await walk(70, '2026-11-25T13:30:00.000Z');
    expect((await factsOf()).factsVersion).toBe(before.factsVersion);
    expect((await factsOf()).lastOil.known).toBe(false);
    await set({ kind: 'walkaround-before-flight', oldestHours: 3 });
    // The lesson departs at 16:00Z; with a rule in force the walk of 13:30Z is read, and it is not too old.
    expect((await answerOf(dayLesson(school))).lines.some(({ house }) => house)).toBe(false);
    const ruled = await factsOf();
    await walk(70, '2026-11-25T14:00:00.000Z');
    expect((await factsOf()).factsVersion).toBe(ruled.factsVersion + 1);
  });

  test('oil that was found too low on a walk makes an active release void', async () => {
    await set({ kind: 'oil-minimum', leastTenthsQuart: 60, oldestHours: 12 });
    await walk(70, '2026-11-25T14:00:00.000Z');
    const releaseId = await released(school);
    await walk(59, '2026-11-25T15:00:00.000Z');
    expect((await standing(school, releaseId)).state).toBe('void');
  });
});

describe('elsewhere', () => {
  test('a mechanic’s judgement settles a rule that asks for one', async () => {
    await set({ kind: 'mechanic-looks-at', chapters: ['33'], areas: [] });
    const light = valueOf(await reportFinding(school.people.renter, deadLandingLight(school), now));
    const barred = async () =>
      (await answerOf(dayLesson(school))).lines.some(({ house, effect }) => house && effect === 'bars');
    expect(await barred()).toBe(true);
    const judged = await judgeSeverity(
      school.people.airframe,
      {
        requestId: randomUUID(),
        discrepancyId: light.discrepancyId,
        kind: 'inoperative',
        jasc: '3340',
        equipmentId: school.equipment.get('landing-light') ?? null,
        inoperativeCount: 1,
        severity: 'limiting',
        statement: 'Filament broken, nothing else.',
        password: 'chocks under both wheels',
      },
      now,
    );
    valueOf(judged);
    expect(await barred()).toBe(false);
  });

  test('the phone takes the mark along', async () => {
    await set({ kind: 'walkaround-before-flight', oldestHours: 2 });
    const pack = valueOf(await readPack(school.people.renter, {}, now));
    const lines = pack.aircraft[0]?.answer?.lines ?? [];
    expect(lines.find(({ house }) => house)).toMatchObject({
      cite: 'house-rule',
      house: { by: 'Max Overfield', on: '2026-11-25' },
    });
    expect(pack.aircraft[0]?.answer?.headline).toMatch(/^House rule: /);
  });
});

describe('the form', () => {
  test('reads what was typed, and says by its field what it cannot read', () => {
    const oil = { ...emptyRule('oil-minimum'), leastOil: '6', oldestHours: '12', why: 'Because.' };
    expect(composeRule(oil)).toEqual({
      ok: true,
      setting: { kind: 'oil-minimum', leastTenthsQuart: 60, oldestHours: 12 },
      reach: null,
    });
    const wrong = composeRule({ ...oil, leastOil: 'six', oldestHours: '1.5', reach: 'named' });
    expect(wrong.ok ? [] : Object.keys(wrong.fields).sort()).toEqual([
      'aircraftIds',
      'leastOil',
      'oldestHours',
    ]);
  });

  test('gives back what was set', () => {
    const settings: HouseSetting[] = [
      { kind: 'oil-minimum', leastTenthsQuart: 65, oldestHours: 6 },
      { kind: 'mechanic-looks-at', chapters: ['61'], areas: ['propeller'] },
      { kind: 'reserve-before-inspection', reserveTenths: 50, counts: 'all-by-hours' },
      { kind: 'limit-in-own-words', purposes: ['student-solo'], words: 'By day only.' },
      { kind: 'no-students-at-night', flights: 'solo' },
    ];
    const reach = { aircraftIds: [randomUUID()], typeIds: [] };
    for (const setting of settings) {
      expect(composeRule(typedOf(setting, reach))).toEqual({ ok: true, setting, reach });
    }
  });
});
