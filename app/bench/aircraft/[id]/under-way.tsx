import { Say, useWords } from '#words';
import Link from '../../../_ui/link';
import { type AircraftBench } from '@/lib/work/read-aircraft-bench';
import { SeverityMark } from '../../../_ui/marks';
import { Ago, DateText, Moment } from '../../../_ui/moment';
import { EmptyState, Section } from '../../../_ui/page';
import { Tag } from '../../../_ui/tag';
import { Act, ActList } from '../../acts';
import { BeginInspection } from '../../inspection/begin-form';
import { severityOf } from '../../severity-of';
import { workKindWords, workStateWords } from '../../words';
import styles from './aircraft.module.css';

/** Everything written up and not closed, oldest first. */
export function WriteUps({ view }: { view: AircraftBench }) {
  const t = useWords();
  return (
    <Section title={t('Open write-ups')}>
      {view.writeUps.length === 0 ? (
        <EmptyState title={t('Nothing is written up.')} />
      ) : (
        <ul className={styles.rows}>
          {view.writeUps.map((one) => (
            <li key={one.id} className={styles.row}>
              <span>
                <SeverityMark severity={severityOf(one.severity)} size="small" />{' '}
                {one.state === 'deferred' && (
                  <Tag tone="blue" size="small">
                    {t('Deferred')}
                  </Tag>
                )}
              </span>
              <Link href={`/bench/write-up/${one.id}`}>
                {one.number} {one.title}
              </Link>
              <span className={styles.soft}>
                <Say
                  text="<ago/>, by {reportedBy}"
                  parts={{ ago: <Ago at={one.openedAt} now={view.asOf} /> }}
                  values={{ reportedBy: one.reportedBy }}
                />
              </span>
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}

/** Work begun, the inspection that is open, and visits; or the way to begin an inspection. */
export function UnderWay({ view, mayBegin }: { view: AircraftBench; mayBegin: boolean }) {
  const t = useWords();
  const { work, inspection, visits } = view;
  return (
    <Section title={t('Under way')}>
      <ul className={styles.rows}>
        {inspection && (
          <li className={styles.row}>
            <Tag tone="amber" size="small">
              {t('Open')}
            </Tag>
            <Link href={`/bench/inspection/${inspection.id}`}>{workKindWords(t, inspection.kind)}</Link>
            <span className={styles.soft}>
              <Say
                text="begun <moment/> by {begunBy}"
                parts={{ moment: <Moment at={inspection.begunAt} zone={view.zone} /> }}
                values={{ begunBy: inspection.begunBy }}
              />
            </span>
          </li>
        )}
        {work
          .filter(({ inspectionId }) => inspectionId === null)
          .map((one) => (
            <li key={one.id} className={styles.row}>
              <Tag tone="amber" size="small">
                {workStateWords(t, one.state)}
              </Tag>
              <WorkLink work={one} />
              <span className={styles.soft}>
                <Say
                  text="begun <moment/> by {startedBy}"
                  parts={{ moment: <Moment at={one.startedAt} zone={view.zone} /> }}
                  values={{ startedBy: one.startedBy }}
                />
              </span>
            </li>
          ))}
        {visits.map((visit) => (
          <li key={visit.id} className={styles.row}>
            <Tag tone="blue" size="small">
              {t('Visit')}
            </Tag>
            <Link href={`/bench/visit/${visit.id}`}>{visit.title}</Link>
            <span className={styles.soft}>
              {visit.plannedOn ? (
                <>
                  {t('planned for')} <DateText date={visit.plannedOn} />
                </>
              ) : (
                t('no day planned')
              )}
            </span>
          </li>
        ))}
      </ul>
      {!inspection && work.length === 0 && visits.length === 0 && (
        <EmptyState title={t('No work is under way.')} />
      )}
      {!inspection && mayBegin && <BeginHere view={view} />}
    </Section>
  );
}

function WorkLink({ work }: { work: AircraftBench['work'][number] }) {
  if (work.discrepancyId) return <Link href={`/bench/write-up/${work.discrepancyId}`}>{work.title}</Link>;
  if (work.requirementId) return <Link href={`/bench/requirement/${work.requirementId}`}>{work.title}</Link>;
  return <span>{work.title}</span>;
}

/** The annual or the 100-hour, out of what recurs on this aircraft. */
function BeginHere({ view }: { view: AircraftBench }) {
  const t = useWords();
  const requirements = view.due.flatMap(({ kind, id, name, requirementKind }) =>
    kind === 'requirement' && id !== '' && requirementKind !== null
      ? [{ id, name, kind: requirementKind }]
      : [],
  );
  return (
    <ActList>
      <Act title={t('Begin an inspection')} hint={t('Annual or 100-hour: 43.11.')}>
        <BeginInspection aircraftId={view.aircraftId} requirements={requirements} />
      </Act>
    </ActList>
  );
}
