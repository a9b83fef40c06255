/**
 * An iCalendar file (RFC 5545) as written flights: one for an event, one for each time of a series within the coming days. What
 * depends on the school (which aircraft, which pilot, what floating times mean) is for check-rows.ts. Pure: the moment is
 * handed in.
 */
import ICAL from 'ical.js';
import type { Instant } from '../../rules/facts';
import { readEvent, type ReadEvent } from './event';
import { brokenFile, type WholeSeries, type WrittenFile, type WrittenFlight } from './parsed';
import { freshPatience, type Patience } from './recurrence';
import { seriesTimes } from './series';

/** How far ahead a series is taken. */
export const SERIES_DAYS = 60;
const MOST_EVENTS = 5000;
/** Times of series in all; an import takes in 500 flights (check-rows.ts), so more are not worth reading on for. */
const MOST_TIMES = 2000;

export function readICalendar(text: string, now: Instant): WrittenFile {
  const calendars = calendarsOf(text);
  if (typeof calendars === 'string') return brokenFile(calendars);
  const events = calendars.flatMap((calendar) =>
    calendar.getAllSubcomponents('vevent').map((event) => ({ event, calendar })),
  );
  if (events.length === 0) return brokenFile('There is no event in the file.');
  if (events.length > MOST_EVENTS)
    return brokenFile(`The file has more than ${MOST_EVENTS} events. Split it.`);
  const read = withoutTwins(
    events.map(({ event, calendar }, index) => readEvent(event, calendar, `Event ${index + 1}`)),
  );
  const flights: WrittenFlight[] = [];
  const series: WholeSeries[] = [];
  const patience = freshPatience();
  for (const event of read) {
    if (flights.length > MOST_EVENTS + MOST_TIMES)
      return brokenFile(`The series of the file hold more than ${MOST_TIMES} flights. Split it.`);
    const taken =
      event.recurrenceKey === null
        ? flightsOf(event, read, now, patience)
        : [flightOf(event, event.recurrenceKey)];
    flights.push(...taken);
    // Of a master everything it stands for is known: what of it stands here and is not in it any more is called off.
    if (event.recurrenceKey === null && event.uid !== '' && event.errors.length === 0) {
      const own = read.filter(({ uid, recurrenceKey }) => uid === event.uid && recurrenceKey !== null);
      const uids = new Set(
        [...taken, ...own.map((one) => flightOf(one, one.recurrenceKey))].map(({ uid }) => uid),
      );
      series.push({ uid: `ics: ${event.uid}`, where: event.where, uids });
    }
  }
  return { errors: [], notes: [], flights, series };
}

function calendarsOf(text: string): ICAL.Component[] | string {
  try {
    const parsed = ICAL.parse(text.replace(/^\uFEFF/, '').trim()) as unknown[];
    const list = Array.isArray(parsed[0]) ? (parsed as unknown[][]) : [parsed];
    const calendars = list.map((one) => new ICAL.Component(one as never));
    return calendars.every(({ name }) => name === 'vcalendar')
      ? calendars
      : 'This is not an iCalendar file: it does not begin with BEGIN:VCALENDAR.';
  } catch (error) {
    // Its own errors say which line or value; a TypeError is its stumbling over something.
    const why = error instanceof Error && !(error instanceof TypeError) ? ` (${error.message})` : '';
    return `This is not an iCalendar file that can be read${why}.`;
  }
}

/** The flights of a master: itself, or the times of its series but those an exception takes the place of. */
function flightsOf(
  event: ReadEvent,
  all: readonly ReadEvent[],
  now: Instant,
  patience: Patience,
): WrittenFlight[] {
  if (event.errors.length > 0 || !event.repeats || event.cancelled) return [flightOf(event, null)];
  const times = seriesTimes(event, now, SERIES_DAYS, patience);
  if ('say' in times) {
    return [flightOf({ ...event, errors: [{ column: 'depart', say: times.say }] }, null)];
  }
  const excepted = new Set(
    all
      .filter(({ uid, recurrenceKey }) => uid === event.uid && recurrenceKey !== null)
      .map((one) => one.recurrenceKey),
  );
  return times
    .filter(({ key }) => !excepted.has(key))
    .map(({ key, depart, arrive }) => flightOf({ ...event, depart, arrive }, key));
}

function flightOf(event: ReadEvent, key: string | null): WrittenFlight {
  return {
    where: event.where,
    uid: key === null ? `ics: ${event.uid}` : `ics: ${event.uid} @ ${key}`,
    cancelled: event.cancelled,
    aircraft: { kind: 'somewhere', texts: event.aircraftTexts },
    emails: event.emails,
    from: '',
    to: '',
    depart: event.depart,
    arrive: event.arrive,
    rules: '',
    purpose: '',
    hours: '',
    words: event.words,
    errors: event.errors,
    notes: event.notes,
  };
}

/** Of one event sent several times the newest counts (SEQUENCE, 3.8.7.4); two with the same number cannot both be it. */
function withoutTwins(events: readonly ReadEvent[]): ReadEvent[] {
  const kept: ReadEvent[] = [];
  for (const event of events) {
    const at = kept.findIndex(
      (one) => event.uid !== '' && one.uid === event.uid && one.recurrenceKey === event.recurrenceKey,
    );
    const earlier = kept[at];
    if (!earlier) kept.push(event);
    else if (event.sequence > earlier.sequence) kept[at] = event;
    else if (event.sequence === earlier.sequence) {
      const say = `It has the same UID as ${earlier.where.toLowerCase()}.`;
      kept.push({ ...event, uid: '', errors: [...event.errors, { column: 'id', say }] });
    }
  }
  return kept;
}
