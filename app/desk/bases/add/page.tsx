import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { PageTitle } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { mayUse } from '@/lib/access/policy';
import { PROBLEMS } from '@/lib/problems';
import { Refused } from '../../refused';
import { AddBaseForm } from '../base-form';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Add a base') };
}

/** A new base, from the airport file or typed. */
export default async function AddBasePage() {
  const t = await words();
  const { who } = await requireActor('/desk/bases/add');
  if (!mayUse(who.roles, 'base.add')) {
    const problem = { code: 'not_allowed', say: PROBLEMS.not_allowed.say } as const;
    return <Refused who={who} title={t('Add a base')} problem={problem} />;
  }
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: '/desk/bases', label: t('Bases') }}
        lead={t(
          'By its position it is decided when it is night there, by its zone on which day a limit ends.',
        )}
      >
        {t('Add a base')}
      </PageTitle>
      <AddBaseForm />
    </Shell>
  );
}
