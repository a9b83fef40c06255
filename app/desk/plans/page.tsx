import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { LinkButton } from '@/app/_ui/button';
import { Notice } from '@/app/_ui/notice';
import { PageTitle, Section } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { mayUse } from '@/lib/access/policy';
import { readPlannedFlights } from '@/lib/flights/read-planned-flights';
import { readDeskChoices } from '@/lib/releases/read-desk';
import { Refused } from '../refused';
import { PlanForm } from './plan-form';
import { PlannedList } from './planned-list';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Planned flights') };
}

/** What is meant to fly in the coming week, so that the bench knows how soon each aircraft is wanted. */
export default async function PlansPage() {
  const t = await words();
  const { ref, who } = await requireActor('/desk/plans');
  const planned = await readPlannedFlights(ref, {});
  if (!planned.ok) return <Refused who={who} title={t('Planned flights')} problem={planned.problem} />;
  const mayPlan = mayUse(who.roles, 'flight.plan');
  const choices = mayPlan ? await readDeskChoices(ref, {}) : null;
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: '/desk', label: t('Fleet board') }}
        lead={t('The coming seven days, aircraft by aircraft. The bench works by it.')}
        side={
          mayUse(who.roles, 'plan.import') && (
            <LinkButton href="/desk/plans/import">{t('Flights from a file')}</LinkButton>
          )
        }
      >
        {t('Planned flights')}
      </PageTitle>
      <Notice tone="blue" title={t('A plan releases nothing.')}>
        <p>
          {t(
            'No rule is asked here, and a grounded aircraft may be planned. A flight goes only by its own release.',
          )}
        </p>
      </Notice>
      {choices?.ok && (
        <Section title={t('Plan a flight')}>
          <PlanForm choices={choices.value} aircraft={planned.value.aircraft} />
        </Section>
      )}
      <Section title={t('Coming seven days')}>
        <PlannedList planned={planned.value} mayCancel={mayUse(who.roles, 'flight.cancel-plan')} />
      </Section>
    </Shell>
  );
}
