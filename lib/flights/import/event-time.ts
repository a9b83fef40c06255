/**
 * DATE-TIME values of an event (RFC 5545, 3.3.5): UTC, with a zone, or floating. A TZID that is a name of the tz database counts by
 * it (its rules are newer than what a file carries along); any other by the file's own VTIMEZONE. Floating times are those of
 * the place, which only the school knows.
 */
import ICAL from 'ical.js';
import { isZone } from '../../rules/clock-change';
import type { WrittenTime } from './parsed';
import { instantOf, isDateTime } from './written-time';

/** Makes times out of wall-clock texts, all in the zone of one property. */
export interface Clock {
  /** For the day a series is looked at; null: floating. */
  readonly toTime: (local: string) => WrittenTime;
}

/** Why the zone of a property cannot be used, or how its wall-clock times are read. */
export function clockOf(property: ICAL.Property, calendar: ICAL.Component): Clock | { readonly say: string } {
  if (rawTimes(property).every((raw) => raw.endsWith('Z'))) {
    return { toTime: (local) => ({ kind: 'instant', at: `${local}:00Z` }) };
  }
  const tzid = property.getParameter('tzid');
  if (typeof tzid !== 'string' || tzid === '') {
    return { toTime: (text) => ({ kind: 'local', text, onChange: 'rfc5545' }) };
  }
  // Some programs write a name with a path before it: "/freeassociation.sourceforge.net/Europe/Oslo".
  const name = tzid.replace(/^\/.*?\/(?=[A-Z][A-Za-z]+\/)/, '');
  if (isZone(name)) return { toTime: (text) => inZone(text, name) };
  const own = calendar
    .getAllSubcomponents('vtimezone')
    .find((one) => one.getFirstPropertyValue('tzid') === tzid);
  if (!own) return { say: `The time zone ${tzid} is neither in the file nor in the tz database.` };
  const zone = new ICAL.Timezone(own);
  return {
    toTime: (local) => {
      const time = ICAL.Time.fromDateTimeString(`${local}:00`);
      time.zone = zone;
      return { kind: 'instant', at: new Date(time.toUnixTime() * 1000).toISOString() };
    },
  };
}

function inZone(text: string, zone: string): WrittenTime {
  const found = instantOf({ kind: 'local', text, onChange: 'rfc5545' }, { ident: zone, zone });
  return found.ok ? { kind: 'instant', at: found.at } : { kind: 'unreadable', say: found.say };
}

/** The values of a property as ical.js split them, before it makes 2 March of 30 February. */
const rawTimes = (property: ICAL.Property): string[] => (property.toJSON() as unknown[]).slice(3).map(String);

/** Whether the property holds dates without times (VALUE=DATE). */
export const hasDates = (property: ICAL.Property): boolean => (property.toJSON() as unknown[])[2] === 'date';

/** The dates of a VALUE=DATE property. */
export const datesIn = (property: ICAL.Property): string[] => (hasDates(property) ? rawTimes(property) : []);

const DATE_TIME = /^(\d{4}-\d{2}-\d{2}T\d{2}:\d{2}):[0-5]\dZ?$/;

/** The wall-clock texts of a property, to the minute; null for each value that is no date with a time. */
export const localTexts = (property: ICAL.Property): (string | null)[] =>
  rawTimes(property).map((raw) => {
    const text = DATE_TIME.exec(raw)?.[1];
    return text !== undefined && isDateTime(text) ? text : null;
  });

/** What two times have in common when they are the same: an instant, or a wall-clock text where the place is open. */
export const keyOf = (time: WrittenTime): string =>
  time.kind === 'instant'
    ? new Date(time.at).toISOString().replace(/:00\.000Z$/, 'Z')
    : time.kind === 'local'
      ? time.text
      : '';
