import { English, Say, useWords } from '#words';
import { type Line } from '@/lib/rules/verdict';
import { Cite } from './cite';
import { HouseMark } from './house-mark';
import { EFFECTS } from './marks';
import { Tag } from './tag';
import styles from './verdict-lines.module.css';

/**
 * The reasons behind an answer, one line a reason: what it does, why, and the paragraph. `compact` is for cards and
 * rows: the paragraph does not unfold there. A line of a rule of the house stands apart: its own edge, and whose rule it is
 * instead of a paragraph.
 */
export function VerdictLines({ lines, compact = false }: { lines: readonly Line[]; compact?: boolean }) {
  const t = useWords();
  return (
    <ul className={`${styles.lines} ${compact ? styles.compact : ''}`}>
      {lines.map((line, index) => (
        <li key={`${index}-${line.cite}`} className={`${styles.line} ${line.house ? styles.house : ''}`}>
          <span className={styles.effect}>
            <Tag tone={EFFECTS[line.effect].tone} shape={EFFECTS[line.effect].shape} size="small">
              {t(EFFECTS[line.effect].word)}
            </Tag>
          </span>
          <div className={styles.why}>
            <p>
              {line.about && !line.because.includes(line.about.label) && (
                <span className={styles.about}>{line.about.label}: </span>
              )}
              <Because line={line} />
            </p>
            {line.strictReading && (
              <p className={styles.strict}>
                <b>{t('Strict reading.')}</b> <English>{line.strictReading}</English>
              </p>
            )}
            {line.house ? (
              <HouseMark house={line.house} plain={compact} />
            ) : (
              <Cite cite={line.cite} plain={compact} />
            )}
          </div>
        </li>
      ))}
    </ul>
  );
}

/** The sentence, with the missing fact standing out in it: that is what somebody has to find out. */
function Because({ line }: { line: Line }) {
  const { because, missing } = line;
  if (missing === undefined) return <English>{because}</English>;
  const at = because.indexOf(missing);
  if (at < 0) {
    return (
      <>
        <English>{because}</English>{' '}
        <strong className={styles.missing}>
          <Say text="Missing: {missing}." values={{ missing: <English>{missing}</English> }} />
        </strong>
      </>
    );
  }
  return (
    <English>
      {because.slice(0, at)}
      <strong className={styles.missing}>{missing}</strong>
      {because.slice(at + missing.length)}
    </English>
  );
}
