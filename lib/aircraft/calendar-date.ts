import { Temporal } from 'temporal-polyfill';

/** Whether the text is a day that exists, as YYYY-MM-DD, between 1900 and 2999. */
export function isCalendarDate(text: string): boolean {
  if (!/^(19|2\d)\d{2}-\d{2}-\d{2}$/.test(text)) return false;
  try {
    return Temporal.PlainDate.from(text, { overflow: 'reject' }).toString() === text;
  } catch {
    return false;
  }
}
