import { Temporal } from 'temporal-polyfill';
import { fieldRefusal } from '../problems';
import type { Instant } from '../rules/facts';
import { said } from '../words/said';

/**
 * A wall-clock time such as `2026-11-25T14:00`, typed at the desk, as an instant. On the day clocks go forward some
 * times do not exist, on the day they go back some exist twice: both are refused with words, never guessed.
 */
export function instantOfLocalTime(local: string, zone: string, field: string): Instant {
  let plain: Temporal.PlainDateTime;
  try {
    plain = Temporal.PlainDateTime.from(local);
  } catch {
    throw fieldRefusal(field, said('Enter a date and a time.'));
  }
  try {
    return plain.toZonedDateTime(zone, { disambiguation: 'reject' }).toInstant().toString();
  } catch {
    throw fieldRefusal(
      field,
      said('On this day the clocks change: this time does not exist or exists twice. Choose another.'),
    );
  }
}
