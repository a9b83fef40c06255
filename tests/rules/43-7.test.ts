/**
 * 14 CFR 43.7: who may approve return to service. Sources: 43.7(c) and (f), eCFR of 24 August 2026; 91.411(b)(2) and 91.413(c)(1) for
 * the tests they name; the names of ratings are those of 145.59 (from memory). How part 145 joins ratings to inspections was not looked
 * up: those rows are our strict reading.
 */
import { describe, expect, it } from 'vitest';
import { known, unknown } from '@/lib/rules/facts';
import { PARTS_OF_AIRCRAFT } from '@/lib/rules/jasc';
import type { PilotGrade } from '@/lib/rules/operations';
import {
  authorisedByStation,
  isPrivateOrHigher,
  pilotApproves43_7f,
  repairStation43_7c,
  stationRatingsNeeded,
} from '@/lib/rules/part-43/43-7-who-may-approve';
import type { SignerFacts } from '@/lib/rules/people';
import type { Line } from '@/lib/rules/verdict';
import { WORK_KINDS, type WorkToSign } from '@/lib/rules/work-to-sign';
import { work } from '../fixtures/signers';

type Station = NonNullable<SignerFacts['repairStation']>;
type Rating = Station['ratings'][number];

const RATINGS: readonly Rating[] = ['airframe', 'powerplant', 'propeller', 'radio', 'instrument'];

const shop = (ratings: readonly Rating[], change: Partial<Station> = {}): Station => ({
  number: 'X4',
  ratings,
  authorisedToSign: known(true),
  ...change,
});
const short = (lines: readonly Line[]) => lines.map(({ effect, cite }) => `${effect} ${cite}`);

type Sets = readonly (readonly Rating[])[];
const own = (rating: Rating): Sets => [[rating]];
const eitherOr = (rating: Rating): Sets => [[rating], ['airframe']];
const BOTH: Sets = [['airframe', 'powerplant']];
const NOTHING_WILL_DO: Sets = [];

/** Every part under every kind of work: [kind, swap only, airframe, powerplant, propeller, instrument, avionics]. */
const TABLE: readonly (readonly [WorkToSign['kind'], boolean, Sets, Sets, Sets, Sets, Sets])[] = [
  // A repair asks for the rating of the part; inside a radio that is the radio rating (145.59, from memory).
  [
    'preventive',
    false,
    own('airframe'),
    own('powerplant'),
    own('propeller'),
    own('instrument'),
    own('radio'),
  ],
  ['minor', false, own('airframe'), own('powerplant'), own('propeller'), own('instrument'), own('radio')],
  ['major', false, own('airframe'), own('powerplant'), own('propeller'), own('instrument'), own('radio')],
  // A unit out and in is airframe work too, as it is for a mechanic (65.85(a)); a major repair never is. Our reading of part 145.
  [
    'preventive',
    true,
    own('airframe'),
    own('powerplant'),
    own('propeller'),
    eitherOr('instrument'),
    eitherOr('radio'),
  ],
  [
    'minor',
    true,
    own('airframe'),
    own('powerplant'),
    own('propeller'),
    eitherOr('instrument'),
    eitherOr('radio'),
  ],
  ['major', true, own('airframe'), own('powerplant'), own('propeller'), own('instrument'), own('radio')],
  // An annual is of the whole aircraft, whatever part is named (strict reading).
  ['annual', false, BOTH, BOTH, BOTH, BOTH, BOTH],
  // The half that is signed: engine and propeller, or all the rest (strict reading, after 65.85(a) and 65.87(a)).
  [
    'hundred-hour',
    false,
    own('airframe'),
    own('powerplant'),
    own('powerplant'),
    own('airframe'),
    own('airframe'),
  ],
  // 91.411(b)(2): instrument or airframe.
  [
    'static-test',
    false,
    eitherOr('instrument'),
    eitherOr('instrument'),
    eitherOr('instrument'),
    eitherOr('instrument'),
    eitherOr('instrument'),
  ],
  // 91.411(b)(2) for the altimeter, 91.413(c)(1) for the transponder; on anything else it is not said which was tested.
  [
    'altimeter-transponder-test',
    false,
    NOTHING_WILL_DO,
    NOTHING_WILL_DO,
    NOTHING_WILL_DO,
    eitherOr('instrument'),
    own('radio'),
  ],
];
const CASES = TABLE.flatMap(([kind, swapOnly, airframe, powerplant, propeller, instrument, avionics]) => {
  const sets = { airframe, powerplant, propeller, instrument, avionics };
  return PARTS_OF_AIRCRAFT.map((part) => ({ kind, swapOnly, part, sets: sets[part] }));
});

/** Every choice of ratings out of the five. */
const CHOICES = Array.from({ length: 2 ** RATINGS.length }, (_, number) =>
  RATINGS.filter((_rating, index) => Math.floor(number / 2 ** index) % 2 === 1),
);

describe('43.7(c): the ratings a repair station needs', () => {
  it('no kind of work is left out of the table', () => {
    expect(new Set(TABLE.map(([kind]) => kind))).toEqual(new Set(WORK_KINDS));
  });

  it.each(CASES)('$kind, $part, swap only: $swapOnly', ({ kind, swapOnly, part, sets }) => {
    expect(stationRatingsNeeded(work({ kind, swapOnly, part }))).toEqual(sets);
  });

  it.each(CASES)(
    'approves with those and with no others: $kind, $part, swap only: $swapOnly',
    ({ kind, swapOnly, part, sets }) => {
      for (const ratings of CHOICES) {
        const enough = sets.some((set) => set.every((rating) => ratings.includes(rating)));
        const barred = repairStation43_7c(shop(ratings), work({ kind, swapOnly, part })).filter(
          ({ effect }) => effect === 'bars',
        );
        expect([ratings, short(barred)]).toEqual([ratings, enough ? [] : ['bars 14cfr43.7(c)']]);
      }
    },
  );
});

describe('43.7(c): what is said of a repair station', () => {
  it('rated: the rating, the class that our file does not hold, and the authority', () => {
    expect(short(repairStation43_7c(shop(['airframe']), work({})))).toEqual([
      'supports 14cfr43.7(c)',
      'notes 14cfr43.7(c)',
      'supports 14cfr43.7(c)',
    ]);
  });
  it.each([
    ['not rated', ['radio'] as const, work({})],
    ['no rating at all', [] as const, work({})],
    ['which test is not said', RATINGS, work({ kind: 'altimeter-transponder-test' })],
  ])('%s: barred, and the authority makes up for nothing', (_words, ratings, asked) => {
    expect(short(repairStation43_7c(shop(ratings), asked))).toEqual([
      'bars 14cfr43.7(c)',
      'supports 14cfr43.7(c)',
    ]);
  });
  it('asks which test it was, where that is not said', () => {
    const [line] = repairStation43_7c(shop(RATINGS), work({ kind: 'altimeter-transponder-test' }));
    expect(line?.because).toMatch(/altimeter.*transponder/);
  });
  it('a station without ratings is told so', () => {
    expect(repairStation43_7c(shop([]), work({}))[0]?.because).toMatch(/no rating/);
    expect(repairStation43_7c(shop(['radio', 'propeller']), work({}))[0]?.because).toMatch(
      /needs.* airframe.*carries radio, propeller/,
    );
  });

  // Unknown is never go: an authority nobody has entered is asked for by its name.
  it.each([
    ['authorised', known(true), 'supports', undefined],
    ['not authorised', known(false), 'bars', undefined],
    ['not known', unknown('the authority to sign'), 'bars', 'the authority to sign'],
  ] as const)('authority to sign: %s', (_words, authorisedToSign, effect, missing) => {
    const station = shop(RATINGS, { authorisedToSign });
    const line = authorisedByStation(station);
    expect([line.effect, line.cite, line.missing]).toEqual([effect, '14cfr43.7(c)', missing]);
    expect(repairStation43_7c(station, work({})).at(-1)).toEqual(line);
  });
});

describe('43.7(f): private or higher', () => {
  it.each([
    ['student', false],
    ['sport', false],
    ['recreational', false],
    ['private', true],
    ['commercial', true],
    ['airline-transport', true],
  ] as const satisfies readonly (readonly [PilotGrade, boolean])[])('%s: %s', (grade, enough) => {
    expect(isPrivateOrHigher(grade)).toBe(enough);
    const { effect, cite } = pilotApproves43_7f(grade);
    expect([effect, cite]).toEqual([enough ? 'supports' : 'bars', '14cfr43.7(f)']);
  });
});
