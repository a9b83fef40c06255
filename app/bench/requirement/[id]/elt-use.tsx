import { Say, useWords } from '#words';
import { type RequirementView } from '@/lib/inspections/read-requirement';
import { ELT_USE_MINUTES } from '@/lib/rules/part-91/91-207-elt-inspection';
import { Cite } from '../../../_ui/cite';
import { DateText } from '../../../_ui/moment';
import { Card, Section } from '../../../_ui/page';
import { Act, ActList } from '../../acts';
import styles from '../../inspection/inspection.module.css';
import { EltUseForm } from '../elt-form';

/** How long the transmitter was on since its battery was fitted. */
export function EltUse({ view, mayRecord }: { view: RequirementView; mayRecord: boolean }) {
  const t = useWords();
  const use = view.eltUse;
  if (!use) return null;
  return (
    <Section title={t('Use of the transmitter')}>
      <Card edge={use.minutes > ELT_USE_MINUTES ? 'red' : undefined}>
        <p>
          <Say
            text="<b>{minutes} minutes</b> since the battery was fitted, tests included. After more than {elt_use_minutes} it is replaced."
            parts={{ b: <b /> }}
            values={{ minutes: use.minutes, elt_use_minutes: ELT_USE_MINUTES }}
          />
        </p>
        <Cite cite="14cfr91.207(c)(1)" />
        {use.rows.length > 0 && (
          <ul className={styles.rows}>
            {use.rows.map((row) => (
              <li key={row.id} className={styles.row}>
                <DateText date={row.usedOn} />
                <span>{t('{minutes} min', { minutes: row.minutes })}</span>
                <span className={styles.soft}>
                  {row.words}, {row.by}
                </span>
              </li>
            ))}
          </ul>
        )}
      </Card>
      {mayRecord && (
        <ActList>
          <Act title={t('Record its use')} hint={t('Any time it transmitted, a test too.')}>
            <EltUseForm aircraftId={view.aircraftId} />
          </Act>
        </ActList>
      )}
    </Section>
  );
}
