import { useWords } from '#words';
import Link from '../../../_ui/link';
import { type AircraftFile } from '@/lib/fleet/read-aircraft-file';
import { FreshMark } from '@/app/_ui/freshness';
import styles from './aircraft.module.css';

/** The eight kinds of operation with their answers; each is a link that shows its reasons. */
export function KindsNav(props: { aircraftId: string; answers: AircraftFile['answers']; chosen: string }) {
  const t = useWords();
  return (
    <nav aria-label={t('Kinds of operation')}>
      <ul className={styles.kinds}>
        {props.answers.map(({ id, name, answer }) => (
          <li key={id}>
            <Link
              href={`/desk/aircraft/${props.aircraftId}?kind=${id}#reasons`}
              className={styles.kind}
              aria-current={id === props.chosen ? 'true' : undefined}
              replace
            >
              <span>{t(name)}</span>
              <FreshMark outcome={answer.outcome} size="small" />
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
