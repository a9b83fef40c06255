import { useWords } from '#words';
import Link from '../../../_ui/link';
import { type ReactNode } from 'react';
import { type AircraftBench } from '@/lib/work/read-aircraft-bench';
import { LinkButton } from '../../../_ui/button';
import { DateText } from '../../../_ui/moment';
import { EmptyState, Section } from '../../../_ui/page';
import { Tag } from '../../../_ui/tag';
import { paperName } from '@/lib/rules/papers-in-words';
import styles from './aircraft.module.css';

/** Special flight permits on record, and the way to record one. */
export function Permits({ view, mayRecord }: { view: AircraftBench; mayRecord: boolean }) {
  const t = useWords();
  return (
    <Section
      title={t('Special flight permits')}
      side={
        mayRecord && (
          <LinkButton href={`/bench/permit/new?aircraft=${view.aircraftId}`}>
            {t('Record a permit')}
          </LinkButton>
        )
      }
    >
      {view.permits.length === 0 ? (
        <EmptyState title={t('No permit is on record.')} />
      ) : (
        <ul className={styles.rows}>
          {view.permits.map((permit) => (
            <li key={permit.id} className={styles.row}>
              <Tag tone={permit.used || permit.goodThrough < view.today ? 'grey' : 'blue'} size="small">
                {permit.used ? t('Flown') : permit.goodThrough < view.today ? t('Ran out') : t('Good')}
              </Tag>
              <Link href={`/bench/permit/${permit.id}`}>{permit.reference}</Link>
              <span className={styles.soft}>
                {t('through')} <DateText date={permit.goodThrough} />
              </span>
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}

/** The papers that must be aboard, and under them what can be done with them. */
export function Papers({ view, children }: { view: AircraftBench; children: ReactNode }) {
  const t = useWords();
  return (
    <Section title={t('Papers aboard')} id="papers">
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
            </span>
            <span className={styles.soft}>
              {paper.validThrough ? (
                <>
                  {t('through')} <DateText date={paper.validThrough} />
                </>
              ) : paper.expires === false ? (
                t('does not expire')
              ) : (
                t('expiry not known')
              )}
              {paper.reference && `, ${paper.reference}`}
            </span>
          </li>
        ))}
      </ul>
      {children}
    </Section>
  );
}
