import { type Line } from '@/lib/rules/verdict';
import { Cite } from './cite';
import { EFFECTS } from './marks';
import { Tag } from './tag';
import styles from './verdict-lines.module.css';

/**
 * The reasons behind an answer, one line a reason: what it does, why, and the paragraph. `compact` is for cards and
 * rows: the paragraph does not unfold there.
 */
export function VerdictLines({ lines, compact = false }: { lines: readonly Line[]; compact?: boolean }) {
  return (
    <ul className={`${styles.lines} ${compact ? styles.compact : ''}`}>
      {lines.map((line, index) => (
        <li key={`${index}-${line.cite}`} className={styles.line}>
          <span className={styles.effect}>
            <Tag tone={EFFECTS[line.effect].tone} shape={EFFECTS[line.effect].shape} size="small">
              {EFFECTS[line.effect].word}
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
                <b>Strict reading.</b> {line.strictReading}
              </p>
            )}
            <Cite cite={line.cite} plain={compact} />
          </div>
        </li>
      ))}
    </ul>
  );
}

/** The sentence, with the missing fact standing out in it: that is what somebody has to find out. */
function Because({ line }: { line: Line }) {
  const { because, missing } = line;
  if (missing === undefined) return because;
  const at = because.indexOf(missing);
  if (at < 0) {
    return (
      <>
        {because} <strong className={styles.missing}>Missing: {missing}.</strong>
      </>
    );
  }
  return (
    <>
      {because.slice(0, at)}
      <strong className={styles.missing}>{missing}</strong>
      {because.slice(at + missing.length)}
    </>
  );
}
