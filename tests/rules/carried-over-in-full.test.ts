/**
 * A paper's person as the rules see them, and the severity that counts, value by value. Sources: 14 CFR 91.213(d)(4), 65.83, 91.7(a) as
 * lib/rules/law cites them; that a paper may be stricter and never looser is our own design.
 */
import { describe, expect, test } from 'vitest';
import type { DeferralFacts, DiscrepancyFacts, EquipmentFacts, Severity } from '@/lib/rules/aircraft';
import {
  canBeDeferredKind,
  judgeDeterminerOnPaper,
  severityCarriedOver,
  signerOnPaper,
  type DeterminerOnPaper,
} from '@/lib/rules/carried-over';
import { whyCarriedOverDoesNotCount } from '@/lib/rules/carried-over-counts';
import { barsToEnding } from '@/lib/rules/end-of-requirement';
import { factOf, known, unknown } from '@/lib/rules/facts';
import { deferralOf, trainer, withBroken, melItemOf } from '../fixtures/aircraft';

const RATING = 'airplane-single-engine-land';
const ON = '2026-11-03';
const PAPER: DeterminerOnPaper = {
  name: 'Otto Birkmoor',
  certificate: 'mechanic',
  number: '1234567',
  ratings: ['airframe'],
  recent: 'yes',
  authorised: 'yes',
  grade: 'private',
  rated: 'yes',
};
const NOBODY = {
  name: 'Otto Birkmoor',
  pilotGrade: null,
  pilotRatedForAircraft: false,
  mechanicRatings: [],
  repairStation: false,
};
const signer = (change: Partial<DeterminerOnPaper>) => signerOnPaper({ ...PAPER, ...change }, RATING, ON);
const judge = (change: Partial<DeterminerOnPaper>, on: string | null = ON) =>
  judgeDeterminerOnPaper({ ...PAPER, ...change }, RATING, on);

describe('the person of the paper', () => {
  test('holds the one certificate that the paper names, and nothing that only we could give', () => {
    const held = (certificate: DeterminerOnPaper['certificate']) => {
      const { pilot, mechanic, repairStation } = signer({ certificate });
      return [pilot, mechanic, repairStation].map((one) => one !== null);
    };
    expect(held('pilot')).toEqual([true, false, false]);
    expect(held('mechanic')).toEqual([false, true, false]);
    expect(held('repair-station')).toEqual([false, false, true]);
    expect(held('other')).toEqual([false, false, false]);
    expect(held('not-known')).toEqual([false, false, false]);
    expect(signer({})).toMatchObject({
      inspectionAuthorization: null,
      namedForPreventiveMaintenance: false,
      leftOn: null,
    });
  });

  test('a pilot: rated only where the paper says so, and none without a grade', () => {
    const pilot = (change: Partial<DeterminerOnPaper>) => signer({ certificate: 'pilot', ...change }).pilot;
    expect(pilot({})).toEqual({ number: '1234567', grade: 'private', ratings: [RATING] });
    expect(pilot({ rated: 'no' })?.ratings).toEqual([]);
    expect(pilot({ rated: 'not-known' })?.ratings).toEqual([]);
    expect(pilot({ grade: null })).toBeNull();
  });

  test('a mechanic: recent experience through that day, through none, or not known', () => {
    const recent = (answer: DeterminerOnPaper['recent']) =>
      signer({ recent: answer }).mechanic?.recentExperienceThrough;
    expect(recent('yes')).toEqual(known(ON));
    expect(recent('no')).toEqual(known('0001-01-01'));
    expect(recent('not-known')).toEqual(
      unknown('whether Otto Birkmoor had recent experience on that day (65.83)'),
    );
  });

  test('a repair station: the one question answers for its rating and for the person', () => {
    const station = (authorised: DeterminerOnPaper['authorised']) =>
      signer({ certificate: 'repair-station', authorised }).repairStation;
    expect(station('yes')).toEqual({
      number: '1234567',
      ratings: ['airframe'],
      authorisedToSign: known(true),
    });
    expect(station('no')?.authorisedToSign).toEqual(known(false));
    expect(station('not-known')?.authorisedToSign.known).toBe(false);
  });
});

describe('the determination on paper', () => {
  test.each([
    [{ name: '' }, 'who determined that it is no hazard'],
    [{ certificate: 'not-known' }, 'which certificate Otto Birkmoor held'],
    [{ number: '' }, 'the certificate number of Otto Birkmoor'],
    [{ certificate: 'pilot', grade: null }, 'the grade of pilot certificate of Otto Birkmoor'],
    [{ certificate: 'pilot', rated: 'not-known' }, 'whether Otto Birkmoor was rated for this aircraft'],
  ] as const)('%j: refused, and the missing fact named', (change, missing) => {
    expect(judge(change)).toEqual({
      determiner: { ...NOBODY, name: 'name' in change ? '' : 'Otto Birkmoor' },
      allowed: false,
      missing,
      lines: [],
      mayPlacard: false,
    });
  });

  test('without its day: refused', () => {
    expect(judge({}, null).missing).toBe('when Otto Birkmoor determined that it is no hazard');
  });

  test.each([
    // What the paper need not say of a person of another trade is not asked.
    [{ grade: null, rated: 'not-known' }, { mechanicRatings: ['airframe'] }, true],
    [{ certificate: 'pilot' }, { pilotGrade: 'private', pilotRatedForAircraft: true }, false],
    [{ certificate: 'repair-station' }, { repairStation: true }, true],
  ] as const)('%j counts', (change, determiner, _placard) => {
    const judged = judge(change);
    expect(judged).toMatchObject({ allowed: true, missing: null, determiner });
    expect(judged.lines.length).toBeGreaterThan(0);
  });

  // 91.213(d)(4): a student pilot certificate carries no rating.
  test.each([
    [{ certificate: 'pilot', rated: 'no' }],
    [{ certificate: 'pilot', grade: 'student' }],
    [{ certificate: 'other' }],
    [{ certificate: 'repair-station', authorised: 'no' }],
    [{ recent: 'no' }],
  ] as const)('%j is no: nothing is missing, and the person carries nothing', (change) => {
    const judged = judge(change);
    expect(judged).toMatchObject({ allowed: false, missing: null, determiner: NOBODY, mayPlacard: false });
    expect(judged.lines.some(({ effect }) => effect === 'bars')).toBe(true);
  });
});

describe('severity', () => {
  const ORDER: readonly Severity[] = ['grounding', 'limiting', 'watch', 'note'];
  test.each(ORDER.flatMap((paper) => ORDER.map((here) => [paper, here] as const)))(
    '%s on paper, %s here: the stricter',
    (paper, here) => {
      expect(severityCarriedOver(paper, here)).toBe(ORDER.find((one) => one === paper || one === here));
    },
  );

  test('undecided on either side stays undecided, unless the other grounds', () => {
    for (const one of ['limiting', 'watch', 'note', null] as const) {
      expect(severityCarriedOver(one, null)).toBeNull();
      expect(severityCarriedOver(null, one)).toBeNull();
    }
    expect(severityCarriedOver('grounding', null)).toBe('grounding');
    expect(severityCarriedOver(null, 'grounding')).toBe('grounding');
  });

  test('only what does not work can be deferred', () => {
    expect(canBeDeferredKind('inoperative')).toBe(true);
    for (const kind of ['damage', 'wear', 'leak', 'cosmetic', 'document', 'servicing'] as const)
      expect(canBeDeferredKind(kind)).toBe(false);
  });
});

// 91.409, 91.411, 91.413, 91.207, 91.171: while the rule stands, it stays. Our strict reading: no paragraph says when a row may go.
describe('ending a requirement', () => {
  const row = (
    fn: 'altimeter' | 'altitude-reporting' | 'transponder' | 'elt',
    installed: number,
    confirmed: EquipmentFacts['confirmed'] = known(true),
  ) => ({
    function: fn,
    installed,
    name: fn,
    confirmed,
  });

  test.each(['annual', 'hundred-hour'] as const)('%s never ends', (kind) => {
    expect(barsToEnding(kind, [])).toEqual([
      expect.objectContaining({
        effect: 'bars',
        because: 'The regulation asks for it as long as the aircraft flies.',
      }),
    ]);
  });

  test.each(['directive', 'life-limit', 'maker-interval'] as const)(
    '%s ends with a person’s reason',
    (kind) => {
      expect(barsToEnding(kind, [row('transponder', 1)])).toEqual([]);
    },
  );

  test('a test ends when every row of what is tested is gone, and that is confirmed', () => {
    const bars = (...rows: ReturnType<typeof row>[]) => barsToEnding('static-and-altimeter', rows);
    expect(bars()).toMatchObject([
      { effect: 'bars', because: expect.stringContaining('no line for what is tested') },
    ]);
    expect(bars(row('transponder', 0))).toHaveLength(1);
    expect(bars(row('altimeter', 1), row('altitude-reporting', 0))).toMatchObject([
      { effect: 'bars', because: 'altimeter is still installed. It can be ended when it is not.' },
    ]);
    expect(bars(row('altimeter', 0), row('altitude-reporting', 0))).toEqual([]);
    expect(bars(row('altimeter', 0), row('transponder', 1))).toEqual([]);
    expect(bars(row('altimeter', 0, unknown('whether it is gone')))).toMatchObject([
      { effect: 'bars', missing: 'whether it is gone' },
    ]);
    expect(bars(row('altimeter', 1))[0]?.strictReading).toMatch(/while the rule stands/);
  });
});

// 91.213(d)(4), (a)(5), 91.405(c): by the very steps that are asked of a deferral begun here; placard and record are settled later.
describe('a deferral carried over that does not count', () => {
  const why = (
    deferral: Partial<DeferralFacts> | null,
    plane = trainer(),
    change: Partial<DiscrepancyFacts> = {},
  ) => {
    const aircraft = withBroken(plane, 'cabin-heat', {
      deferral: deferral === null ? null : deferralOf(deferral),
      ...change,
    });
    return whyCarriedOverDoesNotCount(aircraft, aircraft.discrepancies[0]!).map(
      ({ effect, cite }) => `${effect} ${cite.replace('14cfr', '')}`,
    );
  };
  const listed = (items: 'with' | 'without') =>
    trainer({
      mel: known({
        reference: 'MEL-1',
        letterAboard: known(true),
        enforceCategories: true,
        extension: null,
        items: items === 'without' ? [] : [melItemOf({ operatingProcedure: 'Valve off.' })],
      }),
    });

  test('one in order counts, and so does one whose placard or record is still owed', () => {
    expect(why({})).toEqual([]);
    expect(why({ placardPlaced: false })).toEqual([]);
    expect(why({ method: 'removed', maintenanceRecordSigned: false })).toEqual([]);
  });

  test('one that nobody determined does not, nor one on the wrong way', () => {
    expect(why({ determination: unknown('who') })).toEqual(['bars 91.213(d)(4)']);
    expect(why({ basis: 'mel' })).toEqual(['bars 91.213(a)(1)']);
    expect(why({}, listed('with'))).toEqual(['bars 91.213(a)(5)', 'bars 91.213(a)(5)']);
    expect(why({ basis: 'mel', melItemId: 'mel-heat' }, listed('with'))).toEqual(['bars 91.213(a)(5)']);
    expect(why({ basis: 'mel', melItemId: 'mel-heat', melProceduresDone: true }, listed('with'))).toEqual([]);
    expect(why({ basis: 'mel' }, listed('without'))).toEqual([]);
  });

  test('nothing is said where the question does not arise: no deferral, no item, or closed both ways', () => {
    expect(why(null)).toEqual([]);
    expect(why({ determination: unknown('who') }, trainer(), { equipmentId: null })).toEqual([]);
    expect(why({ determination: unknown('who') }, trainer({ mel: unknown('a list') }))).toEqual([]);
  });
});

test('a column that holds nothing is a fact that nobody has established', () => {
  expect(factOf(0, 'x')).toEqual(known(0));
  expect(factOf('', 'x')).toEqual(known(''));
  expect(factOf(false, 'x')).toEqual(known(false));
  expect(factOf(null, 'what it is')).toEqual(unknown('what it is'));
  expect(factOf(undefined, 'what it is')).toEqual({ known: false, missing: 'what it is' });
});
