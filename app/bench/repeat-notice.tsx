import Link from '../_ui/link';
import { type EarlierClosure, type RepeatView } from '@/lib/findings/repeats';
import { REPEAT_DAYS, REPEAT_FLIGHTS } from '@/lib/rules/repeat-defect';
import { counted } from '@/lib/rules/counted';
import { Moment } from '../_ui/moment';
import { Tag } from '../_ui/tag';
import styles from './repeat-notice.module.css';

/** The same system was signed off a little while ago: what was found and done then, the last first. */
export function RepeatNotice({ repeat, zone }: { repeat: RepeatView; zone: string }) {
  const times = repeat.earlier.filter(({ inWindow }) => inWindow).length;
  return (
    <section className={styles.notice} aria-labelledby="repeat">
      <h2 id="repeat" className={styles.title}>
        <Tag tone="amber">Repeat</Tag>{' '}
        {times === 1
          ? 'This system was signed off shortly before.'
          : `Signed off ${times} times shortly before.`}
      </h2>
      <p className={styles.rule}>
        Within {REPEAT_DAYS} days or {REPEAT_FLIGHTS} flights of a sign-off. Our own rule, not a regulation.
      </p>
      <ol className={styles.list} aria-label="Earlier closures, the last first">
        {repeat.earlier.map((one) => (
          <li key={one.discrepancyId}>
            <Earlier one={one} zone={zone} />
          </li>
        ))}
      </ol>
    </section>
  );
}

function Earlier({ one, zone }: { one: EarlierClosure; zone: string }) {
  return (
    <>
      <p className={styles.head}>
        <Link href={`/bench/write-up/${one.discrepancyId}`}>
          {one.number} {one.title}
        </Link>
        {one.how === 'could-not-duplicate' ? (
          <Tag tone="amber" shape="question" size="small">
            Could not duplicate
          </Tag>
        ) : (
          <Tag tone="grey" shape="tick" size="small">
            Repaired
          </Tag>
        )}
        {!one.inWindow && <span className={styles.soft}>longer ago, for the history</span>}
      </p>
      {one.words && <blockquote className={styles.words}>{one.words}</blockquote>}
      <p className={styles.soft}>
        Signed by {one.signedBy}, closed <Moment at={one.closedAt} zone={zone} />. {sinceInWords(one)}{' '}
        {SAME[one.sameBy]}
      </p>
    </>
  );
}

/** "12 days and 3 flights before this one." */
function sinceInWords({ days, flights }: EarlierClosure): string {
  const inDays = days === 0 ? 'The same day' : counted(days, 'day');
  return flights === null
    ? `${inDays} before this one; how many flights is not known.`
    : `${inDays} and ${counted(flights, 'flight')} before this one.`;
}

const SAME: Readonly<Record<EarlierClosure['sameBy'], string>> = {
  finding: 'The same finding.',
  equipment: 'The same equipment.',
  system: 'The same system by its code.',
};
