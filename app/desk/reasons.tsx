import { useWords } from '#words';
import { VerdictLines } from '@/app/_ui/verdict-lines';
import { type Line } from '@/lib/rules/verdict';
import styles from './reasons.module.css';

/** The lines behind an answer. What decides stands open; what was looked at and found in order unfolds. */
export function Reasons({ lines }: { lines: readonly Line[] }) {
  const t = useWords();
  const deciding = lines.filter((line) => line.effect !== 'supports');
  const inOrder = lines.filter((line) => line.effect === 'supports');
  return (
    <div className={styles.reasons}>
      {deciding.length > 0 ? (
        <VerdictLines lines={deciding} />
      ) : (
        <p>{t('Nothing bars or limits it. What was looked at stands below.')}</p>
      )}
      {inOrder.length > 0 && (
        <details className={styles.inOrder}>
          <summary>
            {t('Looked at and in order: {inOrder} {which}', {
              inOrder: inOrder.length,
              which: inOrder.length === 1 ? t('line') : t('lines'),
            })}
          </summary>
          <VerdictLines lines={inOrder} compact />
        </details>
      )}
    </div>
  );
}
