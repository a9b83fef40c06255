import { DateTime } from 'luxon';
import { describe, expect, it, test } from 'vitest';
import {
  addYearsEndOfMonth,
  endOfDay,
  lastDayOfCalendarMonthAfter,
  lastDayWithinDays,
  localDate,
  midnightEndAfterDays,
  startOfDay,
} from '../../lib/rules/months';

// Outside source of this file: luxon, a second and independent calendar library.

/** Every date from 1 January 2023 to 31 December 2028: two leap days, and the ends of all months. */
const DATES: string[] = [];
for (let date = DateTime.utc(2023, 1, 1); date <= DateTime.utc(2028, 12, 31); date = date.plus({ days: 1 })) {
  DATES.push(date.toFormat('yyyy-MM-dd'));
}

const utc = (date: string) => DateTime.fromISO(date, { zone: 'utc' });
const text = (date: DateTime) => date.toFormat('yyyy-MM-dd');

test('the list of dates is whole', () => {
  expect(DATES).toHaveLength(6 * 365 + 2);
});

/** All dates for which the two sides differ, so that one assertion covers thousands of dates. */
const differing = (ours: (date: string) => string, theirs: (date: string) => string) =>
  DATES.filter((date) => ours(date) !== theirs(date));

test.each([1, 2, 6, 11, 12, 13, 24, 36])('%i calendar months from every date', (months) => {
  const luxon = (done: string) => text(utc(done).startOf('month').plus({ months }).endOf('month'));
  expect(differing((done) => lastDayOfCalendarMonthAfter(done, months), luxon)).toEqual([]);
});

test.each([1, 3, 10, 30, 90, 120])('%i days from every date', (days) => {
  const luxon = (done: string) => text(utc(done).plus({ days }));
  expect(differing((done) => lastDayWithinDays(done, days), luxon)).toEqual([]);
  expect(differing((done) => midnightEndAfterDays(done, days), luxon)).toEqual([]);
});

test('seven years after the end of the month, from every date', () => {
  const luxon = (issued: string) => text(utc(issued).endOf('month').plus({ years: 7 }));
  expect(differing((issued) => addYearsEndOfMonth(issued, 7), luxon)).toEqual([]);
});

/** Zones with and without daylight time, on both hemispheres, half-hour and 45-minute ones, changes at midnight. */
const ZONES = [
  'UTC',
  'America/New_York',
  'America/Los_Angeles',
  'America/Phoenix',
  'America/Anchorage',
  'America/Adak',
  'Pacific/Honolulu',
  'America/Puerto_Rico',
  'America/St_Johns',
  'America/Havana',
  'America/Santiago',
  'Africa/Cairo',
  'Asia/Beirut',
  'Asia/Kathmandu',
  'Atlantic/Azores',
  'Europe/London',
  'Australia/Lord_Howe',
  'Pacific/Chatham',
  'Pacific/Apia',
  'Pacific/Kiritimati',
];

describe.each(ZONES)('in %s', (zone) => {
  const dates = DATES.filter((date) => date >= '2025-01-01' && date <= '2026-12-31');
  const dateThere = (ms: number) => text(DateTime.fromMillis(ms, { zone }));

  it('every day ends where the date on the wall changes, and the next begins there', () => {
    const wrong = dates.filter((date) => {
      const next = text(utc(date).plus({ days: 1 }));
      const end = endOfDay(date, zone);
      const ms = DateTime.fromISO(end).toMillis();
      return dateThere(ms - 1) !== date || dateThere(ms) !== next || startOfDay(next, zone) !== end;
    });
    expect(dates).toHaveLength(730);
    expect(wrong).toEqual([]);
  });

  it('the local date of every 13th hour and of its neighbours to the second', () => {
    const wrong: string[] = [];
    for (let ms = Date.UTC(2026, 0, 1); ms < Date.UTC(2027, 0, 1); ms += 13 * 3_600_000) {
      for (const at of [ms - 1000, ms, ms + 1000]) {
        const instant = DateTime.fromMillis(at, { zone: 'utc' }).toFormat("yyyy-MM-dd'T'HH:mm:ss'Z'");
        if (localDate(instant, zone) !== dateThere(at)) wrong.push(instant);
      }
    }
    expect(wrong).toEqual([]);
  });
});
