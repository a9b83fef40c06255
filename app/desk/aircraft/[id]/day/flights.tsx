import { useWords } from '#words';
import { said } from '@/lib/words/said';
import { type Translate } from '@/lib/words/translate';
import { HoursText } from '@/app/_ui/moment';
import { EmptyState } from '@/app/_ui/page';
import { Tag } from '@/app/_ui/tag';
import { type DayView } from '@/lib/fleet/read-day';
import styles from './day.module.css';
import { clockAt } from './words';

const STATE = {
  planned: { word: said('Planned'), tone: 'grey', shape: 'dashes' },
  released: { word: said('Released'), tone: 'blue', shape: 'ring' },
  out: { word: said('Out'), tone: 'blue', shape: 'up' },
} as const;

/** The flights booked on the aircraft that day, whose hours are counted. */
export function Flights({ day }: { day: DayView }) {
  const t = useWords();
  if (day.flights.length === 0) {
    return <EmptyState title={t('No flight is booked on it this day.')} />;
  }
  return (
    <ul className={styles.flights}>
      {day.flights.map(({ id, label, departAt, arriveAt, plannedTenths, state }) => (
        <li key={id}>
          <b>
            {t('{timeOf} to {timeOf2}', {
              timeOf: timeOf(t, departAt, day),
              timeOf2: timeOf(t, arriveAt, day),
            })}
          </b>
          <span>{label}</span>
          <HoursText tenths={plannedTenths} />
          <Tag tone={STATE[state].tone} shape={STATE[state].shape} size="small">
            {t(STATE[state].word)}
          </Tag>
        </li>
      ))}
    </ul>
  );
}

/** The time of day; of a flight that reaches into another day, that. */
function timeOf(t: Translate, at: string, day: DayView): string {
  if (Date.parse(at) < Date.parse(day.from)) return t('the day before');
  return Date.parse(at) > Date.parse(day.until) ? t('the day after') : clockAt(at, day);
}
