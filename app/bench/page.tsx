import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import Link from '../_ui/link';
import { type OwedAfterWork } from '@/lib/work/owed-after-work';
import { readBench } from '@/lib/work/read-bench';
import { requireActor } from '../_session/actor-ref';
import { StaysFresh } from '../_ui/freshness';
import { EmptyState, PageTitle, Section } from '../_ui/page';
import { Shell } from '../_ui/shell';
import { Tag } from '../_ui/tag';
import styles from './queue.module.css';
import { BenchNav } from './bench-nav';
import { OpenVisits } from './open-visits';
import { Queue } from './queue';
import { Refused } from './refused';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Bench') };
}

/** The mechanic's queue: every open write-up, what grounds most first, and check flights still owed. */
export default async function BenchPage() {
  const t = await words();
  const { ref, who } = await requireActor('/bench');
  const bench = await readBench(ref, {});
  if (!bench.ok) return <Refused who={who} problem={bench.problem} title={t('Bench')} />;
  const { rows, checkFlightsOwed, owed, visits, asOf, seq } = bench.value;
  const zones = [...new Set(rows.map((row) => row.zone))];
  return (
    <Shell who={who}>
      <PageTitle
        lead={t(
          'Open write-ups by what each does to flying: what grounds an aircraft that is wanted soon comes first.',
        )}
      >
        {t('Bench')}
      </PageTitle>
      <BenchNav at="queue" />
      <StaysFresh asOf={asOf} zones={zones.length > 0 ? zones : ['UTC']} seq={seq}>
        {checkFlightsOwed.length > 0 && (
          <Section title={t('Check flights owed')}>
            <Owed owed={checkFlightsOwed} />
          </Section>
        )}
        {owed.length > 0 && (
          <Section title={t('Owed after work')}>
            <Owed owed={owed} />
          </Section>
        )}
        {visits.length > 0 && (
          <Section title={t('Open visits')}>
            <OpenVisits visits={visits} />
          </Section>
        )}
        {rows.length === 0 ? (
          <EmptyState title={t('Nothing is written up.')}>
            <p>{t('A finding reported on the ramp appears here at once.')}</p>
          </EmptyState>
        ) : (
          <Section title={t('Queue')}>
            <Queue rows={rows} asOf={asOf} />
          </Section>
        )}
      </StaysFresh>
    </Shell>
  );
}

/** What is owed, each with the way to where it is done. */
function Owed({ owed }: { owed: readonly OwedAfterWork[] }) {
  return (
    <ul className={styles.owed}>
      {owed.map((one) => {
        const href = one.discrepancyId
          ? `/bench/write-up/${one.discrepancyId}`
          : one.requirementId && `/bench/requirement/${one.requirementId}`;
        return (
          <li key={`${one.workId} ${one.words}`}>
            <Tag tone="amber" size="small">
              {one.words}
            </Tag>
            <b>{one.registration}</b>
            {href ? <Link href={href}>{one.title}</Link> : <span>{one.title}</span>}
          </li>
        );
      })}
    </ul>
  );
}
