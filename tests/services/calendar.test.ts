/**
 * The calendar of maintenance due. Sources: RFC 5545 (sections beside the checks), written out here and not asked of the
 * library that wrote the file; issue 5, "iCalendar of maintenance due". Read back with ical.js as well.
 */
import { randomUUID } from 'node:crypto';
import ICAL from 'ical.js';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { writeInOperator } from '@/lib/db/scope';
import { beginDeferral } from '@/lib/determinations/begin-deferral';
import { readDue } from '@/lib/due/read-due';
import { type DueLine, type DueList } from '@/lib/due/due-list';
import { answerCalendar } from '@/lib/feeds/calendar/answer-calendar';
import { maintenanceCalendar } from '@/lib/feeds/calendar/maintenance-calendar';
import { issueKey } from '@/lib/feeds/issue-key';
import { reportFinding } from '@/lib/findings/report-finding';
import { deadLandingLight, deferralOf, valueOf } from '../fixtures/acts';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, foundSchool, NOW, openSchools, PASSWORD, type School } from '../fixtures/school';

const now = { now: NOW };
const TODAY = '2026-11-25';
let database: FreshDatabase;
let school: School;
let other: School;
let founded = 0;

beforeAll(async () => {
  ({ database, other } = await openSchools());
});
afterAll(() => closeSchools(database));
beforeEach(async () => {
  school = await foundSchool(`calendar-${(founded += 1)}`, trainer());
});

const keyFor = async (of: School, scopes: string[], lastDay = '') => {
  const input = { requestId: randomUUID(), name: 'Calendar', scopes, lastDay, password: PASSWORD };
  return valueOf(await issueKey(of.people.manager, input, now)).key ?? '';
};
const fetched = async (of = school) => answerCalendar(await keyFor(of, ['calendar:read']), now);
const dueNow = async () => valueOf(await readDue(school.people.manager, {}, now));

/** Lines as RFC 5545, section 3.1, unfolds them. */
const unfolded = (text: string) => text.replaceAll('\r\n ', '').split('\r\n').filter(Boolean);

interface ReadEvent {
  readonly uid: string;
  readonly summary: string;
  readonly description: string;
  readonly start: string;
  readonly end: string;
  readonly transparent: boolean;
}
function eventsIn(text: string): ReadEvent[] {
  const calendar = new ICAL.Component(ICAL.parse(text));
  return calendar.getAllSubcomponents('vevent').map((component) => {
    const event = new ICAL.Event(component);
    return {
      uid: event.uid,
      summary: event.summary,
      description: event.description,
      start: event.startDate.toString(),
      end: event.endDate.toString(),
      transparent: component.getFirstPropertyValue('transp') === 'TRANSPARENT',
    };
  });
}
const named = (events: ReadEvent[], words: string) => events.find(({ summary }) => summary.includes(words))!;

describe('the file', () => {
  let text: string;
  beforeEach(async () => {
    const answer = await fetched();
    expect(answer.status).toBe(200);
    // Section 8.1: text/calendar; section 3.1.4: UTF-8.
    expect(answer.headers.get('content-type')).toBe('text/calendar; charset=utf-8');
    text = await answer.text();
  });

  test('ends every line with CRLF and none with less (section 3.1)', () => {
    expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });

  test('has no line of more than 75 octets (section 3.1)', () => {
    const long = text.split('\r\n').filter((line) => Buffer.byteLength(line) > 75);
    expect(long).toEqual([]);
    expect(text).toMatch(/\r\n /);
  });

  test('is one calendar with what must be in it, once (section 3.6)', () => {
    const lines = unfolded(text);
    expect(lines[0]).toBe('BEGIN:VCALENDAR');
    expect(lines.filter((line) => line === 'VERSION:2.0')).toHaveLength(1);
    expect(lines.filter((line) => line.startsWith('PRODID:'))).toHaveLength(1);
    expect(lines.filter((line) => line === 'CALSCALE:GREGORIAN')).toHaveLength(1);
    // RFC 7986, section 5.7: a duration, said to be one.
    expect(lines).toContain('REFRESH-INTERVAL;VALUE=DURATION:PT1H');
  });

  test('has events with UID and DTSTAMP once each, no two alike (section 3.6.1)', () => {
    const events = unfolded(text).join('\n').split('BEGIN:VEVENT').slice(1);
    expect(events.length).toBeGreaterThan(3);
    for (const event of events) {
      for (const name of ['UID', 'DTSTAMP', 'DTSTART', 'DTEND', 'SUMMARY', 'DESCRIPTION', 'TRANSP']) {
        expect(event.match(new RegExp(`^${name}[;:]`, 'gm')), `${name} in ${event}`).toHaveLength(1);
      }
      // Section 3.8.7.2: in UTC.
      expect(event).toMatch(/^DTSTAMP:20261125T150000Z$/m);
      // Section 3.3.4: dates without a time say that they are.
      expect(event).toMatch(/^DTSTART;VALUE=DATE:\d{8}$/m);
      expect(event).toMatch(/^DTEND;VALUE=DATE:\d{8}$/m);
    }
    const uids = unfolded(text).filter((line) => line.startsWith('UID:'));
    expect(new Set(uids).size).toBe(uids.length);
  });

  test('has the events that fall due, each a day long and in nobody’s way', async () => {
    const events = eventsIn(text);
    expect(events).toHaveLength((await dueNow()).lines.length);
    for (const { start, end, transparent } of events) {
      expect(Date.parse(end) - Date.parse(start)).toBe(86_400_000);
      expect(transparent).toBe(true);
    }
    const annual = (await dueNow()).lines.find(({ requirementKind }) => requirementKind === 'annual')!;
    expect(named(events, 'annual inspection due')).toMatchObject({
      summary: 'N0417W: annual inspection due',
      start: annual.on,
      uid: `requirement-${annual.id}@wheelchock`,
    });
    expect(named(events, 'annual inspection due').description).toContain('91.409(a)');
  });
});

describe('the day', () => {
  /** One line that falls due, with something changed. */
  async function shown(change: Partial<DueLine>): Promise<ReadEvent> {
    const due = await dueNow();
    const annual = due.lines.find(({ requirementKind }) => requirementKind === 'annual')!;
    const list: DueList = { ...due, lines: [{ ...annual, ...change }] };
    return eventsIn(maintenanceCalendar(list))[0]!;
  }
  const calendarDay = (on: string) =>
    ({ on, first: { by: 'calendar', on, earliest: on, latest: on }, group: 'soon' }) as const;

  // RFC 5545, section 3.6.1: DTEND of a whole day is the next; the ends of months and years are the borders.
  test.each([
    ['2026-11-30', '2026-12-01'],
    ['2026-12-31', '2027-01-01'],
    ['2027-02-28', '2027-03-01'],
    ['2028-02-28', '2028-02-29'],
    ['2028-02-29', '2028-03-01'],
    ['2026-12-01', '2026-12-02'],
  ])('%s ends before %s', async (on, end) => {
    expect(await shown(calendarDay(on))).toMatchObject({ start: on, end });
  });

  test('may move, and the event stays the same one (section 3.8.4.7)', async () => {
    const before = await shown(calendarDay('2026-11-30'));
    const after = await shown({ ...calendarDay('2027-11-30'), name: 'Annual' });
    expect(after.start).not.toBe(before.start);
    expect(after.uid).toBe(before.uid);
  });

  test('of hours is the one expected, and says so with its band', async () => {
    const first = { by: 'hours', on: '2026-12-10', earliest: '2026-12-05', latest: null } as const;
    const event = await shown({ first, on: null, tenths: 45_500, remainingTenths: 32, group: 'soon' });
    expect(event).toMatchObject({ start: '2026-12-10', summary: 'N0417W: annual inspection expected due' });
    expect(event.description).toContain('between 2026-12-05 and a day nobody can say');
    expect(event.description).toContain('Left: 3.2 h.');
  });

  test('of what is overdue is today, whether by days or by hours', async () => {
    const byDays = await shown({ ...calendarDay('2026-11-24'), group: 'overdue', remainingDays: -1 });
    expect(byDays).toMatchObject({ start: TODAY, summary: 'N0417W: annual inspection OVERDUE' });
    expect(byDays.description).toContain('Last good day: 2026-11-24.');
    const byHours = await shown({ ...calendarDay('2027-01-31'), group: 'overdue', remainingTenths: -1 });
    expect(byHours).toMatchObject({ start: TODAY, summary: 'N0417W: annual inspection OVERDUE' });
    expect(byHours.description).toContain('Over by 0.1 h.');
  });

  test('of what is not known, or has no day, is today: it is not missing', async () => {
    const unknown = await shown({ first: null, group: 'unknown', missing: 'when it was done' });
    expect(unknown).toMatchObject({ start: TODAY, summary: 'N0417W: annual inspection, not known when' });
    const noDay = await shown({
      first: null,
      on: null,
      group: 'later',
      remainingTenths: 400,
      noForecast: 'no date: it has not flown',
    });
    expect(noDay).toMatchObject({ start: TODAY, summary: 'N0417W: annual inspection, no day known' });
    expect(noDay.description).toContain('Hours: no date: it has not flown.');
  });

  test('keeps words that mean something to the format (section 3.3.11) and letters of all kinds whole', async () => {
    const name = `Ventil; “Prüfung”, \\ Zeile\nzwei ${'ü'.repeat(90)}`;
    const event = await shown({ name, kind: 'deferral' });
    expect(event.summary).toContain(name);
  });
});

test('a deferral that ends on a day is in it', async () => {
  await writeInOperator(school.operatorId, async (tx) => {
    const melId = randomUUID();
    const { operatorId, aircraftId } = school;
    await tx.mel.create({
      data: {
        id: melId,
        operatorId,
        aircraftId,
        reference: 'Invented list 1',
        letterAboard: true,
        enforceCategories: true,
      },
    });
    await tx.melItem.create({
      data: {
        id: randomUUID(),
        operatorId,
        melId,
        equipmentId: school.equipment.get('landing-light')!,
        title: 'Landing light',
        category: 'C',
        installed: 1,
        requiredForDispatch: 0,
        allowedNight: true,
        allowedIfr: true,
        allowedHire: true,
        proviso: 'By day.',
      },
    });
  });
  const light = valueOf(await reportFinding(school.people.renter, deadLandingLight(school), now));
  const deferral = { ...deferralOf(light.discrepancyId), melProceduresDone: true };
  valueOf(await beginDeferral(school.people.airframe, deferral, now));
  const events = eventsIn(await (await fetched()).text());
  const lines = (await dueNow()).lines.filter(({ kind }) => kind === 'deferral');
  expect(lines).toHaveLength(1);
  // Category C: ten days, the day of recording not counted (lib/rules/advisory/mmel-repair-categories).
  expect(named(events, 'Deferral')).toMatchObject({
    start: '2026-12-05',
    summary: expect.stringMatching(/ ends$/),
  });
});

describe('the key', () => {
  test('opens the calendar of its own school only', async () => {
    const theirs = eventsIn(await (await fetched(other)).text()).map(({ uid }) => uid);
    const ours = eventsIn(await (await fetched()).text()).map(({ uid }) => uid);
    expect(ours.filter((uid) => theirs.includes(uid))).toEqual([]);
  });

  test('of another kind, ended, over or unknown is no calendar, and all look the same', async () => {
    const answers = await Promise.all([
      answerCalendar(await keyFor(school, ['due:read', 'everything:read']), now),
      answerCalendar(await keyFor(school, ['calendar:read'], '2026-11-25'), {
        now: new Date('2026-11-26T00:00:00Z'),
      }),
      answerCalendar(`wck_${'A'.repeat(43)}`, now),
      answerCalendar('nothing', now),
    ]);
    const seen = await Promise.all(answers.map(async (one) => `${one.status} ${await one.text()}`));
    expect(new Set(seen).size).toBe(1);
    expect(seen[0]).toMatch(/^404 There is no such calendar/);
  });

  test('is told to no other site and kept by nothing in between', async () => {
    const { headers } = await fetched();
    expect(headers.get('referrer-policy')).toBe('no-referrer');
    expect(headers.get('cache-control')).toMatch(/no-store/);
  });
});
