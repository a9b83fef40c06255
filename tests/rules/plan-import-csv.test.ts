/**
 * Flights out of a CSV. Sources: RFC 4180 (quoting, from memory), ISO 8601 (offsets), our own documented columns. Nothing is
 * guessed and everything that is wrong is told at once, row by row.
 */
import { describe, expect, test } from 'vitest';
import { checkRows, MOST_FLIGHTS, type RowDoes } from '@/lib/flights/import/check-rows';
import { readCsv } from '@/lib/flights/import/csv';
import { COLUMN_DOCS, csvTemplate } from '@/lib/flights/import/csv-columns';
import { COLUMNS, errorInWords } from '@/lib/flights/import/parsed';
import { standingInWords } from '@/lib/flights/import/standing-in-words';
import { CONTEXT, withStanding } from '../fixtures/plan-files';
import { inEnglish } from '@/lib/words/translate';

const check = (text: string, context = CONTEXT) => checkRows(readCsv(text), context);
const HEAD = 'aircraft,pilot_email,from,to,depart,arrive,rules,purpose,hours,words,id';
const file = (...rows: readonly string[]) => [HEAD, ...rows].join('\r\n');
const flightAt = (times: string, more = ',,,,') => `N0AA,,,,${times},${more}`;
const errors = (text: string) => {
  const { errors: ofFile, rows } = check(text);
  return [
    ...ofFile,
    ...rows.flatMap(({ where, errors: ofRow }) => ofRow.map((one) => errorInWords(where, one))),
  ];
};

describe('a row', () => {
  test('becomes a flight, times at their places', () => {
    const [row] = check(
      file(
        'n0aa,PIA@school.example,zzqb,ZZTM,2026-12-01 14:30,2026-12-01 17:00,vfr,Private,1.4,Lesson 4,A-1',
      ),
    ).rows;
    expect(row).toMatchObject({
      where: 'Row 2',
      uid: 'csv: A-1',
      does: 'add',
      errors: [],
      flight: {
        aircraftId: 'a1',
        pilotId: 'p1',
        // Chicago is six hours behind UTC, Detroit five.
        departAt: '2026-12-01T20:30:00Z',
        arriveAt: '2026-12-01T22:00:00Z',
        plannedTenths: 14,
        words: 'Lesson 4',
        fromIdent: 'ZZQB',
        toIdent: 'ZZTM',
        rules: 'VFR',
        purpose: 'private',
      },
    });
  });

  test('without places is one of the aircraft’s base; what is left open stays open', () => {
    const [row] = check(file('N0BB,,,,2026-12-01 14:30,2026-12-01 16:00,,,,,')).rows;
    expect(row?.flight).toMatchObject({
      pilotId: null,
      departAt: '2026-12-01T19:30:00Z',
      plannedTenths: null,
      fromIdent: null,
      toIdent: null,
      rules: null,
      purpose: null,
      words: '',
    });
  });

  test.each([
    ['2026-12-01T14:30', '2026-12-01T20:30:00Z'],
    ['2026-12-01 14:30:00', '2026-12-01T20:30:00Z'],
    ['2026-12-01T14:30Z', '2026-12-01T14:30:00Z'],
    ['2026-12-01T14:30:00+01:00', '2026-12-01T13:30:00Z'],
    ['2026-12-01 14:30-0600', '2026-12-01T20:30:00Z'],
  ])('departs %s, which is %s', (written, at) => {
    expect(check(file(flightAt(`${written},2026-12-02 02:00Z`))).rows[0]?.flight?.departAt).toBe(at);
  });

  test.each([
    '1.12.2026 14:30',
    '12/1/2026 2:30 PM',
    '2026-12-01',
    '2026-12-01 14:30:30',
    '2026-13-01 14:30',
    '2026-02-30 14:30',
    '2026-12-01 24:00',
    '2026-12-01 14:30 CST',
    '46357.6',
  ])('%s is no time', (written) => {
    expect(errors(file(flightAt(`${written},2026-12-01 23:00`)))).toEqual([
      `Row 2, depart: ${JSON.stringify(written)} is no time. Write it like 2026-12-01 14:30.`,
    ]);
  });
});

// 14 March and 7 November 2027, Chicago: 02:00 becomes 03:00, and 02:00 becomes 01:00 (tz database).
describe('local times as clocks change', () => {
  const departs = (written: string) => check(file(flightAt(`${written},2027-03-14 12:00Z`))).rows[0];
  test.each([
    ['2027-03-14 01:59', '2027-03-14T07:59:00Z'],
    ['2027-03-14 02:00', null],
    ['2027-03-14 02:59', null],
    ['2027-03-14 03:00', '2027-03-14T08:00:00Z'],
  ])('forward: %s is %s', (written, at) => {
    const row = departs(written);
    expect(row?.flight?.departAt ?? null).toBe(at);
    expect(row?.errors.map(({ say }) => say) ?? []).toEqual(
      at === null ? [`${written} does not exist at ZZQB: clocks go forward then.`] : [],
    );
  });

  test.each([
    ['2026-11-01 00:59', '2026-11-01T05:59:00Z'],
    ['2026-11-01 01:00', null],
    ['2026-11-01 01:59', null],
    ['2026-11-01 02:00', '2026-11-01T08:00:00Z'],
  ])('back: %s is %s', (written, at) => {
    const before = { ...CONTEXT, now: '2026-10-30T12:00:00Z' };
    const [row] = check(file(flightAt(`${written},2026-11-01 14:00Z`)), before).rows;
    expect(row?.flight?.departAt ?? null).toBe(at);
    if (at === null) {
      expect(row?.errors[0]?.say).toBe(
        `${written} is there twice at ZZQB: clocks go back then. Write it with its offset: ${written}-05:00 or ${written}-06:00.`,
      );
    }
  });

  test('with its offset the doubled hour is told apart', () => {
    const before = { ...CONTEXT, now: '2026-10-30T12:00:00Z' };
    const at = (offset: string) =>
      check(file(flightAt(`2026-11-01 01:30${offset},2026-11-01 14:00Z`)), before).rows[0]?.flight?.departAt;
    expect([at('-05:00'), at('-06:00')]).toEqual(['2026-11-01T06:30:00Z', '2026-11-01T07:30:00Z']);
  });

  test('a place on the other side of the date line counts by its own clock', () => {
    const [row] = check(file('N0AA,,NZCI,ZZQB,2026-12-02 09:00,2026-12-01 20:00,,,,,')).rows;
    expect(row).toMatchObject({
      does: 'add',
      flight: { departAt: '2026-12-01T19:15:00Z', arriveAt: '2026-12-02T02:00:00Z' },
    });
  });
});

describe('everything wrong is told at once', () => {
  test('by row and column', () => {
    const wrong = file(
      'N0AA,,,,2026-12-01 14:30,2026-12-01 16:00,VFR,private,1.2,Right,1',
      'N0ZZ,nobody@else.example,ZZXX,KXXX,tomorrow,,SVFR,fun,1.25,x,2',
      'N0AA,moira@school.example,,,2026-12-01 14:30,2026-12-01 14:30,,,,x,3',
      'N0AA,gone@school.example,,,2026-12-01 14:30,2026-12-01 15:00,,,0.6,x,4',
    );
    expect(errors(wrong)).toEqual([
      'Row 3, arrive: It is missing.',
      'Row 3, aircraft: "N0ZZ" is no aircraft in service here.',
      'Row 3, pilot_email: "nobody@else.example" is the address of nobody here.',
      'Row 3, from: "ZZXX" is neither a base here nor in the airport file.',
      'Row 3, to: "KXXX" is neither a base here nor in the airport file.',
      'Row 3, rules: "SVFR" is none of VFR, IFR.',
      'Row 3, purpose: "fun" is none of instruction-for-hire, carriage-for-hire, student-solo, private, check-flight, to-inspection.',
      'Row 3, hours: "1.25" is no time in tenths of an hour, for example 1.2.',
      'Row 3, depart: "tomorrow" is no time. Write it like 2026-12-01 14:30.',
      'Row 4, pilot_email: No pilot certificate of Moira is on file.',
      'Row 4, arrive: The arrival must be later than the departure.',
      'Row 5, pilot_email: Gone has left.',
      'Row 5, hours: More hours than lie between departure and arrival.',
    ]);
    expect(check(wrong).rows.map(({ does }) => does)).toEqual(['add', 'wrong', 'wrong', 'wrong']);
  });

  test('too many and too few cells, an empty line between, the same id twice, the same row twice', () => {
    const row = 'N0AA,,,,2026-12-01 14:30,2026-12-01 16:00,,,,';
    expect(
      errors(
        file(`${row},,`, '', `N0AA,,,,2026-12-01 14:30`, `${row}x,7`, `${row}y,7`, `${row}z,`, `${row}z,`),
      ),
    ).toEqual([
      'Row 2: It has 12 cells, the head has 11.',
      'Row 4: It has 5 cells, the head has 11.',
      'Row 4, arrive: It is missing.',
      'Row 6, id: It is the id of row 5 too.',
      'Row 8: It says the same as row 7. Give them ids if both are flights.',
    ]);
  });

  // Our own limits; the flight is 24 h long, and a year is 366 days here.
  test.each([
    ['2026-12-01 14:30,2026-12-02 14:29', []],
    ['2026-12-01 14:30,2026-12-02 14:30', []],
    ['2026-12-01 14:30,2026-12-02 14:31', ['Row 2, arrive: One flight lasts 24 hours at most.']],
    ['2027-11-26 08:59,2027-11-26 10:00', []],
    ['2027-11-26 09:00,2027-11-26 10:00', []],
    ['2027-11-26 09:01,2027-11-26 10:00', ['Row 2, depart: It is more than a year ahead.']],
  ])('%s', (times, expected) => {
    expect(errors(file(flightAt(times)))).toEqual(expected);
  });

  // It is 09:00 at the base. What is over is skipped, right or wrong, and said.
  test.each([
    ['2026-11-25 08:00,2026-11-25 08:59', 'skip'],
    ['2026-11-25 08:00,2026-11-25 09:00', 'skip'],
    ['2026-11-25 08:00,2026-11-25 09:01', 'add'],
  ])('%s: %s', (times, does) => {
    expect(check(file(flightAt(times))).rows[0]?.does).toBe(does);
  });
});

describe('the file', () => {
  const ROW = 'N0AA,,,,2026-12-01 14:30,2026-12-01 16:00,,,,';
  const words = (text: string) => check(text).rows.map(({ flight }) => flight?.words);

  test('quotes, commas, quotation marks and line ends in a cell (RFC 4180, 2.5 to 2.7)', () => {
    expect(words(file(`${ROW.slice(0, -1)},"Pattern, then ""short"" field\r\nand back",9`))).toEqual([
      'Pattern, then "short" field\r\nand back',
    ]);
  });

  test('semicolons, a byte order mark, LF, no end of the last line, columns in another order', () => {
    const text = '\uFEFFdepart;arrive;words;aircraft\n2026-12-01 14:30;2026-12-01 16:00;a, b;N0AA';
    expect(check(text)).toMatchObject({ errors: [], rows: [{ does: 'add', flight: { words: 'a, b' } }] });
  });

  test('a semicolon in a file of commas is part of the words', () => {
    expect(words(file(`${ROW.slice(0, -1)},a; b,9`))).toEqual(['a; b']);
  });

  test('what looks like a formula stays what it is', () => {
    const cell = '=HYPERLINK("http://x.example";"go")';
    expect(
      words(
        file(`${ROW.slice(0, -1)},"${cell.replaceAll('"', '""')}",9`, `${ROW.slice(0, -1)},+1-2@SUM(A1),10`),
      ),
    ).toEqual([cell, '+1-2@SUM(A1)']);
  });

  test('columns that are not read are told; missing and doubled ones are refused', () => {
    expect(check('aircraft,depart,arrive,pilot\nN0AA,2026-12-01 14:30,2026-12-01 16:00,Pia').notes).toEqual([
      'Columns that are not read: pilot.',
    ]);
    expect(errors('aircraft,depart,words,words\nN0AA,2026-12-01 14:30,,')).toEqual([
      'Row 1: the column arrive is missing.',
      'Row 1: the column words is there twice.',
    ]);
    expect(errors('')).toEqual(['Row 1: the names of the columns are missing.']);
    expect(errors(HEAD)).toEqual(['There is no flight in the file.']);
  });

  test('a quotation mark without its other half', () => {
    expect(errors(file('N0AA,"oops,,,2026-12-01 14:30,2026-12-01 16:00'))[0]).toMatch(
      /^This is not a CSV file/,
    );
  });

  test('a null character, which the database could not hold, is left out', () => {
    expect(words(file(`${ROW.slice(0, -1)},a\u0000b\u0007,9`))).toEqual(['ab']);
  });

  test.each([
    [MOST_FLIGHTS - 1, 0],
    [MOST_FLIGHTS, 0],
    [MOST_FLIGHTS + 1, 1],
  ])('%d flights: %d errors', (count, found) => {
    const rows = Array.from({ length: count }, (_none, index) => `${ROW}${index},${index}`);
    const checked = check(file(...rows));
    expect(checked.errors).toHaveLength(found);
    expect(checked.rows).toHaveLength(found === 0 ? count : 0);
  });
});

describe('again', () => {
  const text = file('N0AA,,,,2026-12-01 14:30,2026-12-01 16:00,,,,Lesson,A-1');
  const [first] = check(text).rows;
  const standing = { ...first!.flight!, id: 'f1', uid: first!.uid, released: false };

  test('the same is kept, another time replaces, a released one is left alone', () => {
    expect(check(text, withStanding(standing)).rows[0]).toMatchObject({ does: 'keep', standingId: 'f1' });
    const moved = text.replace('16:00', '16:30');
    expect(check(moved, withStanding(standing)).rows[0]).toMatchObject({ does: 'replace', standingId: 'f1' });
    const released = withStanding({ ...standing, released: true });
    expect(check(text, released).rows[0]?.does).toBe('keep');
    expect(check(moved, released).rows[0]?.does).toBe('released');
  });

  // The flight is N0AA on 1 December by the clock of its base. An id used again would wipe out a flight nobody called off.
  test.each([
    ['another aircraft', 'N0BB', '2026-12-01', 'replace'],
    ['another day', 'N0AA', '2026-12-02', 'replace'],
    ['another aircraft on another day', 'N0BB', '2026-12-02', 'wrong'],
  ])('%s under the same id: %s, %s', (_name, aircraft, day, does) => {
    const changed = text.replace('N0AA', aircraft).replaceAll('2026-12-01', day);
    expect(check(changed, withStanding(standing)).rows[0]?.does).toBe(does);
  });

  test('an id used again is told with the flight it has, standing, released or over', () => {
    const other = text.replace('N0AA', 'N0BB').replaceAll('2026-12-01', '2026-12-02');
    const say = (plan: typeof standing) => {
      const [row] = check(other, withStanding(plan)).rows;
      return row?.errors.map((one) => errorInWords(row.where, one));
    };
    const stands = 'Row 2, id: id A-1 is another flight already planned: N0AA, 1 Dec 2026 14:30.';
    expect(say(standing)).toEqual([`${stands} Give this one an id of its own, or cancel that one first.`]);
    expect(say({ ...standing, released: true })).toEqual([`${stands} Give this one an id of its own.`]);
    const over = { departAt: '2026-11-20T15:00:00Z', arriveAt: '2026-11-20T16:00:00Z' };
    expect(say({ ...standing, ...over })?.[0]).toMatch(
      /N0AA, 20 Nov 2026 09:00\. Give this one an id of its own\.$/,
    );
    expect(say({ ...standing, aircraftId: 'retired' })?.[0]).toContain(
      'an aircraft out of service, 1 Dec 2026',
    );
  });

  test('what a file would do to flights that stand is said before it is taken in', () => {
    const said = (does: readonly RowDoes[]) =>
      standingInWords(
        inEnglish,
        does.map((one) => ({ does: one })),
      );
    expect(said(['add', 'keep', 'released', 'skip', 'wrong'])).toBeNull();
    expect(said(['replace', 'add'])).toBe('This file replaces 1 flight that stands.');
    expect(said(['replace', 'cancel', 'replace'])).toBe(
      'This file replaces 2 flights that stand and cancels 1 flight that stands.',
    );
    expect(said(['cancel', 'cancel'])).toBe('This file cancels 2 flights that stand.');
  });

  test('without an id a row is known by what it says', () => {
    const [one] = check(text.replace('A-1', '')).rows;
    const [same] = check(text.replace('A-1', '')).rows;
    const [other] = check(text.replace('A-1', '').replace('Lesson', 'Lesson 5')).rows;
    expect(one?.uid).toBe(same?.uid);
    expect(one?.uid).not.toBe(other?.uid);
  });

  test('one that was cancelled here is planned again, and that is said', () => {
    const [row] = check(text, { ...CONTEXT, cancelledHere: new Set(['csv: A-1']) }).rows;
    expect(row).toMatchObject({
      does: 'add',
      notes: ['It was planned and cancelled before. It will be planned again.'],
    });
  });
});

test('the documentation has every column once, in order, and the template is a file of them', () => {
  expect(COLUMN_DOCS.map(({ column }) => column)).toEqual([...COLUMNS]);
  expect(check(csvTemplate(), { ...CONTEXT, now: '2026-11-25T15:00:00Z' }).rows).toMatchObject([
    { where: 'Row 2', does: 'wrong', errors: [{ column: 'aircraft' }, { column: 'pilot_email' }] },
  ]);
});
