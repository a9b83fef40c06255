import { describe, expect, it } from 'vitest';
import { mayApproveReturnToService, rulingsByCapacity, whoCanSentence } from '../../lib/rules/who-may-sign';
import {
  mayDetermineNoHazard,
  mayFindWithinLimits,
  mayFlyCheckFlight,
  mayPlacePlacard,
  mayRecordServicing,
  toDeterminer,
} from '../../lib/rules/who-may-determine';
import { known, unknown } from '../../lib/rules/facts';
import { mayInspectForPermit } from '../../lib/rules/inspect-for-permit';
import { inspector, mechanic, ON, person, pilot, RATING, station, work } from '../fixtures/signers';

const both = (through?: string) => mechanic(['airframe', 'powerplant'], through);
const cites = (ruling: { lines: readonly { cite: string; effect: string }[] }) =>
  ruling.lines.filter((line) => line.effect === 'bars').map((line) => line.cite);

describe('dates', () => {
  // 65.83: the last day vouched for is good
  it.each([
    ['2026-11-24', true],
    ['2026-11-25', true],
    ['2026-11-26', false],
  ])('recent experience through 25 November, signing on %s', (on, allowed) => {
    expect(mayApproveReturnToService(both('2026-11-25'), work({}), on).allowed).toBe(allowed);
  });

  it('unknown recent experience bars and names itself (65.83)', () => {
    const signer = person({
      mechanic: {
        number: 'X2',
        ratings: ['airframe'],
        recentExperienceThrough: unknown('six months’ experience in the last 24'),
      },
    });
    const ruling = mayApproveReturnToService(signer, work({}), ON);
    expect(ruling.allowed).toBe(false);
    expect(ruling.lines.find((line) => line.cite === '14cfr65.83')?.missing).toBe(
      'six months’ experience in the last 24',
    );
  });

  // The day the certificate names is good (what a certificate says of itself; no paragraph looked up, strict after it).
  it.each([
    ['2026-11-24', true],
    ['2026-11-25', true],
    ['2026-11-26', false],
  ])('pilot and station certificates good through 25 November, every act on %s', (on, allowed) => {
    const through = '2026-11-25';
    const flier = pilot('private');
    const late = person({ ...flier, pilot: flier.pilot && { ...flier.pilot, expiresOn: through } });
    const shop = station();
    const closed = person({
      repairStation: shop.repairStation && { ...shop.repairStation, expiresOn: through },
    });
    const preventive = work({ kind: 'preventive', preventiveItem: 1 });
    const without = mayApproveReturnToService(flier, preventive, on).allowed;
    const acts = [
      [mayDetermineNoHazard(late, RATING, on), true],
      [mayDetermineNoHazard(closed, RATING, on), true],
      [mayFindWithinLimits(closed, 'airframe', on), true],
      [mayFlyCheckFlight(late, RATING, on), true],
      [mayRecordServicing(late, on), true],
      [mayRecordServicing(closed, on), true],
      [mayPlacePlacard(late, on), true],
      [mayPlacePlacard(closed, on), true],
      [mayApproveReturnToService(closed, work({}), on), true],
      [mayApproveReturnToService(late, preventive, on), without],
      [mayInspectForPermit(closed, [known('airframe')], on), true],
    ] as const;
    expect(acts.map(([ruling]) => ruling.allowed)).toEqual(acts.map(([, usually]) => usually && allowed));
  });

  // 65.92(a): expires on 31 March of an odd year, the day itself good
  it.each([
    ['2027-03-30', true],
    ['2027-03-31', true],
    ['2027-04-01', false],
  ])('authorization to 31 March 2027, annual signed on %s', (on, allowed) => {
    expect(mayApproveReturnToService(inspector('2027-03-31'), work({ kind: 'annual' }), on).allowed).toBe(
      allowed,
    );
  });

  it.each(['2026-03-31', '2027-03-30', '2027-12-31', 'soon'])(
    'does not believe an expiry of %s (65.92(a))',
    (expiry) => {
      const ruling = mayApproveReturnToService(inspector(expiry), work({ kind: 'annual' }), '2026-01-05');
      expect(ruling.allowed).toBe(false);
      expect(cites(ruling)).toContain('14cfr65.92(a)');
    },
  );

  // 65.93(c): no activity by 31 March of the even year, privileges stop after that date
  it.each([
    ['2026-03-30', false, true],
    ['2026-03-31', false, true],
    ['2026-04-01', false, false],
    ['2026-04-01', true, true],
    ['2026-04-01', null, false],
    ['2026-03-31', null, true],
  ])('first-year activity: on %s, met %s', (on, met, allowed) => {
    expect(
      mayApproveReturnToService(inspector('2027-03-31', met), work({ kind: 'annual' }), on).allowed,
    ).toBe(allowed);
  });

  // AC 120-78B (memory): access is revoked on leaving; our rule: from that day on
  it.each([
    ['2026-11-24', true],
    ['2026-11-25', false],
    ['2026-11-26', false],
  ])('left on 25 November, signing on %s', (on, allowed) => {
    const gone = { ...both(), leftOn: '2026-11-25' };
    const goneInspector = { ...inspector(), leftOn: '2026-11-25' };
    const gonePilot = { ...pilot('private'), leftOn: '2026-11-25' };
    expect(mayApproveReturnToService(gone, work({}), on).allowed).toBe(allowed);
    expect(mayApproveReturnToService(goneInspector, work({ kind: 'annual' }), on).allowed).toBe(allowed);
    expect(mayFindWithinLimits(gone, 'airframe', on).allowed).toBe(allowed);
    expect(mayDetermineNoHazard(gonePilot, RATING, on).allowed).toBe(allowed);
    expect(mayFlyCheckFlight(gonePilot, RATING, on).allowed).toBe(allowed);
    expect(mayRecordServicing(gonePilot, on).allowed).toBe(allowed);
    expect(mayPlacePlacard(gonePilot, on).allowed).toBe(allowed);
  });
});

describe('mechanics and inspectors', () => {
  it('refuses a propeller to an airframe mechanic in plain words (65.87(a))', () => {
    const ruling = mayApproveReturnToService(mechanic(['airframe']), work({ part: 'propeller' }), ON);
    expect(ruling.lines.map((line) => line.because)).toContain(
      'A propeller is powerplant work. Your certificate carries airframe only.',
    );
    expect(whoCanSentence(work({ part: 'propeller' }))).toBe(
      'Who can: a mechanic with powerplant rating; a repair station rated for propellers.',
    );
  });

  it('an authorization without both ratings counts for nothing (65.92(a))', () => {
    const half = { ...inspector(), mechanic: mechanic(['airframe']).mechanic };
    const none = { ...inspector(), mechanic: null };
    for (const signer of [half, none]) {
      const ruling = mayApproveReturnToService(signer, work({ kind: 'annual' }), ON);
      expect(ruling.allowed).toBe(false);
      expect(cites(ruling)).toContain('14cfr65.92(a)');
    }
  });

  it('an inspector without recent experience does not sign (65.83)', () => {
    const stale = { ...inspector(), mechanic: both('2026-01-01').mechanic };
    expect(cites(mayApproveReturnToService(stale, work({ kind: 'annual' }), ON))).toContain('14cfr65.83');
  });

  it('a required inspection is not done by a supervised helper (43.3(d)); other work may be', () => {
    const helped = { performedBySigner: false } as const;
    expect(cites(mayApproveReturnToService(both(), work({ kind: 'hundred-hour', ...helped }), ON))).toContain(
      '14cfr43.3(d)',
    );
    expect(cites(mayApproveReturnToService(inspector(), work({ kind: 'annual', ...helped }), ON))).toContain(
      '14cfr43.3(d)',
    );
    expect(mayApproveReturnToService(both(), work(helped), ON).allowed).toBe(true);
  });

  it('a major approval limits to approved data and the form (43 App B(a))', () => {
    const ruling = mayApproveReturnToService(inspector(), work({ kind: 'major' }), ON);
    expect(ruling.allowed).toBe(true);
    expect(ruling.lines.some((line) => line.effect === 'limits' && line.cite === '14cfr43appB(a)')).toBe(
      true,
    );
    expect(ruling.under?.capacity).toBe('inspection-authorization');
  });

  it('preventive work needs its item, for mechanics too (App A(c))', () => {
    const ruling = mayApproveReturnToService(both(), work({ kind: 'preventive' }), ON);
    expect(cites(ruling)).toEqual(['14cfr43appA(c)']);
  });
});

describe('pilots and preventive maintenance (43.3(g), 43.7(f), App A(c))', () => {
  const tyre = work({ kind: 'preventive', preventiveItem: 1 });
  it.each([
    ['student', false],
    ['sport', false],
    ['recreational', false],
    ['private', true],
    ['commercial', true],
    ['airline-transport', true],
  ] as const)('%s pilot', (grade, allowed) => {
    expect(mayApproveReturnToService(pilot(grade), tyre, ON).allowed).toBe(allowed);
  });

  it('only when the operator has named the pilot (strict reading)', () => {
    const ruling = mayApproveReturnToService(pilot('private', false), tyre, ON);
    expect(ruling.allowed).toBe(false);
    expect(ruling.lines.find((line) => line.cite === '14cfr43.3(g)')?.strictReading).toBeTruthy();
  });

  it('only work done with their own hands', () => {
    expect(
      mayApproveReturnToService(pilot('private'), { ...tyre, performedBySigner: false }, ON).allowed,
    ).toBe(false);
  });

  it.each([
    [0, false],
    [1, true],
    [31, false], // radios only
    [32, false], // removed from the list
    [1.5, false],
  ])('item %s on the airframe', (item, allowed) => {
    const asked = work({ kind: 'preventive', preventiveItem: item });
    expect(mayApproveReturnToService(pilot('private'), asked, ON).allowed).toBe(allowed);
  });

  it.each([
    ['item 31 on a radio, out and in', { part: 'avionics', preventiveItem: 31, swapOnly: true }, true],
    ['item 31 inside a radio', { part: 'avionics', preventiveItem: 31 }, false],
    ['item 17 on a radio', { part: 'avionics', preventiveItem: 17, swapOnly: true }, false],
    ['item 5 on a propeller', { part: 'propeller', preventiveItem: 5 }, false],
    ['item 6 on an instrument', { part: 'instrument', preventiveItem: 6 }, false],
    ['balloon burner on an airplane', { preventiveItem: 25 }, false],
    ['balloon burner on a balloon', { preventiveItem: 25, aircraftCategory: 'lighter-than-air' }, true],
    ['primary category programme', { preventiveItem: 30 }, false],
  ] as const)('%s', (_title, facts, allowed) => {
    const asked = work({ kind: 'preventive', ...facts });
    expect(mayApproveReturnToService(pilot('private'), asked, ON).allowed).toBe(allowed);
  });

  it('a person with several certificates signs under the one that reaches', () => {
    const stale = { ...pilot('private'), mechanic: both('2026-01-01').mechanic };
    expect(mayApproveReturnToService(stale, tyre, ON).under?.capacity).toBe('pilot');
    const fresh = { ...pilot('private'), mechanic: both().mechanic };
    expect(mayApproveReturnToService(fresh, tyre, ON).under?.capacity).toBe('mechanic');
    expect(rulingsByCapacity(fresh, tyre, ON).filter((ruling) => ruling.allowed)).toHaveLength(2);
  });
});

describe('repair stations (43.7(c), 91.411(b)(2), 91.413(c)(1))', () => {
  it.each([
    [
      'propeller rating, propeller overhaul',
      station(['propeller']),
      work({ part: 'propeller', kind: 'major' }),
      true,
    ],
    [
      'powerplant rating, propeller overhaul',
      station(['powerplant']),
      work({ part: 'propeller', kind: 'major' }),
      false,
    ],
    ['instrument rating, instrument repair', station(['instrument']), work({ part: 'instrument' }), true],
    ['airframe rating, instrument repair', station(['airframe']), work({ part: 'instrument' }), false],
    [
      'airframe rating, instrument swap',
      station(['airframe']),
      work({ part: 'instrument', swapOnly: true }),
      true,
    ],
    ['airframe rating only, annual', station(['airframe']), work({ kind: 'annual' }), false],
    ['airframe and powerplant, annual', station(['airframe', 'powerplant']), work({ kind: 'annual' }), true],
    [
      'radio rating, transponder',
      station(['radio']),
      work({ kind: 'altimeter-transponder-test', part: 'avionics' }),
      true,
    ],
    [
      'instrument rating, transponder',
      station(['instrument']),
      work({ kind: 'altimeter-transponder-test', part: 'avionics' }),
      false,
    ],
    [
      'radio rating, altimeter',
      station(['radio']),
      work({ kind: 'altimeter-transponder-test', part: 'instrument' }),
      false,
    ],
    [
      'airframe rating, altimeter',
      station(['airframe']),
      work({ kind: 'altimeter-transponder-test', part: 'instrument' }),
      true,
    ],
    [
      'which test is not said',
      station(),
      work({ kind: 'altimeter-transponder-test', part: 'airframe' }),
      false,
    ],
    ['not authorised', station(undefined, false), work({}), false],
    ['authority unknown', station(undefined, null), work({}), false],
  ] as const)('%s', (_title, signer, asked, allowed) => {
    expect(mayApproveReturnToService(signer, asked, ON).allowed).toBe(allowed);
  });
});

describe('no hazard, within limits, check flight, servicing, placard', () => {
  it.each([
    ['student', pilot('student'), false],
    ['private, rated', pilot('private'), true],
    ['private, not rated', person({ pilot: { number: 'X1', grade: 'private', ratings: ['glider'] } }), false],
    ['mechanic', mechanic(['powerplant']), true],
    ['mechanic without rating', mechanic([]), false],
    ['mechanic out of experience', both('2026-11-24'), false],
    ['repair station', station(), true],
    ['repair station, not authorised', station(undefined, false), false],
    ['nobody', person(), false],
  ] as const)('91.213(d)(4): %s', (_title, signer, allowed) => {
    expect(mayDetermineNoHazard(signer, RATING, ON).allowed).toBe(allowed);
  });

  it.each([
    ['airline pilot, airframe', pilot('airline-transport'), 'airframe', false],
    ['airframe mechanic, airframe', mechanic(['airframe']), 'airframe', true],
    ['airframe mechanic, propeller', mechanic(['airframe']), 'propeller', false],
    ['powerplant mechanic, propeller', mechanic(['powerplant']), 'propeller', true],
    ['both, instrument', both(), 'instrument', false],
    ['inspector, powerplant', inspector(), 'powerplant', true],
    ['inspector, instrument', inspector(), 'instrument', false],
    ['station, instrument', station(['instrument']), 'instrument', true],
    ['station, other rating', station(['radio']), 'airframe', false],
  ] as const)(
    'within limits (65.81(a), 65.85(a), 65.87(a); strict reading): %s',
    (_title, signer, part, allowed) => {
      expect(mayFindWithinLimits(signer, part, ON).allowed).toBe(allowed);
    },
  );

  it.each([
    ['student', false],
    ['sport', false],
    ['recreational', false],
    ['private', true],
    ['airline-transport', true],
  ] as const)('91.407(b): %s', (grade, allowed) => {
    expect(mayFlyCheckFlight(pilot(grade), RATING, ON).allowed).toBe(allowed);
  });

  it('91.407(b): rated, and a pilot at all', () => {
    expect(mayFlyCheckFlight(pilot('commercial'), 'rotorcraft-helicopter', ON).allowed).toBe(false);
    expect(mayFlyCheckFlight(both(), RATING, ON).allowed).toBe(false);
  });

  // Common practice, no source: the lines say so as strict reading
  it.each([
    ['student', pilot('student'), false],
    ['private', pilot('private'), true],
    ['mechanic', mechanic(['airframe']), true],
    ['station', station(), true],
    ['nobody', person(), false],
  ] as const)('servicing and placards: %s', (_title, signer, allowed) => {
    for (const ruling of [mayRecordServicing(signer, ON), mayPlacePlacard(signer, ON)]) {
      expect(ruling.allowed).toBe(allowed);
      expect(ruling.lines.some((line) => line.strictReading)).toBe(true);
    }
  });

  it('toDeterminer carries what 91.213(d)(4) asks, and no unproven authority', () => {
    const all = {
      ...pilot('private'),
      mechanic: both().mechanic,
      repairStation: { number: 'X4', ratings: ['radio'] as const, authorisedToSign: known(true) },
    };
    expect(toDeterminer(all, RATING)).toEqual({
      name: 'Test Person',
      pilotGrade: 'private',
      pilotRatedForAircraft: true,
      mechanicRatings: ['airframe', 'powerplant'],
      repairStation: true,
    });
    expect(toDeterminer(station(undefined, null), RATING).repairStation).toBe(false);
    expect(toDeterminer(pilot('private'), 'glider').pilotRatedForAircraft).toBe(false);
  });
});
