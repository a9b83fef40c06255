import { type Metadata } from 'next';
import { words } from '@/app/_words/words';
import { LinkButton } from '@/app/_ui/button';
import { CarriedMark } from '@/app/_ui/carried-mark';
import { dateInWords } from '@/app/_ui/moment';
import { EmptyState, Section } from '@/app/_ui/page';
import { Tag } from '@/app/_ui/tag';
import { Act, ActList } from '@/app/bench/acts';
import { said } from '@/lib/words/said';
import { DirectiveForm, EndDirectiveForm, ReviewForm } from '../../_parts/directive-forms';
import { historySheet } from '../../_parts/sheet';
import styles from '../../history.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Airworthiness directives') };
}

const LEAD = said(
  'Those that need equipment to work are entered here; those that recur, beside the inspections. Then somebody signs that all were gone through.',
);

/** Directives that apply, and the signed review of all of them. */
export default async function DirectivesPage({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params;
  return historySheet(id, 'directives', LEAD, ({ view, who, t }) => (
    <>
      <Section title={t('Gone through')}>
        {view.directivesReviewedOn === null ? (
          <EmptyState title={t('Nobody has signed that all directives were gone through.')}>
            <p>{t('Until then the answer is no go.')}</p>
          </EmptyState>
        ) : (
          <p>
            {t('Last on {date}.', { date: dateInWords(view.directivesReviewedOn) })}{' '}
            {view.directivesReview && <CarriedMark mark={view.directivesReview} />}
          </p>
        )}
        <ActList>
          <Act title={t('Sign a review')}>
            <ReviewForm aircraftId={view.aircraftId} signer={who.name} />
          </Act>
        </ActList>
      </Section>
      <Section title={t('Directives on record')}>
        {view.directives.length === 0 && <EmptyState title={t('None is entered.')} />}
        <ul className={styles.rows}>
          {view.directives.map(({ id: directiveId, number, title, equipment, requiresOperable }) => (
            <li key={directiveId} className={styles.row}>
              <div className={styles.head}>
                <b>{number}</b> <span>{title}</span>
                {requiresOperable && (
                  <Tag tone="amber" size="small">
                    {t('{equipment} must work', { equipment: equipment ?? t('An item taken off the list') })}
                  </Tag>
                )}
              </div>
              <ActList>
                <Act title={t('It applies no more')}>
                  <EndDirectiveForm directiveId={directiveId} signer={who.name} />
                </Act>
              </ActList>
            </li>
          ))}
        </ul>
        <ActList>
          <Act title={t('Enter a directive')}>
            <DirectiveForm aircraftId={view.aircraftId} equipment={view.equipment} />
          </Act>
        </ActList>
        <p>
          <LinkButton href={`/office/history/${view.aircraftId}/last-done`}>
            {t('Directives that recur: to the inspections')}
          </LinkButton>
        </p>
      </Section>
    </>
  ));
}
