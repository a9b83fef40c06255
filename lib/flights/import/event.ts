/** One VEVENT, read as far as the file alone allows. */
import ICAL from 'ical.js';
import { clockOf, hasDates, keyOf, localTexts, type Clock } from './event-time';
import { readable, type RowError, type WrittenTime } from './parsed';

export interface ReadEvent {
  readonly where: string;
  readonly uid: string;
  readonly sequence: number;
  /** Of an exception: the time of the series it takes the place of. */
  readonly recurrenceKey: string | null;
  readonly cancelled: boolean;
  /** It has an RRULE or RDATEs. */
  readonly repeats: boolean;
  readonly component: ICAL.Component;
  readonly calendar: ICAL.Component;
  /** Wall-clock time of DTSTART, `YYYY-MM-DDTHH:MM`. */
  readonly startLocal: string;
  readonly startClock: Clock | null;
  readonly lastsMinutes: number;
  readonly depart: WrittenTime;
  readonly arrive: WrittenTime;
  readonly aircraftTexts: readonly string[];
  readonly emails: readonly string[];
  readonly words: string;
  readonly errors: readonly RowError[];
  readonly notes: readonly string[];
}

const MS_A_MINUTE = 60_000;
const MOST_WORDS = 500;
/** Longer ones are no numbers, and would not fit an index. */
const MOST_UID = 300;

export function readEvent(event: ICAL.Component, calendar: ICAL.Component, where: string): ReadEvent {
  const errors: RowError[] = [];
  const notes: string[] = [];
  const text = (name: string): string => {
    const value: unknown = event.getFirstPropertyValue(name);
    return typeof value === 'string' ? readable(value).trim() : '';
  };
  const uid = text('uid');
  if (uid === '') errors.push({ column: 'id', say: 'It has no UID, so it could not be told again.' });
  if (uid.length > MOST_UID)
    errors.push({ column: 'id', say: `Its UID is longer than ${MOST_UID} characters.` });
  const times = safely(() => timesOf(event, calendar), errors);
  const recurrenceKey = safely(() => recurrenceKeyOf(event, calendar), errors) ?? null;
  const fullWords = [text('summary'), text('description')].filter((part) => part !== '').join('\n');
  if (fullWords.length > MOST_WORDS) notes.push(`Its words are cut to ${MOST_WORDS} characters.`);
  return {
    where,
    uid: errors.length > 0 && uid.length > MOST_UID ? '' : uid,
    sequence: Number(event.getFirstPropertyValue('sequence') ?? 0) || 0,
    recurrenceKey,
    cancelled:
      text('status').toUpperCase() === 'CANCELLED' ||
      String(calendar.getFirstPropertyValue('method') ?? '').toUpperCase() === 'CANCEL',
    repeats: event.hasProperty('rrule') || event.hasProperty('rdate'),
    component: event,
    calendar,
    startLocal: times?.startLocal ?? '',
    startClock: times?.startClock ?? null,
    lastsMinutes: times?.lastsMinutes ?? 0,
    depart: times?.depart ?? UNREAD,
    arrive: times?.arrive ?? UNREAD,
    aircraftTexts: [resourcesOf(event), text('location'), text('summary')].filter((part) => part !== ''),
    emails: emailsOf(event),
    words: fullWords.slice(0, MOST_WORDS).trim(),
    errors,
    notes,
  };
}

const UNREAD: WrittenTime = { kind: 'told' };

/** Thrown where a part of an event cannot be read; becomes an error of its row. */
class Unreadable extends Error {
  constructor(
    readonly column: 'depart' | 'arrive' | 'id',
    say: string,
  ) {
    super(say);
  }
}

function safely<T>(read: () => T, errors: RowError[]): T | null {
  try {
    return read();
  } catch (error) {
    // ical.js throws plain errors at values it cannot read.
    const known = error instanceof Unreadable;
    errors.push({
      column: known ? error.column : 'depart',
      say: known ? error.message : 'Its times cannot be read.',
    });
    return null;
  }
}

function timesOf(event: ICAL.Component, calendar: ICAL.Component) {
  const start = event.getFirstProperty('dtstart');
  if (!start) throw new Unreadable('depart', 'It has no DTSTART.');
  const [startLocal, startClock] = timeOf(start, calendar, 'depart');
  const depart = startClock.toTime(startLocal);
  const end = event.getFirstProperty('dtend');
  if (!end) {
    const duration: unknown = event.getFirstPropertyValue('duration');
    if (!(duration instanceof ICAL.Duration))
      throw new Unreadable('arrive', 'It has neither DTEND nor DURATION.');
    const lastsMinutes = Math.round(duration.toSeconds() / 60);
    return { startLocal, startClock, depart, lastsMinutes, arrive: later(depart, lastsMinutes) };
  }
  const [endLocal, endClock] = timeOf(end, calendar, 'arrive');
  const arrive = endClock.toTime(endLocal);
  if (depart.kind !== arrive.kind) {
    throw new Unreadable('arrive', 'Of DTSTART and DTEND one has a time zone and one has none.');
  }
  return { startLocal, startClock, depart, lastsMinutes: minutesBetween(depart, arrive), arrive };
}

function timeOf(
  property: ICAL.Property,
  calendar: ICAL.Component,
  column: 'depart' | 'arrive',
): [string, Clock] {
  if (hasDates(property)) throw new Unreadable(column, 'It is an all-day event: a flight has a time.');
  const [local] = localTexts(property);
  if (!local) throw new Unreadable(column, `${property.name.toUpperCase()} is no date with a time.`);
  const clock = clockOf(property, calendar);
  if ('say' in clock) throw new Unreadable(column, clock.say);
  return [local, clock];
}

/** The time so many minutes after another. */
export const later = (time: WrittenTime, minutes: number): WrittenTime =>
  time.kind === 'instant'
    ? { kind: 'instant', at: new Date(Date.parse(time.at) + minutes * MS_A_MINUTE).toISOString() }
    : { kind: 'after', minutes };

function minutesBetween(a: WrittenTime, b: WrittenTime): number {
  const ms = (time: WrittenTime) =>
    time.kind === 'instant'
      ? Date.parse(time.at)
      : time.kind === 'local'
        ? Date.parse(`${time.text}:00Z`)
        : 0;
  return Math.round((ms(b) - ms(a)) / MS_A_MINUTE);
}

function recurrenceKeyOf(event: ICAL.Component, calendar: ICAL.Component): string | null {
  const property = event.getFirstProperty('recurrence-id');
  if (!property) return null;
  if (property.getParameter('range')) {
    throw new Unreadable('id', 'A change of this and all later times (RANGE) is not read.');
  }
  const [local, clock] = timeOf(property, calendar, 'depart');
  return keyOf(clock.toTime(local));
}

/** RESOURCES can be there several times, and hold several each. */
const resourcesOf = (event: ICAL.Component): string =>
  event
    .getAllProperties('resources')
    .flatMap((property) => property.getValues().map(String))
    .map(readable)
    .join(', ');

const emailsOf = (event: ICAL.Component): string[] =>
  ['attendee', 'organizer'].flatMap((name) =>
    event
      .getAllProperties(name)
      .map((property) => /^mailto:(.+)$/i.exec(String(property.getFirstValue()))?.[1] ?? '')
      .filter((email) => email !== ''),
  );
