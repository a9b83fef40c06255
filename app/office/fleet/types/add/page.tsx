import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { words } from '@/app/_words/words';
import { PageTitle } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { mayUse } from '@/lib/access/policy';
import { PROBLEMS } from '@/lib/problems';
import { OfficeNav } from '../../../_parts/office-nav';
import { Refused } from '../../_parts/refused';
import { AddTypeForm } from '../../_parts/type-form';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Add a type') };
}

/** A new aircraft type. */
export default async function AddTypePage() {
  const t = await words();
  const { who } = await requireActor('/office/fleet/types/add');
  if (!mayUse(who.roles, 'type.add')) {
    const problem = { code: 'not_allowed', say: PROBLEMS.not_allowed.say } as const;
    return <Refused who={who} title={t('Add a type')} problem={problem} />;
  }
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: '/office/fleet', label: t('Fleet') }}
        lead={t('Have the type certificate data sheet and the flight manual beside you.')}
      >
        {t('Add a type')}
      </PageTitle>
      <OfficeNav at="fleet" />
      <AddTypeForm signer={who.name} />
    </Shell>
  );
}
