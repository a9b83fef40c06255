import { type Metadata } from 'next';
import { mayUse } from '@/lib/access/policy';
import { sayMeasured } from '@/lib/rules/findings/measurements';
import { readTrends, type TrendsView } from '@/lib/trends/read-trends';
import { requireActor } from '../../../../_session/actor-ref';
import { Moment } from '../../../../_ui/moment';
import { EmptyState, FactList, PageTitle, Section } from '../../../../_ui/page';
import { Shell } from '../../../../_ui/shell';
import { Refused } from '../../../refused';
import { OilUse } from './oil-use';
import { Series } from './series';
import styles from './trends.module.css';

export const metadata: Metadata = { title: 'Trends' };

/** What was measured on one aircraft over the last year: charts, and the same figures as tables. */
export default async function TrendsPage(props: { params: Promise<{ id: string }> }) {
  const { id } = await props.params;
  const { ref, who } = await requireActor(`/bench/aircraft/${encodeURIComponent(id)}/trends`);
  const answer = await readTrends(ref, { aircraftId: id });
  if (!answer.ok) return <Refused who={who} problem={answer.problem} title="Trends" />;
  const view: TrendsView = answer.value;
  // One value is no trend; it is listed below the charts.
  const repeated = view.series.filter(({ points }) => points.length > 1);
  const once = view.series.filter(({ points }) => points.length === 1);
  const back = mayUse(who.roles, 'bench.read')
    ? { href: `/bench/aircraft/${view.aircraftId}`, label: view.registration }
    : { href: '/', label: 'Start' };
  return (
    <Shell who={who}>
      <PageTitle
        back={back}
        lead={`${view.registration}, ${view.typeName}: what walkarounds and findings measured in the last ${view.days} days. A trend decides nothing; what is outside a limit is written up.`}
      >
        Trends
      </PageTitle>
      {view.series.length === 0 ? (
        <EmptyState title="Nothing was measured.">
          <p>Numbers entered on a walkaround appear here.</p>
        </EmptyState>
      ) : (
        <div className={styles.sheets}>
          {view.oil && <OilUse oil={view.oil} zone={view.zone} />}
          {repeated.map((series) => (
            <Series key={series.measurement.key} series={series} zone={view.zone} />
          ))}
        </div>
      )}
      {once.length > 0 && (
        <Section title="Measured once">
          <FactList
            facts={once.flatMap(({ measurement, points: [only] }) =>
              only
                ? [
                    {
                      name: measurement.label,
                      value: (
                        <>
                          {sayMeasured(only.value, measurement.unit)},{' '}
                          <Moment at={only.at} zone={view.zone} />
                        </>
                      ),
                    },
                  ]
                : [],
            )}
          />
        </Section>
      )}
    </Shell>
  );
}
