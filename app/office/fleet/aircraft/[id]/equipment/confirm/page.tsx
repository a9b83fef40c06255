import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { words } from '@/app/_words/words';
import { ButtonRow, LinkButton } from '@/app/_ui/button';
import { EmptyState, PageTitle } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { mayUse } from '@/lib/access/policy';
import { readEquipment } from '@/lib/equipment/read-equipment';
import { PROBLEMS } from '@/lib/problems';
import { OfficeNav } from '../../../../../_parts/office-nav';
import { Refused } from '../../../../_parts/refused';
import { Sitting } from './sitting';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Confirm the equipment') };
}

/** Item after item against the aircraft's own documents; one signature at the end of the sitting. */
export default async function ConfirmPage({ params }: { params: Promise<{ id: string }> }) {
  const t = await words();
  const { id } = await params;
  const back = `/office/fleet/aircraft/${id}/equipment`;
  const { ref, who } = await requireActor(`${back}/confirm`);
  const result = await readEquipment(ref, { aircraftId: id });
  const title = t('Confirm the equipment');
  if (!result.ok) return <Refused who={who} title={title} problem={result.problem} />;
  if (!mayUse(who.roles, 'equipment.confirm')) {
    const problem = { code: 'not_allowed', say: PROBLEMS.not_allowed.say } as const;
    return <Refused who={who} title={title} problem={problem} />;
  }
  const { registration, lines, equipmentListSource } = result.value;
  const open = lines.filter(({ confirmed }) => !confirmed);
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: back, label: t('Equipment of {registration}', { registration }) }}
        lead={t(
          'Hold each item against the documents of {registration}, not against memory. Put right what differs. Enter: it agrees, next one.',
          { registration },
        )}
      >
        {title}
      </PageTitle>
      <OfficeNav at="fleet" />
      {open.length === 0 ? (
        <EmptyState title={t('Every item is confirmed.')}>
          <ButtonRow>
            <LinkButton href={`/office/history/${id}/papers`} weight="main">
              {t('Next: papers and inspections')}
            </LinkButton>
            <LinkButton href={back}>{t('To the equipment list')}</LinkButton>
          </ButtonRow>
        </EmptyState>
      ) : (
        <Sitting aircraftId={id} lines={open} signer={who.name} document={equipmentListSource ?? ''} />
      )}
    </Shell>
  );
}
