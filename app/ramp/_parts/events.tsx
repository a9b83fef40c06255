import { useWords } from '#words';
import { type WriteUpEvent } from '@/lib/findings/events';
import { Moment } from '../../_ui/moment';
import styles from './ramp.module.css';

/** What became of a write-up, in the words of those who did it. */
export function Events({ events, zone }: { events: readonly WriteUpEvent[]; zone: string }) {
  const t = useWords();
  if (events.length === 0) return <p className={styles.soft}>{t('Nobody has seen to it yet.')}</p>;
  return (
    <ol className={styles.events}>
      {events.map((event, index) => (
        <li key={`${index}-${event.at}`}>
          <p>{event.what}</p>
          <p className={styles.said}>{event.words}</p>
          <p className={styles.soft}>
            {event.who}, <Moment at={event.at} zone={zone} />
          </p>
        </li>
      ))}
    </ol>
  );
}
