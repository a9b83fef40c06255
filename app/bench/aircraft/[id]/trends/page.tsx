import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { mayUse } from '@/lib/access/policy';
import { sayInUnits } from '@/lib/units/say';
import { readTrends, type TrendsView } from '@/lib/trends/read-trends';
import { requireActor } from '../../../../_session/actor-ref';
import { Moment } from '../../../../_ui/moment';
import { EmptyState, FactList, PageTitle, Section } from '../../../../_ui/page';
import { Shell } from '../../../../_ui/shell';
import { Refused } from '../../../refused';
import { OilUse } from './oil-use';
import { Series } from './series';
import styles from './trends.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Trends') };
}

/** What was measured on one aircraft over the last year: charts, and the same figures as tables. */
export default async function TrendsPage(props: { params: Promise<{ id: string }> }) {
  const t = await words();
  const { id } = await props.params;
  const { ref, who } = await requireActor(`/bench/aircraft/${encodeURIComponent(id)}/trends`);
  const answer = await readTrends(ref, { aircraftId: id });
  if (!answer.ok) return <Refused who={who} problem={answer.problem} title={t('Trends')} />;
  const view: TrendsView = answer.value;
  // One value is no trend; it is listed below the charts.
  const repeated = view.series.filter(({ points }) => points.length > 1);
  const once = view.series.filter(({ points }) => points.length === 1);
  const back = mayUse(who.roles, 'bench.read')
    ? { href: `/bench/aircraft/${view.aircraftId}`, label: view.registration }
    : { href: '/', label: t('Start') };
  return (
    <Shell who={who}>
      <PageTitle
        back={back}
        lead={t(
          '{registration}, {typeName}: what walkarounds and findings measured in the last {days} days. A trend decides nothing; what is outside a limit is written up.',
          { registration: view.registration, typeName: view.typeName, days: view.days },
        )}
      >
        {t('Trends')}
      </PageTitle>
      {view.series.length === 0 ? (
        <EmptyState title={t('Nothing was measured.')}>
          <p>{t('Numbers entered on a walkaround appear here.')}</p>
        </EmptyState>
      ) : (
        <div className={styles.sheets}>
          {view.oil && <OilUse oil={view.oil} zone={view.zone} units={who.units} />}
          {repeated.map((series) => (
            <Series key={series.measurement.key} series={series} zone={view.zone} units={who.units} />
          ))}
        </div>
      )}
      {once.length > 0 && (
        <Section title={t('Measured once')}>
          <FactList
            facts={once.flatMap(({ measurement, points: [only] }) =>
              only
                ? [
                    {
                      name: measurement.label,
                      value: (
                        <>
                          {sayInUnits(only.value, measurement.unit, who.units)},{' '}
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
