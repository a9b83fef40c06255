import { type Metadata } from 'next';
import Link from '../_ui/link';
import { readBench } from '@/lib/work/read-bench';
import { requireActor } from '../_session/actor-ref';
import { EmptyState, PageTitle, Section } from '../_ui/page';
import { Shell } from '../_ui/shell';
import { Tag } from '../_ui/tag';
import styles from './queue.module.css';
import { Queue } from './queue';
import { Refused } from './refused';

export const metadata: Metadata = { title: 'Bench' };

/** The mechanic's queue: every open write-up, what grounds most first, and check flights still owed. */
export default async function BenchPage() {
  const { ref, who } = await requireActor('/bench');
  const bench = await readBench(ref, {});
  if (!bench.ok) return <Refused who={who} problem={bench.problem} title="Bench" />;
  const { rows, checkFlightsOwed, asOf } = bench.value;
  return (
    <Shell who={who}>
      <PageTitle lead="Open write-ups: what grounds first, then what limits, then the oldest.">
        Bench
      </PageTitle>
      {checkFlightsOwed.length > 0 && (
        <Section title="Check flights owed">
          <ul className={styles.owed}>
            {checkFlightsOwed.map((owed) => (
              <li key={owed.workId}>
                <Tag tone="amber" size="small">
                  Nobody carried until flown
                </Tag>
                <b>{owed.registration}</b>
                {owed.discrepancyId ? (
                  <Link href={`/bench/write-up/${owed.discrepancyId}`}>{owed.title}</Link>
                ) : (
                  <span>{owed.title}</span>
                )}
              </li>
            ))}
          </ul>
        </Section>
      )}
      {rows.length === 0 ? (
        <EmptyState title="Nothing is written up.">
          <p>A finding reported on the ramp appears here at once.</p>
        </EmptyState>
      ) : (
        <Section title="Queue">
          <Queue rows={rows} asOf={asOf} />
        </Section>
      )}
    </Shell>
  );
}
