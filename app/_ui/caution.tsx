import { Say, useWords } from '#words';
import styles from './caution.module.css';

/** What this program is not. Short at the foot of every screen, long beside an answer and on paper. */
export function Caution({ form = 'short' }: { form?: 'short' | 'long' }) {
  const t = useWords();
  if (form === 'short') {
    return (
      <p className={styles.short}>
        {t(
          'A decision aid. The pilot in command decides whether the aircraft is airworthy (14\u00a0CFR\u00a091.7(b)); certificated persons approve return to service; the current regulations and the aircraft’s own documents govern.',
        )}
      </p>
    );
  }
  return (
    <aside className={styles.long} aria-label={t('Caution')}>
      <p>
        <Say
          text={
            '<b>A decision aid, not an approval.</b> The pilot in command is responsible for deciding whether the aircraft is in condition for safe flight (14\u00a0CFR\u00a091.7(b)). Only persons certificated for it approve an aircraft for return to service. The current regulations and the aircraft’s own documents govern, also where this screen says something else.'
          }
          parts={{ b: <b /> }}
        />
      </p>
    </aside>
  );
}
