import { type Metadata } from 'next';
import { words } from '@/app/_words/words';
import { LinkButton } from '@/app/_ui/button';
import { CarriedMark } from '@/app/_ui/carried-mark';
import Link from '@/app/_ui/link';
import { EmptyState, Section } from '@/app/_ui/page';
import { Tag } from '@/app/_ui/tag';
import { Act, ActList } from '@/app/bench/acts';
import { said } from '@/lib/words/said';
import { historySheet } from '../../_parts/sheet';
import { WriteUpForm } from '../../_parts/write-up-form';
import styles from '../../history.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Open write-ups of before') };
}

const LEAD = said(
  'Everything that stands open on paper. A lost write-up can kill: copy each, also what looks small.',
);

const STATES: Readonly<Record<string, string>> = {
  open: said('Open'),
  deferred: said('Deferred'),
  closed: said('Closed'),
};

/** Write-ups carried over, and the form for the next one. */
export default async function CarriedWriteUpsPage({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params;
  return historySheet(id, 'write-ups', LEAD, ({ view, who, t }) => (
    <Section
      title={t('Carried over')}
      side={<LinkButton href="/office/history/import">{t('Many at once: from a file')}</LinkButton>}
    >
      {view.writeUps.length === 0 && (
        <EmptyState title={t('Nothing is carried over yet.')}>
          <p>{t('If nothing stands open on paper, there is nothing to do here.')}</p>
        </EmptyState>
      )}
      <ul className={styles.rows}>
        {view.writeUps.map((one) => (
          <li key={one.id} className={styles.row}>
            <div className={styles.head}>
              <Link href={`/bench/write-up/${one.id}`}>
                {one.number} {one.title}
              </Link>
              <Tag tone={one.state === 'closed' ? 'grey' : 'amber'} size="small">
                {t(STATES[one.state] ?? one.state)}
              </Tag>
            </div>
            {one.mark && (
              <span className={styles.soft}>
                <CarriedMark mark={one.mark} />
              </span>
            )}
          </li>
        ))}
      </ul>
      <ActList>
        <Act title={t('Carry over a write-up')}>
          <WriteUpForm
            aircraftId={view.aircraftId}
            equipment={view.equipment}
            melTitles={view.melTitles}
            signer={who.name}
          />
        </Act>
      </ActList>
    </Section>
  ));
}
