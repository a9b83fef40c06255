import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { words } from '@/app/_words/words';
import { LinkButton } from '@/app/_ui/button';
import { dateInWords } from '@/app/_ui/moment';
import { Notice } from '@/app/_ui/notice';
import { FactList, PageTitle, Section } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { Tag } from '@/app/_ui/tag';
import { mayUse } from '@/lib/access/policy';
import { readOfficeAircraft, type OfficeAircraftView } from '@/lib/aircraft/read-office-aircraft';
import { readOfficeFleet } from '@/lib/aircraft/read-office-fleet';
import { type Translate } from '@/lib/words/translate';
import { Lacking } from '../../../_parts/lacking';
import { OfficeNav } from '../../../_parts/office-nav';
import { ChangeAircraftForm } from '../../_parts/aircraft-form';
import { aircraftAsTyped } from '../../_parts/aircraft-typed';
import { choicesOf } from '../../_parts/choices';
import { Refused } from '../../_parts/refused';
import { BringBackForm, RetireForm } from '../../_parts/retire-forms';
import styles from '../../fleet.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Aircraft in the office') };
}

interface Props {
  params: Promise<{ id: string }>;
  searchParams: Promise<{ added?: string | string[] }>;
}

/** One aircraft: its facts, what the engine still lacks, and its way out of service and back. */
export default async function OfficeAircraftPage({ params, searchParams }: Props) {
  const t = await words();
  const { id } = await params;
  const { added } = await searchParams;
  const { ref, who } = await requireActor(`/office/fleet/aircraft/${id}`);
  const [result, fleet] = await Promise.all([
    readOfficeAircraft(ref, { aircraftId: id }),
    readOfficeFleet(ref, {}),
  ]);
  if (!result.ok) return <Refused who={who} title={t('Aircraft')} problem={result.problem} />;
  if (!fleet.ok) return <Refused who={who} title={t('Aircraft')} problem={fleet.problem} />;
  const aircraft = result.value;
  const mayChange = mayUse(who.roles, 'aircraft.change');
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: '/office/fleet', label: t('Fleet') }}
        lead={`${aircraft.typeName}, ${aircraft.baseIdent}`}
        side={
          aircraft.retiredOn ? (
            <Tag tone="grey">{t('Retired {date}', { date: dateInWords(aircraft.retiredOn) })}</Tag>
          ) : (
            <LinkButton href={`/office/fleet/aircraft/${id}/equipment`} weight="main">
              {t('Its equipment')}
            </LinkButton>
          )
        }
      >
        {aircraft.registration}
      </PageTitle>
      <OfficeNav at="fleet" />
      {added === 'yes' && (
        <Notice tone="blue" title={t('{registration} is added.', { registration: aircraft.registration })}>
          <p>{t('Go on with its equipment.')}</p>
        </Notice>
      )}
      {aircraft.retiredOn ? (
        <Retired aircraft={aircraft} mayBringBack={mayUse(who.roles, 'aircraft.bring-back')} t={t} />
      ) : (
        <>
          <Lacking aircraftId={id} />
          <Section title={t('Facts of this aircraft')}>
            {aircraft.vouched && (
              <p className={styles.soft}>
                {t('Signed by {by}, {on}. Document: {source}', {
                  by: aircraft.vouched.by,
                  on: dateInWords(aircraft.vouched.on),
                  source: aircraft.vouched.source,
                })}
              </p>
            )}
            {mayChange ? (
              <ChangeAircraftForm
                aircraftId={id}
                start={aircraftAsTyped(aircraft)}
                choices={choicesOf(fleet.value)}
                signer={who.name}
              />
            ) : (
              <Facts aircraft={aircraft} t={t} />
            )}
          </Section>
          {mayUse(who.roles, 'aircraft.retire') && (
            <Section title={t('Out of service')}>
              <details className={styles.fold}>
                <summary>{t('Retire this aircraft')}</summary>
                <RetireForm aircraftId={id} />
              </details>
            </Section>
          )}
        </>
      )}
    </Shell>
  );
}

function Retired(props: { aircraft: OfficeAircraftView; mayBringBack: boolean; t: Translate }) {
  const { aircraft, mayBringBack, t } = props;
  return (
    <>
      <p>
        {t(
          'Retired: {why} It is on no board, and nothing can be released or written up for it. Its records stay.',
          {
            why: `${aircraft.retiredWhy ?? ''}`,
          },
        )}
      </p>
      <Facts aircraft={aircraft} t={t} />
      <p>
        <LinkButton href={`/bench/aircraft/${aircraft.id}/records`}>{t('Its records')}</LinkButton>
      </p>
      {mayBringBack && (
        <Section title={t('Back into service')}>
          <BringBackForm aircraftId={aircraft.id} />
        </Section>
      )}
    </>
  );
}

function Facts({ aircraft, t }: { aircraft: OfficeAircraftView; t: Translate }) {
  const notKnown = t('Not known yet');
  const yes = (fact: boolean | null) => (fact === null ? notKnown : fact ? t('Yes') : t('No'));
  const hours = (text: string | null) => (text === null ? notKnown : `${text} h`);
  return (
    <FactList
      facts={[
        { name: t('Serial number'), value: aircraft.serial },
        { name: t('Is it mostly flown for hire?'), value: yes(aircraft.forHire) },
        { name: t('Has it a standard airworthiness certificate?'), value: yes(aircraft.standardCategory) },
        {
          name: t('Date of manufacture'),
          value: aircraft.manufacturedOn ? dateInWords(aircraft.manufacturedOn) : notKnown,
        },
        { name: t('Hobbs'), value: hours(aircraft.hobbs) },
        { name: t('Tachometer'), value: hours(aircraft.tach) },
        { name: t('Total time in service'), value: hours(aircraft.ttis) },
      ]}
    />
  );
}
