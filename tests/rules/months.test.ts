import { describe, expect, it, test } from 'vitest';
import {
  addYearsEndOfMonth,
  endOfDay,
  lastDayOfCalendarMonthAfter,
  lastDayWithinDays,
  localDate,
  midnightEndAfterDays,
  parseCalendarDate,
  parseInstant,
  startOfDay,
} from '../../lib/rules/months';

/** Source of the rows: 14 CFR 91.409(a), 91.411(a), 91.413(a), "within the preceding N calendar months". */
test.each([
  // done, months, last day
  ['2025-03-01', 12, '2026-03-31'],
  ['2025-06-15', 12, '2026-06-30'],
  ['2025-01-31', 12, '2026-01-31'],
  ['2024-02-29', 12, '2025-02-28'],
  ['2023-02-03', 12, '2024-02-29'],
  ['2025-12-31', 12, '2026-12-31'],
  ['2024-11-10', 24, '2026-11-30'],
  ['2024-02-29', 24, '2026-02-28'],
  ['2026-05-02', 12, '2027-05-31'], // annual due 30 June, done early: resets the month
  ['2026-01-31', 1, '2026-02-28'], // counted here: one month after January is February, not March
])('%s and %i calendar months: through %s', (done, months, last) => {
  expect(lastDayOfCalendarMonthAfter(done, months)).toBe(last);
});

/** Source: 14 CFR 91.409(a)(1), annual signed 14 June 2025: flights of 30 June go, of 1 July 2026 do not. */
test.each([
  ['2026-06-29', true],
  ['2026-06-30', true],
  ['2026-07-01', false],
])('annual of 14 June 2025, flight on %s: in date %s', (on, inDate) => {
  expect(on <= lastDayOfCalendarMonthAfter('2025-06-14', 12)).toBe(inDate);
});

/** Source: 14 CFR 91.171(a) (30 days) and 91.207(f)(10)(ii) (90 days after first removal). */
test.each([
  ['2026-03-01', 30, '2026-03-31'],
  ['2026-01-01', 90, '2026-04-01'],
  ['2028-01-01', 90, '2028-03-31'],
  ['2026-12-31', 1, '2027-01-01'],
])('%s and %i days: through %s', (done, days, last) => {
  expect(lastDayWithinDays(done, days)).toBe(last);
});

/** Source: 14 CFR 91.171(a): checked 1 March; 29, 30 and 31 days later. */
test.each([
  ['2026-03-30', true],
  ['2026-03-31', true],
  ['2026-04-01', false],
])('VOR check of 1 March, IFR flight on %s: in date %s', (on, inDate) => {
  expect(on <= lastDayWithinDays('2026-03-01', 30)).toBe(inDate);
});

/** Source: MMEL Policy Letter 25; the example of 26 January from memory, the others counted from the same rule. */
test.each([
  ['2026-01-26', 3, '2026-01-29'],
  ['2026-03-05', 3, '2026-03-08'],
  ['2026-03-05', 10, '2026-03-15'],
  ['2026-03-05', 120, '2026-07-03'],
])('recorded %s, %i days: ends with %s', (recorded, days, last) => {
  expect(midnightEndAfterDays(recorded, days)).toBe(last);
});

/** Source: MMEL Policy Letter 25: the interval ends at the midnight that ends the 29th. */
test.each([
  ['2026-01-30T04:59:59Z', true],
  ['2026-01-30T05:00:00Z', true], // over at midnight exactly
  ['2026-01-30T05:00:01Z', false],
])('category B recorded 26 January in New York, flight over at %s: within %s', (over, within) => {
  expect(over <= endOfDay(midnightEndAfterDays('2026-01-26', 3), 'America/New_York')).toBe(within);
});

/** Source: 14 CFR 47.40(a). */
test.each([
  ['2024-02-10', 7, '2031-02-28'],
  ['2024-02-29', 7, '2031-02-28'],
  ['2023-05-31', 7, '2030-05-31'],
  ['2023-05-01', 7, '2030-05-31'],
  ['2025-02-10', 7, '2032-02-28'], // strict reading: counted from 28 February 2025, not to the 29th
])('issued %s, %i years: through %s', (issued, years, last) => {
  expect(addYearsEndOfMonth(issued, years)).toBe(last);
});

describe('local dates', () => {
  /** Source: IANA time zone rules, worked by hand. */
  it.each([
    ['2026-11-25T04:59:59Z', 'America/New_York', '2026-11-24'],
    ['2026-11-25T05:00:00Z', 'America/New_York', '2026-11-25'],
    ['2026-11-25T05:00:01Z', 'America/New_York', '2026-11-25'],
    ['2026-11-25T12:00:00.250Z', 'Pacific/Chatham', '2026-11-26'],
    ['2026-11-25T09:59:59Z', 'Pacific/Honolulu', '2026-11-24'],
  ])('%s in %s is %s', (instant, zone, date) => {
    expect(localDate(instant, zone)).toBe(date);
  });

  /** Source: US daylight time 2026 (second Sunday of March, first Sunday of November), worked by hand. */
  it.each([
    ['2026-03-08', 'America/New_York', '2026-03-08T05:00:00Z', '2026-03-09T04:00:00Z'], // 23 hours
    ['2026-11-01', 'America/New_York', '2026-11-01T04:00:00Z', '2026-11-02T05:00:00Z'], // 25 hours
    ['2026-06-30', 'UTC', '2026-06-30T00:00:00Z', '2026-07-01T00:00:00Z'],
    ['2026-11-25', 'America/Phoenix', '2026-11-25T07:00:00Z', '2026-11-26T07:00:00Z'],
    // Clocks went from 24:00 to 01:00: 4 November 2018 in Sao Paulo began at 01:00.
    ['2018-11-03', 'America/Sao_Paulo', '2018-11-03T03:00:00Z', '2018-11-04T03:00:00Z'],
    // Samoa left out 30 December 2011.
    ['2011-12-29', 'Pacific/Apia', '2011-12-29T10:00:00Z', '2011-12-30T10:00:00Z'],
  ])('%s in %s runs from %s to %s', (date, zone, start, end) => {
    expect(startOfDay(date, zone)).toBe(start);
    expect(endOfDay(date, zone)).toBe(end);
  });
});

describe('refusals', () => {
  const malformedDates = ['', '2026-02-30', '2026-13-01', '2025-02-29', '2026-1-1', '20260101', '01/02/2026'];
  it.each([...malformedDates, '2026-01-01T00:00', ' 2026-01-01', '+002026-01-01', '2026-01-01\n'])(
    'the date %j is refused everywhere',
    (date) => {
      expect(() => parseCalendarDate(date)).toThrow(RangeError);
      expect(() => lastDayOfCalendarMonthAfter(date, 12)).toThrow(RangeError);
      expect(() => lastDayWithinDays(date, 30)).toThrow(RangeError);
      expect(() => midnightEndAfterDays(date, 3)).toThrow(RangeError);
      expect(() => addYearsEndOfMonth(date, 7)).toThrow(RangeError);
      expect(() => endOfDay(date, 'UTC')).toThrow(RangeError);
      expect(() => startOfDay(date, 'UTC')).toThrow(RangeError);
    },
  );

  it.each(['', '2026-11-25', '2026-11-25T16:58Z', '2026-11-25T16:58:00', '2026-11-25T16:58:00+01:00'])(
    'the instant %j is refused',
    (instant) => {
      expect(() => parseInstant(instant)).toThrow(RangeError);
      expect(() => localDate(instant, 'UTC')).toThrow(RangeError);
    },
  );

  it.each(['2026-02-30T00:00:00Z', '2026-11-25T25:00:00Z'])('the instant %j does not exist', (instant) => {
    expect(() => parseInstant(instant)).toThrow(RangeError);
  });

  it('an unknown zone is refused', () => {
    expect(() => localDate('2026-11-25T16:58:00Z', 'America/Nowhere')).toThrow(RangeError);
    expect(() => endOfDay('2026-11-25', '')).toThrow(RangeError);
  });

  it.each([0, -1, 1.5, Number.NaN, Number.POSITIVE_INFINITY])('the count %d is refused', (count) => {
    expect(() => lastDayOfCalendarMonthAfter('2026-01-01', count)).toThrow(RangeError);
    expect(() => lastDayWithinDays('2026-01-01', count)).toThrow(RangeError);
    expect(() => midnightEndAfterDays('2026-01-01', count)).toThrow(RangeError);
    expect(() => addYearsEndOfMonth('2026-01-01', count)).toThrow(RangeError);
  });

  it('a sum past the year 9999 is refused, because it would no longer compare as text', () => {
    expect(addYearsEndOfMonth('9992-12-01', 7)).toBe('9999-12-31');
    expect(() => addYearsEndOfMonth('9993-12-01', 7)).toThrow(RangeError);
  });
});
