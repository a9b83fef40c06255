import { type Metadata } from 'next';
import { words } from '@/app/_words/words';
import { CarriedMark } from '@/app/_ui/carried-mark';
import { dateInWords } from '@/app/_ui/moment';
import { EmptyState, Section } from '@/app/_ui/page';
import { Act, ActList } from '@/app/bench/acts';
import { RenewPaperForm } from '@/app/bench/forms/renew-paper-form';
import { mayUse } from '@/lib/access/policy';
import { PAPER_KINDS } from '@/lib/rules/aircraft';
import { paperName } from '@/lib/rules/papers-in-words';
import { said } from '@/lib/words/said';
import { PaperForm } from '../../_parts/paper-form';
import { historySheet } from '../../_parts/sheet';
import styles from '../../history.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Papers aboard') };
}

const LEAD = said('The four papers that must be aboard (91.203, 91.9). Have them in front of you.');

/** The papers that must be aboard: those entered, and a form for each that is not. */
export default async function PapersPage({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params;
  return historySheet(id, 'papers', LEAD, ({ view, who, t }) => {
    const missing = PAPER_KINDS.filter((kind) => !view.papers.some((paper) => paper.kind === kind));
    const mayAdd = mayUse(who.roles, 'paper.add');
    return (
      <>
        <Section title={t('Entered')}>
          {view.papers.length === 0 ? (
            <EmptyState title={t('No paper is entered yet.')}>
              <p>{t('Begin with the airworthiness certificate.')}</p>
            </EmptyState>
          ) : (
            <>
              <ul className={styles.rows}>
                {view.papers.map((paper) => (
                  <li key={paper.id} className={styles.row}>
                    <b>{t(paperName(paper.kind))}</b>
                    <span>
                      {paper.aboard === null
                        ? t('Not known whether aboard')
                        : paper.aboard
                          ? t('Aboard')
                          : t('Not aboard')}
                      {', '}
                      {paper.validThrough
                        ? t('through {date}', { date: dateInWords(paper.validThrough) })
                        : paper.expires === false
                          ? t('does not expire')
                          : t('expiry not known')}
                      {paper.reference && `, ${paper.reference}`}
                    </span>
                    {paper.mark && (
                      <span className={styles.soft}>
                        <CarriedMark mark={paper.mark} />
                      </span>
                    )}
                  </li>
                ))}
              </ul>
              {mayUse(who.roles, 'paper.renew') && (
                <ActList>
                  {view.papers.map((paper) => (
                    <Act key={paper.id} title={t('Renew: {paper}', { paper: t(paperName(paper.kind)) })}>
                      <RenewPaperForm paperId={paper.id} kind={paper.kind} />
                    </Act>
                  ))}
                </ActList>
              )}
            </>
          )}
        </Section>
        {missing.length > 0 && (
          <Section title={t('Still missing')}>
            {mayAdd ? (
              <ActList>
                {missing.map((kind) => (
                  <Act key={kind} title={t('Enter: {paper}', { paper: t(paperName(kind)) })}>
                    <PaperForm aircraftId={view.aircraftId} kind={kind} signer={who.name} />
                  </Act>
                ))}
              </ActList>
            ) : (
              <p>{missing.map((kind) => t(paperName(kind))).join(', ')}</p>
            )}
          </Section>
        )}
      </>
    );
  });
}
