import { useWords } from '#words';
import { type AircraftBench } from '@/lib/work/read-aircraft-bench';
import { DateText } from '../../../_ui/moment';
import { EmptyState, Section } from '../../../_ui/page';
import { DueLineCard } from '../../due-line';
import styles from './aircraft.module.css';

/** What falls due on this aircraft, most pressing first. */
export function Due({ view }: { view: AircraftBench }) {
  const t = useWords();
  return (
    <Section title={t('Falling due')} id="due">
      {view.due.length === 0 ? (
        <EmptyState title={t('Nothing that recurs is on record.')} />
      ) : (
        <ul className={styles.rows} aria-label={t('Falling due')}>
          {view.due.map((line) => (
            <li key={`${line.kind}/${line.id}/${line.cite}`}>
              <DueLineCard line={line} withAircraft={false} atBench />
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}

/** What applied once and was ended, with the reason. */
export function Ended({ view }: { view: AircraftBench }) {
  const t = useWords();
  if (view.ended.length === 0) return null;
  return (
    <details className={styles.ended}>
      <summary>{t('Ended ({ended})', { ended: view.ended.length })}</summary>
      <ul className={styles.rows}>
        {view.ended.map((one) => (
          <li key={one.id} className={styles.row}>
            <b>{one.name}</b>
            <span>{one.why}</span>
            <span className={styles.soft}>
              <DateText date={one.on} />
              {t(', by {by}', { by: one.by })}
            </span>
          </li>
        ))}
      </ul>
    </details>
  );
}
