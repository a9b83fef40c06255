/** Times the form offers. Source of the clock changes: IANA time zone database, United States rules for 2026. */
import { expect, test } from 'vitest';
import { arrivalAfter, localTimeIn, tenthsBetween } from '@/lib/releases/flight-times';

const CHICAGO = 'America/Chicago';
const DENVER = 'America/Denver';

test.each([
  ['2026-11-25T20:00:00Z', '2026-11-25T14:30'],
  ['2026-11-25T20:00:01Z', '2026-11-25T14:35'],
  ['2026-11-26T05:40:00Z', '2026-11-26T00:10'],
])('30 minutes after %s is %s in Chicago, up to the next five minutes', (now, local) => {
  expect(localTimeIn(now, 30, CHICAGO)).toBe(local);
});

test('an arrival is given in the zone of the place of arrival', () => {
  expect(arrivalAfter('2026-11-25T14:00', CHICAGO, 90, CHICAGO)).toBe('2026-11-25T15:30');
  expect(arrivalAfter('2026-11-25T14:00', CHICAGO, 90, DENVER)).toBe('2026-11-25T14:30');
});

test('nothing is offered for a time that does not exist or exists twice', () => {
  expect(arrivalAfter('2026-03-08T02:30', CHICAGO, 60, CHICAGO)).toBeNull();
  expect(arrivalAfter('2026-11-01T01:30', CHICAGO, 60, CHICAGO)).toBeNull();
  expect(arrivalAfter('', CHICAGO, 60, CHICAGO)).toBeNull();
});

test('over the night the clocks go forward, an hour flown is two on the wall', () => {
  expect(arrivalAfter('2026-03-08T01:30', CHICAGO, 60, CHICAGO)).toBe('2026-03-08T03:30');
  expect(tenthsBetween('2026-03-08T01:30', CHICAGO, '2026-03-08T03:30', CHICAGO)).toBe(10);
});

test.each([
  ['2026-11-25T15:00', 10],
  ['2026-11-25T15:01', 11],
  ['2026-11-25T14:59', 10],
  ['2026-11-25T14:54', 9],
  ['2026-11-25T14:00', null],
  ['2026-11-25T13:59', null],
  ['', null],
])('from 14:00 to %s is %s tenths, rounded up', (arrive, tenths) => {
  expect(tenthsBetween('2026-11-25T14:00', CHICAGO, arrive, CHICAGO)).toBe(tenths);
});
