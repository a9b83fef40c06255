/**
 * Walkarounds by a type's list, through the services on a real PostgreSQL as the application's role.
 * Sources: issue 3 ("a finished walkaround keeps the version it used", "a number outside its limit raises a proposed finding
 * by itself", "missing placard is itself a finding", "exactly once"); 91.213(d)(3)(ii) for the placard. Limits are invented.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { beginDeferral } from '@/lib/determinations/begin-deferral';
import { placePlacard } from '@/lib/determinations/place-placard';
import { readInOperator, writeInOperator } from '@/lib/db/scope';
import { recordServicing } from '@/lib/findings/record-servicing';
import { reportFinding } from '@/lib/findings/report-finding';
import { readBoard } from '@/lib/fleet/read-board';
import { NO_ANSWER, type ItemAnswer, type SampleResult } from '@/lib/rules/walkaround/answers';
import { placardItemKey } from '@/lib/rules/walkaround/judge-walk';
import type { WalkaroundList } from '@/lib/rules/walkaround/plan';
import { STARTING_LIST } from '@/lib/rules/walkaround/starting-list';
import { finishWalkaround } from '@/lib/walkarounds/finish-walkaround';
import { readLists } from '@/lib/walkarounds/read-lists';
import { readPack } from '@/lib/walkarounds/read-pack';
import { startWalkaround } from '@/lib/walkarounds/start-walkaround';
import { writeList } from '@/lib/walkarounds/write-list';
import { deadLandingLight, deferralOf, nickedPropeller, problemOf, valueOf } from '../fixtures/acts';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, foundSchool, NOW, openSchools, type School } from '../fixtures/school';
import { trainer } from '../fixtures/aircraft';

let database: FreshDatabase;
let school: School;
let other: School;
const now = { now: NOW };
const AT = NOW.toISOString();

beforeAll(async () => {
  ({ database, school, other } = await openSchools());
});
afterAll(() => closeSchools(database));

let founded = 0;
/** A school of its own, for tests that count what is there. */
const ownSchool = (): Promise<School> => foundSchool(`walk${(founded += 1)}`, trainer());

/** Three stations: oil with its limit, a drain, and a look. */
const listWithOil = (min: number): WalkaroundList => ({
  stations: [
    {
      area: 'nose-right',
      title: 'Nose',
      items: [
        {
          kind: 'number',
          key: 'oil-quantity',
          title: 'Oil',
          lookFor: 'Dip.',
          measurement: 'oil-quantity',
          limit: { min, max: null, source: 'Invented manual, section 12' },
          findingKey: 'oil-low',
        },
      ],
    },
    {
      area: 'left-wing-fuel',
      title: 'Left wing',
      items: [{ kind: 'sample', key: 'drain-l2', title: 'Drain L2', lookFor: 'Clear.', drain: 'L2' }],
    },
    {
      area: 'cabin',
      title: 'Cabin',
      items: [{ kind: 'look', key: 'belts', title: 'Belts', lookFor: 'Whole.' }],
    },
  ],
});
const LIST = listWithOil(50);

const oil = (...values: number[]): ItemAnswer => ({
  ...NO_ANSWER,
  readings: values.map((value) => ({ value, at: AT, struck: false })),
});
const samples = (...results: SampleResult[]): ItemAnswer => ({
  ...NO_ANSWER,
  samples: results.map((result) => ({ result, at: AT })),
});
const GOOD = { ...NO_ANSWER, looked: 'good' } as const;
const CLEAN = { 'oil-quantity': oil(60), 'drain-l2': samples('clean'), belts: GOOD };

const write = (at: School, list: WalkaroundList, fromVersion: number, why = 'Fitted to the type.') =>
  writeList(at.people.manager, { requestId: randomUUID(), typeId: at.typeId, fromVersion, list, why }, now);

async function begin(at: School, planId: string | null): Promise<string> {
  const input = { requestId: randomUUID(), aircraftId: at.aircraftId, startedAt: AT, planId };
  return valueOf(await startWalkaround(at.people.renter, input, now)).walkaroundId;
}

const ending = (
  walkaroundId: string,
  items: Record<string, ItemAnswer>,
  placards: Record<string, 'there' | 'missing'> = {},
) => ({ requestId: randomUUID(), walkaroundId, answers: { items, placards }, finishedAt: AT });

const finish = (at: School, input: unknown) => finishWalkaround(at.people.renter, input, now);

const writeUps = (at: School) =>
  readInOperator(at.operatorId, (tx) =>
    tx.discrepancy.findMany({
      where: { operatorId: at.operatorId },
      include: { finding: true },
      orderBy: { number: 'asc' },
    }),
  );

const walkOf = (at: School, id: string) =>
  readInOperator(at.operatorId, (tx) =>
    tx.walkaround.findUniqueOrThrow({
      where: { operatorId_id: { operatorId: at.operatorId, id } },
      include: { plan: true },
    }),
  );

const outcome = async (at: School) => {
  const board = valueOf(await readBoard(at.people.dispatcher, {}, now));
  return board.rows[0]?.cells.find(({ id }) => id === 'day-vfr-private')?.outcome;
};

describe('the list of a type', () => {
  test('before anybody wrote one, the starting list stands, and everyone may read it', async () => {
    const [lists] = valueOf(await readLists(school.people.renter, {}, now));
    expect(lists).toMatchObject({
      typeId: school.typeId,
      current: { id: null, version: 0, list: STARTING_LIST },
      versions: [],
    });
  });

  test('the starting list itself is a list that can be saved', async () => {
    const at = await ownSchool();
    expect(valueOf(await write(at, STARTING_LIST, 0)).version).toBe(1);
  });

  test('a version is added, never changed; who starts from an older one is told (superseded)', async () => {
    const at = await ownSchool();
    const first = valueOf(await write(at, LIST, 0, 'First.'));
    const second = valueOf(await write(at, { stations: LIST.stations.slice(0, 2) }, 1, 'Belts are no item.'));
    expect([first.version, second.version]).toEqual([1, 2]);
    const late = problemOf(await write(at, LIST, 1));
    expect(late.code).toBe('superseded');
    expect(late.say).toContain('Version 2');
    const [lists] = valueOf(await readLists(at.people.airframe, {}, now));
    expect(lists?.current).toMatchObject({ id: second.planId, version: 2 });
    expect(lists?.versions.map(({ version, why, madeBy, walked }) => [version, why, madeBy, walked])).toEqual(
      [
        [2, 'Belts are no item.', 'Max Overfield', 0],
        [1, 'First.', 'Max Overfield', 0],
      ],
    );
    const change = writeInOperator(at.operatorId, (tx) =>
      tx.walkaroundPlan.update({
        where: { operatorId_id: { operatorId: at.operatorId, id: first.planId } },
        data: { why: 'Otherwise.' },
      }),
    );
    await expect(change).rejects.toThrow();
  });

  const oilItem = LIST.stations[0]?.items[0];
  const withItem = (change: object): unknown => ({
    stations: [{ ...LIST.stations[0], items: [{ ...oilItem, ...change }] }],
  });
  test.each<[string, unknown, string]>([
    ['no station', { stations: [] }, 'list.stations'],
    [
      'a station without an item',
      { stations: [{ ...LIST.stations[0], items: [] }] },
      'list.stations.0.items',
    ],
    [
      'an area twice',
      { stations: [LIST.stations[0], { ...LIST.stations[1], area: 'nose-right' }] },
      'list.stations.1.area',
    ],
    [
      'a place that is no area',
      { stations: [{ ...LIST.stations[0], area: 'roof' }] },
      'list.stations.0.area',
    ],
    [
      'an item key twice',
      { stations: [LIST.stations[0], { ...LIST.stations[2], items: LIST.stations[0]?.items }] },
      'list.stations.1.items.0.key',
    ],
    [
      'a limit without its source',
      withItem({ limit: { min: 50, max: null, source: ' ' } }),
      'list.stations.0.items.0.limit.source',
    ],
    [
      'a limit without a bound',
      withItem({ limit: { min: null, max: null, source: 'Manual' } }),
      'list.stations.0.items.0.limit.min',
    ],
    [
      'a least over the most',
      withItem({ limit: { min: 60, max: 50, source: 'Manual' } }),
      'list.stations.0.items.0.limit.max',
    ],
    [
      'a fraction of the smallest unit',
      withItem({ limit: { min: 50.5, max: null, source: 'Manual' } }),
      'list.stations.0.items.0.limit.min',
    ],
    ['a limit and no finding', withItem({ findingKey: null }), 'list.stations.0.items.0.findingKey'],
    [
      'a finding that is not about the measurement',
      withItem({ findingKey: 'tyre-low' }),
      'list.stations.0.items.0.findingKey',
    ],
    ['an unknown finding', withItem({ findingKey: 'no-such' }), 'list.stations.0.items.0.findingKey'],
    ['an unknown measurement', withItem({ measurement: 'mood' }), 'list.stations.0.items.0.measurement'],
  ])('is refused with %s, at its field', async (_, list, path) => {
    const input = { requestId: randomUUID(), typeId: school.typeId, fromVersion: 0, list, why: 'Why.' };
    const problem = problemOf(await writeList(school.people.manager, input, now));
    expect(problem.code).toBe('invalid');
    expect(Object.keys(problem.fields ?? {})).toEqual([path]);
  });

  test('why is asked', async () => {
    expect(problemOf(await write(school, LIST, 0, ' ')).fields).toHaveProperty('why');
  });
});

describe('a walkaround keeps the version it was begun with', () => {
  test('begun by version 1, finished by it though version 2 was written meanwhile', async () => {
    const at = await ownSchool();
    const { planId } = valueOf(await write(at, LIST, 0));
    const walk = await begin(at, planId);
    // Version 2 would let 4.5 qt pass.
    valueOf(await write(at, listWithOil(40), 1, 'Less oil will do.'));
    const done = valueOf(await finish(at, ending(walk, { ...CLEAN, 'oil-quantity': oil(45) })));
    expect(done.raised.map(({ itemKey }) => itemKey)).toEqual(['oil-quantity']);
    expect((await walkOf(at, walk)).plan?.version).toBe(1);
  });

  test('by the starting list: its version 0 is written down once and named', async () => {
    const at = await ownSchool();
    const walks = [await begin(at, null), await begin(at, null)];
    const plans = await Promise.all(walks.map(async (id) => (await walkOf(at, id)).plan));
    expect(plans[0]).toMatchObject({ version: 0, content: STARTING_LIST });
    expect(plans[1]?.id).toBe(plans[0]?.id);
    // Whoever began from "no list yet" writes version 1 all the same.
    expect(valueOf(await write(at, LIST, 0)).version).toBe(1);
    // A phone that has not heard of it still walks by the starting list.
    expect((await walkOf(at, await begin(at, null))).plan?.version).toBe(0);
  });

  test('another type’s or operator’s list is not there', async () => {
    const { planId } = valueOf(await write(other, LIST, 0));
    const input = { requestId: randomUUID(), aircraftId: school.aircraftId, startedAt: AT, planId };
    expect(problemOf(await startWalkaround(school.people.renter, input, now)).code).toBe('not_found');
  });
});

describe('what a finished walkaround raises', () => {
  test('all good: nothing raised, the aircraft stays go', async () => {
    const at = await ownSchool();
    const { planId } = valueOf(await write(at, LIST, 0));
    const done = valueOf(await finish(at, ending(await begin(at, planId), CLEAN)));
    expect(done).toMatchObject({ good: 3, withFinding: 0, notLookedAt: 0, raised: [] });
    expect(await outcome(at)).toBe('go');
  });

  test('a number outside its limit and water after three repeats: write-ups with numbers, no go', async () => {
    const at = await ownSchool();
    const { planId } = valueOf(await write(at, LIST, 0));
    const walk = await begin(at, planId);
    const items = {
      'oil-quantity': oil(49),
      'drain-l2': samples('water', 'water', 'water', 'water', 'clean'),
    };
    const done = valueOf(await finish(at, ending(walk, items)));
    expect(done).toMatchObject({ good: 0, withFinding: 2, notLookedAt: 1 });
    expect(
      done.raised.map(({ itemKey, number, severity, title }) => [itemKey, number, severity, title]),
    ).toEqual([
      ['oil-quantity', 'W-0001', 'grounding', 'Oil below the minimum'],
      ['drain-l2', 'W-0002', 'grounding', 'Water keeps coming'],
    ]);
    expect(done.raised[1]?.words).toContain('purge the tank');
    expect(await outcome(at)).toBe('no-go');
    const [low, water] = await writeUps(at);
    expect(low?.finding).toMatchObject({
      walkaroundId: walk,
      itemKey: 'oil-quantity',
      station: 'nose-right',
      phase: 'before-flight',
      measurements: { 'oil-quantity': 49 },
      words: 'Oil: 4.9 qt is under the least allowed, 5.0 qt (Invented manual, section 12, undated).',
    });
    // The list's limit stands in the reasons, not "no limit known".
    expect(JSON.stringify(low?.reasons)).toContain('Invented manual, section 12');
    expect(JSON.stringify(low?.reasons)).not.toContain('Not known');
    expect(water?.finding.measurements).toEqual({ 'fuel-sample-repeats': 5 });
    const kept = await walkOf(at, walk);
    expect(kept.answers).toEqual({ items, placards: {} });
    expect(kept.stations).toEqual({
      'nose-right': 'finding',
      'left-wing-fuel': 'finding',
      cabin: 'not-looked-at',
    });
  });

  test.each([
    [59, 1],
    [60, 0],
    [61, 0],
  ])(
    'the limit stored for the aircraft, 6.0 qt, goes before the list’s: %d tenths',
    async (value, raised) => {
      const at = await ownSchool();
      await writeInOperator(at.operatorId, (tx) =>
        tx.storedLimit.create({
          data: {
            id: randomUUID(),
            operatorId: at.operatorId,
            aircraftId: at.aircraftId,
            findingKey: 'oil-low',
            measurement: 'oil-quantity',
            unit: 'tenth-quart',
            min: 60,
            max: null,
            source: 'Invented manual of this aircraft',
          },
        }),
      );
      const { planId } = valueOf(await write(at, LIST, 0));
      const done = valueOf(
        await finish(at, ending(await begin(at, planId), { ...CLEAN, 'oil-quantity': oil(value) })),
      );
      expect(done.raised).toHaveLength(raised);
    },
  );

  test('sent twice it is raised once, with the same answer', async () => {
    const at = await ownSchool();
    const { planId } = valueOf(await write(at, LIST, 0));
    const message = ending(await begin(at, planId), { ...CLEAN, 'oil-quantity': oil(40) });
    const [first, second] = await Promise.all([finish(at, message), finish(at, message)]);
    expect(valueOf(second)).toEqual(valueOf(first));
    expect(valueOf(await finish(at, message))).toEqual(valueOf(first));
    expect(await writeUps(at)).toHaveLength(1);
  });

  test('finished again under another number: conflict, and nothing is raised again', async () => {
    const at = await ownSchool();
    const { planId } = valueOf(await write(at, LIST, 0));
    const walk = await begin(at, planId);
    valueOf(await finish(at, ending(walk, { ...CLEAN, 'oil-quantity': oil(40) })));
    expect(problemOf(await finish(at, ending(walk, CLEAN))).code).toBe('conflict');
    expect(await writeUps(at)).toHaveLength(1);
  });

  const written = (at: School, walkaroundId: string) => ({
    ...nickedPropeller(at),
    walkaroundId,
    station: 'nose-right',
    findingKey: 'oil-low',
    itemKey: 'oil-quantity',
    measurements: { 'oil-quantity': 40 },
    words: 'Oil at four quarts, none left on the shelf.',
  });

  test('what the pilot wrote up at the item is not raised a second time', async () => {
    const at = await ownSchool();
    const { planId } = valueOf(await write(at, LIST, 0));
    const walk = await begin(at, planId);
    valueOf(await reportFinding(at.people.renter, written(at, walk), now));
    const done = valueOf(await finish(at, ending(walk, { ...CLEAN, 'oil-quantity': oil(40) })));
    expect(done).toMatchObject({ raised: [], withFinding: 1 });
    expect((await writeUps(at)).map(({ finding }) => finding.words)).toEqual([
      'Oil at four quarts, none left on the shelf.',
    ]);
  });

  test('an observation of this walk at the item counts likewise', async () => {
    const at = await ownSchool();
    const { planId } = valueOf(await write(at, LIST, 0));
    const known = valueOf(
      await reportFinding(at.people.airframe, { ...written(at, ''), walkaroundId: null }, now),
    );
    const walk = await begin(at, planId);
    const { renter } = at.people;
    await writeInOperator(at.operatorId, (tx) =>
      tx.finding.create({
        data: {
          id: randomUUID(),
          operatorId: at.operatorId,
          aircraftId: at.aircraftId,
          walkaroundId: walk,
          personId: renter.personId,
          station: 'nose-right',
          itemKey: 'oil-quantity',
          findingKey: 'oil-low',
          relatedId: known.discrepancyId,
          place: '',
          words: 'Still low.',
          measurements: {},
          foundAt: NOW,
        },
      }),
    );
    valueOf(await finish(at, ending(walk, { ...CLEAN, 'oil-quantity': oil(40) })));
    expect(await writeUps(at)).toHaveLength(1);
    // The pack counts it with the write-up it is about, and does not show it as one of its own.
    const pack = valueOf(await readPack(renter, {}, now));
    expect(pack.aircraft[0]?.writeUps.map(({ number, observations }) => [number, observations])).toEqual([
      ['W-0001', 1],
    ]);
  });

  test('another finding at the drain does not swallow what it ran with: water to the end is raised', async () => {
    const at = await ownSchool();
    const { planId } = valueOf(await write(at, LIST, 0));
    const walk = await begin(at, planId);
    const cleared = {
      ...written(at, walk),
      station: 'left-wing-fuel',
      itemKey: 'drain-l2',
      findingKey: 'water-cleared',
      measurements: {},
      words: 'Water, then clean.',
    };
    const { discrepancyId } = valueOf(await reportFinding(at.people.renter, cleared, now));
    const items = { ...CLEAN, 'drain-l2': samples('water', 'water', 'water', 'water', 'clean') };
    const done = valueOf(await finish(at, ending(walk, items)));
    expect(done.raised.map(({ title, severity }) => [title, severity])).toEqual([
      ['Water keeps coming', 'grounding'],
    ]);
    // The first may be closed by whoever sampled until clean; the second is maintenance's.
    const serviced = { requestId: randomUUID(), discrepancyId, words: 'Sampled until clean.' };
    valueOf(await recordServicing(at.people.renter, serviced, now));
    expect(await outcome(at)).toBe('no-go');
  });

  test('closed by servicing and read again under the limit, it is raised; read before, it is not', async () => {
    for (const [readAt, raised] of [
      [AT, 0],
      [new Date(NOW.getTime() + 60_000).toISOString(), 1],
    ] as const) {
      const at = await ownSchool();
      const { planId } = valueOf(await write(at, LIST, 0));
      const walk = await begin(at, planId);
      const { discrepancyId } = valueOf(await reportFinding(at.people.renter, written(at, walk), now));
      const serviced = { requestId: randomUUID(), discrepancyId, words: 'One quart added.' };
      valueOf(await recordServicing(at.people.renter, serviced, now));
      const low = { ...NO_ANSWER, readings: [{ value: 45, at: readAt, struck: false }] };
      const done = valueOf(await finish(at, ending(walk, { ...CLEAN, 'oil-quantity': low })));
      expect(done.raised).toHaveLength(raised);
    }
  });

  test('as many samples as a patient pilot takes can be sent: the walk is not lost for them', async () => {
    const at = await ownSchool();
    const { planId } = valueOf(await write(at, LIST, 0));
    const many = samples(...Array.from({ length: 40 }, () => 'water' as const));
    const done = valueOf(await finish(at, ending(await begin(at, planId), { ...CLEAN, 'drain-l2': many })));
    expect(done.raised).toHaveLength(1);
  });

  test('a finding that arrives after the finish is kept too: nothing reported is lost, nothing raised twice', async () => {
    const at = await ownSchool();
    const { planId } = valueOf(await write(at, LIST, 0));
    const walk = await begin(at, planId);
    const message = ending(walk, { ...CLEAN, 'oil-quantity': oil(40) });
    const done = valueOf(await finish(at, message));
    valueOf(await reportFinding(at.people.renter, written(at, walk), now));
    expect(valueOf(await finish(at, message))).toEqual(done);
    const kept = await writeUps(at);
    expect(kept).toHaveLength(2);
    expect(kept.filter(({ finding }) => finding.id === done.raised[0]?.findingId)).toHaveLength(1);
  });

  test('it is frozen: not even the application’s own role changes it', async () => {
    const at = await ownSchool();
    const { planId } = valueOf(await write(at, LIST, 0));
    const walk = await begin(at, planId);
    valueOf(await finish(at, ending(walk, CLEAN)));
    const where = { operatorId_id: { operatorId: at.operatorId, id: walk } };
    for (const data of [{ answers: {} }, { stations: {} }, { finishedAt: null }]) {
      await expect(
        writeInOperator(at.operatorId, (tx) => tx.walkaround.update({ where, data })),
      ).rejects.toThrow(/finished/);
    }
    await expect(writeInOperator(at.operatorId, (tx) => tx.walkaround.delete({ where }))).rejects.toThrow();
  });

  test('somebody else’s walkaround, and another operator’s, is not there', async () => {
    const walk = await begin(school, null);
    const message = ending(walk, {});
    for (const ref of [school.people.airframe, school.people.manager, other.people.renter]) {
      expect(problemOf(await finishWalkaround(ref, message, now)).code).toBe('not_found');
    }
  });

  test('a phone whose clock runs ahead does not finish in the future', async () => {
    const walk = await begin(school, null);
    const ahead = new Date(NOW.getTime() + 3_600_000).toISOString();
    valueOf(await finish(school, { ...ending(walk, {}), finishedAt: ahead }));
    expect((await walkOf(school, walk)).finishedAt).toEqual(NOW);
  });

  test.each([
    ['no answers at all', { answers: undefined }],
    ['no time', { finishedAt: undefined }],
    [
      'an unknown result',
      { answers: { items: { a: { ...NO_ANSWER, samples: [{ result: 'fizzy', at: AT }] } }, placards: {} } },
    ],
    ['a fraction', { answers: { items: { a: oil(4.5) }, placards: {} } }],
  ])('refuses %s', async (_, change) => {
    const walk = await begin(school, null);
    expect(problemOf(await finish(school, { ...ending(walk, {}), ...change })).code).toBe('invalid');
  });
});

describe('placards that must be there', () => {
  async function deferred(): Promise<{ at: School; placardId: string; planId: string }> {
    const at = await ownSchool();
    const { planId } = valueOf(await write(at, LIST, 0));
    const light = valueOf(await reportFinding(at.people.renter, deadLandingLight(at), now));
    const { placardId } = valueOf(
      await beginDeferral(at.people.airframe, deferralOf(light.discrepancyId), now),
    );
    valueOf(await placePlacard(at.people.renter, { requestId: randomUUID(), placardId }, now));
    return { at, placardId, planId };
  }

  test('missing, and nobody wrote it up: it is raised, and the aircraft is no go (91.213(d)(3)(ii))', async () => {
    const { at, placardId, planId } = await deferred();
    expect(await outcome(at)).toBe('go-with-limits');
    const done = valueOf(
      await finish(at, ending(await begin(at, planId), CLEAN, { [placardId]: 'missing' })),
    );
    expect(done.raised.map(({ itemKey, title, severity }) => [itemKey, title, severity])).toEqual([
      [placardItemKey(placardId), 'Placard or marking missing', 'grounding'],
    ]);
    expect(done.raised[0]?.words).toContain('LANDING LIGHT INOPERATIVE');
    expect(done).toMatchObject({ withFinding: 1, good: 2 });
    expect(await outcome(at)).toBe('no-go');
  });

  test('missing and written up on this walk: not raised again', async () => {
    const { at, placardId, planId } = await deferred();
    const walk = await begin(at, planId);
    const finding = {
      ...nickedPropeller(at),
      walkaroundId: walk,
      station: 'cabin',
      findingKey: 'placard-missing',
      itemKey: placardItemKey(placardId),
      words: 'The placard is gone.',
    };
    valueOf(await reportFinding(at.people.renter, finding, now));
    const done = valueOf(await finish(at, ending(walk, CLEAN, { [placardId]: 'missing' })));
    expect(done.raised).toEqual([]);
  });

  test('there: nothing is raised; a placard of nobody is none', async () => {
    const { at, placardId, planId } = await deferred();
    const placards = { [placardId]: 'there', [randomUUID()]: 'missing' } as const;
    const done = valueOf(await finish(at, ending(await begin(at, planId), CLEAN, placards)));
    expect(done.raised).toEqual([]);
    expect(await outcome(at)).toBe('go-with-limits');
  });
});

describe('a message of before there were lists (version 1)', () => {
  test('is taken as it stands: stations kept, nothing judged, no list named', async () => {
    const at = await ownSchool();
    const start = { requestId: randomUUID(), aircraftId: at.aircraftId, startedAt: AT };
    const { walkaroundId } = valueOf(await startWalkaround(at.people.renter, start, now));
    const end = { requestId: randomUUID(), walkaroundId, stations: { tail: 'good', cabin: 'finding' } };
    expect(valueOf(await finish(at, end))).toEqual({
      walkaroundId,
      good: 1,
      withFinding: 1,
      notLookedAt: 0,
      raised: [],
    });
    expect(await walkOf(at, walkaroundId)).toMatchObject({
      plan: null,
      answers: null,
      stations: { tail: 'good', cabin: 'finding' },
    });
    expect(valueOf(await finish(at, end)).walkaroundId).toBe(walkaroundId);
  });
});

describe('what a phone takes along', () => {
  test('drains that did not run clean at once are told with the next pack', async () => {
    const at = await ownSchool();
    const { planId } = valueOf(await write(at, LIST, 0));
    valueOf(
      await finish(at, ending(await begin(at, planId), { ...CLEAN, 'drain-l2': samples('water', 'clean') })),
    );
    const [aircraft] = valueOf(await readPack(at.people.renter, {}, now)).aircraft;
    expect(aircraft?.lastSamples).toEqual({
      at: AT,
      by: 'Rue Fernhollow',
      drains: { L2: ['water', 'clean'] },
    });
    expect(aircraft?.writeUps).toEqual([]);
  });

  test('the newest list, the usual answer and what decides it; nothing of another operator', async () => {
    const at = await ownSchool();
    valueOf(await write(at, STARTING_LIST, 0));
    const { planId } = valueOf(await write(at, LIST, 1));
    valueOf(await reportFinding(at.people.renter, nickedPropeller(at), now));
    const pack = valueOf(await readPack(at.people.renter, {}, now));
    expect(pack.lists).toEqual({ [at.typeId]: { id: planId, version: 2, list: LIST } });
    expect(pack.aircraft).toHaveLength(1);
    expect(pack.aircraft[0]?.answer).toMatchObject({ name: 'Day VFR, for hire', outcome: 'no-go' });
    expect(pack.aircraft[0]?.answer?.lines.map(({ effect }) => effect)).toContain('bars');
    expect(pack.person).toMatchObject({ id: at.people.renter.personId, name: 'Rue Fernhollow' });
    const text = JSON.stringify(pack);
    for (const foreign of [other.operatorId, other.aircraftId, other.typeId, school.aircraftId]) {
      expect(text).not.toContain(foreign);
    }
  });

  test('each paragraph that is printed in its own way, or in doubt, is in it; the rest is not', async () => {
    const { paragraphs } = valueOf(await readPack(school.people.renter, {}, now));
    expect(paragraphs['ac20-43c']?.label).not.toBe('ac20-43c');
    expect(paragraphs['14cfr91.405(a)']).toBeUndefined();
    expect(paragraphs['trade-practice']?.doubt).toMatch(/\w/);
  });

  test('nobody signed in gets nothing', async () => {
    expect(problemOf(await readPack(null, {}, now)).code).toBe('not_signed_in');
  });
});
