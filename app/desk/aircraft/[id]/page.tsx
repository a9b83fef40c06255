import { Say } from '#words';
import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { ButtonRow, LinkButton } from '@/app/_ui/button';
import { Caution } from '@/app/_ui/caution';
import { HoursText } from '@/app/_ui/moment';
import { Card, FactList, PageTitle, Section } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { mayUse } from '@/lib/access/policy';
import { readAircraftFile } from '@/lib/fleet/read-aircraft-file';
import { FreshMark, StaysFresh } from '@/app/_ui/freshness';
import { Reasons } from '../../reasons';
import { Refused } from '../../refused';
import { KindsNav } from './kinds-nav';
import { Papers, Requirements } from './papers-and-dues';
import { WriteUps } from './write-ups';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Aircraft') };
}

/** One aircraft: the reasons behind each answer, and everything they stand on. */
export default async function AircraftPage(props: {
  params: Promise<{ id: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const t = await words();
  const { id } = await props.params;
  const { kind } = await props.searchParams;
  const { ref, who } = await requireActor(`/desk/aircraft/${encodeURIComponent(id)}`);
  const file = await readAircraftFile(ref, { aircraftId: id });
  if (!file.ok) return <Refused who={who} title={t('Aircraft')} problem={file.problem} />;
  const { row, answers, asOf } = file.value;
  const usual = `day-vfr-${row.forHire ? 'hire' : 'private'}`;
  const chosen = answers.find((one) => one.id === kind) ?? answers.find((one) => one.id === usual);
  if (!chosen) throw new Error(`No answer for ${usual}`);
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: '/desk', label: t('Fleet board') }}
        lead={t('{typeName}, serial {serial}. Based at {baseIdent}, {baseName}. Usually {which}.', {
          typeName: row.typeName,
          serial: file.value.serial,
          baseIdent: row.baseIdent,
          baseName: row.baseName,
          which: row.forHire ? t('for hire') : t('private'),
        })}
        side={
          <ButtonRow>
            {mayUse(who.roles, 'bench.read') && (
              <LinkButton href={`/bench/aircraft/${row.aircraftId}`}>{t('Bench')}</LinkButton>
            )}
            <LinkButton href={`/desk/aircraft/${row.aircraftId}/day`}>{t('Over the day')}</LinkButton>
            <LinkButton href={`/desk/releases?aircraft=${row.aircraftId}`}>{t('Releases')}</LinkButton>
            <LinkButton href={`/desk/flight?aircraft=${row.aircraftId}`} weight="main">
              {t('Compose a flight')}
            </LinkButton>
          </ButtonRow>
        }
      >
        {row.registration}
      </PageTitle>
      <StaysFresh asOf={asOf} zones={[row.zone]}>
        <KindsNav aircraftId={row.aircraftId} answers={answers} chosen={chosen.id} />
        <Section
          id="reasons"
          title={t(chosen.name)}
          side={<FreshMark outcome={chosen.answer.outcome} size="large" />}
        >
          <p>
            <Say
              text="A local flight of one hour from {baseIdent} on {name}, below 10,000 ft, over land."
              values={{ baseIdent: row.baseIdent, name: t(chosen.name).split(',')[0] }}
            />
          </p>
          <Card edge={EDGE[chosen.answer.outcome]}>
            <Reasons lines={chosen.answer.lines} />
          </Card>
          <Caution form="long" />
        </Section>
        <WriteUps file={file.value} />
        <Section title={t('Times')}>
          <FactList
            facts={[
              { name: t('Hobbs'), value: <HoursText tenths={file.value.hobbsTenths} /> },
              { name: t('Tach'), value: <HoursText tenths={file.value.tachTenths} /> },
              { name: t('Total time in service'), value: <HoursText tenths={row.ttisTenths} /> },
            ]}
          />
        </Section>
        <Requirements file={file.value} />
        <Papers file={file.value} />
      </StaysFresh>
    </Shell>
  );
}

const EDGE = { go: 'green', 'go-with-limits': 'amber', 'no-go': 'red' } as const;
