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

export const metadata: Metadata = { title: 'Aircraft at the bench' };

/** One aircraft for the mechanic: what is open, what is under way, what falls due, its papers and permits. */
export default async function BenchAircraftPage(props: { params: Promise<{ id: string }> }) {
  const { id } = await props.params;
  const { ref, who } = await requireActor(`/bench/aircraft/${encodeURIComponent(id)}`);
  const answer = await readAircraftBench(ref, { aircraftId: id });
  if (!answer.ok) return <Refused who={who} problem={answer.problem} title="Aircraft" />;
  const view = answer.value;
  const here = `/bench/aircraft/${view.aircraftId}`;
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: '/bench', label: 'Bench' }}
        lead={`${view.typeName}, serial ${view.serial}. Based at ${view.baseIdent}, ${view.baseName}.`}
        side={
          <ButtonRow>
            <LinkButton href={`${here}/trends`}>Trends</LinkButton>
            <LinkButton href={`${here}/records`}>Records</LinkButton>
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
        <Section title="Change what recurs" id="add">
          <ActList>
            <Act title="Add what recurs" hint="A directive, a life limit, an inspection, an oil change.">
              <RequirementForm aircraftId={view.aircraftId} />
            </Act>
            <Act title="End what recurs" hint="It applies no more; its records stay.">
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
                <Act key={paper.id} title={`Renew: ${paperName(paper.kind)}`}>
                  <RenewPaperForm paperId={paper.id} kind={paper.kind} />
                </Act>
              ))}
            </ActList>
          )}
        </Papers>
      </Acting>
      <Section title="To print">
        <ButtonRow>
          {view.hasDeferrals && (
            <>
              <PaperLink href={`/api/papers/placards?aircraft=${view.aircraftId}`}>Placards</PaperLink>
              <PaperLink href={`/api/papers/deferrals?aircraft=${view.aircraftId}`}>
                List of deferrals to carry aboard
              </PaperLink>
            </>
          )}
        </ButtonRow>
        {!view.hasDeferrals && <p>Nothing is deferred, so there is no placard and no list to print.</p>}
      </Section>
    </Shell>
  );
}

function Times({ view }: { view: AircraftBench }) {
  const { tenthsAWeek, paceWeeks, paceMissing } = view;
  return (
    <FactList
      facts={[
        { name: 'Total time in service', value: <HoursText tenths={view.ttisTenths} /> },
        { name: 'Hobbs', value: <HoursText tenths={view.hobbsTenths} /> },
        { name: 'Tach', value: <HoursText tenths={view.tachTenths} /> },
        {
          name: 'Flying pace',
          value:
            tenthsAWeek === null ? (
              `Not known: ${paceMissing}`
            ) : (
              <>
                <HoursText tenths={tenthsAWeek} /> a week over {paceWeeks} weeks
              </>
            ),
        },
      ]}
    />
  );
}

const requirementsOf = (view: AircraftBench) =>
  view.due.flatMap(({ kind, id, name }) => (kind === 'requirement' && id !== '' ? [{ id, name }] : []));
