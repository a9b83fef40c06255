import { Say, useEnglish, useWords } from '#words';
import { DateText } from '@/app/_ui/moment';
import { type PersonPage } from '@/lib/people/read-person';
import { EVENT_WORDS } from '../words';
import styles from '../people.module.css';

/** Joined, left, returned, roles: newest first. */
export function Events({ events }: { events: PersonPage['events'] }) {
  const t = useWords();
  const english = useEnglish();
  return (
    <ul className={styles.list}>
      {events.map(({ id, what, on, words, byName }) => (
        <li key={id} className={styles.item}>
          <p>
            <Say
              text="<b>{what}</b> on {day}, entered by {name}."
              parts={{ b: <strong /> }}
              values={{ what: t(EVENT_WORDS[what] ?? what), day: <DateText date={on} />, name: byName }}
            />
          </p>
          <p className={styles.soft} {...english}>
            {words}
          </p>
        </li>
      ))}
    </ul>
  );
}
