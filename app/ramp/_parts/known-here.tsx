import Link from '../../_ui/link';
import { type WriteUpSummary } from '@/lib/findings/summary';
import styles from './ramp.module.css';
import { SeverityOf, StateMark } from './write-up-card';

/** What is written up at a station already, so that nobody writes it twice, and the placards that belong there. */
export function KnownHere({ writeUps }: { writeUps: readonly WriteUpSummary[] }) {
  if (writeUps.length === 0) return null;
  return (
    <section className={styles.known} aria-label="Written up here already">
      <p>
        <b>Written up here already</b>
      </p>
      <ul className={styles.plainList}>
        {writeUps.map((writeUp) => (
          <li key={writeUp.id}>
            <div className={styles.marks}>
              <SeverityOf writeUp={writeUp} />
              <StateMark writeUp={writeUp} />
            </div>
            <Link href={`/ramp/write-up/${writeUp.id}`} className={styles.knownLink}>
              {writeUp.number} {writeUp.title}
            </Link>
            {writeUp.place && <span className={styles.soft}> {writeUp.place}</span>}
            {writeUp.placards.map((placard) => (
              <p key={placard.id}>
                {placard.placed ? 'Placard must be there: ' : 'Placard owed: '}
                <b className={styles.wording}>{placard.wording}</b> {placard.location}
              </p>
            ))}
          </li>
        ))}
      </ul>
    </section>
  );
}
