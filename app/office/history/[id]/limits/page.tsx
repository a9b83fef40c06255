import { type Metadata } from 'next';
import { words } from '@/app/_words/words';
import { EmptyState, Section } from '@/app/_ui/page';
import { Act, ActList } from '@/app/bench/acts';
import { said } from '@/lib/words/said';
import { EndLimitForm, LimitForm } from '../../_parts/limit-forms';
import { historySheet } from '../../_parts/sheet';
import styles from '../../history.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Stored limits') };
}

const LEAD = said(
  'Numbers from this aircraft’s own manuals: tyre pressure, nick depth, oil. None is built in.',
);

/** Limits of measured things, each with its source. */
export default async function LimitsPage({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params;
  return historySheet(id, 'limits', LEAD, ({ view, who, t }) => (
    <Section title={t('Stored limits')}>
      {view.limits.length === 0 && (
        <EmptyState title={t('No limit is stored.')}>
          <p>
            {t(
              'Without one a measured finding waits for a mechanic, who enters the limit by hand each time.',
            )}
          </p>
        </EmptyState>
      )}
      <ul className={styles.rows}>
        {view.limits.map((limit) => (
          <li key={limit.id} className={styles.row}>
            <b>{limit.label}</b>
            <span>{limit.bounds}</span>
            <span className={styles.soft}>
              {limit.source}
              {limit.sourceDate && `, ${limit.sourceDate}`}
              {limit.addedBy && `. ${t('Entered by {name}', { name: limit.addedBy })}`}
            </span>
            <ActList>
              <Act title={t('End this limit')}>
                <EndLimitForm limitId={limit.id} signer={who.name} />
              </Act>
            </ActList>
          </li>
        ))}
      </ul>
      <ActList>
        <Act title={t('Store a limit')}>
          <LimitForm aircraftId={view.aircraftId} />
        </Act>
      </ActList>
    </Section>
  ));
}
