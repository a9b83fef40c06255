import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { words } from '@/app/_words/words';
import { ButtonRow, LinkButton } from '@/app/_ui/button';
import { EmptyState, PageTitle, Section } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { Tag } from '@/app/_ui/tag';
import { readHistory, type HistoryRow } from '@/lib/carry-over/read-history';
import { paperName } from '@/lib/rules/papers-in-words';
import { type Translate } from '@/lib/words/translate';
import { OfficeNav } from '../_parts/office-nav';
import styles from './history.module.css';
import { Refused } from './_parts/refused';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('History') };
}

/** What was before: papers, inspections, directives, lists, open write-ups, aircraft by aircraft. */
export default async function HistoryPage() {
  const t = await words();
  const { ref, who } = await requireActor('/office/history');
  const result = await readHistory(ref, {});
  if (!result.ok) return <Refused who={who} title={t('History')} problem={result.problem} />;
  const rows = result.value;
  return (
    <Shell who={who}>
      <PageTitle
        lead={t(
          'What stood on paper before. Each thing carried over keeps who vouches for it, and from which document.',
        )}
        side={
          <ButtonRow>
            <LinkButton href="/office/history/import">{t('From a file')}</LinkButton>
          </ButtonRow>
        }
      >
        {t('History')}
      </PageTitle>
      <OfficeNav at="history" />
      <Section title={t('Aircraft')}>
        {rows.length === 0 ? (
          <EmptyState title={t('There are no aircraft yet.')}>
            <p>{t('Add the aircraft first; then its papers and inspections are entered here.')}</p>
            <LinkButton href="/office/fleet">{t('To the fleet')}</LinkButton>
          </EmptyState>
        ) : (
          <ul className={styles.rows}>
            {rows.map((row) => (
              <li key={row.aircraftId} className={styles.row}>
                <div className={styles.head}>
                  <span className={styles.name}>{row.registration}</span>
                  <span className={styles.soft}>{row.typeName}</span>
                </div>
                <Lacks row={row} t={t} />
                <div className={styles.acts}>
                  <LinkButton href={`/office/history/${row.aircraftId}`}>
                    {t('History of {registration}', { registration: row.registration })}
                  </LinkButton>
                </div>
              </li>
            ))}
          </ul>
        )}
      </Section>
    </Shell>
  );
}

function Lacks({ row, t }: { row: HistoryRow; t: Translate }) {
  const lacks = [
    ...row.papersMissing.map((kind) => t('No paper: {paper}', { paper: t(paperName(kind)).toLowerCase() })),
    ...(row.recurs === 0 ? [t('No inspection entered')] : []),
    ...(row.neverRecorded > 0
      ? [
          t('{n, plural, one {# inspection never recorded} other {# inspections never recorded}}', {
            n: row.neverRecorded,
          }),
        ]
      : []),
    ...(row.directivesReviewedOn === null ? [t('Directives not gone through')] : []),
    ...(row.mel === null ? [t('Minimum equipment list: nobody has said')] : []),
  ];
  return (
    <ul className={styles.lacks}>
      {lacks.map((lack) => (
        <li key={lack}>
          <Tag tone="amber" size="small">
            {lack}
          </Tag>
        </li>
      ))}
      {lacks.length === 0 && (
        <li>
          <Tag tone="green" size="small">
            {t('Everything of before is entered')}
          </Tag>
        </li>
      )}
      {row.carriedOver > 0 && (
        <li>
          <Tag tone="grey" size="small">
            {t('{n, plural, one {# write-up carried over} other {# write-ups carried over}}, {open} open', {
              n: row.carriedOver,
              open: row.carriedOpen,
            })}
          </Tag>
        </li>
      )}
    </ul>
  );
}
