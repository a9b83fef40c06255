import Link from '../../_ui/link';
import { type ReactNode } from 'react';
import { type WriteUpSummary } from '@/lib/findings/summary';
import { type Severity } from '@/lib/rules/aircraft';
import { SeverityMark } from '../../_ui/marks';
import { Ago } from '../../_ui/moment';
import { Card } from '../../_ui/page';
import { Tag } from '../../_ui/tag';
import styles from './ramp.module.css';
import { counted } from '@/lib/rules/counted';
import { stateInWords, whereInWords } from './words';

/** One write-up as a pilot wants it: how bad, where, in whose words, and how it stands. Children: what is owed on it. */
export function WriteUpCard(props: { writeUp: WriteUpSummary; now: string; children?: ReactNode }) {
  const { writeUp, now, children } = props;
  return (
    <Card edge={edgeOf(writeUp)}>
      <div className={styles.marks}>
        <SeverityOf writeUp={writeUp} />
        <StateMark writeUp={writeUp} />
      </div>
      <h3>
        <Link href={`/ramp/write-up/${writeUp.id}`} className={styles.cardLink}>
          {writeUp.number} {writeUp.title}
        </Link>
      </h3>
      <p className={styles.soft}>
        {whereInWords(writeUp)}. {writeUp.reportedBy}, <Ago at={writeUp.openedAt} now={now} />.
        {writeUp.observations > 0 && ` Seen again ${counted(writeUp.observations, 'time')} since.`}
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
  const closed = writeUp.state === 'closed';
  return (
    <Tag
      tone={closed ? 'green' : writeUp.state === 'deferred' ? 'blue' : 'grey'}
      shape={closed ? 'tick' : writeUp.state === 'deferred' ? 'ring' : 'dot'}
      size="small"
    >
      {stateInWords(writeUp)}
    </Tag>
  );
}

function edgeOf({ state, severity }: WriteUpSummary): 'red' | 'amber' | 'blue' | undefined {
  if (state === 'closed') return undefined;
  if (state === 'deferred') return 'blue';
  return severity === 'grounding' ? 'red' : severity === 'note' ? undefined : 'amber';
}
