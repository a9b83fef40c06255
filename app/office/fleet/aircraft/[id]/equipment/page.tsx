import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { words } from '@/app/_words/words';
import { LinkButton } from '@/app/_ui/button';
import { dateInWords } from '@/app/_ui/moment';
import { Notice } from '@/app/_ui/notice';
import { EmptyState, PageTitle, Section } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { mayUse } from '@/lib/access/policy';
import { readEquipment } from '@/lib/equipment/read-equipment';
import { OfficeNav } from '../../../../_parts/office-nav';
import { LineItem } from '../../../_parts/line-words';
import { Refused } from '../../../_parts/refused';
import { SetsForm } from '../../../_parts/sets-form';
import styles from '../../../fleet.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Equipment list') };
}

interface Props {
  params: Promise<{ id: string }>;
  searchParams: Promise<{ signed?: string | string[]; removed?: string | string[] }>;
}

/** The equipment list of one aircraft. */
export default async function EquipmentPage({ params, searchParams }: Props) {
  const t = await words();
  const { id } = await params;
  const { signed, removed } = await searchParams;
  const here = `/office/fleet/aircraft/${id}/equipment`;
  const { ref, who } = await requireActor(here);
  const result = await readEquipment(ref, { aircraftId: id });
  if (!result.ok) return <Refused who={who} title={t('Equipment list')} problem={result.problem} />;
  const list = result.value;
  const open = list.lines.filter(({ confirmed }) => !confirmed).length;
  const mayEnter = mayUse(who.roles, 'equipment.enter') && !list.retired;
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: `/office/fleet/aircraft/${id}`, label: list.registration }}
        lead={
          list.equipmentListSource
            ? t('Equipment lists of this type: {source}', { source: list.equipmentListSource })
            : t('What the aircraft has, and what its documents require.')
        }
        side={
          mayEnter &&
          open > 0 && (
            <LinkButton href={`${here}/confirm`} weight="main">
              {t('{n, plural, one {Confirm # item} other {Confirm # items}}', { n: open })}
            </LinkButton>
          )
        }
      >
        {t('Equipment of {registration}', { registration: list.registration })}
      </PageTitle>
      <OfficeNav at="fleet" />
      {typeof signed === 'string' && (
        <Notice tone="blue" title={t('Signed: {name}.', { name: signed })}>
          <p>{t('Answers are worked out by the line as it stands now.')}</p>
        </Notice>
      )}
      {typeof removed === 'string' && (
        <Notice tone="blue" title={t('Taken off the list: {name}.', { name: removed })} />
      )}
      {open > 0 && (
        <Notice
          tone="blue"
          title={t('{n, plural, one {# item is not confirmed} other {# items are not confirmed}}: no go.', {
            n: open,
          })}
        >
          <p>{t('The engine trusts no line that nobody has held against the aircraft’s own documents.')}</p>
        </Notice>
      )}
      {list.lines.length === 0 && (
        <EmptyState title={t('Nothing is on the list yet.')}>
          <p>{t('Begin with a starting set, or take in a file, or add line by line.')}</p>
        </EmptyState>
      )}
      {mayEnter && (
        <Section title={t('Put lines on the list')}>
          <div className={styles.acts}>
            <LinkButton href={`${here}/add`}>{t('Add a line')}</LinkButton>
            <LinkButton href={`${here}/import`}>{t('Take in a file')}</LinkButton>
          </div>
          <details className={styles.fold} open={list.lines.length === 0}>
            <summary>{t('Starting sets for a generic single')}</summary>
            <p className={styles.soft}>
              {t(
                'They name what part 91 asks for, of no make and model. Every item stands unconfirmed until you hold it against this aircraft’s own documents.',
              )}
            </p>
            <SetsForm aircraftId={id} />
          </details>
        </Section>
      )}
      {list.lines.length > 0 && (
        <Section title={t('{n, plural, one {# line} other {# lines}}', { n: list.lines.length })}>
          <ul className={styles.list}>
            {list.lines.map((line) => (
              <LineItem key={line.id} line={line} href={mayEnter ? `${here}/${line.id}` : null} />
            ))}
          </ul>
        </Section>
      )}
      {list.removed.length > 0 && (
        <details className={styles.fold}>
          <summary>
            {t('{n, plural, one {# taken off} other {# taken off}}', { n: list.removed.length })}
          </summary>
          <ul className={styles.decided}>
            {list.removed.map(({ id: lineId, name, on, why }) => (
              <li key={lineId}>
                <b>{name}</b>, {dateInWords(on)}: {why}
              </li>
            ))}
          </ul>
        </details>
      )}
    </Shell>
  );
}
