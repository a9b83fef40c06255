import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { words } from '@/app/_words/words';
import { PageTitle } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { mayUse } from '@/lib/access/policy';
import { readEquipment } from '@/lib/equipment/read-equipment';
import { PROBLEMS } from '@/lib/problems';
import { OfficeNav } from '../../../../../_parts/office-nav';
import { LineForm } from '../../../../_parts/line-form';
import { EMPTY_LINE } from '../../../../_parts/line-typed';
import { Refused } from '../../../../_parts/refused';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Add a line') };
}

/** A new line of an equipment list. */
export default async function AddLinePage({ params }: { params: Promise<{ id: string }> }) {
  const t = await words();
  const { id } = await params;
  const { ref, who } = await requireActor(`/office/fleet/aircraft/${id}/equipment/add`);
  const result = await readEquipment(ref, { aircraftId: id });
  const title = t('Add a line');
  if (!result.ok) return <Refused who={who} title={title} problem={result.problem} />;
  if (!mayUse(who.roles, 'equipment.enter')) {
    const problem = { code: 'not_allowed', say: PROBLEMS.not_allowed.say } as const;
    return <Refused who={who} title={title} problem={problem} />;
  }
  return (
    <Shell who={who}>
      <PageTitle
        back={{
          href: `/office/fleet/aircraft/${id}/equipment`,
          label: t('Equipment of {registration}', { registration: result.value.registration }),
        }}
      >
        {title}
      </PageTitle>
      <OfficeNav at="fleet" />
      <LineForm aircraftId={id} equipmentId={null} start={EMPTY_LINE} signer={who.name} />
    </Shell>
  );
}
