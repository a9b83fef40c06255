/**
 * Recurrence rules of iCalendar: the examples of RFC 5545, section 3.8.5.3, with the dates it prints (seen as quoted in the test
 * suites of open libraries; the RFC's own page was not opened), and ical.js as a second reader of many rules.
 */
import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { occurrences, type Rule } from '@/lib/flights/import/recurrence';
import { ruleOf } from '@/lib/flights/import/rule-of';

const ruleIn = (text: string): Rule => {
  const rule = ruleOf(ICAL.Recur.fromString(text));
  if ('say' in rule) throw new Error(rule.say);
  return rule;
};
const dates = (text: string, start: string, first: string, last: string) =>
  occurrences(ruleIn(text), `${start}T09:00`, first, last)?.map((time) => time.slice(0, 10));

/** "1997-09: 2 4 6; 10: 1" as dates: a year, months, days. */
const printed = (text: string): string[] =>
  text.split('|').flatMap((year) => {
    const [y = '', months = ''] = year.trim().split('/');
    return months.split(';').flatMap((month) => {
      const [m = '', days = ''] = month.trim().split(':');
      return days
        .trim()
        .split(' ')
        .map((day) => `${y}-${m.padStart(2, '0')}-${day.padStart(2, '0')}`);
    });
  });

describe('RFC 5545, 3.8.5.3', () => {
  it.each([
    ['Daily for 10 occurrences', 'FREQ=DAILY;COUNT=10', '1997-09-02', '1997/9:2 3 4 5 6 7 8 9 10 11'],
    [
      'Every 10 days, 5 occurrences',
      'FREQ=DAILY;INTERVAL=10;COUNT=5',
      '1997-09-02',
      '1997/9:2 12 22;10:2 12',
    ],
    [
      'Weekly for 10 occurrences',
      'FREQ=WEEKLY;COUNT=10',
      '1997-09-02',
      '1997/9:2 9 16 23 30;10:7 14 21 28;11:4',
    ],
    [
      'Weekly on Tuesday and Thursday for five weeks',
      'FREQ=WEEKLY;COUNT=10;WKST=SU;BYDAY=TU,TH',
      '1997-09-02',
      '1997/9:2 4 9 11 16 18 23 25 30;10:2',
    ],
    [
      'Every other week on Tuesday and Thursday, for 8 occurrences',
      'FREQ=WEEKLY;INTERVAL=2;COUNT=8;WKST=SU;BYDAY=TU,TH',
      '1997-09-02',
      '1997/9:2 4 16 18 30;10:2 14 16',
    ],
    [
      'Monthly on the first Friday for 10 occurrences',
      'FREQ=MONTHLY;COUNT=10;BYDAY=1FR',
      '1997-09-05',
      '1997/9:5;10:3;11:7;12:5|1998/1:2;2:6;3:6;4:3;5:1;6:5',
    ],
    [
      'Every other month on the first and last Sunday',
      'FREQ=MONTHLY;INTERVAL=2;COUNT=10;BYDAY=1SU,-1SU',
      '1997-09-07',
      '1997/9:7 28;11:2 30|1998/1:4 25;3:1 29;5:3 31',
    ],
    [
      'Second-to-last Monday for 6 months',
      'FREQ=MONTHLY;COUNT=6;BYDAY=-2MO',
      '1997-09-22',
      '1997/9:22;10:20;11:17;12:22|1998/1:19;2:16',
    ],
    [
      'Third-to-last day of the month',
      'FREQ=MONTHLY;BYMONTHDAY=-3',
      '1997-09-28',
      '1997/9:28;10:29;11:28;12:29|1998/1:29;2:26',
    ],
    [
      '2nd and 15th for 10 occurrences',
      'FREQ=MONTHLY;COUNT=10;BYMONTHDAY=2,15',
      '1997-09-02',
      '1997/9:2 15;10:2 15;11:2 15;12:2 15|1998/1:2 15',
    ],
    [
      'First and last day of the month',
      'FREQ=MONTHLY;COUNT=10;BYMONTHDAY=1,-1',
      '1997-09-30',
      '1997/9:30;10:1 31;11:1 30;12:1 31|1998/1:1 31;2:1',
    ],
    [
      'Every 18 months on the 10th to the 15th',
      'FREQ=MONTHLY;INTERVAL=18;COUNT=10;BYMONTHDAY=10,11,12,13,14,15',
      '1997-09-10',
      '1997/9:10 11 12 13 14 15|1999/3:10 11 12 13',
    ],
    [
      'Yearly in June and July',
      'FREQ=YEARLY;COUNT=10;BYMONTH=6,7',
      '1997-06-10',
      '1997/6:10;7:10|1998/6:10;7:10|1999/6:10;7:10|2000/6:10;7:10|2001/6:10;7:10',
    ],
    [
      'Every third year on the 1st, 100th and 200th day',
      'FREQ=YEARLY;INTERVAL=3;COUNT=10;BYYEARDAY=1,100,200',
      '1997-01-01',
      '1997/1:1;4:10;7:19|2000/1:1;4:9;7:18|2003/1:1;4:10;7:19|2006/1:1',
    ],
    [
      'The third Tuesday, Wednesday or Thursday of the month',
      'FREQ=MONTHLY;COUNT=3;BYDAY=TU,WE,TH;BYSETPOS=3',
      '1997-09-04',
      '1997/9:4;10:7;11:6',
    ],
  ])('%s', (_name, rule, start, expected) => {
    const last = printed(expected).at(-1)!;
    expect(dates(rule, start, start, last)).toEqual(printed(expected));
  });

  it.each([
    [
      'Every 20th Monday of the year',
      'FREQ=YEARLY;BYDAY=20MO',
      '1997-05-19',
      '1999-12-31',
      '1997/5:19|1998/5:18|1999/5:17',
    ],
    [
      'Every Thursday in March',
      'FREQ=YEARLY;BYMONTH=3;BYDAY=TH',
      '1997-03-13',
      '1999-12-31',
      '1997/3:13 20 27|1998/3:5 12 19 26|1999/3:4 11 18 25',
    ],
    [
      'Every other week',
      'FREQ=WEEKLY;INTERVAL=2;WKST=SU',
      '1997-09-02',
      '1998-02-17',
      '1997/9:2 16 30;10:14 28;11:11 25;12:9 23|1998/1:6 20;2:3 17',
    ],
    [
      'Every Friday the 13th (its start is excluded)',
      'FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13',
      '1997-09-02',
      '2000-10-31',
      '1998/2:13;3:13;11:13|1999/8:13|2000/10:13',
    ],
    [
      'The first Saturday that follows the first Sunday',
      'FREQ=MONTHLY;BYDAY=SA;BYMONTHDAY=7,8,9,10,11,12,13',
      '1997-09-13',
      '1998-06-30',
      '1997/9:13;10:11;11:8;12:13|1998/1:10;2:7;3:7;4:11;5:9;6:13',
    ],
    [
      'Presidential election day',
      'FREQ=YEARLY;INTERVAL=4;BYMONTH=11;BYDAY=TU;BYMONTHDAY=2,3,4,5,6,7,8',
      '1996-11-05',
      '2004-12-31',
      '1996/11:5|2000/11:7|2004/11:2',
    ],
    [
      'The second-to-last weekday of the month',
      'FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-2',
      '1997-09-29',
      '1998-03-31',
      '1997/9:29;10:30;11:27;12:30|1998/1:29;2:26;3:30',
    ],
    [
      // 3.3.10 and 3.8.5.3, WKST: "the days generated makes a difference because of different WKST values".
      'WKST=MO',
      'FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=MO',
      '1997-08-05',
      '1997-12-31',
      '1997/8:5 10 19 24',
    ],
    [
      'WKST=SU',
      'FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=SU',
      '1997-08-05',
      '1997-12-31',
      '1997/8:5 17 19 31',
    ],
    [
      // 3.3.10: "An example where an invalid date (i.e., February 30) is ignored".
      'An invalid date is ignored',
      'FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5',
      '2007-01-15',
      '2007-12-31',
      '2007/1:15 30;2:15;3:15 30',
    ],
  ])('%s', (_name, rule, start, last, expected) => {
    expect(dates(rule, start, start, last)).toEqual(printed(expected));
  });

  it('is the same from anywhere in the middle, with and without a COUNT', () => {
    expect(dates('FREQ=DAILY;COUNT=10', '1997-09-02', '1997-09-09', '1997-12-31')).toEqual(
      printed('1997/9:9 10 11'),
    );
    expect(dates('FREQ=WEEKLY;INTERVAL=2;WKST=SU', '1997-09-02', '1998-01-21', '1998-02-17')).toEqual(
      printed('1998/2:3 17'),
    );
  });
});

describe('what is not read is said', () => {
  it.each([
    ['FREQ=HOURLY;INTERVAL=3', 'repeats HOURLY'],
    ['FREQ=YEARLY;BYWEEKNO=20;BYDAY=MO', 'BYWEEKNO'],
    ['FREQ=WEEKLY;BYDAY=1MO', 'cannot be read'],
    ['FREQ=DAILY;BYHOUR=0,2,4,6,8,10,12,14,16,18,20,22,23', 'more than 12'],
  ])('%s', (text, say) => {
    const rule = ruleOf(ICAL.Recur.fromString(text));
    expect('say' in rule && rule.say).toContain(say);
  });
});

describe('a rule that no day fits', () => {
  it.each([
    'FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30',
    'FREQ=MONTHLY;BYMONTH=2;BYMONTHDAY=30',
    'FREQ=DAILY;INTERVAL=7;BYDAY=MO',
  ])('%s comes to an end', (text) => {
    expect(dates(text, '2026-12-01', '2026-12-01', '2027-01-30')).toEqual([]);
  });

  it('and one that would have to be counted for ever is given up', () => {
    const rule = { ...ruleIn('FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30'), count: 1 };
    expect(occurrences(rule, '1960-12-01T09:00', '2026-12-01', '2027-01-30')).toBeNull();
  });
});

/** ical.js 2.2.1 is right about these shapes; about others it gives dates that do not exist, or does not come back. */
describe('against ical.js', () => {
  const days = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU'];
  const shape = fc.oneof(
    fc.integer({ min: 1, max: 9 }).map((n) => `FREQ=DAILY;INTERVAL=${n}`),
    fc
      .tuple(fc.integer({ min: 1, max: 4 }), fc.subarray(days, { minLength: 1 }), fc.constantFrom('MO', 'SU'))
      .map(([n, by, week]) => `FREQ=WEEKLY;INTERVAL=${n};BYDAY=${by.join(',')};WKST=${week}`),
    fc
      .tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 4 }), fc.constantFrom(...days))
      .map(([n, at, day]) => `FREQ=MONTHLY;INTERVAL=${n};BYDAY=${at}${day}`),
    fc
      .tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 28 }))
      .map(([n, day]) => `FREQ=MONTHLY;INTERVAL=${n};BYMONTHDAY=${day}`),
  );

  it('gives the same times', () => {
    fc.assert(
      fc.property(shape, fc.integer({ min: 0, max: 400 }), (text, offset) => {
        const start = new Date(Date.UTC(2025, 0, 1 + offset)).toISOString().slice(0, 10);
        const iterator = ICAL.Recur.fromString(text).iterator(
          ICAL.Time.fromDateTimeString(`${start}T09:00:00`),
        );
        const theirs = Array.from({ length: 12 }, () => String(iterator.next()).slice(0, 10))
          // It puts the start first whether it fits or not; what is before the start it may give, too.
          .filter((date) => date > start);
        const last = theirs.at(-1)!;
        expect(dates(text, start, start, last)?.filter((date) => date > start)).toEqual(theirs);
      }),
      { numRuns: 300 },
    );
  });
});
