import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { PageTitle } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { mayUse } from '@/lib/access/policy';
import { readDeskChoices } from '@/lib/releases/read-desk';
import { Refused } from '../refused';
import { FlightDesk } from './flight-desk';

export const metadata: Metadata = { title: 'Compose a flight' };

/** Compose a flight, get the answer, release it. */
export default async function FlightPage(props: {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const { aircraft } = await props.searchParams;
  const { ref, who } = await requireActor(
    typeof aircraft === 'string' ? `/desk/flight?aircraft=${encodeURIComponent(aircraft)}` : '/desk/flight',
  );
  const choices = await readDeskChoices(ref, {});
  if (!choices.ok) return <Refused who={who} title="Compose a flight" problem={choices.problem} />;
  const asked = choices.value.aircraft.find((one) => one.id === aircraft);
  return (
    <Shell who={who}>
      <PageTitle back={{ href: '/desk', label: 'Fleet board' }}>Compose a flight</PageTitle>
      <FlightDesk
        choices={choices.value}
        aircraftId={asked?.id ?? ''}
        mayRelease={mayUse(who.roles, 'flight.release')}
      />
    </Shell>
  );
}
