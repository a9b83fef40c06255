import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { words } from '@/app/_words/words';
import { Notice } from '@/app/_ui/notice';
import { PageTitle, Section } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { mayUse } from '@/lib/access/policy';
import { readEquipment } from '@/lib/equipment/read-equipment';
import { PROBLEMS } from '@/lib/problems';
import { OfficeNav } from '../../../../../_parts/office-nav';
import { LineForm, RemoveForm } from '../../../../_parts/line-form';
import { lineAsTyped } from '../../../../_parts/line-typed';
import { Refused } from '../../../../_parts/refused';
import styles from '../../../../fleet.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Line of the equipment list') };
}

/** One line: to be changed, or taken off. Either is signed. */
export default async function LinePage({ params }: { params: Promise<{ id: string; lineId: string }> }) {
  const t = await words();
  const { id, lineId } = await params;
  const { ref, who } = await requireActor(`/office/fleet/aircraft/${id}/equipment/${lineId}`);
  const result = await readEquipment(ref, { aircraftId: id });
  const title = t('Line of the equipment list');
  if (!result.ok) return <Refused who={who} title={title} problem={result.problem} />;
  const line = result.value.lines.find((one) => one.id === lineId);
  if (!line || !mayUse(who.roles, 'equipment.enter')) {
    const code = line ? 'not_allowed' : 'not_found';
    return <Refused who={who} title={title} problem={{ code, say: PROBLEMS[code].say }} />;
  }
  return (
    <Shell who={who}>
      <PageTitle
        back={{
          href: `/office/fleet/aircraft/${id}/equipment`,
          label: t('Equipment of {registration}', { registration: result.value.registration }),
        }}
        lead={
          line.confirmed
            ? t('Any change is a new confirmation, signed.')
            : t('Nobody has confirmed this line yet. Signing it here confirms it.')
        }
      >
        {line.name}
      </PageTitle>
      <OfficeNav at="fleet" />
      <LineForm aircraftId={id} equipmentId={lineId} start={lineAsTyped(line)} signer={who.name} />
      <Section title={t('Take it off the list')}>
        {line.namedBy.length > 0 ? (
          <Notice tone="blue" title={t('It stays on the list as long as something names it.')}>
            <ul lang="en" className={styles.decided}>
              {line.namedBy.map((words) => (
                <li key={words}>{words}</li>
              ))}
            </ul>
          </Notice>
        ) : (
          <details className={styles.fold}>
            <summary>{t('It is not on this aircraft any more')}</summary>
            <RemoveForm aircraftId={id} equipmentId={lineId} signer={who.name} />
          </details>
        )}
      </Section>
    </Shell>
  );
}
