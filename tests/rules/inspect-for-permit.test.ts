/**
 * Who inspects for a special flight permit. 14 CFR 21.199(b) names nobody; the rows are our strict reading, with the ratings of
 * 65.85(a), 65.87(a), the recency of 65.83 and the authorization of 43.7(c).
 */
import { describe, expect, it } from 'vitest';
import { known, unknown } from '@/lib/rules/facts';
import { mayInspectForPermit } from '@/lib/rules/inspect-for-permit';
import type { PartOfAircraft } from '@/lib/rules/jasc';
import type { SignerFacts } from '@/lib/rules/people';
import { person } from '../fixtures/signers';

const TODAY = '2026-11-25';
const nobody = person();
const mechanic = (ratings: ('airframe' | 'powerplant')[], through = '2027-06-30'): SignerFacts => ({
  ...nobody,
  mechanic: { number: 'M-1', ratings, recentExperienceThrough: known(through) },
});
const station = (authorised: boolean): SignerFacts => ({
  ...nobody,
  repairStation: { number: 'RS-1', ratings: ['airframe'], authorisedToSign: known(authorised) },
});
const pilot: SignerFacts = {
  ...nobody,
  pilot: { number: 'P-1', grade: 'commercial', ratings: ['airplane-single-engine-land'] },
};
const wing = known<PartOfAircraft>('airframe');
const engine = known<PartOfAircraft>('powerplant');
const propeller = known<PartOfAircraft>('propeller');
const annual = unknown('the part that Annual inspection concerns');
const both = mechanic(['airframe', 'powerplant']);

describe('who may inspect for a permit', () => {
  it.each([
    ['airframe rating, airframe covered', mechanic(['airframe']), [wing], true],
    ['airframe rating, propeller covered', mechanic(['airframe']), [propeller], false],
    ['powerplant rating, engine and propeller covered', mechanic(['powerplant']), [engine, propeller], true],
    ['airframe rating, two parts covered', mechanic(['airframe']), [wing, engine], false],
    ['both ratings, two parts covered', both, [wing, engine], true],
    [
      'one rating, an inspection covered: its part is the whole aircraft',
      mechanic(['airframe']),
      [annual],
      false,
    ],
    ['one rating, a part and an inspection covered', mechanic(['airframe']), [wing, annual], false],
    ['both ratings, an inspection covered', both, [annual], true],
    ['no rating', mechanic([]), [wing], false],
    ['a repair station, authorised', station(true), [annual], true],
    ['a repair station, not authorised', station(false), [annual], false],
    ['a pilot', pilot, [wing], false],
    ['no certificate', nobody, [wing], false],
    ['left the school', { ...both, leftOn: '2026-10-31' }, [wing], false],
  ] as const)('%s: %#', (_words, signer, parts, allowed) => {
    const ruling = mayInspectForPermit(signer, parts, TODAY);
    expect(ruling.allowed).toBe(allowed);
    expect(ruling.under !== null).toBe(allowed);
    if (!allowed) expect(ruling.lines.some(({ effect }) => effect === 'bars')).toBe(true);
  });

  // 65.83: the last day vouched for is good.
  it.each([
    ['2026-11-24', false],
    ['2026-11-25', true],
    ['2026-11-26', true],
  ])('recent experience through %s: %s', (through, allowed) => {
    expect(mayInspectForPermit(mechanic(['airframe'], through), [wing], TODAY).allowed).toBe(allowed);
  });
});
