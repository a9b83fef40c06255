/** How dates and clock times are written in the sentences of a verdict. Wording only: nothing is decided here. */
import { parseCalendarDate, parseInstant } from './months';
import type { CalendarDate, Instant } from './facts';

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

/** "30 Jun 2026". The month is a word, so that nobody reads 5 March as 3 May. */
export function dayInWords(date: CalendarDate): string {
  const { day, month, year } = parseCalendarDate(date);
  return `${day} ${MONTHS[month - 1]} ${year}`;
}

/** "17:10": the time on the wall in `zone` (an IANA name) at `instant`, whole minutes, cut and not rounded up. */
export function clockInWords(instant: Instant, zone: string): string {
  const wall = parseInstant(instant).toZonedDateTimeISO(zone);
  return `${String(wall.hour).padStart(2, '0')}:${String(wall.minute).padStart(2, '0')}`;
}
