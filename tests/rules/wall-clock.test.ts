import fc from 'fast-check';
import { expect, test } from 'vitest';
import { instantOfWallClock, wallClockOf } from '@/app/_ui/wall-clock';
import { instantOfLocalTime } from '@/lib/fleet/zone';

// Source: the service's own reading of a wall-clock time by Temporal, which this has to agree with wherever it is asked.

const ZONES = [
  'America/Chicago',
  'America/New_York',
  'Pacific/Chatham',
  'Asia/Kolkata',
  'UTC',
  'America/Phoenix',
];

function byTemporal(local: string, zone: string): string | null {
  try {
    return new Date(instantOfLocalTime(local, zone, 'at')).toISOString();
  } catch {
    return null;
  }
}

test('agrees with Temporal at any minute of two years, and goes there and back', () => {
  const minutes = fc.integer({
    min: Date.parse('2026-01-01T00:00Z') / 60_000,
    max: Date.parse('2028-01-01T00:00Z') / 60_000,
  });
  fc.assert(
    fc.property(minutes, fc.constantFrom(...ZONES), (minute, zone) => {
      const local = new Date(minute * 60_000).toISOString().slice(0, 16);
      const found = instantOfWallClock(local, zone);
      expect(found).toBe(byTemporal(local, zone));
      if (found !== null) expect(wallClockOf(found, zone)).toBe(local);
    }),
    { numRuns: 400 },
  );
});

// 15 U.S.C. 260a: clocks go forward at two on the second Sunday of March, back at two on the first Sunday of November.
test.each([
  ['2026-03-08T01:59', '2026-03-08T07:59:00.000Z'],
  ['2026-03-08T02:00', null],
  ['2026-03-08T02:59', null],
  ['2026-03-08T03:00', '2026-03-08T08:00:00.000Z'],
  ['2026-11-01T00:59', '2026-11-01T05:59:00.000Z'],
  ['2026-11-01T01:00', null],
  ['2026-11-01T01:59', null],
  ['2026-11-01T02:00', '2026-11-01T08:00:00.000Z'],
])('in Chicago %s is %s', (local, at) => {
  expect(instantOfWallClock(local, 'America/Chicago')).toBe(at);
});

test.each(['', '14:05', '2026-11-25', '2026-13-01T00:00', '2026-02-30T10:00', '2026-11-25T24:30'])(
  '%j is no time',
  (text) => {
    expect(instantOfWallClock(text, 'America/Chicago')).toBeNull();
  },
);
