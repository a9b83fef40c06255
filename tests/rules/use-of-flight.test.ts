import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { known, unknown } from '../../lib/rules/facts';
import {
  OPERATION_KINDS,
  operationId,
  type Place,
  type ProposedFlight,
  type Purpose,
} from '../../lib/rules/operations';
import { sunTimes } from '../../lib/rules/sun';
import { referenceUse, useOfFlight, type ReferenceBase } from '../../lib/rules/use-of-flight';

// Sources: 14 CFR 1.1 (night), 91.209(a)(1), 91.205(c)(4) (for hire, strict reading). Places are made up.
const EAST: Place = {
  ident: 'EAST',
  latitudeDeg: 40,
  longitudeDeg: -75,
  zone: 'America/New_York',
  repairAvailable: known(true),
};
const WEST: Place = { ...EAST, ident: 'WEST', longitudeDeg: -88, zone: 'America/Chicago' };

const FLIGHT: ProposedFlight = {
  departAt: '2026-11-25T16:00:00Z',
  arriveAt: '2026-11-25T17:30:00Z',
  from: EAST,
  to: EAST,
  rules: 'VFR',
  purpose: 'private',
  plannedTenths: 13,
  overWaterBeyondGlide: known(false),
  transponderAirspace: known(false),
  adsbAirspace: known(false),
  controlledAirspace: known(false),
  usesVor: known(false),
  highestAltitudeFtMsl: known(4500),
  trainingWithin50Nm: known(false),
  crewOnly: known(false),
  pilotInCommandGrade: known('private'),
  atcTransponder: 'not-asked',
  atcAdsb: 'not-asked',
  continuingToRepair: false,
  specialFlightPermit: null,
};

const shifted = (instant: string | null, seconds: number): string => {
  if (instant === null) throw new Error('the sun event is expected on this date');
  return Temporal.Instant.from(instant).add({ seconds }).toString();
};

function use(changes: Partial<ProposedFlight>) {
  const result = useOfFlight({ ...FLIGHT, ...changes });
  if (!result.ok) throw new Error(result.because);
  return result.use;
}

function refused(changes: Partial<ProposedFlight>): string {
  const result = useOfFlight({ ...FLIGHT, ...changes });
  if (result.ok) throw new Error('the flight was not refused');
  return result.because;
}

const eastSun = sunTimes('2026-11-25', EAST);
const westSun = sunTimes('2026-11-25', WEST);

describe('light', () => {
  it('by day: keeps the flight as composed, and says the sunset it must be down by', () => {
    expect(use({})).toEqual({
      ...FLIGHT,
      light: 'day',
      betweenSunsetAndSunrise: false,
      hire: false,
      departOn: '2026-11-25',
      arriveOn: '2026-11-25',
      sunsetAt: eastSun.sunset,
    });
  });

  it.each([
    [-1, false],
    [0, false],
    [1, true],
  ])('landing %i s from sunset: between sunset and sunrise %s', (seconds, between) => {
    const flight = use({ arriveAt: shifted(eastSun.sunset, seconds) });
    expect(flight.betweenSunsetAndSunrise).toBe(between);
    expect(flight.light).toBe('day');
    expect(flight.sunsetAt).toBe(between ? null : eastSun.sunset);
  });

  it.each([
    [-1, 'day'],
    [0, 'day'],
    [1, 'night'],
  ])('landing %i s from the end of civil twilight: %s', (seconds, light) => {
    expect(use({ arriveAt: shifted(eastSun.civilDusk, seconds) }).light).toBe(light);
  });

  it('westward in daylight all the way, dark meanwhile at the departure place: counts as night', () => {
    const times = { departAt: shifted(eastSun.sunset, -1200), arriveAt: shifted(westSun.sunset, -60) };
    const flight = use({ ...times, from: EAST, to: WEST });
    expect(flight.betweenSunsetAndSunrise).toBe(true);
    expect(flight.light).toBe('night');
    expect(use({ ...times, from: WEST, to: WEST }).light).toBe('day');
  });

  it('eastward into the night of the arrival place', () => {
    const times = { departAt: shifted(eastSun.civilDusk, -3600), arriveAt: shifted(eastSun.civilDusk, 60) };
    expect(use({ ...times, from: WEST, to: EAST }).light).toBe('night');
  });

  it('between two places the earlier sunset is the one to be down by', () => {
    expect(use({ from: WEST, to: EAST }).sunsetAt).toBe(eastSun.sunset);
    expect(use({ from: EAST, to: WEST }).sunsetAt).toBe(eastSun.sunset);
  });

  it('before sunrise and on into the day: no sunset to be down by', () => {
    const flight = use({ departAt: shifted(eastSun.sunrise, -60), arriveAt: shifted(eastSun.sunrise, 3600) });
    expect(flight.betweenSunsetAndSunrise).toBe(true);
    expect(flight.sunsetAt).toBeNull();
  });

  it('in polar day: day, with no sunset', () => {
    const north: Place = { ...EAST, latitudeDeg: 71.3, longitudeDeg: -156.8, zone: 'America/Anchorage' };
    const flight = use({
      from: north,
      to: north,
      departAt: '2026-06-21T08:00:00Z',
      arriveAt: '2026-06-21T10:00:00Z',
    });
    expect([flight.light, flight.betweenSunsetAndSunrise, flight.sunsetAt]).toEqual(['day', false, null]);
  });
});

it('the dates are local, each in the zone of its own place', () => {
  const flight = use({
    departAt: '2026-11-26T05:10:00Z',
    arriveAt: '2026-11-26T05:50:00Z',
    from: EAST,
    to: WEST,
  });
  expect([flight.departOn, flight.arriveOn]).toEqual(['2026-11-26', '2026-11-25']);
});

/** Source: 14 CFR 91.205(c)(4), 91.409(b); that all school instruction is for hire is the strict reading. */
it.each<[Purpose, boolean]>([
  ['instruction-for-hire', true],
  ['carriage-for-hire', true],
  ['student-solo', false],
  ['private', false],
  ['check-flight', false],
  ['to-inspection', false],
])('purpose %s: for hire %s', (purpose, hire) => {
  expect(use({ purpose }).hire).toBe(hire);
});

// The limit of 24 hours is our own, no source.
describe('refused flights', () => {
  it.each([
    [shifted(FLIGHT.departAt, -1), false],
    [FLIGHT.departAt, false],
    [shifted(FLIGHT.departAt, 1), true],
  ])('arrival at %s after departure at 16:00:00: accepted %s', (arriveAt, accepted) => {
    expect(useOfFlight({ ...FLIGHT, arriveAt }).ok).toBe(accepted);
  });

  it.each([
    [86_399, true],
    [86_400, true],
    [86_401, false],
  ])('%i seconds long: accepted %s', (seconds, accepted) => {
    expect(useOfFlight({ ...FLIGHT, arriveAt: shifted(FLIGHT.departAt, seconds) }).ok).toBe(accepted);
  });

  it('says what is wrong', () => {
    expect(refused({ departAt: 'soon' })).toContain('departure time');
    expect(refused({ arriveAt: '2026-11-25T17:30' })).toContain('arrival time');
    expect(refused({ arriveAt: FLIGHT.departAt })).toContain('not after');
    expect(refused({ arriveAt: shifted(FLIGHT.departAt, 86_401) })).toContain('24 hours');
    expect(refused({ plannedTenths: 0 })).toContain('planned time');
    expect(refused({ plannedTenths: 1.5 })).toContain('planned time');
    expect(refused({ plannedTenths: -1 })).toContain('planned time');
    expect(refused({ to: { ...EAST, latitudeDeg: 91 } })).toContain('latitude 91');
    expect(refused({ from: { ...EAST, zone: 'America/Nowhere' } })).toContain('place');
  });
});

describe('reference use of a board column', () => {
  const BASE: ReferenceBase = {
    ...EAST,
    transponderAirspace: known(true),
    adsbAirspace: unknown('whether a local flight enters ADS-B airspace'),
    controlledAirspace: known(true),
  };
  const NOW = '2026-11-25T16:00:00Z';

  it.each(OPERATION_KINDS.map((kind) => [operationId(kind), kind] as const))(
    '%s is what it says',
    (_id, kind) => {
      const reference = referenceUse(kind, BASE, '2026-11-25', NOW);
      expect(reference).toMatchObject({
        light: kind.light,
        betweenSunsetAndSunrise: kind.light === 'night',
        rules: kind.rules,
        hire: kind.hire,
        purpose: kind.hire ? 'instruction-for-hire' : 'private',
        usesVor: known(kind.rules === 'IFR'),
        trainingWithin50Nm: known(kind.hire),
        crewOnly: known(false),
        pilotInCommandGrade: known('private'),
        overWaterBeyondGlide: known(false),
        plannedTenths: 10,
        transponderAirspace: BASE.transponderAirspace,
        adsbAirspace: BASE.adsbAirspace,
        controlledAirspace: BASE.controlledAirspace,
        specialFlightPermit: null,
        continuingToRepair: false,
        sunsetAt: null,
      });
      expect(reference.highestAltitudeFtMsl).toEqual(known(9_999));
      expect(useOfFlight(reference).ok).toBe(true);
    },
  );

  const kind = { light: 'day', rules: 'VFR', hire: false } as const;

  it('today: departs now and takes an hour', () => {
    const reference = referenceUse(kind, BASE, '2026-11-25', NOW);
    expect([reference.departAt, reference.arriveAt]).toEqual([NOW, '2026-11-25T17:00:00Z']);
    expect([reference.departOn, reference.arriveOn]).toEqual(['2026-11-25', '2026-11-25']);
  });

  it('today in the last hour: lands tomorrow, so what runs out at midnight is seen', () => {
    const reference = referenceUse(kind, BASE, '2026-11-25', '2026-11-26T04:30:00Z');
    expect([reference.departOn, reference.arriveOn]).toEqual(['2026-11-25', '2026-11-26']);
  });

  it.each(['2026-11-24', '2026-11-26', '2026-03-08', '2026-11-01'])(
    'on %s: the last hour of that date',
    (on) => {
      const reference = referenceUse(kind, BASE, on, NOW);
      expect([reference.departOn, reference.arriveOn]).toEqual([on, on]);
      const length = Temporal.Instant.from(reference.departAt).until(reference.arriveAt);
      expect(length.total('minutes')).toBe(60);
    },
  );

  it('a malformed date, instant or zone is refused', () => {
    expect(() => referenceUse(kind, BASE, '2026-02-30', NOW)).toThrow(RangeError);
    expect(() => referenceUse(kind, BASE, '2026-11-25', 'now')).toThrow(RangeError);
    expect(() => referenceUse(kind, { ...BASE, zone: 'Nowhere' }, '2026-11-25', NOW)).toThrow(RangeError);
  });
});
