/**
 * 14 CFR 65.81 to 65.95: mechanics and inspection authorizations, paragraph by paragraph. Sources: the paragraph named beside each
 * check, eCFR of 24 August and 3 September 2026. How the paragraphs make one ruling is in who-may-sign.test.ts.
 */
import { describe, expect, it } from 'vitest';
import { known, unknown } from '@/lib/rules/facts';
import { PARTS_OF_AIRCRAFT } from '@/lib/rules/jasc';
import {
  excluded65_81a,
  majorNotApproved65_85and65_87,
  rated65_85and65_87,
  recent65_83,
  vouches65_81,
} from '@/lib/rules/part-65/65-81-to-87-mechanic';
import {
  bothRatings65_92a,
  expires65_92a,
  firstYear65_93c,
  privileges65_95a,
} from '@/lib/rules/part-65/65-91-to-95-inspection-authorization';
import type { SignerFacts } from '@/lib/rules/people';
import type { Line } from '@/lib/rules/verdict';
import { mayApproveReturnToService } from '@/lib/rules/who-may-sign';
import { WORK_KINDS, type WorkKind } from '@/lib/rules/work-to-sign';
import { inspector, mechanic, ON, person, work } from '../fixtures/signers';

type Mechanic = NonNullable<SignerFacts['mechanic']>;
type Authorization = NonNullable<SignerFacts['inspectionAuthorization']>;

const short = (line: Line) => `${line.effect} ${line.cite}`;
const holding = (ratings: Mechanic['ratings'], change: Partial<Mechanic> = {}): Mechanic => ({
  number: 'X2',
  ratings,
  recentExperienceThrough: known('2027-06-30'),
  ...change,
});
const authorization = (change: Partial<Authorization> = {}): Authorization => ({
  number: 'X3',
  expiresOn: '2027-03-31',
  firstYearActivityMet: known(true),
  ...change,
});

describe('65.81(a): what no rating lifts', () => {
  const BARS_REPAIR: readonly WorkKind[] = ['preventive', 'minor', 'major'];

  it.each(WORK_KINDS)('inside an instrument: %s', (kind) => {
    // "Any repair to, or alteration of, instruments": an inspection or a test of one is neither.
    const line = excluded65_81a(work({ part: 'instrument', kind }));
    expect(line && short(line)).toBe(BARS_REPAIR.includes(kind) ? 'bars 14cfr65.81(a)' : null);
  });
  it.each(WORK_KINDS)('an instrument out and in: %s', (kind) => {
    expect(excluded65_81a(work({ part: 'instrument', kind, swapOnly: true }))).toBeNull();
  });
  it.each(WORK_KINDS)('a propeller: %s', (kind) => {
    const line = excluded65_81a(work({ part: 'propeller', kind }));
    expect(line && short(line)).toBe(kind === 'major' ? 'bars 14cfr65.81(a)' : null);
  });
  it.each(['airframe', 'powerplant', 'avionics'] as const)('%s: nothing', (part) => {
    for (const kind of WORK_KINDS) expect(excluded65_81a(work({ part, kind }))).toBeNull();
  });
});

describe('65.81(a), (b): what the signature vouches for', () => {
  it('the work done before, and the instructions understood', () => {
    expect(vouches65_81.map(short)).toEqual(['notes 14cfr65.81(a)', 'notes 14cfr65.81(b)']);
  });
  it('both are said to a mechanic, and to an inspector of an annual', () => {
    const vouched = (signer: SignerFacts, kind: WorkKind) =>
      mayApproveReturnToService(signer, work({ kind }), ON)
        .lines.map(short)
        .filter((line) => line.includes('65.81'));
    const expected = ['notes 14cfr65.81(a)', 'notes 14cfr65.81(b)'];
    expect(vouched(mechanic(['airframe']), 'minor')).toEqual(expected);
    expect(vouched(inspector(), 'annual')).toEqual(expected);
  });
});

describe('65.83: recent experience', () => {
  it.each([
    ['2026-11-24', 'supports'],
    ['2026-11-25', 'supports'],
    ['2026-11-26', 'bars'],
  ])('vouched for through 25 November, on %s', (on, effect) => {
    const line = recent65_83(holding(['airframe'], { recentExperienceThrough: known('2026-11-25') }), on);
    expect(short(line)).toBe(`${effect} 14cfr65.83`);
  });
  it('not known: asked for', () => {
    const line = recent65_83(holding(['airframe'], { recentExperienceThrough: unknown('experience') }), ON);
    expect([short(line), line.missing]).toEqual(['bars 14cfr65.83', 'experience']);
  });
});

describe('65.85(a), 65.87(a): the rating for the part', () => {
  const OF_PART = {
    airframe: ['airframe', '14cfr65.85(a)'],
    powerplant: ['powerplant', '14cfr65.87(a)'],
    propeller: ['powerplant', '14cfr65.87(a)'],
    instrument: ['airframe', '14cfr65.85(a)'],
    avionics: ['airframe', '14cfr65.85(a)'],
  } as const;

  it.each(PARTS_OF_AIRCRAFT)('%s', (part) => {
    const [needed, cite] = OF_PART[part];
    for (const ratings of [[], ['airframe'], ['powerplant'], ['airframe', 'powerplant']] as const) {
      const has = (ratings as readonly string[]).includes(needed);
      expect(short(rated65_85and65_87(holding(ratings), part))).toBe(`${has ? 'supports' : 'bars'} ${cite}`);
      // Major repairs: neither rating approves one.
      const major = majorNotApproved65_85and65_87(holding(ratings), work({ part, kind: 'major' }));
      expect(short(major)).toBe(`bars ${cite}`);
    }
  });
  it('a certificate without a rating is not said to carry one', () => {
    expect(rated65_85and65_87(holding([]), 'airframe').because).toMatch(/no rating/);
    expect(rated65_85and65_87(holding(['powerplant']), 'airframe').because).toMatch(/powerplant only/);
  });
});

describe('65.92(a): expiry, and both ratings held', () => {
  it.each([
    ['2027-03-30', 'supports'],
    ['2027-03-31', 'supports'],
    ['2027-04-01', 'bars'],
  ])('to 31 March 2027, on %s', (on, effect) => {
    expect(short(expires65_92a(authorization(), on))).toBe(`${effect} 14cfr65.92(a)`);
  });
  it.each([
    // Every odd year and no even one.
    ['2027-03-31', 'supports'],
    ['2028-03-31', 'bars'],
    ['2029-03-31', 'supports'],
    // The day before and after, and another month.
    ['2027-03-30', 'bars'],
    ['2027-04-01', 'bars'],
    ['2027-12-31', 'bars'],
    // No dates at all. Each would sort after every day of this century and never expire.
    ['12027-03-31', 'bars'],
    ['through 2027-03-31', 'bars'],
    ['2027-03-31 or so', 'bars'],
    ['2027-03-311', 'bars'],
  ])('a stored expiry of %s, in January 2027', (expiresOn, effect) => {
    const line = expires65_92a(authorization({ expiresOn }), '2027-01-05');
    expect(short(line)).toBe(`${effect} 14cfr65.92(a)`);
  });

  it.each([
    ['both', holding(['airframe', 'powerplant']), 'supports'],
    ['airframe alone', holding(['airframe']), 'bars'],
    ['powerplant alone', holding(['powerplant']), 'bars'],
    ['no rating', holding([]), 'bars'],
    ['no mechanic certificate', null, 'bars'],
  ] as const)('%s', (_words, held, effect) => {
    expect(short(bothRatings65_92a(person({ mechanic: held })))).toBe(`${effect} 14cfr65.92(a)`);
  });
});

describe('65.93(c): activity by 31 March of the first, even year', () => {
  const met = { yes: known(true), no: known(false), open: unknown('first-year activity') } as const;
  it.each([
    ['2026-03-30', 'no', 'supports', undefined],
    ['2026-03-31', 'no', 'supports', undefined],
    ['2026-04-01', 'no', 'bars', undefined],
    ['2026-03-31', 'open', 'supports', undefined],
    ['2026-04-01', 'open', 'bars', 'first-year activity'],
    ['2026-04-01', 'yes', 'supports', undefined],
    ['2027-03-31', 'yes', 'supports', undefined],
  ] as const)('on %s, met: %s', (on, activity, effect, missing) => {
    const line = firstYear65_93c(authorization({ firstYearActivityMet: met[activity] }), on);
    expect([line.effect, line.cite, line.missing]).toEqual([effect, '14cfr65.93(c)', missing]);
  });
});

describe('65.95(a): what an inspection authorization adds', () => {
  const added = (kind: WorkKind, part: Parameters<typeof work>[0]['part']) =>
    privileges65_95a(work({ kind, ...(part && { part }) })).map(short);

  it.each(PARTS_OF_AIRCRAFT)('(2) an annual, whatever part is named: %s', (part) => {
    expect(added('annual', part)).toEqual(['supports 14cfr65.95(a)(2)']);
  });
  it.each(['airframe', 'powerplant', 'avionics'] as const)(
    '(1) a major repair, on approved data and its form: %s',
    (part) => {
      expect(added('major', part)).toEqual(['supports 14cfr65.95(a)(1)', 'limits 14cfr43appB(a)']);
    },
  );
  it.each(['propeller', 'instrument'] as const)('not a major repair of: %s (strict, 65.81(a))', (part) => {
    const lines = privileges65_95a(work({ kind: 'major', part }));
    expect(lines.map(short)).toEqual(['bars 14cfr65.95(a)(1)']);
    expect(lines[0]?.strictReading).toContain('65.81(a)');
  });
  it.each(WORK_KINDS.filter((kind) => kind !== 'annual' && kind !== 'major'))('nothing to: %s', (kind) => {
    for (const part of PARTS_OF_AIRCRAFT) expect(added(kind, part)).toEqual([]);
  });
});
