/**
 * When a zone's clocks change: nothing in the regulations, but a dispatcher's day has 23 or 25 hours then, and a wall-clock
 * time in the gap or in the doubled hour is no instant. Zones are IANA names; the rules are those of the tz database as
 * the runtime carries it. Pure: the moment is handed in.
 */
import { Temporal } from 'temporal-polyfill';
import type { Instant } from './facts';
import { parseInstant } from './months';

export interface ClockChange {
  /** The first instant of the new offset. */
  readonly at: Instant;
  /** How far clocks go forward, in minutes; negative back. Usually 60, 30 at Lord Howe. */
  readonly forwardMinutes: number;
  /** What clocks show, or would without the change, at `at`: "02:00" and "03:00". */
  readonly from: string;
  readonly to: string;
}

const MS_A_MINUTE = 60_000;
/** Further ahead nobody plans, and zones whose clocks never change would be searched for ever. */
const WITHIN = { hours: 24 * 400 };

/**
 * The next change of the zone's clocks after `after` within 400 days, or null. A transition that moves no clock (a zone
 * renamed, standard time redefined) is passed over. Refuses (RangeError) a malformed instant or an unknown zone.
 */
export function nextClockChange(zone: string, after: Instant): ClockChange | null {
  const start = parseInstant(after);
  const end = start.add(WITHIN);
  let at: Temporal.ZonedDateTime | null = start.toZonedDateTimeISO(zone);
  for (;;) {
    at = at.getTimeZoneTransition('next');
    if (at === null || Temporal.Instant.compare(at.toInstant(), end) > 0) return null;
    const before: Temporal.ZonedDateTime = at.subtract({ milliseconds: 1 });
    const forwardMinutes = (at.offsetNanoseconds - before.offsetNanoseconds) / 1e6 / MS_A_MINUTE;
    if (forwardMinutes === 0) continue;
    const shown = at.toPlainDateTime();
    return {
      at: at.toInstant().toString(),
      forwardMinutes,
      from: shown.subtract({ minutes: forwardMinutes }).toPlainTime().toString().slice(0, 5),
      to: shown.toPlainTime().toString().slice(0, 5),
    };
  }
}

/** Whether `zone` is an IANA name (or a link to one) that the runtime knows; fixed offsets such as `+05:00` are none. */
export function isZone(zone: string): boolean {
  if (!/^[A-Za-z]/.test(zone)) return false;
  try {
    Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(zone);
    return true;
  } catch {
    return false;
  }
}
