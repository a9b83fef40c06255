import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { words } from '@/app/_words/words';
import { LinkButton } from '@/app/_ui/button';
import { dateInWords } from '@/app/_ui/moment';
import { Notice } from '@/app/_ui/notice';
import { EmptyState, PageTitle, Section } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { Tag } from '@/app/_ui/tag';
import { mayUse } from '@/lib/access/policy';
import { readOfficeFleet, type OfficeFleet } from '@/lib/aircraft/read-office-fleet';
import { type Translate } from '@/lib/words/translate';
import { OfficeNav } from '../_parts/office-nav';
import { Refused } from './_parts/refused';
import styles from './fleet.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Fleet: types and aircraft') };
}

interface Props {
  searchParams: Promise<{ type?: string | string[] }>;
}

/** Types and aircraft as the office keeps them. */
export default async function FleetPage({ searchParams }: Props) {
  const t = await words();
  const { ref, who } = await requireActor('/office/fleet');
  const { type: added } = await searchParams;
  const result = await readOfficeFleet(ref, {});
  const title = t('Fleet: types and aircraft');
  if (!result.ok) return <Refused who={who} title={title} problem={result.problem} />;
  const fleet = result.value;
  const inService = fleet.aircraft.filter(({ retiredOn }) => !retiredOn);
  const retired = fleet.aircraft.filter(({ retiredOn }) => retiredOn);
  const mayAdd = mayUse(who.roles, 'aircraft.add');
  const isNew = fleet.types.find(({ id }) => id === added);
  return (
    <Shell who={who}>
      <PageTitle lead={t('First the type, then the aircraft, then its equipment.')}>{title}</PageTitle>
      <OfficeNav at="fleet" />
      {isNew && (
        <Notice tone="blue" title={t('{name} is added.', { name: isNew.name })}>
          <p>{t('Now add the aircraft of this type.')}</p>
        </Notice>
      )}
      <Section
        title={t('Aircraft')}
        side={
          mayAdd &&
          fleet.types.length > 0 && (
            <LinkButton href="/office/fleet/aircraft/add" weight="main">
              {t('Add an aircraft')}
            </LinkButton>
          )
        }
      >
        {inService.length === 0 ? (
          <EmptyState title={t('There are no aircraft yet.')}>
            <p>
              {fleet.types.length === 0
                ? t('Add the type first: several aircraft can be of one.')
                : t('Add the first one. You need its papers beside you.')}
            </p>
          </EmptyState>
        ) : (
          <ul className={styles.list}>
            {inService.map((aircraft) => (
              <AircraftItem key={aircraft.id} aircraft={aircraft} t={t} />
            ))}
          </ul>
        )}
        {retired.length > 0 && (
          <details className={styles.fold}>
            <summary>{t('{n, plural, one {# retired} other {# retired}}', { n: retired.length })}</summary>
            <ul className={styles.list}>
              {retired.map((aircraft) => (
                <AircraftItem key={aircraft.id} aircraft={aircraft} t={t} />
              ))}
            </ul>
          </details>
        )}
      </Section>
      <Section
        title={t('Types')}
        side={
          mayUse(who.roles, 'type.add') && (
            <LinkButton href="/office/fleet/types/add" weight={fleet.types.length === 0 ? 'main' : 'plain'}>
              {t('Add a type')}
            </LinkButton>
          )
        }
      >
        {fleet.types.length === 0 && (
          <EmptyState title={t('There are no types yet.')}>
            <p>{t('The facts of a type decide which paragraphs apply to all its aircraft. Begin here.')}</p>
          </EmptyState>
        )}
        <ul className={styles.list}>
          {fleet.types.map((type) => (
            <li key={type.id} className={styles.item}>
              <div className={styles.head}>
                <span className={styles.name}>{type.name}</span>
                {type.notKnown > 0 && (
                  <Tag tone="grey" size="small">
                    {t('{n, plural, one {# fact not known} other {# facts not known}}', { n: type.notKnown })}
                  </Tag>
                )}
              </div>
              <p className={styles.soft}>
                {type.aircraft.length > 0 ? type.aircraft.join(', ') : t('No aircraft of it in service.')}
              </p>
              <div className={styles.acts}>
                <LinkButton href={`/office/fleet/types/${type.id}`}>
                  {mayUse(who.roles, 'type.change') ? t('See and change') : t('See')}
                </LinkButton>
              </div>
            </li>
          ))}
        </ul>
      </Section>
    </Shell>
  );
}

function AircraftItem({ aircraft, t }: { aircraft: OfficeFleet['aircraft'][number]; t: Translate }) {
  const { id, registration, typeName, baseIdent, retiredOn, retiredWhy, equipment, unconfirmed } = aircraft;
  return (
    <li className={styles.item}>
      <div className={styles.head}>
        <span className={styles.name}>{registration}</span>
        <span className={styles.soft}>
          {typeName}, {baseIdent}
        </span>
        {retiredOn ? (
          <Tag tone="grey" size="small">
            {t('Retired {date}', { date: dateInWords(retiredOn) })}
          </Tag>
        ) : equipment === 0 ? (
          <Tag tone="grey" size="small">
            {t('No equipment entered')}
          </Tag>
        ) : (
          unconfirmed > 0 && (
            <Tag tone="amber" size="small">
              {t('{n, plural, one {# item not confirmed} other {# items not confirmed}}', { n: unconfirmed })}
            </Tag>
          )
        )}
      </div>
      {retiredWhy && <p className={styles.soft}>{retiredWhy}</p>}
      <div className={styles.acts}>
        <LinkButton href={`/office/fleet/aircraft/${id}`}>{t('The aircraft')}</LinkButton>
        {!retiredOn && (
          <LinkButton href={`/office/fleet/aircraft/${id}/equipment`}>{t('Its equipment')}</LinkButton>
        )}
      </div>
    </li>
  );
}
