/** The shipped airports: every row can be used, and the search finds what is meant. Source of the rows: lib/airports/README.md. */
import { describe, expect, test } from 'vitest';
import { airportByIdent, airportRows, proposedZone, searchAirports } from '@/lib/airports/find-airport';
import { zoneFits } from '@/lib/rules/zone-fits';

const rows = airportRows();

describe('every row', () => {
  test('has an ident that can be typed, once', () => {
    expect(rows.length).toBeGreaterThan(5000);
    expect(rows.filter(([ident]) => !/^[A-Z0-9]{2,7}$/.test(ident))).toEqual([]);
    expect(new Set(rows.map(([ident]) => ident)).size).toBe(rows.length);
  });

  test('lies on Earth, with a name, a country, and an elevation no airport outdoes', () => {
    const wrong = rows.filter(
      ([, , , name, , country, latitude, longitude, elevation]) =>
        name === '' ||
        !/^[A-Z]{2}$/.test(country) ||
        !(Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180) ||
        // The Dead Sea and Daocheng Yading, from memory: -1,266 ft and 14,472 ft.
        (elevation !== null && !(elevation >= -1300 && elevation <= 14_500)),
    );
    expect(wrong).toEqual([]);
  });

  test('is in a zone that Intl knows', () => {
    const known = (zone: string) => {
      try {
        return new Intl.DateTimeFormat('en', { timeZone: zone }).resolvedOptions().timeZone !== '';
      } catch {
        return false;
      }
    };
    const zones = new Set(rows.map((row) => row[9]));
    expect([...zones].filter((zone) => !known(zone))).toEqual([]);
    expect(zones.size).toBeGreaterThan(200);
  });

  test('names no heliport, no seaplane base and nothing closed', () => {
    expect(rows.filter((row) => /heliport|seaplane|\(closed|\[x\]|duplicate/i.test(row[3]))).toEqual([]);
  });
});

describe('by ident', () => {
  test.each([
    ['KORD', 'KORD'],
    [' kord ', 'KORD'],
    // An IATA code is not an ident: "ORD" would be a guess in a plan.
    ['ORD', undefined],
    ['', undefined],
    ['ZZQB', undefined],
  ])('%j finds %s', (typed, ident) => {
    expect(airportByIdent(typed)?.ident).toBe(ident);
  });
});

describe('the search', () => {
  const found = (text: string, limit = 5) => searchAirports(text, limit).map(({ ident }) => ident);

  test('a code itself comes first, in whatever case, ICAO or IATA', () => {
    expect(found('kord')[0]).toBe('KORD');
    expect(found('ord')[0]).toBe('KORD');
  });

  test('then what begins with it, then names and towns with every word in them', () => {
    expect(found('KOR', 20).every((ident, at) => at === 0 || ident.length > 0)).toBe(true);
    expect(found('KOR', 20)).toContain('KORD');
    expect(found('chatham islands')).toEqual(['NZCI']);
    expect(found('islands chatham')).toEqual(['NZCI']);
  });

  test('accents need not be typed', () => {
    expect(found('sao paulo', 20)).toContain('SBGR');
    expect(found('São Paulo', 20)).toContain('SBGR');
  });

  test('as many as asked for; nothing for nothing', () => {
    expect(found('airport', 8)).toHaveLength(8);
    expect(found('airport', 1)).toHaveLength(1);
    expect([found('   '), found('no such place anywhere')]).toEqual([[], []]);
  });
});

describe('the zone proposed for a typed point', () => {
  test.each([
    [43.31, -91.79, 'America/Chicago'],
    [-43.81, -176.46, 'Pacific/Chatham'],
    [1.99, -157.35, 'Pacific/Kiritimati'],
  ])('%d %d: %s', (latitudeDeg, longitudeDeg, zone) => {
    expect(proposedZone({ latitudeDeg, longitudeDeg })).toBe(zone);
  });

  test('a point that is not on Earth has none', () => {
    expect(() => proposedZone({ latitudeDeg: 91, longitudeDeg: 0 })).toThrow();
  });
});

// The limit of four hours is ours (lib/rules/zone-fits.ts); noon UTC in November, Greenwich at 0, so a degree is four minutes.
describe('whether clocks can be those of a longitude', () => {
  const at = '2026-11-25T12:00:00Z';
  test.each([
    [59.9, true],
    [60, true],
    [60.1, false],
    [-59.9, true],
    [-60, true],
    [-60.1, false],
    [180, false],
  ])('UTC at %d E: %s', (longitudeDeg, yes) => {
    expect(zoneFits('UTC', longitudeDeg, at)).toBe(yes);
  });

  test('a day ahead or behind the date line is no matter, east for west is', () => {
    expect(zoneFits('Pacific/Kiritimati', -157.35, at)).toBe(true);
    expect(zoneFits('America/Chicago', -91.79, at)).toBe(true);
    expect(zoneFits('America/Chicago', 91.79, at)).toBe(false);
  });

  test('every airport of the file has clocks that fit where it lies', () => {
    const off = rows.filter((row) => !zoneFits(row[9], row[7], at)).map(([ident]) => ident);
    // At the South Pole every longitude is as good as another.
    expect(off).toEqual(['NZSP']);
  });
});
