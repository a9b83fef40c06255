/**
 * The sun of a date in words: days on which clocks change, polar day and night, zones about the date line. The instants
 * themselves are held against printed tables in tests/outside/sun-tables.test.ts; here it is which date they fall on,
 * what is missing, and what is said. The polar dates are those of the Naval Observatory's tables quoted there.
 */
import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, test } from 'vitest';
import { isZone, nextClockChange } from '@/lib/rules/clock-change';
import { lightDuring } from '@/lib/rules/sun';
import { sunOfDay } from '@/lib/rules/sun-of-day';

const CHICAGO = { latitudeDeg: 43.31, longitudeDeg: -91.79, zone: 'America/Chicago' };
const LONGYEARBYEN = { latitudeDeg: 78.216667, longitudeDeg: 15.633333, zone: 'Arctic/Longyearbyen' };
const TROMSO = { latitudeDeg: 69.65, longitudeDeg: 18.96, zone: 'Europe/Oslo' };
const ANCHORAGE = { latitudeDeg: 61.216667, longitudeDeg: -149.866667, zone: 'America/Anchorage' };
const CHATHAM = { latitudeDeg: -43.81, longitudeDeg: -176.46, zone: 'Pacific/Chatham' };
const KIRITIMATI = { latitudeDeg: 1.99, longitudeDeg: -157.35, zone: 'Pacific/Kiritimati' };
const LORD_HOWE = { latitudeDeg: -31.54, longitudeDeg: 159.08, zone: 'Australia/Lord_Howe' };

const kinds = (date: string, place: typeof CHICAGO) => sunOfDay(date, place).events.map(({ event }) => event);

test('an ordinary day: four events in order, nothing to say', () => {
  const day = sunOfDay('2026-11-25', CHICAGO);
  expect(day.events.map(({ event }) => event)).toEqual(['civilDawn', 'sunrise', 'sunset', 'civilDusk']);
  expect(day).toMatchObject({ minutes: 1440, sun: 'rises-and-sets', night: 'part', say: [] });
});

// Days clocks change. Source: 15 U.S.C. 260a (second Sunday of March, first of November), from memory; luxon for the rest.
describe('days clocks change', () => {
  test.each([
    ['2027-03-13', CHICAGO, 1440, []],
    ['2027-03-14', CHICAGO, 1380, ['Clocks go forward today: the day has 23 h.']],
    ['2027-03-15', CHICAGO, 1440, []],
    ['2026-10-31', CHICAGO, 1440, []],
    ['2026-11-01', CHICAGO, 1500, ['Clocks go back today: the day has 25 h.']],
    ['2026-11-02', CHICAGO, 1440, []],
    ['2026-10-04', LORD_HOWE, 1410, ['Clocks go forward today: the day has 23 h 30 min.']],
    ['2026-04-05', LORD_HOWE, 1470, ['Clocks go back today: the day has 24 h 30 min.']],
    ['2026-09-27', CHATHAM, 1380, ['Clocks go forward today: the day has 23 h.']],
  ] as const)('%s', (date, place, minutes, say) => {
    expect(sunOfDay(date, place)).toMatchObject({ minutes, say, sun: 'rises-and-sets' });
    const start = DateTime.fromISO(date, { zone: place.zone });
    expect(start.plus({ days: 1 }).diff(start, 'minutes').minutes).toBe(minutes);
  });

  test('sunrise goes on by a minute or two over the change, the clock by an hour', () => {
    const rise = (date: string) =>
      sunOfDay(date, CHICAGO).events.find(({ event }) => event === 'sunrise')!.at;
    const apart = (Date.parse(rise('2027-03-14')) - Date.parse(rise('2027-03-13'))) / 60_000;
    expect(Math.abs(apart - 24 * 60)).toBeLessThan(3);
    const clock = (at: string) => DateTime.fromISO(at, { zone: CHICAGO.zone }).toFormat('HH');
    expect([clock(rise('2027-03-13')), clock(rise('2027-03-14'))]).toEqual(['06', '07']);
  });
});

describe('polar day and night', () => {
  test.each([
    ['2020-06-25', 'up-all-day', 'none', 'The sun does not set today.'],
    ['2020-12-15', 'down-all-day', 'all-day', 'The sun does not rise today.'],
  ])('Longyearbyen on %s', (date, sun, night, say) => {
    const day = sunOfDay(date, LONGYEARBYEN);
    expect(day).toMatchObject({ sun, night, events: [] });
    expect(day.say[0]).toBe(say);
  });

  test('the sun stays down and there is civil twilight at noon: Tromsø in December', () => {
    const day = sunOfDay('2026-12-21', TROMSO);
    expect(day).toMatchObject({ sun: 'down-all-day', night: 'part' });
    expect(day.events.map(({ event }) => event)).toEqual(['civilDawn', 'civilDusk']);
    expect(day.say).toEqual(['The sun does not rise today.', 'There is civil twilight only.']);
  });

  test('twilight all night: Anchorage in June', () => {
    const day = sunOfDay('2020-06-15', ANCHORAGE);
    expect(day).toMatchObject({ sun: 'rises-and-sets', night: 'none' });
    expect(day.say).toEqual([
      'It does not become night (14 CFR 1.1): civil twilight lasts while the sun is down.',
    ]);
  });

  test('before the polar day the sun sets after midnight, and the last time it only rises', () => {
    // Longyearbyen by the Observatory, 15 April 2020 in UTC: up 00:38, down 21:33; clocks there are two hours ahead.
    const days = ['2020-04-16', '2020-04-17', '2020-04-18', '2020-04-19', '2020-04-20'].map((date) =>
      sunOfDay(date, LONGYEARBYEN),
    );
    const late = days.find(({ sun, events }) => sun === 'rises-and-sets' && events[0]?.event === 'sunset');
    expect(late?.say).toContain('The sun is up as the day begins: it sets, and rises again the same day.');
    expect(sunOfDay('2020-04-25', LONGYEARBYEN).sun).toBe('up-all-day');
  });

  test('every date of a year is one of the five, and what is said is what the light is', () => {
    for (let day = 0; day < 366; day++) {
      const date = new Date(Date.UTC(2020, 0, 1 + day)).toISOString().slice(0, 10);
      const { sun, night, events } = sunOfDay(date, LONGYEARBYEN);
      const noonLight = lightDuring({ from: `${date}T11:00:00Z`, to: `${date}T11:00:01Z` }, LONGYEARBYEN);
      if (sun === 'up-all-day') expect([noonLight.betweenSunsetAndSunrise, night]).toEqual([false, 'none']);
      if (sun === 'down-all-day') expect(noonLight.betweenSunsetAndSunrise).toBe(true);
      if (night === 'all-day') expect([noonLight.night, sun]).toEqual([true, 'down-all-day']);
      for (const { at } of events) {
        expect(DateTime.fromISO(at, { zone: LONGYEARBYEN.zone }).toISODate()).toBe(date);
      }
    }
  });
});

describe('about the date line', () => {
  test.each([
    ['2026-11-25', CHATHAM],
    ['2026-06-21', CHATHAM],
    ['2026-11-25', KIRITIMATI],
    ['2026-12-31', KIRITIMATI],
  ])('the events of %s are on that date there', (date, place) => {
    const { events } = sunOfDay(date, place);
    expect(kinds(date, place)).toEqual(['civilDawn', 'sunrise', 'sunset', 'civilDusk']);
    for (const { at } of events) expect(DateTime.fromISO(at, { zone: place.zone }).toISODate()).toBe(date);
    // Morning in the morning, evening in the evening, by the clock of the place.
    const hours = events.map(({ at }) => DateTime.fromISO(at, { zone: place.zone }).hour);
    expect(hours[1]).toBeLessThan(9);
    expect(hours[2]).toBeGreaterThan(15);
  });
});

test('anywhere, on any date: in order, and light between the events as the events say', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -89, max: 89 }),
      fc.integer({ min: -179, max: 179 }),
      fc.integer({ min: 0, max: 364 }),
      (latitudeDeg, longitudeDeg, day) => {
        const place = { latitudeDeg, longitudeDeg, zone: 'UTC' };
        const date = new Date(Date.UTC(2026, 0, 1 + day)).toISOString().slice(0, 10);
        const { events } = sunOfDay(date, place);
        const turns = events.filter(({ event }) => event === 'sunrise' || event === 'sunset');
        turns.forEach(({ event, at }, index) => {
          // Up and down take turns.
          expect(turns[index + 1]?.event).not.toBe(event);
          const next = turns[index + 1]?.at;
          if (next === undefined || Date.parse(next) - Date.parse(at) < 10_000) return;
          const middle = (Date.parse(at) + Date.parse(next)) / 2;
          const light = lightDuring(
            { from: new Date(middle).toISOString(), to: new Date(middle + 1000).toISOString() },
            place,
          );
          expect(light.betweenSunsetAndSunrise).toBe(event === 'sunset');
        });
      },
    ),
    { numRuns: 150 },
  );
});

describe('the next change of clocks, held against luxon', () => {
  test.each([
    ['America/Chicago', '2026-11-26T12:00:00Z', '2027-03-14T08:00:00Z', 60, '02:00', '03:00'],
    ['America/Chicago', '2026-10-20T12:00:00Z', '2026-11-01T07:00:00Z', -60, '02:00', '01:00'],
    ['Pacific/Chatham', '2026-11-26T12:00:00Z', '2027-04-03T14:00:00Z', -60, '03:45', '02:45'],
    ['Australia/Lord_Howe', '2026-11-26T12:00:00Z', '2027-04-03T15:00:00Z', -30, '02:00', '01:30'],
  ])('%s after %s', (zone, after, at, forwardMinutes, from, to) => {
    expect(nextClockChange(zone, after)).toEqual({ at, forwardMinutes, from, to });
    const offset = (ms: number) => DateTime.fromMillis(ms, { zone }).offset;
    expect(offset(Date.parse(at)) - offset(Date.parse(at) - 1)).toBe(forwardMinutes);
    // None before it, day by day.
    for (let ms = Date.parse(after); ms < Date.parse(at); ms += 86_400_000) {
      expect(offset(ms)).toBe(offset(Date.parse(after)));
    }
  });

  test('strictly after: a second before the change it is this one, at the change it is the next', () => {
    const at = '2027-03-14T08:00:00Z';
    expect(nextClockChange('America/Chicago', '2027-03-14T07:59:59Z')?.at).toBe(at);
    expect(nextClockChange('America/Chicago', at)?.at).toBe('2027-11-07T07:00:00Z');
    expect(nextClockChange('America/Chicago', '2027-03-14T08:00:01Z')?.at).toBe('2027-11-07T07:00:00Z');
  });

  test.each(['Pacific/Kiritimati', 'America/Phoenix', 'UTC'])('%s has none', (zone) => {
    expect(nextClockChange(zone, '2026-11-26T12:00:00Z')).toBeNull();
  });

  test.each([
    ['America/Chicago', true],
    ['UTC', true],
    ['America/Quillback', false],
    ['+05:00', false],
    ['', false],
  ])('%j is a zone: %s', (zone, yes) => {
    expect(isZone(zone)).toBe(yes);
  });
});
