import Link from '../../../_ui/link';
import { SeverityMark } from '../../../_ui/marks';
import { DateText } from '../../../_ui/moment';
import { Tag } from '../../../_ui/tag';
import { type VisitRequirement, type VisitWriteUp } from '@/lib/visits/read-visit';
import { severityOf } from '../../severity-of';
import { closedWords, stateWords, workStateWords } from '../../words';
import styles from '../visit.module.css';

const DoneTag = () => (
  <Tag tone="grey" shape="tick" size="small">
    Done
  </Tag>
);

/** A write-up in a visit, with where it stands. */
export function WriteUpItem({ item }: { item: VisitWriteUp }) {
  const where = item.done
    ? closedWords(item.closedHow ?? '')
    : item.work
      ? workStateWords(item.work)
      : `${stateWords(item.state)}, no work begun`;
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
  return (
    <li>
      <span className={styles.mark}>
        {item.done ? (
          <DoneTag />
        ) : (
          <Tag tone="blue" size="small">
            {item.byInspection ? 'Inspection' : 'Recurring'}
          </Tag>
        )}
      </span>
      <div>
        <Link href={`/bench/requirement/${item.requirementId}`}>{item.name}</Link>
      </div>
      <span className={styles.where}>
        {item.doneOn !== null && (
          <>
            Done <DateText date={item.doneOn} />
          </>
        )}
        {!item.done && item.inspectionId !== null && (
          <Link href={`/bench/inspection/${item.inspectionId}`}>Go on with the inspection</Link>
        )}
        {!item.done && item.inspectionId === null && item.byInspection && (
          <Link href={`/bench/aircraft/${aircraftId}`}>Begin it on the aircraft’s page</Link>
        )}
        {!item.done && !item.byInspection && 'Not done yet'}
      </span>
    </li>
  );
}
