/**
 * The shipped airports against the outside: positions as their authorities publish them (from memory, to a hundredth of a
 * degree: that is what a check of signs and of swapped columns needs), and clocks by luxon on the zones of the tz database.
 */
import { DateTime } from 'luxon';
import { describe, expect, test } from 'vitest';
import { airportByIdent } from '@/lib/airports/find-airport';

describe('reference points, from memory of the aeronautical publications', () => {
  test.each([
    ['KORD', 41.98, -87.9, 680],
    ['EGLL', 51.48, -0.46, 83],
    ['YSSY', -33.95, 151.18, 21],
    ['SCEL', -33.39, -70.79, 1555],
    ['PHNL', 21.32, -157.92, 13],
    ['ENSB', 78.25, 15.47, 94],
    ['NZCH', -43.49, 172.53, 123],
  ])('%s lies at %d, %d, about %d ft', (ident, latitude, longitude, elevation) => {
    const airport = airportByIdent(ident)!;
    expect(Math.abs(airport.latitudeDeg - latitude)).toBeLessThan(0.03);
    expect(Math.abs(airport.longitudeDeg - longitude)).toBeLessThan(0.03);
    expect(Math.abs((airport.elevationFt ?? Number.NaN) - elevation)).toBeLessThan(40);
  });
});

/**
 * Hours ahead of UTC in January and July 2026, from memory of the zones people live by; the same rows were held against the
 * OpenFlights table when the file was made. Those with a note are where the coarse map of zones alone is wrong.
 */
describe('clocks', () => {
  test.each([
    ['KDEN', -7, -6, ''],
    ['KPHX', -7, -7, 'Arizona keeps standard time'],
    ['PANC', -9, -8, ''],
    ['PAPG', -9, -8, 'Petersburg, Alaska: the map says Vancouver'],
    ['KHUL', -5, -4, 'Houlton, Maine: the map says Moncton'],
    ['KENV', -7, -6, 'Wendover, Utah: the map says Los Angeles'],
    ['NSTU', -11, -11, 'Pago Pago: the map says Apia, a day ahead'],
    ['NZCI', 13.75, 12.75, 'the date line runs east of it'],
    ['PLCH', 14, 14, 'Kiritimati'],
    ['YREN', 10.5, 9.5, 'Renmark, South Australia: the map says Melbourne'],
    ['OBBI', 3, 3, 'Bahrain: the map says Tehran'],
    ['VNKT', 5.75, 5.75, ''],
    ['EGLL', 0, 1, ''],
  ])('%s is %d h ahead in January, %d h in July %s', (ident, january, july) => {
    const zone = airportByIdent(ident)?.zone ?? '';
    const ahead = (at: string) => DateTime.fromISO(at, { zone }).offset / 60;
    expect([ahead('2026-01-15T12:00Z'), ahead('2026-07-15T12:00Z')]).toEqual([january, july]);
  });
});
