import { Say, useWords } from '#words';
import { useState } from 'react';
import { type FindingDraft, type FindingOffered } from '@/lib/findings/compose-finding';
import { MEASURE_UNITS } from '@/lib/rules/findings/measurements';
import { NumberField } from '@/app/_ui/fields';
import styles from './finding.module.css';

/** What can be measured. Folded away while nothing is, since most findings are seen and not measured. */
export function Measured(props: { offered: FindingOffered; values: FindingDraft; isWrong: boolean }) {
  const t = useWords();
  const { offered, values, isWrong } = props;
  const { measurements } = offered;
  const [isOpen, setOpen] = useState(() =>
    measurements.some(({ key }) => (values.measurements[key] ?? '') !== ''),
  );
  if (measurements.length === 0) return null;
  return (
    <details
      className={styles.measured}
      open={isOpen || isWrong}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>
        <Say text="Measured it? <span>(optional)</span>" parts={{ span: <span className={styles.soft} /> }} />
      </summary>
      <div className={styles.withChips}>
        {measurements.some(({ needed }) => needed) && (
          <p className={styles.soft}>{t('Only what is measured can be found within limits.')}</p>
        )}
        {measurements.map(({ key, label, unit }) => (
          <NumberField
            key={key}
            name={`measurements.${key}`}
            label={label}
            unit={MEASURE_UNITS[unit].label}
            whole={MEASURE_UNITS[unit].decimals === 0}
          />
        ))}
      </div>
    </details>
  );
}
