/**
 * A finding within limits held against the stored limits of the aircraft, and a hazard answered for in combination. Sources:
 * 14 CFR 91.405(a) (a discrepancy is repaired, unless it is none: within a sourced limit), 91.213(d)(4); the figures are
 * invented. On the limit is within: common practice, no source.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { writeInOperator } from '@/lib/db/scope';
import { beginDeferral } from '@/lib/determinations/begin-deferral';
import { findWithinLimits } from '@/lib/determinations/find-within-limits';
import { readWriteUp } from '@/lib/determinations/read-write-up';
import { reportFinding } from '@/lib/findings/report-finding';
import { deadLandingLight, deferralOf, nickedPropeller, problemOf, valueOf } from '../fixtures/acts';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, foundSchool, NOW, openSchools, PASSWORD, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
const now = { now: NOW };
const depth = randomUUID();
const width = randomUUID();

const stored = (id: string, measurement: string, max: number) => ({
  id,
  operatorId: school.operatorId,
  aircraftId: school.aircraftId,
  findingKey: 'propeller-nick',
  measurement,
  unit: 'thousandth-inch',
  min: null,
  max,
  source: 'Invented propeller manual, section 61',
  sourceDate: new Date('2025-01-15T00:00:00Z'),
});

beforeAll(async () => {
  ({ database, school } = await openSchools());
});
afterAll(() => closeSchools(database));

async function nick(): Promise<string> {
  return valueOf(await reportFinding(school.people.renter, nickedPropeller(school), now)).discrepancyId;
}
const inWords = (discrepancyId: string, change: object = {}) => ({
  requestId: randomUUID(),
  discrepancyId,
  measured: '0.020 in',
  limitText: 'at most 0.031 in',
  limitSource: 'Invented manual',
  statement: 'No crack.',
  password: PASSWORD,
  ...change,
});
const byNumber = (discrepancyId: string, deep: number, change: object = {}) => ({
  ...inWords(discrepancyId, { measured: '', limitText: '', limitSource: '' }),
  limitId: depth,
  measuredValue: deep,
  alsoMeasured: [{ limitId: width, measuredValue: 40 }],
  ...change,
});

describe('without a stored limit', () => {
  test('the words stay the way, each of them needed', async () => {
    const id = await nick();
    const bare = inWords(id, { measured: '', limitText: '', limitSource: '' });
    expect(
      Object.keys(problemOf(await findWithinLimits(school.people.powerplant, bare, now)).fields ?? {}),
    ).toEqual(['measured', 'limitText', 'limitSource']);
    const invented = byNumber(id, 20);
    expect(problemOf(await findWithinLimits(school.people.powerplant, invented, now)).fields).toHaveProperty(
      'limitId',
    );
    valueOf(await findWithinLimits(school.people.powerplant, inWords(id), now));
  });
});

describe('with stored limits of 0.031 in deep and 0.062 in wide', () => {
  beforeAll(async () => {
    await writeInOperator(school.operatorId, async (tx) => {
      await tx.storedLimit.create({ data: stored(depth, 'propeller-nick-depth', 31) });
      await tx.storedLimit.create({ data: stored(width, 'propeller-nick-width', 62) });
    });
  });

  test('the form gets them with unit, bounds and source', async () => {
    const view = valueOf(await readWriteUp(school.people.powerplant, { discrepancyId: await nick() }, now));
    expect(view.limits).toEqual([
      expect.objectContaining({ id: depth, unit: 'thousandth-inch', needed: true, bounds: 'most 0.031 in' }),
      expect.objectContaining({ id: width, source: 'Invented propeller manual, section 61, 2025-01-15' }),
    ]);
  });

  test.each([
    ['just under', 30],
    ['exactly on', 31],
  ])('%s: within', async (_words, value) => {
    const id = await nick();
    const { determinationId } = valueOf(
      await findWithinLimits(school.people.powerplant, byNumber(id, value), now),
    );
    const row = await writeInOperator(school.operatorId, (tx) =>
      tx.determination.findFirstOrThrow({ where: { id: determinationId } }),
    );
    expect(row).toMatchObject({
      measurement: 'propeller-nick-depth',
      measuredValue: value,
      limitId: depth,
      measured: `Depth of the nick: 0.0${value} in; Width of the nick: 0.040 in`,
      limitText: 'Depth of the nick: most 0.031 in; Width of the nick: most 0.062 in',
      limitSource: 'Invented propeller manual, section 61, 2025-01-15',
    });
    // Both numbers are part of what was signed.
    expect((row.content as { readings: object[] }).readings).toHaveLength(2);
  });

  test('just over: refused at the number, with 91.405(a)', async () => {
    const problem = problemOf(
      await findWithinLimits(school.people.powerplant, byNumber(await nick(), 32), now),
    );
    expect(problem.fields).toHaveProperty('measuredValue');
    expect(problem.lines).toEqual([expect.objectContaining({ cite: '14cfr91.405(a)' })]);
  });

  test.each([
    ['just under', 61, null],
    ['exactly on', 62, null],
    ['just over', 63, 'alsoMeasured.0.measuredValue'],
  ])('the width too: %s', async (_words, value, field) => {
    const input = byNumber(await nick(), 20, { alsoMeasured: [{ limitId: width, measuredValue: value }] });
    const result = await findWithinLimits(school.people.powerplant, input, now);
    if (field === null) valueOf(result);
    else expect(problemOf(result).fields).toHaveProperty([field]);
  });

  test('a needed number left out, words instead of numbers: refused, and nothing is written', async () => {
    const id = await nick();
    for (const input of [byNumber(id, 20, { alsoMeasured: undefined }), inWords(id)]) {
      const problem = problemOf(await findWithinLimits(school.people.powerplant, input, now));
      expect(problem.fields).toHaveProperty('measuredValue');
    }
    const view = valueOf(await readWriteUp(school.people.powerplant, { discrepancyId: id }, now));
    expect(view.determinations).toEqual([]);
  });
});

describe('with the width stored and not the depth, which has to be measured too', () => {
  const widthAlone = randomUUID();
  let first: School;
  beforeAll(async () => {
    first = school;
    school = await foundSchool('width-alone', trainer());
    await writeInOperator(school.operatorId, async (tx) => {
      await tx.storedLimit.create({ data: stored(widthAlone, 'propeller-nick-width', 62) });
      // Stored without a source: no limit.
      await tx.storedLimit.create({
        data: { ...stored(randomUUID(), 'propeller-nick-depth', 31), source: ' ' },
      });
    });
  });
  afterAll(() => {
    school = first;
  });
  const byWidth = (discrepancyId: string, change: object = {}) =>
    byNumber(discrepancyId, 0, {
      limitId: widthAlone,
      measuredValue: 40,
      alsoMeasured: undefined,
      ...change,
    });

  // 91.405(a); unknown is never go (DEVELOPERS.md): a number for the width says nothing about the depth.
  test('the number alone is no finding: each word is asked, and the form shows what for', async () => {
    const id = await nick();
    const problem = problemOf(await findWithinLimits(school.people.powerplant, byWidth(id), now));
    expect(Object.keys(problem.fields ?? {})).toEqual(['measured', 'limitText', 'limitSource']);
    const noSource = byWidth(id, { measured: '0.020 in', limitText: 'at most 0.031 in' });
    const unsourced = problemOf(await findWithinLimits(school.people.powerplant, noSource, now));
    expect(Object.keys(unsourced.fields ?? {})).toEqual(['limitSource']);
    const view = valueOf(await readWriteUp(school.people.powerplant, { discrepancyId: id }, now));
    expect(view.neededInWords).toEqual(['Depth of the nick']);
    expect(view.determinations).toEqual([]);
  });

  test('with both, number and words are signed together', async () => {
    const words = {
      measured: '0.020 in, depth gauge',
      limitText: 'at most 0.031 in',
      limitSource: 'Other manual',
    };
    const { determinationId } = valueOf(
      await findWithinLimits(school.people.powerplant, byWidth(await nick(), words), now),
    );
    const row = await writeInOperator(school.operatorId, (tx) =>
      tx.determination.findFirstOrThrow({ where: { id: determinationId } }),
    );
    const measured = 'Width of the nick: 0.040 in; Depth of the nick: 0.020 in, depth gauge';
    const limit = 'Width of the nick: most 0.062 in; Depth of the nick: at most 0.031 in';
    const source = 'Invented propeller manual, section 61, 2025-01-15; Other manual';
    expect(row).toMatchObject({ measured, limitText: limit, limitSource: source, measuredValue: 40 });
    expect(row.content).toMatchObject({ measured, limit, source });
  });
});

describe('the hazard in combination (91.213(d)(4))', () => {
  const out = async (fn: string) =>
    valueOf(
      await reportFinding(
        school.people.renter,
        {
          ...deadLandingLight(school),
          findingKey: null,
          kind: 'inoperative',
          jasc: '3340',
          equipmentId: school.equipment.get(fn),
          words: `The ${fn} is dead.`,
        },
        now,
      ),
    ).discrepancyId;

  test('asked where something else is out, refused alone, and named in what is signed', async () => {
    const light = await out('landing-light');
    const taxi = await out('taxi-light');
    // The first: the other is limiting and open, so it counts already.
    const alone = problemOf(await beginDeferral(school.people.airframe, deferralOf(light), now));
    expect(alone.fields?.['together']?.[0]).toContain('Taxi light does not work');

    const { deferralId } = valueOf(
      await beginDeferral(
        school.people.airframe,
        { ...deferralOf(light), nature: 'equipment', together: true, togetherWith: [taxi] },
        now,
      ),
    );
    const row = await writeInOperator(school.operatorId, (tx) =>
      tx.deferral.findFirstOrThrow({ where: { id: deferralId }, include: { determination: true } }),
    );
    expect((row.determination.content as { together: { why: string }[] }).together).toEqual([
      expect.objectContaining({ why: 'limiting' }),
    ]);
  });

  test('what came in since the screen was drawn is not answered for unseen', async () => {
    const strobe = await out('intercom');
    const stale = { ...deferralOf(strobe), together: true as const, togetherWith: [] };
    const problem = problemOf(await beginDeferral(school.people.airframe, stale, now));
    expect(problem.fields?.['together']?.[0]).toContain('More is out than when you looked');
  });

  test('damage is not deferred with it (91.405(a))', async () => {
    const heat = await out('cabin-heat');
    const damaged = { ...deferralOf(heat), nature: 'damage' as const, together: true as const };
    expect(problemOf(await beginDeferral(school.people.airframe, damaged, now)).fields).toHaveProperty(
      'nature',
    );
  });
});
