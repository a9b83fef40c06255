import { useWords } from '#words';
import Link from '../../../_ui/link';
import { SeverityMark } from '../../../_ui/marks';
import { DateText } from '../../../_ui/moment';
import { Tag } from '../../../_ui/tag';
import { type VisitRequirement, type VisitWriteUp } from '@/lib/visits/read-visit';
import { severityOf } from '../../severity-of';
import { closedWords, stateWords, workStateWords } from '../../words';
import styles from '../visit.module.css';

const DoneTag = () => {
  const t = useWords();
  return (
    <Tag tone="grey" shape="tick" size="small">
      {t('Done')}
    </Tag>
  );
};

/** A write-up in a visit, with where it stands. */
export function WriteUpItem({ item }: { item: VisitWriteUp }) {
  const t = useWords();
  const where = item.done
    ? closedWords(t, item.closedHow ?? '')
    : item.work
      ? workStateWords(t, item.work)
      : t('{state}, no work begun', { state: stateWords(t, item.state) });
  return (
    <li>
      <span className={styles.mark}>
        {item.done ? <DoneTag /> : <SeverityMark severity={severityOf(item.severity)} size="small" />}
      </span>
      <div>
        <Link href={`/bench/write-up/${item.discrepancyId}`}>
          {item.number} {item.title}
        </Link>
        {item.place !== '' && <p className={styles.soft}>{item.place}</p>}
      </div>
      <span className={styles.where}>{where}</span>
    </li>
  );
}

/** A recurring item in a visit: an inspection is begun on the aircraft's page, everything else is answered on its own. */
export function RequirementItem({ item, aircraftId }: { item: VisitRequirement; aircraftId: string }) {
  const t = useWords();
  return (
    <li>
      <span className={styles.mark}>
        {item.done ? (
          <DoneTag />
        ) : (
          <Tag tone="blue" size="small">
            {item.byInspection ? t('Inspection') : t('Recurring')}
          </Tag>
        )}
      </span>
      <div>
        <Link href={`/bench/requirement/${item.requirementId}`}>{item.name}</Link>
      </div>
      <span className={styles.where}>
        {item.doneOn !== null && (
          <>
            {t('Done')} <DateText date={item.doneOn} />
          </>
        )}
        {!item.done && item.inspectionId !== null && (
          <Link href={`/bench/inspection/${item.inspectionId}`}>{t('Go on with the inspection')}</Link>
        )}
        {!item.done && item.inspectionId === null && item.byInspection && (
          <Link href={`/bench/aircraft/${aircraftId}`}>{t('Begin it on the aircraft’s page')}</Link>
        )}
        {!item.done && !item.byInspection && t('Not done yet')}
      </span>
    </li>
  );
}
