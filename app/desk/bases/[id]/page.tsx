import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { PageTitle } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { BackToSetUp } from '@/app/office/_parts/back-to-set-up';
import { mayUse } from '@/lib/access/policy';
import { readBases } from '@/lib/bases/read-bases';
import { PROBLEMS, type ProblemCode } from '@/lib/problems';
import { Refused } from '../../refused';
import { ChangeBaseForm } from '../base-form';
import { asTyped } from '../base-typed';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Change a base') };
}

/** A base to be put right by whoever may. */
export default async function ChangeBasePage({ params }: { params: Promise<{ id: string }> }) {
  const t = await words();
  const { id } = await params;
  const { ref, who } = await requireActor(`/desk/bases/${encodeURIComponent(id)}`);
  const refused = (code: ProblemCode) => (
    <Refused who={who} title={t('Change a base')} problem={{ code, say: PROBLEMS[code].say }} />
  );
  if (!mayUse(who.roles, 'base.change')) return refused('not_allowed');
  const result = await readBases(ref, {});
  if (!result.ok) return <Refused who={who} title={t('Change a base')} problem={result.problem} />;
  const base = result.value.bases.find((one) => one.id === id);
  if (!base) return refused('not_found');
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: '/desk/bases', label: t('Bases') }}
        lead={t(
          'A change of anything but the name can change answers: whoever is about to release a flight from here is told to look again.',
        )}
      >
        {t('Change {ident}', { ident: base.ident })}
      </PageTitle>
      <ChangeBaseForm baseId={base.id} start={asTyped(base)} />
      <BackToSetUp />
    </Shell>
  );
}
