/**
 * The order of the mechanic's queue: by what each write-up does to flying. No regulation orders a queue. What grounds is
 * asked of the rules (91.7(a), 91.213, 91.405, 91.407) and comes in as a fact; the rest is our own choice, no source: the
 * order of the groups, 48 hours as "soon" for a flight, seven days as "near" for the end of a deferral.
 */
import type { Severity } from './aircraft';
import type { CalendarDate, Instant } from './facts';
import { clockInWords, dayInWords } from './in-words';
import { localDate, parseCalendarDate } from './months';

/** A flight that departs no later than this many hours from now is soon. Our own choice. */
export const SOON_HOURS = 48;
/** A deferral whose last day is no more than this many days ahead is near its end. Our own choice. */
export const NEAR_DAYS = 7;

/** Groups of the queue, most pressing first. */
export const QUEUE_GROUPS = [
  'grounds-flight-soon',
  'grounds',
  'limits-flight-soon',
  'limits',
  'deferral-near-end',
  'deferred',
  'watch',
  'note',
] as const;
export type QueueGroup = (typeof QUEUE_GROUPS)[number];

/** One open write-up as far as its place in the queue depends on it. */
export interface QueueFacts {
  readonly id: string;
  readonly openedAt: Instant;
  /** Zone of the aircraft's base, for days and clock times. */
  readonly zone: string;
  /** Null while undecided, and undecided grounds. */
  readonly severity: Severity | null;
  /** The rules bar every kind of operation because of it. */
  readonly barsEveryFlight: boolean;
  /** Work on it is begun and not signed: 91.407(a)(1). */
  readonly workUnsigned: boolean;
  readonly deferred: boolean;
  readonly placardOwed: boolean;
  /** Last day of the deferral; null when there is none or it is not known. */
  readonly deferralEndsOn: CalendarDate | null;
  /** When the aircraft next departs, as planned or released; in the past while it is out. Null: no flight is known. */
  readonly nextFlightAt: Instant | null;
}

/** A write-up's place: its group, and the reason in a few plain words. */
export interface QueuePlace {
  readonly id: string;
  readonly group: QueueGroup;
  readonly why: string;
}

/**
 * The queue in order. Within a group whose flight is soon the sooner flight comes first, among deferrals near their end
 * the nearer end, and then in every group the older write-up. The order of the input never matters.
 */
export function queueOrder(rows: readonly QueueFacts[], now: Instant): readonly QueuePlace[] {
  return rows
    .map((row) => ({ row, group: groupOf(row, now) }))
    .sort(
      (a, b) =>
        QUEUE_GROUPS.indexOf(a.group) - QUEUE_GROUPS.indexOf(b.group) ||
        compareText(pressing(a.row, a.group), pressing(b.row, b.group)) ||
        compareText(asInstant(a.row.openedAt), asInstant(b.row.openedAt)) ||
        compareText(a.row.id, b.row.id),
    )
    .map(({ row, group }) => ({ id: row.id, group, why: whyHere(row, group, now) }));
}

/** A flight's departure as a mechanic says it: "today 16:00", "tomorrow 09:30", "Fri 27 Nov 09:30", "out now". */
export function flightInWords(departAt: Instant, now: Instant, zone: string): string {
  if (Date.parse(departAt) <= Date.parse(now)) return 'out now';
  const day = localDate(departAt, zone);
  const clock = clockInWords(departAt, zone);
  const days = daysBetween(localDate(now, zone), day);
  if (days === 0) return `today ${clock}`;
  if (days === 1) return `tomorrow ${clock}`;
  return `${WEEKDAYS[parseCalendarDate(day).dayOfWeek - 1]} ${dayInWords(day).slice(0, -5)} ${clock}`;
}

/** Whole days from one calendar date to another, negative when the other is earlier. */
export const daysBetween = (from: CalendarDate, to: CalendarDate): number =>
  parseCalendarDate(from).until(parseCalendarDate(to), { largestUnit: 'days' }).days;

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;
const MS_AN_HOUR = 3_600_000;

function groupOf(row: QueueFacts, now: Instant): QueueGroup {
  const soon = isSoon(row, now);
  if (grounds(row, now)) return soon ? 'grounds-flight-soon' : 'grounds';
  if (row.deferred) {
    const left = daysLeft(row, now);
    return left !== null && left <= NEAR_DAYS ? 'deferral-near-end' : 'deferred';
  }
  switch (row.severity) {
    case 'watch':
    case 'note':
      return row.severity;
    default:
      return soon ? 'limits-flight-soon' : 'limits';
  }
}

const grounds = (row: QueueFacts, now: Instant): boolean =>
  row.severity === null || row.barsEveryFlight || row.workUnsigned || hasRunOut(row, now);

const isSoon = ({ nextFlightAt }: QueueFacts, now: Instant): boolean =>
  nextFlightAt !== null && Date.parse(nextFlightAt) - Date.parse(now) <= SOON_HOURS * MS_AN_HOUR;

/** Days to the last day of the deferral: 0 on it, negative after it. */
const daysLeft = ({ deferralEndsOn, zone }: QueueFacts, now: Instant): number | null =>
  deferralEndsOn === null ? null : daysBetween(localDate(now, zone), deferralEndsOn);

function hasRunOut(row: QueueFacts, now: Instant): boolean {
  const left = daysLeft(row, now);
  return row.deferred && left !== null && left < 0;
}

/** What presses inside a group, as text that sorts. */
function pressing(row: QueueFacts, group: QueueGroup): string {
  switch (group) {
    case 'grounds-flight-soon':
    case 'limits-flight-soon':
      return asInstant(row.nextFlightAt ?? '');
    case 'deferral-near-end':
      return row.deferralEndsOn ?? '';
    default:
      return '';
  }
}

function whyHere(row: QueueFacts, group: QueueGroup, now: Instant): string {
  switch (group) {
    case 'grounds-flight-soon':
    case 'grounds':
      return `${howItGrounds(row, now)}; ${flightPart(row, now)}`;
    case 'limits-flight-soon':
    case 'limits':
      return `Limits what may be flown; ${flightPart(row, now)}`;
    case 'deferral-near-end':
    case 'deferred':
      return row.deferralEndsOn === null
        ? 'No last day is known'
        : `Last day ${dayInWords(row.deferralEndsOn)} at the latest`;
    case 'watch':
      return 'Stops no flight while within limits';
    case 'note':
      return 'Stops no flight';
  }
}

function howItGrounds(row: QueueFacts, now: Instant): string {
  if (row.workUnsigned) return 'Work not signed off';
  if (row.severity === null) return 'Undecided, so it grounds';
  if (hasRunOut(row, now) && row.deferralEndsOn !== null) {
    return `Deferred only through ${dayInWords(row.deferralEndsOn)}`;
  }
  if (row.placardOwed) return 'Grounds it until the placard is up';
  if (row.deferred) return 'Its deferral does not stand, so it grounds';
  return row.severity === 'grounding' ? 'Grounds it' : 'Grounds it until repaired or deferred';
}

function flightPart({ nextFlightAt, zone }: QueueFacts, now: Instant): string {
  if (nextFlightAt === null) return 'no flight planned';
  const words = flightInWords(nextFlightAt, now, zone);
  return words === 'out now' ? 'the aircraft is out now' : `next flight ${words}`;
}

/** One spelling of an instant, so that text compares as time does. */
const asInstant = (at: string): string => (at === '' ? '' : String(Date.parse(at)).padStart(16, '0'));

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
