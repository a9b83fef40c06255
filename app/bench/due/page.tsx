import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { mayUse } from '@/lib/access/policy';
import { readDue } from '@/lib/due/read-due';
import { requireActor } from '../../_session/actor-ref';
import { EmptyState, PageTitle } from '../../_ui/page';
import { Shell } from '../../_ui/shell';
import { BenchNav } from '../bench-nav';
import { DueLineCard } from '../due-line';
import { Refused } from '../refused';
import { DueSheet } from './due-sheet';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Falling due') };
}

/** Everything that falls due on the fleet, most pressing first, with dates from the flying pace. */
export default async function DuePage() {
  const t = await words();
  const { ref, who } = await requireActor('/bench/due');
  const due = await readDue(ref, {});
  if (!due.ok) return <Refused who={who} problem={due.problem} title={t('Falling due')} />;
  const mechanic = mayUse(who.roles, 'bench.read');
  return (
    <Shell who={who}>
      <PageTitle
        back={mechanic ? undefined : { href: '/desk', label: t('Fleet board') }}
        lead={t(
          'Inspections, tests, directives, life limits, papers and deferrals. Dates from hours are forecasts from how each aircraft was flown, and decide nothing.',
        )}
      >
        {t('Falling due')}
      </PageTitle>
      {mechanic && <BenchNav at="due" />}
      {due.value.lines.length === 0 ? (
        <EmptyState title={t('Nothing falls due.')}>
          <p>{t('What recurs is added on the page of the aircraft.')}</p>
        </EmptyState>
      ) : (
        <DueSheet
          asOf={due.value.asOf}
          zone={due.value.aircraft[0]?.zone ?? 'UTC'}
          lines={due.value.lines.map((line) => ({
            key: `${line.aircraft.aircraftId}/${line.kind}/${line.id}/${line.cite}`,
            registration: line.aircraft.registration,
            baseIdent: line.aircraft.baseIdent,
            group: line.group,
            card: <DueLineCard line={line} withAircraft atBench={mechanic} />,
          }))}
        />
      )}
    </Shell>
  );
}
