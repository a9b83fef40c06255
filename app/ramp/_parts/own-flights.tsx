import { Say, useWords } from '#words';
import { words } from '@/app/_words/words';
import { type ActorRef } from '@/lib/access/actor';
import { readMyFlights, type MyFlight } from '@/lib/releases/my-flights';
import { ACCEPTED_BEFORE, isAcceptedBefore } from '../../_flight/accepted-before';
import { StateMark } from '../../_flight/state-mark';
import Link from '../../_ui/link';
import { Moment } from '../../_ui/moment';
import { ProblemNotice } from '../../_ui/problem-notice';
import own from '../flight/flight.module.css';
import styles from './ramp.module.css';

/** The asking person's own released flights that have not ended, void ones among them. Nothing when there is none. */
export async function OwnFlights({ actor }: { actor: ActorRef }) {
  const t = await words();
  const read = await readMyFlights(actor, {});
  if (!read.ok) return <ProblemNotice problem={read.problem} />;
  if (read.value.length === 0) return null;
  return (
    <section className={own.flights} aria-labelledby="your-flights">
      <h2 id="your-flights">{t('Your flights')}</h2>
      <ul className={styles.rows}>
        {read.value.map((flight) => (
          <li key={flight.releaseId}>
            <FlightLink flight={flight} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function FlightLink({ flight }: { flight: MyFlight }) {
  const t = useWords();
  const { releaseId, registration, departAt, from, to, state, canAccept } = flight;
  return (
    <Link href={`/ramp/flight/${releaseId}`} className={styles.row}>
      <h3>{registration}</h3>
      <span className={`${styles.rowMark} ${styles.marks}`}>
        <StateMark state={state} size="small" />
      </span>
      <span className={styles.rowWhole}>
        <Say
          text="<moment/>, {ident} to {ident2}"
          parts={{ moment: <Moment at={departAt} zone={from.zone} /> }}
          values={{ ident: from.ident, ident2: to.ident }}
        />
      </span>
      {state.name === 'void' && (
        <span className={`${styles.rowWhole} ${styles.headline}`}>{t('Do not fly it: read why.')}</span>
      )}
      {canAccept && (
        <span className={`${styles.rowWhole} ${styles.headline}`}>
          {isAcceptedBefore(flight) ? t(ACCEPTED_BEFORE) : t('Read it, and take the aircraft.')}
        </span>
      )}
    </Link>
  );
}
