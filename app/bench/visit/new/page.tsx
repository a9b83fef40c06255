import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { requireActor } from '../../../_session/actor-ref';
import { PageTitle } from '../../../_ui/page';
import { Shell } from '../../../_ui/shell';
import { readVisitChoices } from '@/lib/visits/read-choices';
import { Refused } from '../../refused';
import { OpenVisitForm } from './open-visit-form';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Group into a visit') };
}

/** Write-ups ticked in the queue, with what else falls due, become one visit. */
export default async function NewVisitPage(props: {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const t = await words();
  const { aircraft, writeUp } = await props.searchParams;
  const ticked = [writeUp ?? []].flat();
  const { ref, who } = await requireActor('/bench');
  const choices = await readVisitChoices(ref, { aircraftId: aircraft });
  if (!choices.ok) return <Refused who={who} problem={choices.problem} title={t('Group into a visit')} />;
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: '/bench', label: t('Bench') }}
        lead={t('One stay at the shop. Everything in it is still judged, done and signed for itself.')}
      >
        {t('A visit for {registration}', { registration: choices.value.registration })}
      </PageTitle>
      <OpenVisitForm choices={choices.value} ticked={ticked} />
    </Shell>
  );
}
