import { useWords } from '#words';
import { VerdictLines } from '@/app/_ui/verdict-lines';
import { type HouseOnDeferral } from '@/lib/rules/house/deferral-under-house';
import styles from './eligibility.module.css';

/** What rules of the house add while the write-up is deferred: below the law's answer and apart from it. */
export function HouseOnDeferralPart({ found }: { found: readonly HouseOnDeferral[] }) {
  const t = useWords();
  if (found.length === 0) return null;
  return (
    <div>
      <h3 className={styles.head}>{t('What rules of the house add while it is deferred')}</h3>
      {found.map(({ line, operations }) => (
        <div key={`${line.house.ruleId} ${line.because}`}>
          <VerdictLines lines={[line]} />
          <p>{t('Concerns: {operations}.', { operations: operations.join('; ') })}</p>
        </div>
      ))}
    </div>
  );
}
