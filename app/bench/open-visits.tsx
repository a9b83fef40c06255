import { useWords } from '#words';
import { type OpenVisit } from '@/lib/visits/open-visits';
import Link from '../_ui/link';
import { DateText } from '../_ui/moment';
import styles from './open-visits.module.css';

/** Visits that are not closed, each a link. */
export function OpenVisits({ visits }: { visits: readonly OpenVisit[] }) {
  const t = useWords();
  return (
    <ul className={styles.visits}>
      {visits.map((visit) => (
        <li key={visit.id}>
          <Link href={`/bench/visit/${visit.id}`}>
            <b>{visit.registration}</b>
            <span className={styles.title}>{visit.title}</span>
            <span className={styles.soft}>
              {visit.plannedOn ? <DateText date={visit.plannedOn} /> : t('No day set')} · {visit.items}{' '}
              {visit.items === 1 ? t('item') : t('items')}
            </span>
          </Link>
        </li>
      ))}
    </ul>
  );
}
