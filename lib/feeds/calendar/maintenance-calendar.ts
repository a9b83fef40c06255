import ICAL from 'ical.js';
import { type DueLine, type DueList } from '../../due/due-list';
import { formatTenths } from '../../rules/hours';
import { LAW } from '../../rules/law';
import { parseCalendarDate } from '../../rules/months';
import { type CalendarDate } from '../../rules/facts';

/** ical.js counts a folded line without the space it begins with; 75 octets are allowed (RFC 5545, section 3.1). */
ICAL.foldLength = 74;

/** How often a calendar program should ask again (RFC 7986, section 5.7). */
const ASK_AGAIN = 'PT1H';

/**
 * What falls due as iCalendar (RFC 5545): a whole day a thing, on the last day it is good, or on the day on which its
 * hours are expected to run out. What is overdue, and what nobody can put a day to, stands on today, so that it is seen.
 * Decides nothing: what is due is judged by hours and dates when a flight is asked about.
 */
export function maintenanceCalendar(due: DueList): string {
  const calendar = new ICAL.Component('vcalendar');
  calendar.addPropertyWithValue('version', '2.0');
  calendar.addPropertyWithValue('prodid', '-//Wheelchock//Maintenance due//EN');
  calendar.addPropertyWithValue('calscale', 'GREGORIAN');
  calendar.addPropertyWithValue('name', NAME);
  // Not of the standard; programs that do not know NAME know this.
  calendar.addPropertyWithValue('x-wr-calname', NAME);
  const refresh = new ICAL.Property('refresh-interval', calendar);
  refresh.resetType('duration');
  refresh.setValue(ICAL.Duration.fromString(ASK_AGAIN));
  calendar.addProperty(refresh);
  const uids = new Map<string, number>();
  for (const line of due.lines) {
    const uid = uidOf(line);
    const before = uids.get(uid) ?? 0;
    uids.set(uid, before + 1);
    calendar.addSubcomponent(eventOf(line, due.asOf, before === 0 ? uid : `${uid}-${before + 1}`));
  }
  return `${calendar.toString()}\r\n`;
}

const NAME = 'Maintenance due';

/** The same for as long as the thing is the same, so that a calendar program moves the day instead of adding one. */
const uidOf = ({ kind, id, aircraft, requirementKind }: DueLine): string =>
  `${kind}-${id || `${aircraft.aircraftId}-${requirementKind}`}@wheelchock`;

function eventOf(line: DueLine, asOf: string, uid: string): ICAL.Component {
  const day = dayOf(line);
  const event = new ICAL.Component('vevent');
  event.addPropertyWithValue('uid', uid);
  event.addPropertyWithValue('dtstamp', ICAL.Time.fromJSDate(new Date(asOf), true));
  addDate(event, 'dtstart', day.on);
  // The end of a whole day is the day after it (RFC 5545, section 3.6.1: DTEND is not included).
  addDate(event, 'dtend', parseCalendarDate(day.on).add({ days: 1 }).toString());
  event.addPropertyWithValue('summary', `${line.aircraft.registration}: ${summary(line, day.how)}`);
  event.addPropertyWithValue('description', description(line, day.how));
  event.addPropertyWithValue('categories', line.aircraft.registration);
  // It fills nobody's day.
  event.addPropertyWithValue('transp', 'TRANSPARENT');
  return event;
}

function addDate(event: ICAL.Component, name: string, date: CalendarDate): void {
  const property = new ICAL.Property(name, event);
  property.resetType('date');
  property.setValue(ICAL.Time.fromDateString(date));
  event.addProperty(property);
}

type How = 'last-day' | 'expected' | 'no-day';

/** The day of the event. What is not known counts as overdue does, until somebody knows. */
function dayOf({ first, group, aircraft }: DueLine): { readonly on: CalendarDate; readonly how: How } {
  if (group === 'overdue' || first === null) return { on: aircraft.today, how: 'no-day' };
  return { on: first.on, how: first.by === 'hours' ? 'expected' : 'last-day' };
}

function summary({ kind, name, group, missing }: DueLine, how: How): string {
  const what = kind === 'deferral' ? name : lowerFirst(name);
  if (group === 'overdue') return `${what} OVERDUE`;
  if (missing !== null) return `${what}, not known when`;
  const ends = kind === 'requirement' ? 'due' : 'ends';
  if (how === 'no-day') return `${what}, no day known`;
  return how === 'expected' ? `${what} expected ${ends}` : `${what} ${ends}`;
}

const lowerFirst = (words: string): string =>
  /^[A-Z][a-z]/.test(words) ? words.charAt(0).toLowerCase() + words.slice(1) : words;

function description(line: DueLine, how: How): string {
  const { tenths, remainingTenths, first, missing, noForecast, on } = line;
  const said = [
    missing === null ? null : `Not known: ${missing}.`,
    on === null ? null : `Last good day: ${on}.`,
    tenths === null ? null : `Last good time in service: ${formatTenths(tenths)} h.`,
    remainingTenths === null ? null : left(remainingTenths),
    how === 'expected' && first ? `Expected from how it has been flown: ${band(first)}.` : null,
    noForecast === null ? null : `Hours: ${noForecast}.`,
    line.binding ? null : "The maker's recommendation.",
    LAW[line.cite].label,
    'A help for planning; what is due is judged by hours and dates alone.',
  ];
  return said.filter((one) => one !== null).join('\n');
}

const left = (tenths: number): string =>
  tenths < 0 ? `Over by ${formatTenths(-tenths)} h.` : `Left: ${formatTenths(tenths)} h.`;

const band = ({ on, earliest, latest }: NonNullable<DueLine['first']>): string =>
  `${on}, between ${earliest} and ${latest ?? 'a day nobody can say'}`;
