import { type Metadata } from 'next';
import { words } from '@/app/_words/words';
import { CarriedMark } from '@/app/_ui/carried-mark';
import { LinkButton } from '@/app/_ui/button';
import { DateText, HoursText } from '@/app/_ui/moment';
import { EmptyState, Section } from '@/app/_ui/page';
import { Tag } from '@/app/_ui/tag';
import { Act, ActList } from '@/app/bench/acts';
import { RequirementForm } from '@/app/bench/forms/requirement-form';
import { USUAL_SET } from '@/lib/carry-over/usual-set';
import { said } from '@/lib/words/said';
import { LastDoneForm } from '../../_parts/last-done-form';
import { historySheet } from '../../_parts/sheet';
import { UsualSetForm } from '../../_parts/usual-set-form';
import styles from '../../history.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Inspections last done') };
}

const LEAD = said('First what recurs on this aircraft, then when each was last done, from the logbooks.');

/** What recurs, and when it was last done. */
export default async function LastDonePage({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params;
  return historySheet(id, 'last-done', LEAD, ({ view, who, t }) => {
    const there = view.requirements.map(({ kind }) => kind as string);
    const more = USUAL_SET.some(({ kind }) => !there.includes(kind));
    return (
      <>
        <Section title={t('What recurs')}>
          {view.requirements.length === 0 && (
            <EmptyState title={t('No inspection or test is entered yet.')}>
              <p>{t('Begin with the usual set below.')}</p>
            </EmptyState>
          )}
          <ul className={styles.rows}>
            {view.requirements.map(({ id: requirementId, kind, name, last }) => (
              <li key={requirementId} className={styles.row}>
                <div className={styles.head}>
                  <b>{name}</b>
                  {last === null && (
                    <Tag tone="amber" size="small">
                      {t('Not known when it was last done')}
                    </Tag>
                  )}
                </div>
                {last && (
                  <>
                    <span>
                      <DateText date={last.on} />, <HoursText tenths={last.ttisTenths} />. {last.approvedBy}
                    </span>
                    {last.authorised !== true && (
                      <Tag tone="amber" size="small">
                        {last.authorised === null
                          ? t('Not known whether that person was authorized')
                          : t('That person was not authorized')}
                      </Tag>
                    )}
                    {last.mark && (
                      <span className={styles.soft}>
                        <CarriedMark mark={last.mark} />
                      </span>
                    )}
                  </>
                )}
                {kind === 'vor-check' ? (
                  <div className={styles.acts}>
                    <LinkButton href={`/bench/requirement/${requirementId}`}>
                      {t('Make a VOR check')}
                    </LinkButton>
                  </div>
                ) : (
                  <ActList>
                    <Act
                      title={
                        last ? t('Carry over an earlier or newer record') : t('Say when it was last done')
                      }
                    >
                      <LastDoneForm requirementId={requirementId} kind={kind} signer={who.name} />
                    </Act>
                  </ActList>
                )}
              </li>
            ))}
          </ul>
        </Section>
        <Section title={t('Add what recurs')}>
          <ActList>
            {more && (
              <Act
                title={t('The usual set')}
                hint={t('Annual, 100-hour, altimeter, transponder, emergency locator, VOR.')}
              >
                <UsualSetForm aircraftId={view.aircraftId} there={there} />
              </Act>
            )}
            <Act title={t('Something else')} hint={t('A directive, a life limit, an oil change.')}>
              <RequirementForm aircraftId={view.aircraftId} />
            </Act>
          </ActList>
        </Section>
      </>
    );
  });
}
