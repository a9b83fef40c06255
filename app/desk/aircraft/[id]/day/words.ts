import { type Translate } from '@/lib/words/translate';
import { type DayView } from '@/lib/fleet/read-day';

/** "Wednesday, 25 November 2026": a date of the base, which has no zone to convert. */
export const dayInFull = (t: Translate, date: string): string =>
  new Intl.DateTimeFormat(t.language === 'en' ? 'en-GB' : t.language, {
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  }).format(new Date(`${date}T00:00:00Z`));

/** "16:58" at the base, cut to the minute. On a day on which clocks go back an hour is there twice, so the zone is said. */
export function clockAt(at: string, { zone, from, until }: Pick<DayView, 'zone' | 'from' | 'until'>): string {
  const changes = Date.parse(until) - Date.parse(from) !== 86_400_000;
  const parts = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
    ...(changes ? { timeZoneName: 'short' } : {}),
  }).formatToParts(new Date(at));
  const part = (kind: Intl.DateTimeFormatPartTypes) => parts.find(({ type }) => type === kind)?.value ?? '';
  return `${part('hour')}:${part('minute')}${changes ? ` ${part('timeZoneName')}` : ''}`;
}

/** Where an instant lies in the day, in per cent of its length. */
export function percentOf(at: string, { from, until }: Pick<DayView, 'from' | 'until'>): number {
  const [start, end, here] = [from, until, at].map((one) => Date.parse(one)) as [number, number, number];
  return Math.min(100, Math.max(0, ((here - start) / (end - start)) * 100));
}
