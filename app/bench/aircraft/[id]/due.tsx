import { type AircraftBench } from '@/lib/work/read-aircraft-bench';
import { DateText } from '../../../_ui/moment';
import { EmptyState, Section } from '../../../_ui/page';
import { DueLineCard } from '../../due-line';
import styles from './aircraft.module.css';

/** What falls due on this aircraft, most pressing first. */
export function Due({ view }: { view: AircraftBench }) {
  return (
    <Section title="Falling due" id="due">
      {view.due.length === 0 ? (
        <EmptyState title="Nothing that recurs is on record." />
      ) : (
        <ul className={styles.rows} aria-label="Falling due">
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
  if (view.ended.length === 0) return null;
  return (
    <details className={styles.ended}>
      <summary>Ended ({view.ended.length})</summary>
      <ul className={styles.rows}>
        {view.ended.map((one) => (
          <li key={one.id} className={styles.row}>
            <b>{one.name}</b>
            <span>{one.why}</span>
            <span className={styles.soft}>
              <DateText date={one.on} />, by {one.by}
            </span>
          </li>
        ))}
      </ul>
    </details>
  );
}
