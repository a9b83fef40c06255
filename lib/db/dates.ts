import type { CalendarDate, Instant } from '../rules/facts';

/** A `date` column as `YYYY-MM-DD`. Prisma hands dates out as midnight UTC. */
export const calendarDate = (value: Date): CalendarDate => value.toISOString().slice(0, 10);

/** The same for a nullable column. */
export const calendarDateOrNull = (value: Date | null): CalendarDate | null =>
  value ? calendarDate(value) : null;

/** `YYYY-MM-DD` for a `date` column. */
export const dateColumn = (date: CalendarDate): Date => new Date(`${date}T00:00:00Z`);

/** A `timestamptz` column as ISO text in UTC. */
export const instant = (value: Date): Instant => value.toISOString();
