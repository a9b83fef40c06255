import { Cite } from '@/app/_ui/cite';
import { type FlightWarning } from '@/lib/rules/proposals';
import styles from './proposals.module.css';

/** What to see before releasing, whatever the answer is. */
export function Warnings({ warnings }: { warnings: readonly FlightWarning[] }) {
  if (warnings.length === 0) return null;
  return (
    <section className={styles.warnings} aria-labelledby="warnings">
      <h3 id="warnings">
        {warnings.length === 1 ? 'One warning' : `${warnings.length} warnings`} about this flight
      </h3>
      <ul>
        {warnings.map(({ kind, because, cite }) => (
          <li key={`${kind} ${because}`}>
            <p>{because}</p>
            {cite && <Cite cite={cite} />}
          </li>
        ))}
      </ul>
    </section>
  );
}
