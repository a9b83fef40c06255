import { useWords } from '#words';
import Link from '../../_ui/link';
import { type ReactNode } from 'react';
import { type WriteUpSummary } from '@/lib/findings/summary';
import { type Severity } from '@/lib/rules/aircraft';
import { CarriedMark } from '../../_ui/carried-mark';
import { SeverityMark } from '../../_ui/marks';
import { Ago } from '../../_ui/moment';
import { Card } from '../../_ui/page';
import { Tag } from '../../_ui/tag';
import styles from './ramp.module.css';
import { stateInWords, whereInWords } from './words';

/** One write-up as a pilot wants it: how bad, where, in whose words, and how it stands. Children: what is owed on it. */
export function WriteUpCard(props: { writeUp: WriteUpSummary; now: string; children?: ReactNode }) {
  const t = useWords();
  const { writeUp, now, children } = props;
  return (
    <Card edge={edgeOf(writeUp)}>
      <div className={styles.marks}>
        <SeverityOf writeUp={writeUp} />
        <StateMark writeUp={writeUp} />
        {writeUp.carried && <CarriedMark mark={writeUp.carried} short />}
      </div>
      <h3>
        <Link href={`/ramp/write-up/${writeUp.id}`} className={styles.cardLink}>
          {writeUp.number} {writeUp.title}
        </Link>
      </h3>
      <p className={styles.soft}>
        {whereInWords(t, writeUp)}. {writeUp.reportedBy}, <Ago at={writeUp.openedAt} now={now} />.
        {writeUp.observations > 0 &&
          t(' Seen again {observations, plural, one {# time} other {# times}} since.', {
            observations: writeUp.observations,
          })}
      </p>
      <p className={styles.said}>{writeUp.words}</p>
      {children}
    </Card>
  );
}

/** The severity, while it matters. A closed write-up grounds nothing any more. */
export function SeverityOf({ writeUp }: { writeUp: Pick<WriteUpSummary, 'severity' | 'state'> }) {
  if (writeUp.state === 'closed') return null;
  return <SeverityMark severity={writeUp.severity as Severity | null} size="small" />;
}

/** Open, deferred, or how it was closed. Green is kept for what somebody has signed. */
export function StateMark({ writeUp }: { writeUp: Pick<WriteUpSummary, 'state' | 'closedHow'> }) {
  const t = useWords();
  const closed = writeUp.state === 'closed';
  return (
    <Tag
      tone={closed ? 'green' : writeUp.state === 'deferred' ? 'blue' : 'grey'}
      shape={closed ? 'tick' : writeUp.state === 'deferred' ? 'ring' : 'dot'}
      size="small"
    >
      {stateInWords(t, writeUp)}
    </Tag>
  );
}

function edgeOf({ state, severity }: WriteUpSummary): 'red' | 'amber' | 'blue' | undefined {
  if (state === 'closed') return undefined;
  if (state === 'deferred') return 'blue';
  return severity === 'grounding' ? 'red' : severity === 'note' ? undefined : 'amber';
}
