import { Say, useWords } from '#words';
import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { mayUse } from '@/lib/access/policy';
import { readAircraftBench, type AircraftBench } from '@/lib/work/read-aircraft-bench';
import { requireActor } from '../../../_session/actor-ref';
import { ButtonRow, LinkButton } from '../../../_ui/button';
import { HoursText } from '../../../_ui/moment';
import { FactList, PageTitle, Section } from '../../../_ui/page';
import { Shell } from '../../../_ui/shell';
import { Act, Acting, ActList } from '../../acts';
import { EndRequirementForm } from '../../forms/end-requirement-form';
import { RequirementForm } from '../../forms/requirement-form';
import { RenewPaperForm } from '../../forms/renew-paper-form';
import { PaperLink } from '../../paper-link';
import { Refused } from '../../refused';
import { paperName } from '@/lib/rules/papers-in-words';
import { Due, Ended } from './due';
import { Papers, Permits } from './papers-and-permits';
import { UnderWay, WriteUps } from './under-way';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Aircraft at the bench') };
}

/** One aircraft for the mechanic: what is open, what is under way, what falls due, its papers and permits. */
export default async function BenchAircraftPage(props: { params: Promise<{ id: string }> }) {
  const t = await words();
  const { id } = await props.params;
  const { ref, who } = await requireActor(`/bench/aircraft/${encodeURIComponent(id)}`);
  const answer = await readAircraftBench(ref, { aircraftId: id });
  if (!answer.ok) return <Refused who={who} problem={answer.problem} title={t('Aircraft')} />;
  const view = answer.value;
  const here = `/bench/aircraft/${view.aircraftId}`;
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: '/bench', label: t('Bench') }}
        lead={t('{typeName}, serial {serial}. Based at {baseIdent}, {baseName}.', {
          typeName: view.typeName,
          serial: view.serial,
          baseIdent: view.baseIdent,
          baseName: view.baseName,
        })}
        side={
          <ButtonRow>
            <LinkButton href={`${here}/trends`}>{t('Trends')}</LinkButton>
            <LinkButton href={`${here}/records`}>{t('Records')}</LinkButton>
          </ButtonRow>
        }
      >
        {view.registration}
      </PageTitle>
      <Times view={view} />
      <Acting>
        <WriteUps view={view} />
        <UnderWay view={view} mayBegin={mayUse(who.roles, 'inspection.begin')} />
        <Due view={view} />
        <Section title={t('Change what recurs')} id="add">
          <ActList>
            <Act
              title={t('Add what recurs')}
              hint={t('A directive, a life limit, an inspection, an oil change.')}
            >
              <RequirementForm aircraftId={view.aircraftId} />
            </Act>
            <Act title={t('End what recurs')} hint={t('It applies no more; its records stay.')}>
              <EndRequirementForm requirements={requirementsOf(view)} signer={who.name} />
            </Act>
          </ActList>
          <Ended view={view} />
        </Section>
        <Permits view={view} mayRecord={mayUse(who.roles, 'permit.record')} />
        <Papers view={view}>
          {mayUse(who.roles, 'paper.renew') && (
            <ActList>
              {view.papers.map((paper) => (
                <Act key={paper.id} title={t('Renew: {paperName}', { paperName: t(paperName(paper.kind)) })}>
                  <RenewPaperForm paperId={paper.id} kind={paper.kind} />
                </Act>
              ))}
            </ActList>
          )}
        </Papers>
      </Acting>
      <Section title={t('To print')}>
        <ButtonRow>
          {view.hasDeferrals && (
            <>
              <PaperLink href={`/api/papers/placards?aircraft=${view.aircraftId}`}>{t('Placards')}</PaperLink>
              <PaperLink href={`/api/papers/deferrals?aircraft=${view.aircraftId}`}>
                {t('List of deferrals to carry aboard')}
              </PaperLink>
            </>
          )}
        </ButtonRow>
        {!view.hasDeferrals && (
          <p>{t('Nothing is deferred, so there is no placard and no list to print.')}</p>
        )}
      </Section>
    </Shell>
  );
}

function Times({ view }: { view: AircraftBench }) {
  const t = useWords();
  const { tenthsAWeek, paceWeeks, paceMissing } = view;
  return (
    <FactList
      facts={[
        { name: t('Total time in service'), value: <HoursText tenths={view.ttisTenths} /> },
        { name: t('Hobbs'), value: <HoursText tenths={view.hobbsTenths} /> },
        { name: t('Tach'), value: <HoursText tenths={view.tachTenths} /> },
        {
          name: t('Flying pace'),
          value:
            tenthsAWeek === null ? (
              t('Not known: {paceMissing}', { paceMissing: paceMissing ?? '' })
            ) : (
              <>
                <Say
                  text="<hoursText/> a week over {paceWeeks} weeks"
                  parts={{ hoursText: <HoursText tenths={tenthsAWeek} /> }}
                  values={{ paceWeeks }}
                />
              </>
            ),
        },
      ]}
    />
  );
}

const requirementsOf = (view: AircraftBench) =>
  view.due.flatMap(({ kind, id, name }) => (kind === 'requirement' && id !== '' ? [{ id, name }] : []));
