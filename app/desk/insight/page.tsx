import { Say } from '#words';
import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { DateText, Moment } from '@/app/_ui/moment';
import { PageTitle } from '@/app/_ui/page';
import { ProblemNotice } from '@/app/_ui/problem-notice';
import { Shell } from '@/app/_ui/shell';
import { mayUse } from '@/lib/access/policy';
import { askedOf, inAddress, type AskedInAddress } from '@/lib/insight/address';
import { FIGURES } from '@/lib/insight/figures';
import { readInsight } from '@/lib/insight/read-insight';
import { Refused } from '../refused';
import { Figure } from './figure';
import styles from './insight.module.css';
import { PeriodForm } from './period-form';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Insight') };
}

/** Figures over a period from what is on record, each with its definition, its chart, its rows and its files. */
export default async function InsightPage(props: { searchParams: Promise<AskedInAddress> }) {
  const t = await words();
  const asked = await props.searchParams;
  const address = inAddress(asked);
  const { ref, who } = await requireActor(`/desk/insight${address && `?${address}`}`);
  const insight = await readInsight(ref, askedOf(asked));
  const refused = insight.ok ? null : insight.problem;
  // A period that cannot be looked at keeps what was typed: the choices come from the usual period then.
  const usual = refused?.code === 'invalid' ? await readInsight(ref, {}) : insight;
  if (!usual.ok) return <Refused who={who} title={t('Insight')} problem={refused ?? usual.problem} />;
  const view = usual.value;
  const back = mayUse(who.roles, 'flight.release')
    ? { href: '/desk', label: t('Fleet board') }
    : { href: '/bench', label: t('Bench') };
  return (
    <Shell who={who}>
      <PageTitle
        back={back}
        lead={t(
          'How the fleet fared, from what is on record here. The figures decide nothing; each says what it counts and what it does not see.',
        )}
      >
        {t('Insight')}
      </PageTitle>
      <PeriodForm asked={asked} view={view} />
      {refused ? (
        <ProblemNotice problem={refused} />
      ) : (
        <>
          <p className={styles.about}>
            <b>
              <DateText date={view.period.from} /> {t('to')} <DateText date={view.period.until} />
            </b>
            <Say
              text=", {days, plural, one {# day} other {# days}} at the base, {about}. As of <moment/>."
              parts={{ moment: <Moment at={view.asOf} zone={view.zone} /> }}
              values={{ days: view.period.days, about: view.about }}
            />{' '}
            <a href={`/api/insight/definitions?${address}`} className="not-on-paper">
              {t('All figures and definitions as CSV')}
            </a>
          </p>
          <div className={styles.figures}>
            {FIGURES.map((figure) => (
              <Figure key={figure} view={view} figure={figure} address={address} />
            ))}
          </div>
        </>
      )}
    </Shell>
  );
}
