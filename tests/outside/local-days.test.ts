/**
 * Local days and the sun at the edges of both, against references that share no code with ours: luxon, which reads zones
 * through Intl (we use Temporal), and suncalc, an approximation for the sun (we use astronomy-engine). Zone data on both
 * sides is the IANA tz database of the machine, so zones are compared exactly; suncalc's own error is stated beside it.
 */
import { DateTime } from 'luxon';
import * as SunCalc from 'suncalc';
import { describe, expect, it } from 'vitest';
import { lightOverTime } from '../../lib/rules/light-over-time';
import { endOfDay, localDate, startOfDay } from '../../lib/rules/months';

const HOUR_MS = 3_600_000;

/** Zones of the changes that break naive arithmetic: at 02:00, at midnight either way, by half an hour, not at all. */
const ZONES = [
  'America/Chicago',
  'America/Anchorage',
  'America/Phoenix',
  'America/Santiago',
  'Europe/London',
  'Africa/Cairo',
  'Asia/Beirut',
  'Australia/Lord_Howe',
  'Pacific/Chatham',
  'Pacific/Apia',
];

describe.each(ZONES)('%s', (zone) => {
  it('begins and ends every day of 2026 where luxon does', () => {
    const lengths = new Set<number>();
    for (let day = DateTime.fromISO('2026-01-01', { zone }); day.year === 2026; day = day.plus({ days: 1 })) {
      const date = day.toISODate() ?? '';
      const next = day.plus({ days: 1 }).startOf('day');
      expect(Date.parse(startOfDay(date, zone)), date).toBe(day.startOf('day').toMillis());
      expect(Date.parse(endOfDay(date, zone)), date).toBe(next.toMillis());
      expect(localDate(next.minus({ milliseconds: 1 }).toUTC().toISO() ?? '', zone)).toBe(date);
      expect(localDate(next.toUTC().toISO() ?? '', zone)).toBe(next.toISODate());
      lengths.add(Math.round((next.toMillis() - day.startOf('day').toMillis()) / HOUR_MS));
    }
    if (zone === 'America/Phoenix' || zone === 'Pacific/Apia') expect([...lengths]).toEqual([24]);
  });
});

// 14 CFR has no say here; the dates are those of the tz database (US: second Sunday of March, first of November).
it.each([
  ['2026-03-08', 'America/Chicago', 23],
  ['2026-11-01', 'America/Chicago', 25],
  ['2026-09-06', 'America/Santiago', 23],
  ['2026-04-04', 'America/Santiago', 25],
  ['2026-10-04', 'Australia/Lord_Howe', 23.5],
])('%s in %s has %d hours, by luxon too', (date, zone, hours) => {
  const day = DateTime.fromISO(date, { zone });
  const luxon = day.plus({ days: 1 }).startOf('day').diff(day.startOf('day')).as('hours');
  expect(luxon).toBe(hours);
  expect((Date.parse(endOfDay(date, zone)) - Date.parse(startOfDay(date, zone))) / HOUR_MS).toBe(hours);
});

/**
 * Light over one whole day at the poles' edges. suncalc gives an invalid date where the sun does not reach a height.
 * Tolerance: three minutes for its formula at these latitudes, where the sun crosses slantwise; rows are chosen well
 * away from the days on which polar day or night begins.
 */
const PLACES = [
  { place: 'Longyearbyen', latitudeDeg: 78.22, longitudeDeg: 15.63, zone: 'Arctic/Longyearbyen' },
  { place: 'Utqiagvik', latitudeDeg: 71.29, longitudeDeg: -156.79, zone: 'America/Anchorage' },
  { place: 'Decorah', latitudeDeg: 43.31, longitudeDeg: -91.79, zone: 'America/Chicago' },
] as const;
const WITHIN_MS = 3 * 60_000;

describe.each(PLACES)('$place', (place) => {
  it.each(['2026-01-02', '2026-03-08', '2026-06-21', '2026-10-01', '2026-11-01', '2026-12-21'])(
    'on %s the light changes when suncalc says, or not at all',
    (date) => {
      const window = { from: startOfDay(date, place.zone), until: endOfDay(date, place.zone) };
      const noon = new Date((Date.parse(window.from) + Date.parse(window.until)) / 2);
      const times = SunCalc.getTimes(noon, place.latitudeDeg, place.longitudeDeg);
      const theirs = [
        ['night-ends', times.dawn],
        ['sunrise', times.sunrise],
        ['sunset', times.sunset],
        ['night-begins', times.dusk],
      ] as const;
      const ours = lightOverTime(place, window).flatMap(({ events }) => events);
      for (const [what, at] of theirs) {
        const found = ours.filter((event) => event.what === what).map((event) => Date.parse(event.at));
        if (at === null || Number.isNaN(at.getTime())) expect(found, what).toEqual([]);
        else {
          expect(found, what).toHaveLength(1);
          expect(Math.abs((found[0] ?? 0) - at.getTime()), what).toBeLessThanOrEqual(WITHIN_MS);
        }
      }
    },
  );
});
