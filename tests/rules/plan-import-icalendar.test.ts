/**
 * Flights out of an iCalendar file. Source: RFC 5545, the section beside each check (its text from memory; the examples as quoted
 * in open libraries). Where the RFC leaves something open, nothing is guessed.
 */
import { describe, expect, test } from 'vitest';
import { checkRows } from '@/lib/flights/import/check-rows';
import { readICalendar, SERIES_DAYS } from '@/lib/flights/import/icalendar';
import { errorInWords } from '@/lib/flights/import/parsed';
import { AT, calendarOf, CONTEXT, withStanding } from '../fixtures/plan-files';

const check = (text: string, context = CONTEXT) => checkRows(readICalendar(text, context.now), context);
const one = (event: string, head: string[] = [], context = CONTEXT) =>
  check(calendarOf([event], head), context).rows[0]!;
const errors = (text: string, context = CONTEXT) => {
  const { errors: ofFile, rows } = check(text, context);
  return [
    ...ofFile,
    ...rows.flatMap(({ where, errors: found }) => found.map((error) => errorInWords(where, error))),
  ];
};
const departures = (event: string, context = CONTEXT) =>
  check(calendarOf([event]), context).rows.map(({ flight }) =>
    flight?.departAt.replace(':00Z', 'Z').replace(':00.000Z', 'Z'),
  );

const LESSON = `UID:u1
  RESOURCES:N0AA
  DTSTART:20261201T143000Z
  DTEND:20261201T160000Z`;

describe('an event', () => {
  test('becomes a flight', () => {
    const row = one(`${LESSON}
      SUMMARY:Lesson 4
      DESCRIPTION:Pattern work
      ATTENDEE;CN=Pia:mailto:PIA@school.example`);
    expect(row).toMatchObject({
      where: 'Event 1',
      uid: 'ics: u1',
      does: 'add',
      flight: {
        aircraftId: 'a1',
        pilotId: 'p1',
        departAt: '2026-12-01T14:30:00Z',
        arriveAt: '2026-12-01T16:00:00Z',
        words: 'Lesson 4\nPattern work',
        fromIdent: null,
        rules: null,
      },
    });
  });

  test('folded lines (3.1) and escaped text (3.3.11) are read as what they stand for', () => {
    const text = calendarOf([
      `${LESSON}
      SUMMARY:Over the hills\\, then back\\; bring
      DESCRIPTION:A first line\\nand a second with a \\\\ in it`,
    ]).replace('then back', 'th\r\n en ba\r\n\tck');
    expect(check(text).rows[0]?.flight?.words).toBe(
      'Over the hills, then back; bring\nA first line\nand a second with a \\ in it',
    );
  });

  test('DURATION instead of DTEND (3.6.1)', () => {
    expect(one('UID:u1\nRESOURCES:N0AA\nDTSTART:20261201T143000Z\nDURATION:PT1H30M').flight?.arriveAt).toBe(
      '2026-12-01T16:00:00.000Z',
    );
  });

  test.each([
    ['RESOURCES:N0AA', 'a1'],
    ['RESOURCES:Projector,N0BB', 'a2'],
    ['LOCATION:N0BB', 'a2'],
    ['SUMMARY:Pia on n0aa\\, pattern', 'a1'],
    // The first that names one of ours counts.
    ['RESOURCES:N0AA\nSUMMARY:N0BB is down', 'a1'],
  ])('its aircraft from %s', (lines, aircraftId) => {
    const row = one(`UID:u1\nDTSTART:20261201T143000Z\nDTEND:20261201T160000Z\n${lines}`);
    expect(row.flight?.aircraftId).toBe(aircraftId);
  });

  test.each([
    [
      'SUMMARY:Staff meeting',
      'Neither RESOURCES nor LOCATION nor SUMMARY names an aircraft in service here.',
    ],
    ['SUMMARY:XN0AAX', 'Neither RESOURCES nor LOCATION nor SUMMARY names an aircraft in service here.'],
    ['RESOURCES:N0AA,N0BB', 'It names N0AA and N0BB; one flight is of one aircraft.'],
  ])('no aircraft by %s', (lines, say) => {
    expect(
      errors(calendarOf([`UID:u1\nDTSTART:20261201T143000Z\nDTEND:20261201T160000Z\n${lines}`])),
    ).toEqual([`Event 1, aircraft: ${say}`]);
  });

  test.each([
    ['ATTENDEE:mailto:pia@school.example', 'p1', 0],
    ['ORGANIZER:mailto:ivo@school.example', 'p2', 0],
    ['ATTENDEE:mailto:moira@school.example\nORGANIZER:MAILTO:ivo@school.example', 'p2', 0],
    ['ATTENDEE:mailto:pia@school.example\nATTENDEE:mailto:ivo@school.example', null, 1],
    ['ATTENDEE:mailto:nobody@else.example', null, 0],
    ['ATTENDEE:mailto:gone@school.example', null, 0],
  ])('its pilot from %s: %s', (lines, pilotId, notes) => {
    const row = one(`${LESSON}\n${lines}`);
    expect([row.does, row.flight?.pilotId, row.notes.length]).toEqual(['add', pilotId, notes]);
  });
});

describe('times (3.3.5)', () => {
  const departs = (start: string, head: string[] = [], context = CONTEXT) =>
    one(`UID:u1\nRESOURCES:N0BB\n${start}\nDURATION:PT1H`, head, context);

  test('UTC, with the name of a zone, and floating: then it is the time of the aircraft’s base', () => {
    expect(departs('DTSTART:20261201T143000Z').flight?.departAt).toBe('2026-12-01T14:30:00Z');
    expect(departs('DTSTART;TZID=America/Denver:20261201T143000').flight?.departAt).toBe(
      '2026-12-01T21:30:00Z',
    );
    // N0BB stands at Detroit.
    expect(departs('DTSTART:20261201T143000').flight?.departAt).toBe('2026-12-01T19:30:00Z');
  });

  test('a zone of the file’s own (VTIMEZONE, 3.6.5), also over a change of clocks', () => {
    const own = [
      'BEGIN:VTIMEZONE',
      'TZID:School time',
      'BEGIN:STANDARD',
      'DTSTART:20201101T020000',
      'TZOFFSETFROM:-0400',
      'TZOFFSETTO:-0500',
      'RRULE:FREQ=YEARLY;BYMONTH=11;BYDAY=1SU',
      'END:STANDARD',
      'BEGIN:DAYLIGHT',
      'DTSTART:20200308T020000',
      'TZOFFSETFROM:-0500',
      'TZOFFSETTO:-0400',
      'RRULE:FREQ=YEARLY;BYMONTH=3;BYDAY=2SU',
      'END:DAYLIGHT',
      'END:VTIMEZONE',
    ];
    expect(departs('DTSTART;TZID=School time:20261201T143000', own).flight?.departAt).toBe(
      '2026-12-01T19:30:00.000Z',
    );
    expect(departs('DTSTART;TZID=School time:20270701T143000', own).flight?.departAt).toBe(
      '2027-07-01T18:30:00.000Z',
    );
  });

  test('a zone that is nowhere is an error of the row', () => {
    expect(departs('DTSTART;TZID=Nowhere:20261201T143000').errors).toEqual([
      { column: 'depart', say: 'The time zone Nowhere is neither in the file nor in the tz database.' },
    ]);
  });

  // "interpreted using the UTC offset before the gap"; "the first occurrence of the referenced time". Chicago.
  test.each([
    ['20270314T013000', '2027-03-14T07:30:00Z'],
    ['20270314T023000', '2027-03-14T08:30:00Z'],
    ['20270314T033000', '2027-03-14T08:30:00Z'],
  ])('%s in the zone and floating is %s', (local, at) => {
    expect(departs(`DTSTART;TZID=America/Chicago:${local}`).flight?.departAt).toBe(at);
    const floating = one(`UID:u1\nRESOURCES:N0AA\nDTSTART:${local}\nDURATION:PT1H`);
    expect(floating).toMatchObject({ does: 'add', flight: { departAt: at } });
    // An hour is an hour, whatever the clocks do.
    expect(Date.parse(floating.flight?.arriveAt ?? '') - Date.parse(at)).toBe(3_600_000);
    expect(floating.notes).toHaveLength(local.includes('T02') ? 1 : 0);
  });

  test('the doubled hour is its first', () => {
    const before = { ...CONTEXT, now: '2026-10-30T12:00:00Z' };
    const at = departs('DTSTART;TZID=America/Chicago:20261101T013000', [], before).flight?.departAt;
    expect(at).toBe('2026-11-01T06:30:00Z');
  });

  test.each([
    [
      'DTSTART;VALUE=DATE:20261201\nDTEND;VALUE=DATE:20261202',
      'depart',
      'It is an all-day event: a flight has a time.',
    ],
    ['DTSTART:20261201T143000Z', 'arrive', 'It has neither DTEND nor DURATION.'],
    ['DTEND:20261201T143000Z', 'depart', 'It has no DTSTART.'],
    [
      'DTSTART:20261201T143000Z\nDTEND:20261201T143000Z',
      'arrive',
      'The arrival must be later than the departure.',
    ],
    [
      'DTSTART:20261201T143000Z\nDTEND:20261201T160000',
      'arrive',
      'Of DTSTART and DTEND one has a time zone and one has none.',
    ],
    ['DTSTART:20260230T143000Z\nDTEND:20261201T160000Z', 'depart', 'DTSTART is no date with a time.'],
    ['DTSTART:banana\nDTEND:20261201T160000Z', 'depart', 'DTSTART is no date with a time.'],
  ])('%s', (times, column, say) => {
    const row = one(`UID:u1\nRESOURCES:N0AA\n${times}`);
    expect(row.errors).toEqual([{ column, say }]);
    expect(row.does).toBe('wrong');
  });

  test.each([
    ['20261125T145900Z', 'skip'],
    ['20261125T150000Z', 'skip'],
    ['20261125T150100Z', 'add'],
  ])('over at %s: %s', (end, does) => {
    expect(one(`UID:u1\nRESOURCES:N0AA\nDTSTART:20261125T140000Z\nDTEND:${end}`).does).toBe(does);
  });
});

describe('series (3.8.5)', () => {
  const daily = (rule: string, more = '') =>
    `UID:s1\nRESOURCES:N0AA\nDTSTART;TZID=America/Chicago:20261201T090000\nDURATION:PT1H\nRRULE:${rule}${more}`;

  test('COUNT, and UNTIL to its own last moment (3.3.10)', () => {
    expect(departures(daily('FREQ=DAILY;COUNT=3'))).toEqual([
      '2026-12-01T15:00Z',
      '2026-12-02T15:00Z',
      '2026-12-03T15:00Z',
    ]);
    const last = (until: string) => departures(daily(`FREQ=DAILY;UNTIL=${until}`)).at(-1);
    expect([last('20261203T145959Z'), last('20261203T150000Z'), last('20261203T150001Z')]).toEqual([
      '2026-12-02T15:00Z',
      '2026-12-03T15:00Z',
      '2026-12-03T15:00Z',
    ]);
    expect(last('20261203')).toBe('2026-12-03T15:00Z');
  });

  test('a floating series is one of the base, and stays on its clock', () => {
    const floating =
      'UID:s1\nRESOURCES:N0AA\nDTSTART:20270313T090000\nDTEND:20270313T100000\nRRULE:FREQ=DAILY;COUNT=2';
    const march = { ...CONTEXT, now: '2027-03-10T12:00:00Z' };
    const { rows } = check(calendarOf([floating]), march);
    expect(rows.map(({ uid, flight }) => [uid, flight?.departAt])).toEqual([
      ['ics: s1 @ 2027-03-13T09:00', '2027-03-13T15:00:00Z'],
      ['ics: s1 @ 2027-03-14T09:00', '2027-03-14T14:00:00Z'],
    ]);
  });

  test('EXDATE takes out, in its own zone or in UTC; RDATE puts in', () => {
    const three = (more: string) => departures(daily('FREQ=DAILY;COUNT=3', more));
    expect(three('\nEXDATE;TZID=America/Chicago:20261202T090000')).toEqual([
      '2026-12-01T15:00Z',
      '2026-12-03T15:00Z',
    ]);
    expect(three('\nEXDATE:20261202T150000Z,20261203T150000Z')).toEqual(['2026-12-01T15:00Z']);
    expect(three('\nEXDATE;VALUE=DATE:20261201')).toEqual(['2026-12-02T15:00Z', '2026-12-03T15:00Z']);
    expect(three('\nRDATE;TZID=America/Chicago:20261210T120000')).toContain('2026-12-10T18:00Z');
  });

  test('a lesson at nine stays at nine as clocks change', () => {
    const march = { ...CONTEXT, now: '2027-03-10T12:00:00Z' };
    const event = daily('FREQ=DAILY;COUNT=200');
    expect(departures(event, march).slice(0, 6)).toEqual([
      '2027-03-10T15:00Z',
      '2027-03-11T15:00Z',
      '2027-03-12T15:00Z',
      '2027-03-13T15:00Z',
      '2027-03-14T14:00Z',
      '2027-03-15T14:00Z',
    ]);
  });

  test(`${SERIES_DAYS} days ahead and no further; what is over is not in it`, () => {
    const found = departures(
      'UID:s1\nRESOURCES:N0AA\nDTSTART:20200101T150000Z\nDURATION:PT1H\nRRULE:FREQ=DAILY',
    );
    // It is 15:00 UTC: today's departs now, the last one exactly sixty days from now.
    expect([found[0], found.at(-1), found.length]).toEqual(['2026-11-25T15:00Z', '2027-01-24T15:00Z', 61]);
  });

  test('one time changed (RECURRENCE-ID, 3.8.4.4) takes the place of it; one cancelled is not planned', () => {
    const series = daily('FREQ=DAILY;COUNT=3');
    const moved = `UID:s1\nRESOURCES:N0BB\nRECURRENCE-ID;TZID=America/Chicago:20261202T090000
      DTSTART;TZID=America/Chicago:20261202T130000\nDURATION:PT1H`;
    const off = `UID:s1\nRESOURCES:N0AA\nRECURRENCE-ID:20261203T150000Z\nSTATUS:CANCELLED
      DTSTART:20261203T150000Z\nDURATION:PT1H`;
    const { rows } = check(calendarOf([series, moved, off]));
    expect(rows.map(({ does, flight }) => [does, flight?.departAt ?? null])).toEqual([
      ['add', '2026-12-01T15:00:00Z'],
      ['add', '2026-12-02T19:00:00Z'],
      ['skip', null],
    ]);
    expect(rows[1]).toMatchObject({ uid: 'ics: s1 @ 2026-12-02T15:00Z', flight: { aircraftId: 'a2' } });
  });

  test.each([
    ['FREQ=HOURLY', 'A flight that repeats HOURLY is not read, only by days and longer.'],
    [
      'FREQ=WEEKLY;BYDAY=MO',
      'Its first time does not fit its own repeat rule; RFC 5545 leaves open what that means.',
    ],
    ['FREQ=DAILY;COUNT=90000', null],
  ])('%s', (rule, say) => {
    expect(errors(calendarOf([daily(rule)]))).toEqual(say === null ? [] : [`Event 1, depart: ${say}`]);
  });

  test('a change of this and all later times is not read', () => {
    const moved = `UID:s1\nRESOURCES:N0AA\nRECURRENCE-ID;RANGE=THISANDFUTURE:20261202T150000Z\n${'DTSTART:20261202T170000Z'}\nDURATION:PT1H`;
    expect(errors(calendarOf([moved]))).toEqual([
      'Event 1, id: A change of this and all later times (RANGE) is not read.',
    ]);
  });
});

describe('called off, changed, sent again', () => {
  const standing = (text: string, released = false) =>
    withStanding(
      ...check(text).rows.flatMap(({ flight, uid }, index) =>
        flight ? [{ ...flight, uid, id: `f${index}`, released }] : [],
      ),
    );
  const text = calendarOf([LESSON]);
  const does = (file: string, context: typeof CONTEXT) =>
    check(file, context).rows.map((row) => [row.does, row.standingId]);

  test('the same again is kept; STATUS:CANCELLED (3.8.1.11) and METHOD:CANCEL (RFC 5546) call off', () => {
    expect(does(text, standing(text))).toEqual([['keep', 'f0']]);
    expect(does(calendarOf([`${LESSON}\nSTATUS:CANCELLED`]), standing(text))).toEqual([['cancel', 'f0']]);
    expect(does(calendarOf([LESSON], ['METHOD:CANCEL']), standing(text))).toEqual([['cancel', 'f0']]);
    expect(does(calendarOf([`${LESSON}\nSTATUS:CANCELLED`]), CONTEXT)).toEqual([['skip', null]]);
    expect(does(calendarOf([`${LESSON}\nSTATUS:CANCELLED`]), standing(text, true))).toEqual([
      ['released', 'f0'],
    ]);
  });

  test('a cancelled event need not name an aircraft any more', () => {
    const bare = 'UID:u1\nSTATUS:CANCELLED\nDTSTART:20261201T143000Z\nDTEND:20261201T160000Z';
    expect(does(calendarOf([bare]), standing(text))).toEqual([['cancel', 'f0']]);
  });

  test('a series that loses a time calls that one off, and one that is called off all of them', () => {
    const series = (more: string) =>
      calendarOf([
        `UID:s1\nRESOURCES:N0AA\nDTSTART:20261201T150000Z\nDURATION:PT1H\nRRULE:FREQ=DAILY;COUNT=3${more}`,
      ]);
    const here = standing(series(''));
    expect(does(series('\nEXDATE:20261202T150000Z'), here)).toEqual([
      ['keep', 'f0'],
      ['keep', 'f2'],
      ['cancel', 'f1'],
    ]);
    const off = does(series('\nSTATUS:CANCELLED'), here).filter(([what]) => what === 'cancel');
    expect(off).toEqual([
      ['cancel', 'f0'],
      ['cancel', 'f1'],
      ['cancel', 'f2'],
    ]);
    // One time alone says nothing of the others.
    const alone = `UID:s1\nRESOURCES:N0AA\nRECURRENCE-ID:20261202T150000Z\nDTSTART:20261202T170000Z\nDURATION:PT1H`;
    expect(does(calendarOf([alone]), here)).toEqual([['replace', 'f1']]);
    // A UID that only begins the same is another series.
    const other = calendarOf(['UID:s\nRESOURCES:N0AA\nDTSTART:20261201T150000Z\nDURATION:PT1H']);
    expect(does(other, here)).toEqual([['add', null]]);
  });

  test('of one event twice the higher SEQUENCE counts (3.8.7.4); the same number twice is an error', () => {
    const later = `UID:u1\nSEQUENCE:1\nRESOURCES:N0BB\nDTSTART:20261201T143000Z\nDTEND:20261201T160000Z`;
    expect(check(calendarOf([later, LESSON])).rows).toMatchObject([{ flight: { aircraftId: 'a2' } }]);
    expect(check(calendarOf([LESSON, later])).rows).toMatchObject([{ flight: { aircraftId: 'a2' } }]);
    expect(errors(calendarOf([LESSON, LESSON]))).toEqual(['Event 2, id: It has the same UID as event 1.']);
  });

  test('without a UID (3.8.4.7) it could not be told again', () => {
    expect(errors(calendarOf(['RESOURCES:N0AA\nDTSTART:20261201T143000Z\nDTEND:20261201T160000Z']))).toEqual([
      'Event 1, id: It has no UID, so it could not be told again.',
    ]);
  });
});

describe('the file', () => {
  test.each([
    ['   ', 'This is not an iCalendar file'],
    ['not a calendar', 'This is not an iCalendar file that can be read'],
    ['BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nEND:VCALENDAR', 'This is not an iCalendar file that can be read'],
    [
      'BEGIN:VEVENT\r\nUID:1\r\nEND:VEVENT',
      'This is not an iCalendar file: it does not begin with BEGIN:VCALENDAR.',
    ],
    [calendarOf([`${LESSON}\nRRULE:FREQ=BANANA`]), 'can be read (invalid frequency "BANANA"'],
    [calendarOf([]), 'There is no event in the file.'],
  ])('%j', (text, say) => {
    const found = errors(text);
    expect(found).toHaveLength(1);
    expect(found[0]).toContain(say);
  });

  test('several calendars in one file, a byte order mark, LF', () => {
    const text = `\uFEFF${calendarOf([LESSON])}${calendarOf([LESSON.replace('u1', 'u2')])}`.replaceAll(
      '\r\n',
      '\n',
    );
    expect(check(text).rows.map(({ uid }) => uid)).toEqual(['ics: u1', 'ics: u2']);
  });

  test('words are cut, and that is said', () => {
    const row = one(`${LESSON}\nSUMMARY:${'x'.repeat(501)}`);
    expect([row.flight?.words.length, row.notes]).toEqual([500, ['Its words are cut to 500 characters.']]);
  });

  test('a hundred series of rules no day fits come to an end', () => {
    const events = Array.from(
      { length: 100 },
      (_none, at) =>
        `UID:e${at}\nRESOURCES:N0AA\nDTSTART:20200201T090000Z\nDURATION:PT1H\nEXDATE:20200201T090000Z\nRRULE:FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30;COUNT=5`,
    );
    expect(check(calendarOf(events)).rows.every(({ does }) => does !== 'add')).toBe(true);
  });

  test('it is the moment handed in that counts', () => {
    expect(check(calendarOf([LESSON]), { ...CONTEXT, now: '2026-12-01T16:00:00Z' }).rows[0]?.does).toBe(
      'skip',
    );
    expect(AT).toBe(CONTEXT.now);
  });
});
