import { useWords } from '#words';
import { type Translate } from '@/lib/words/translate';
import { formatTenths } from '@/lib/rules/hours';

/**
 * An instant in the base's own time with the zone's short name: "Wed 25 Nov 2026, 08:58 PST".
 * `at` is ISO text in UTC, `zone` an IANA name. `clock`: the time alone, where the day stands beside it.
 */
export function Moment({ at, zone, clock = false }: { at: string; zone: string; clock?: boolean }) {
  const t = useWords();
  return <time dateTime={at}>{t(momentInWords(at, zone, clock))}</time>;
}

/** The same as text, for labels and messages. In English; t knows its form, also as a value (lib/words/es/dates.ts). */
export function momentInWords(at: string, zone: string, clock = false): string {
  const part = partsOf(at, zone);
  const time = `${part('hour')}:${part('minute')} ${part('timeZoneName')}`;
  return clock ? time : `${part('weekday')} ${part('day')} ${part('month')} ${part('year')}, ${time}`;
}

function partsOf(at: string, zone: string): (kind: Intl.DateTimeFormatPartTypes) => string {
  const parts = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
    timeZoneName: 'short',
  }).formatToParts(new Date(at));
  return (kind) => parts.find((part) => part.type === kind)?.value ?? '';
}

/** A calendar date `YYYY-MM-DD` of the base: "25 Nov 2026". It has no zone to convert. */
export function DateText({ date }: { date: string }) {
  const t = useWords();
  return <time dateTime={date}>{t(dateInWords(date))}</time>;
}

/** The same as text. */
export function dateInWords(date: string): string {
  const [year, month, day] = date.split('-');
  return `${Number(day)} ${MONTHS[Number(month) - 1] ?? month} ${year}`;
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** How long ago, in one unit: "3 hours ago". `now` comes from the page, so that server and browser say the same. */
export function Ago({ at, now }: { at: string; now: string }) {
  const t = useWords();
  return <time dateTime={at}>{agoInWords(t, at, now)}</time>;
}

function agoInWords(t: Translate, at: string, now: string): string {
  const minutes = Math.floor((Date.parse(now) - Date.parse(at)) / 60_000);
  if (minutes < 1) return t('just now');
  if (minutes < 60) return t('{n, plural, one {# minute ago} other {# minutes ago}}', { n: minutes });
  const hours = Math.floor(minutes / 60);
  if (hours < 48) return t('{n, plural, one {# hour ago} other {# hours ago}}', { n: hours });
  return t('{n, plural, one {# day ago} other {# days ago}}', { n: Math.floor(hours / 24) });
}

/** Integer tenths as hours: "1234.5 h". `null` is said, never shown as nothing. */
export function HoursText({ tenths }: { tenths: number | null }) {
  const t = useWords();
  return tenths === null ? <>{t('not known')}</> : <>{formatTenths(tenths)}&nbsp;h</>;
}
