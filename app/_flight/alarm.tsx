import { useWords } from '#words';
import { said } from '@/lib/words/said';
import { type ReactNode } from 'react';
import { type ReleaseStanding } from '@/lib/releases/history';
import { Moment } from '../_ui/moment';
import Link from '../_ui/link';
import { VerdictLines } from '../_ui/verdict-lines';
import { ACCEPTED_BEFORE, isAcceptedBefore } from './accepted-before';
import styles from './flight.module.css';

interface AlarmProps {
  readonly standing: Pick<ReleaseStanding, 'state' | 'events' | 'acceptedBeforeWarning'>;
  readonly registration: string;
  readonly zone: string;
  /** What to do now, for whoever reads it. */
  readonly children?: ReactNode;
}

/**
 * The facts changed after release. Void: in the way of everything else, what came in, when and by whom, the paragraphs, and
 * what to do now. A warning for a flight in the air, or a change that bars nothing, in amber. Nothing when neither is so.
 */
export function Alarm({ standing, registration, zone, children }: AlarmProps) {
  const t = useWords();
  const { state, events } = standing;
  const isVoid = state.name === 'void';
  const event = [...events].reverse().find(({ what }) => what === 'void' || (what === 'warned' && !isVoid));
  const isOver = state.name === 'closed' || state.name === 'withdrawn';
  if (!event || isOver || (!isVoid && !state.warned)) return null;
  const deciding = event.lines.filter(({ effect }) => effect === 'bars' || effect === 'limits');
  return (
    <div role="alert" className={`${styles.alarm} ${isVoid ? styles.void : styles.warned}`}>
      <p className={styles.alarmTitle}>
        {isVoid
          ? t('Do not fly {registration}: this release is void.', { registration })
          : warnedTitle(standing)}
      </p>
      <p>
        {isVoid
          ? t('Void means: what it stood on is no longer so. It is as if it had not been given.')
          : t('The facts changed after it was released.')}
      </p>
      {event.words && <p className={styles.reason}>{event.words}</p>}
      <p>
        {event.writeUp && (
          <>
            <Link href={`/ramp/write-up/${event.writeUp.id}`} className={styles.line}>
              {event.writeUp.number}: {event.writeUp.title}
            </Link>
            <br />
          </>
        )}
        {event.by}, <Moment at={event.at} zone={zone} />
      </p>
      {deciding.length > 0 && (
        <div className={styles.lines}>
          <VerdictLines lines={deciding} />
        </div>
      )}
      {children}
    </div>
  );
}

/** Whether the pilot has signed for what came in decides what is left to do. */
const warnedTitle = (standing: AlarmProps['standing']): string | undefined =>
  isAcceptedBefore(standing) ? ACCEPTED_BEFORE : TITLES[standing.state.name];

const TITLES: Partial<Record<ReleaseStanding['state']['name'], string>> = {
  airborne: said('Something came in after this flight took off.'),
  landed: said('Something came in while this flight was out.'),
  released: said('The facts changed since this release. Read them before the flight.'),
  accepted: said('The facts changed since this release. The pilot has accepted it since.'),
};
