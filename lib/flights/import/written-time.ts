/**
 * Times as files write them, and the instants they mean. Local times at a change of clocks are never guessed: a spreadsheet
 * does not say which of two 01:30 is meant. In an iCalendar file RFC 5545 says it (section 3.3.5). Pure.
 */
import { Temporal } from 'temporal-polyfill';
import type { Instant } from '../../rules/facts';
import type { WrittenTime } from './parsed';

const LOCAL = /^(\d{4}-\d{2}-\d{2})[T ](\d{2}:\d{2})(?::00(?:\.0+)?)?$/;
const WITH_OFFSET = /^(\d{4}-\d{2}-\d{2})[T ](\d{2}:\d{2})(?::00(?:\.0+)?)?\s?(Z|[+-]\d{2}(?::?\d{2})?)$/i;

/** A cell of a CSV: `2026-12-01 14:30`, or with an offset or Z. Whole minutes. */
export function writtenTime(text: string): WrittenTime {
  const unreadable: WrittenTime = {
    kind: 'unreadable',
    say: `${JSON.stringify(text)} is no time. Write it like 2026-12-01 14:30.`,
  };
  const local = LOCAL.exec(text);
  if (local) {
    const plain = `${local[1]}T${local[2]}`;
    return isDateTime(plain) ? { kind: 'local', text: plain, onChange: 'refuse' } : unreadable;
  }
  const offset = WITH_OFFSET.exec(text);
  if (!offset) return unreadable;
  const plain = `${offset[1]}T${offset[2]}`;
  try {
    return { kind: 'instant', at: Temporal.Instant.from(`${plain}${offset[3]?.toUpperCase()}`).toString() };
  } catch {
    return unreadable;
  }
}

/** Whether there is such a date and time, `YYYY-MM-DDTHH:MM`. */
export function isDateTime(text: string): boolean {
  try {
    // Temporal would make 59 of a 60th second, and refuses everything else that is not there.
    return Temporal.PlainDateTime.from(text).toString().startsWith(text);
  } catch {
    return false;
  }
}

export type FoundTime =
  | { readonly ok: true; readonly at: Instant; readonly note: string | null }
  | { readonly ok: false; readonly say: string };

/** The instant a written time means at a place, or what is wrong with it. */
export function instantOf(
  time: WrittenTime,
  place: { readonly ident: string; readonly zone: string },
): FoundTime {
  if (time.kind === 'told' || time.kind === 'after') return { ok: false, say: 'It cannot be read.' };
  if (time.kind === 'unreadable') return { ok: false, say: time.say };
  if (time.kind === 'instant') return { ok: true, at: time.at, note: null };
  const local = Temporal.PlainDateTime.from(time.text);
  const at = (disambiguation: 'earlier' | 'later' | 'compatible') =>
    local.toZonedDateTime(place.zone, { disambiguation }).toInstant();
  const [earlier, later] = [at('earlier'), at('later')];
  if (earlier.equals(later)) return { ok: true, at: earlier.toString(), note: null };
  const words = time.text.replace('T', ' ');
  // In the gap both readings show another time than was written; in the doubled hour both show it.
  const isGap = !earlier.toZonedDateTimeISO(place.zone).toPlainDateTime().equals(local);
  if (time.onChange === 'rfc5545') {
    const note = `Clocks at ${place.ident} change about ${words}; it is read as RFC 5545 (3.3.5) says.`;
    return { ok: true, at: at('compatible').toString(), note };
  }
  const say = isGap
    ? `${words} does not exist at ${place.ident}: clocks go forward then.`
    : `${words} is there twice at ${place.ident}: clocks go back then. Write it with its offset: ${withOffset(earlier, place.zone)} or ${withOffset(later, place.zone)}.`;
  return { ok: false, say };
}

function withOffset(at: Temporal.Instant, zone: string): string {
  const shown: Temporal.ZonedDateTime = at.toZonedDateTimeISO(zone);
  return `${shown.toPlainDateTime().toString().slice(0, 16).replace('T', ' ')}${shown.offset}`;
}
