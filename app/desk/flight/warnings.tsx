import { English, useWords } from '#words';
import { Cite } from '@/app/_ui/cite';
import { type FlightWarning } from '@/lib/rules/proposals';
import styles from './proposals.module.css';

/** What to see before releasing, whatever the answer is. */
export function Warnings({ warnings }: { warnings: readonly FlightWarning[] }) {
  const t = useWords();
  if (warnings.length === 0) return null;
  return (
    <section className={styles.warnings} aria-labelledby="warnings">
      <h3 id="warnings">
        {t('{n, plural, one {One warning} other {# warnings}} about this flight', { n: warnings.length })}
      </h3>
      <ul>
        {warnings.map(({ kind, because, cite }) => (
          <li key={`${kind} ${because}`}>
            <p>
              <English>{because}</English>
            </p>
            {cite && <Cite cite={cite} />}
          </li>
        ))}
      </ul>
    </section>
  );
}
