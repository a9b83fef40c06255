import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { lightDuring, nextSunEvent, sunTimes, type SunTimes } from '../../lib/rules/sun';

// Sources: 14 CFR 1.1 (night) and 91.209(a)(1). Which side the border instants fall on is our strict reading, no
// source. Places are points on the map, not airfields.
const ATLANTA = { latitudeDeg: 33.8, longitudeDeg: -84.4, zone: 'America/New_York' };
const SYDNEY = { latitudeDeg: -33.87, longitudeDeg: 151.21, zone: 'Australia/Sydney' };
const ANCHORAGE = { latitudeDeg: 61.2, longitudeDeg: -149.9, zone: 'America/Anchorage' };
const UTQIAGVIK = { latitudeDeg: 71.29, longitudeDeg: -156.79, zone: 'America/Anchorage' };
const TROMSO = { latitudeDeg: 69.65, longitudeDeg: 18.96, zone: 'Europe/Oslo' };

const shifted = (instant: string | null, seconds: number): string => {
  if (instant === null) throw new Error('the sun event is expected on this date');
  return Temporal.Instant.from(instant).add({ seconds }).toString();
};

describe.each([
  ['Atlanta', ATLANTA],
  ['Sydney', SYDNEY],
  ['Denver', { latitudeDeg: 39.7, longitudeDeg: -105, zone: 'America/Denver' }],
  ['Reykjavik', { latitudeDeg: 64.13, longitudeDeg: -21.9, zone: 'Atlantic/Reykjavik' }],
])('borders to the second at %s', (_name, place) => {
  const dates = ['2026-01-15', '2026-03-20', '2026-04-02', '2026-09-06', '2026-11-25'];

  it.each(dates)('%s, landing about sunset: just before, on, just after', (date) => {
    const { sunset } = sunTimes(date, place);
    const landing = (seconds: number) =>
      lightDuring({ from: shifted(sunset, -3600), to: shifted(sunset, seconds) }, place);
    expect(landing(-1)).toEqual({ night: false, betweenSunsetAndSunrise: false });
    expect(landing(0)).toEqual({ night: false, betweenSunsetAndSunrise: false });
    expect(landing(1)).toEqual({ night: false, betweenSunsetAndSunrise: true });
  });

  it.each(dates)('%s, landing about the end of civil twilight: just before, on, just after', (date) => {
    const { civilDusk } = sunTimes(date, place);
    const night = (seconds: number) =>
      lightDuring({ from: shifted(civilDusk, -7200), to: shifted(civilDusk, seconds) }, place).night;
    expect([night(-1), night(0), night(1)]).toEqual([false, false, true]);
  });

  it.each(dates)('%s, departing about sunset: just before, on, just after are all in it', (date) => {
    const { sunset } = sunTimes(date, place);
    const between = (seconds: number) =>
      lightDuring({ from: shifted(sunset, seconds), to: shifted(sunset, 600) }, place)
        .betweenSunsetAndSunrise;
    expect([between(-1), between(0), between(1)]).toEqual([true, true, true]);
  });

  it.each(dates)('%s, departing about sunrise: just before, on, just after', (date) => {
    const { sunrise } = sunTimes(date, place);
    const between = (seconds: number) =>
      lightDuring({ from: shifted(sunrise, seconds), to: shifted(sunrise, 3600) }, place)
        .betweenSunsetAndSunrise;
    expect([between(-1), between(0), between(1)]).toEqual([true, true, false]);
  });

  it.each(dates)(
    '%s, departing about the beginning of civil twilight: just before, on, just after',
    (date) => {
      const { civilDawn } = sunTimes(date, place);
      const night = (seconds: number) =>
        lightDuring({ from: shifted(civilDawn, seconds), to: shifted(civilDawn, 600) }, place).night;
      expect([night(-1), night(0), night(1)]).toEqual([true, true, false]);
    },
  );

  it.each(dates)('%s, the events come in order', (date) => {
    const { civilDawn, sunrise, sunset, civilDusk } = sunTimes(date, place);
    const events = [civilDawn, sunrise, sunset, civilDusk];
    expect(events).not.toContain(null);
    expect([...events].sort()).toEqual(events);
  });
});

describe('intervals', () => {
  it('in twilight: between sunset and sunrise, yet not night', () => {
    const { sunset, civilDusk } = sunTimes('2026-11-25', ATLANTA);
    const interval = { from: shifted(sunset, 10), to: shifted(civilDusk, -10) };
    expect(lightDuring(interval, ATLANTA)).toEqual({ night: false, betweenSunsetAndSunrise: true });
  });

  it('light at both ends with the whole night inside', () => {
    const interval = {
      from: shifted(sunTimes('2026-11-25', ATLANTA).sunset, -600),
      to: shifted(sunTimes('2026-11-26', ATLANTA).sunrise, 600),
    };
    expect(lightDuring(interval, ATLANTA)).toEqual({ night: true, betweenSunsetAndSunrise: true });
  });

  it('a part of a second belongs to the darker side', () => {
    const { sunset, sunrise } = sunTimes('2026-11-25', ATLANTA);
    const half = (instant: string) => instant.replace('Z', '.5Z');
    const evening = { from: shifted(sunset, -600), to: half(shifted(sunset, 0)) };
    expect(lightDuring(evening, ATLANTA).betweenSunsetAndSunrise).toBe(true);
    const morning = { from: half(shifted(sunrise, 0)), to: shifted(sunrise, 600) };
    expect(lightDuring(morning, ATLANTA).betweenSunsetAndSunrise).toBe(true);
  });

  it('one second long works; none, and one that runs backwards, are refused', () => {
    const noon = '2026-11-25T17:00:00Z';
    expect(lightDuring({ from: noon, to: shifted(noon, 1) }, ATLANTA).night).toBe(false);
    expect(() => lightDuring({ from: noon, to: noon }, ATLANTA)).toThrow(RangeError);
    expect(() => lightDuring({ from: noon, to: shifted(noon, -1) }, ATLANTA)).toThrow(RangeError);
    expect(() => lightDuring({ from: noon, to: 'tomorrow' }, ATLANTA)).toThrow(RangeError);
  });

  it.each([
    [90.1, 0],
    [-90.1, 0],
    [0, 180.1],
    [0, -180.1],
    [Number.NaN, 0],
    [0, Number.NaN],
  ])('latitude %d, longitude %d is refused', (latitudeDeg, longitudeDeg) => {
    const interval = { from: '2026-11-25T17:00:00Z', to: '2026-11-25T18:00:00Z' };
    expect(() => lightDuring(interval, { latitudeDeg, longitudeDeg })).toThrow(RangeError);
    expect(() => nextSunEvent('sunset', { latitudeDeg, longitudeDeg }, interval.from, 1)).toThrow(RangeError);
    expect(() => sunTimes('2026-11-25', { latitudeDeg, longitudeDeg, zone: 'UTC' })).toThrow(RangeError);
  });
});

describe('polar day and night', () => {
  const wholeDay = (date: string) => ({ from: `${date}T00:00:00Z`, to: `${date}T23:59:59Z` });
  const none: SunTimes = { civilDawn: null, sunrise: null, sunset: null, civilDusk: null };

  it('the sun does not set on Utqiagvik in June: never dark, no events, no next sunset', () => {
    expect(sunTimes('2026-06-21', UTQIAGVIK)).toEqual(none);
    expect(lightDuring(wholeDay('2026-06-21'), UTQIAGVIK)).toEqual({
      night: false,
      betweenSunsetAndSunrise: false,
    });
    expect(nextSunEvent('sunset', UTQIAGVIK, '2026-06-21T00:00:00Z', 2)).toBeNull();
  });

  it('Tromso in December: no sunrise, yet some hours that are not night', () => {
    const { civilDawn, sunrise, sunset, civilDusk } = sunTimes('2026-12-21', TROMSO);
    expect([sunrise, sunset]).toEqual([null, null]);
    const noon = { from: shifted(civilDawn, 60), to: shifted(civilDusk, -60) };
    expect(lightDuring(noon, TROMSO)).toEqual({ night: false, betweenSunsetAndSunrise: true });
    expect(lightDuring(wholeDay('2026-12-21'), TROMSO)).toEqual({
      night: true,
      betweenSunsetAndSunrise: true,
    });
  });

  it('Anchorage in June: lights from sunset to sunrise, but no night', () => {
    const { civilDawn, sunset, civilDusk } = sunTimes('2026-06-21', ANCHORAGE);
    expect([civilDawn, civilDusk]).toEqual([null, null]);
    const late = { from: shifted(sunset, 600), to: shifted(sunset, 4200) };
    expect(lightDuring(late, ANCHORAGE)).toEqual({ night: false, betweenSunsetAndSunrise: true });
  });

  it('both poles', () => {
    const north = { latitudeDeg: 90, longitudeDeg: 0, zone: 'UTC' };
    const south = { latitudeDeg: -90, longitudeDeg: 180, zone: 'UTC' };
    expect(lightDuring(wholeDay('2026-06-21'), north)).toEqual({
      night: false,
      betweenSunsetAndSunrise: false,
    });
    expect(lightDuring(wholeDay('2026-06-21'), south)).toEqual({
      night: true,
      betweenSunsetAndSunrise: true,
    });
    expect(sunTimes('2026-06-21', north)).toEqual(none);
    expect(sunTimes('2026-12-21', south)).toEqual(none);
  });

  it('a sunset after local midnight belongs to the date it falls on', () => {
    const fairbanks = { latitudeDeg: 64.84, longitudeDeg: -147.72, zone: 'America/Anchorage' };
    const { sunrise, sunset } = sunTimes('2026-06-21', fairbanks);
    expect(sunset !== null && sunrise !== null && sunset < sunrise).toBe(true);
  });
});

it('the next event is after the instant asked from, also when that is an event itself', () => {
  const { sunset } = sunTimes('2026-11-25', ATLANTA);
  expect(nextSunEvent('sunset', ATLANTA, shifted(sunset, -1), 1)).toBe(sunset);
  expect(nextSunEvent('sunset', ATLANTA, shifted(sunset, 2), 2)).toBe(sunTimes('2026-11-26', ATLANTA).sunset);
  expect(nextSunEvent('sunset', ATLANTA, shifted(sunset, 2), 0.5)).toBeNull();
});
