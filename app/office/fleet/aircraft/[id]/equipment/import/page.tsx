import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { words } from '@/app/_words/words';
import { PageTitle, Section } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { mayUse } from '@/lib/access/policy';
import { EQUIPMENT_COLUMNS } from '@/lib/equipment/columns-of-file';
import { readEquipment } from '@/lib/equipment/read-equipment';
import { PROBLEMS } from '@/lib/problems';
import { OfficeNav } from '../../../../../_parts/office-nav';
import { Refused } from '../../../../_parts/refused';
import styles from '../../../../fleet.module.css';
import { ImportForm } from './import-form';
import columns from '@/app/desk/plans/import/import.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Equipment from a file') };
}

/** Equipment out of a CSV or JSON file: looked at row by row first, then taken in all or not at all, and signed. */
export default async function ImportEquipmentPage({ params }: { params: Promise<{ id: string }> }) {
  const t = await words();
  const { id } = await params;
  const back = `/office/fleet/aircraft/${id}/equipment`;
  const { ref, who } = await requireActor(`${back}/import`);
  const result = await readEquipment(ref, { aircraftId: id });
  const title = t('Equipment from a file');
  if (!result.ok) return <Refused who={who} title={title} problem={result.problem} />;
  if (!mayUse(who.roles, 'equipment.import')) {
    const problem = { code: 'not_allowed', say: PROBLEMS.not_allowed.say } as const;
    return <Refused who={who} title={title} problem={problem} />;
  }
  const { registration } = result.value;
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: back, label: t('Equipment of {registration}', { registration }) }}
        lead={t('It is looked at first, and changes nothing until you sign. All of it is taken in, or none.')}
      >
        {title}
      </PageTitle>
      <OfficeNav at="fleet" />
      <p className={styles.acts}>
        {/* Files, not pages of ours. */}
        <a href="/api/templates/equipment?format=csv" download className={styles.file}>
          {t('Download a template (CSV)')}
        </a>
        <a href="/api/templates/equipment?format=json" download className={styles.file}>
          {t('The same as JSON')}
        </a>
      </p>
      <ImportForm aircraftId={id} registration={registration} signer={who.name} />
      <Section title={t('Columns')}>
        <p className={styles.soft}>
          {t(
            'The first row names the columns, in any order; columns with other names are not read. Commas or semicolons, UTF-8, 1 MB at most. A line is known by its name: the same file taken in twice changes nothing.',
          )}
        </p>
        <dl className={columns.columns}>
          {EQUIPMENT_COLUMNS.map(({ column, needed, what }) => (
            <div key={column}>
              <dt>
                <code>{column}</code>{' '}
                <span className={styles.soft}>{needed ? t('needed') : t('can be empty')}</span>
              </dt>
              <dd lang="en">{what}</dd>
            </div>
          ))}
        </dl>
      </Section>
    </Shell>
  );
}
