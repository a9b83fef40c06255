import styles from './caution.module.css';

/** What this program is not. Short at the foot of every screen, long beside an answer and on paper. */
export function Caution({ form = 'short' }: { form?: 'short' | 'long' }) {
  if (form === 'short') {
    return (
      <p className={styles.short}>
        A decision aid. The pilot in command decides whether the aircraft is airworthy
        (14&nbsp;CFR&nbsp;91.7(b)); certificated persons approve return to service; the current regulations
        and the aircraft’s own documents govern.
      </p>
    );
  }
  return (
    <aside className={styles.long} aria-label="Caution">
      <p>
        <b>A decision aid, not an approval.</b> The pilot in command is responsible for deciding whether the
        aircraft is in condition for safe flight (14&nbsp;CFR&nbsp;91.7(b)). Only persons certificated for it
        approve an aircraft for return to service. The current regulations and the aircraft’s own documents
        govern, also where this screen says something else.
      </p>
    </aside>
  );
}
