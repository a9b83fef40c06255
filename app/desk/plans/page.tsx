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

export const metadata: Metadata = { title: 'Planned flights' };

/** What is meant to fly in the coming week, so that the bench knows how soon each aircraft is wanted. */
export default async function PlansPage() {
  const { ref, who } = await requireActor('/desk/plans');
  const planned = await readPlannedFlights(ref, {});
  if (!planned.ok) return <Refused who={who} title="Planned flights" problem={planned.problem} />;
  const mayPlan = mayUse(who.roles, 'flight.plan');
  const choices = mayPlan ? await readDeskChoices(ref, {}) : null;
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: '/desk', label: 'Fleet board' }}
        lead="The coming seven days, aircraft by aircraft. The bench works by it."
        side={
          mayUse(who.roles, 'plan.import') && (
            <LinkButton href="/desk/plans/import">Flights from a file</LinkButton>
          )
        }
      >
        Planned flights
      </PageTitle>
      <Notice tone="blue" title="A plan releases nothing.">
        <p>
          No rule is asked here, and a grounded aircraft may be planned. A flight goes only by its own
          release.
        </p>
      </Notice>
      {choices?.ok && (
        <Section title="Plan a flight">
          <PlanForm choices={choices.value} aircraft={planned.value.aircraft} />
        </Section>
      )}
      <Section title="Coming seven days">
        <PlannedList planned={planned.value} mayCancel={mayUse(who.roles, 'flight.cancel-plan')} />
      </Section>
    </Shell>
  );
}
