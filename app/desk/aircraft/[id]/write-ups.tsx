import { useWords } from '#words';
import Link from '../../../_ui/link';
import { CarriedMark } from '@/app/_ui/carried-mark';
import { SeverityMark } from '@/app/_ui/marks';
import { Ago, DateText } from '@/app/_ui/moment';
import { Card, EmptyState, Section } from '@/app/_ui/page';
import { Tag } from '@/app/_ui/tag';
import { type WriteUpSummary } from '@/lib/findings/summary';
import { type AircraftFile } from '@/lib/fleet/read-aircraft-file';
import { type Severity } from '@/lib/rules/aircraft';
import { localDate } from '@/lib/rules/months';
import styles from './aircraft.module.css';

/** What is written up and open, what is deferred with its placards, and what was closed lately. */
export function WriteUps({ file }: { file: AircraftFile }) {
  const t = useWords();
  const { writeUps, recentlyClosed, asOf, row } = file;
  return (
    <>
      <Section title={t('Open write-ups ({writeUps})', { writeUps: writeUps.length })} id="write-ups">
        {writeUps.length === 0 && <EmptyState title={t('Nothing is written up on this aircraft.')} />}
        <div className={styles.cards}>
          {writeUps.map((one) => (
            <WriteUp key={one.id} one={one} asOf={asOf} />
          ))}
        </div>
      </Section>
      {recentlyClosed.length > 0 && (
        <Section title={t('Closed in the last 30 days')}>
          <ul className={styles.closed}>
            {recentlyClosed.map((one) => (
              <li key={one.id}>
                <b>{one.number}</b> {one.title}:{' '}
                {one.closedHow ? one.closedHow.replaceAll('-', ' ') : t('closed')}
                {one.closedAt && (
                  <>
                    {' '}
                    {t('on')} <DateText date={localDate(one.closedAt, row.zone)} />
                  </>
                )}
              </li>
            ))}
          </ul>
        </Section>
      )}
    </>
  );
}

function WriteUp({ one, asOf }: { one: WriteUpSummary; asOf: string }) {
  const t = useWords();
  return (
    <Card>
      <div className={styles.marks}>
        <SeverityMark severity={one.severity as Severity | null} size="small" />
        {one.state === 'deferred' && (
          <Tag tone="blue" size="small">
            {t('Deferred')}
          </Tag>
        )}
        {one.carried && <CarriedMark mark={one.carried} short />}
      </div>
      <h3>
        <Link href={`/ramp/write-up/${one.id}`}>
          {one.number} {one.title}
        </Link>
      </h3>
      <p>{one.words}</p>
      <p className={styles.soft}>
        {one.reportedBy}, <Ago at={one.openedAt} now={asOf} />
      </p>
      {one.placards.map((placard) => (
        <p key={placard.id} className={styles.placard}>
          <b>{placard.placed ? t('Placard in place') : t('Placard owed')}</b>, {placard.location}: “
          {placard.wording}”
        </p>
      ))}
    </Card>
  );
}
