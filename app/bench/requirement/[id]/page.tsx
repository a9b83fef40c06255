import { type Metadata } from 'next';
import { mayUse } from '@/lib/access/policy';
import { readRequirement, type RequirementView } from '@/lib/inspections/read-requirement';
import { formatTenths } from '@/lib/rules/hours';
import { requireActor } from '../../../_session/actor-ref';
import { DateText, HoursText } from '../../../_ui/moment';
import { Card, FactList, PageTitle, Section } from '../../../_ui/page';
import { Shell } from '../../../_ui/shell';
import { Tag, type Tone } from '../../../_ui/tag';
import { Acting } from '../../acts';
import { PREVENTIVE_CHOICES } from '../../preventive-choices';
import { Refused } from '../../refused';
import { REQUIREMENT_WORDS } from '../../requirement-words';
import { WorkPart } from '../../work-part';
import { Answers } from './answers';
import { EltUse } from './elt-use';
import { History } from './history';
import { OwedDispositions } from './owed-dispositions';

export const metadata: Metadata = { title: 'What recurs' };

/** One thing that recurs: when it is due, what answers it, and every time it was answered. */
export default async function RequirementPage(props: { params: Promise<{ id: string }> }) {
  const { id } = await props.params;
  const { ref, who } = await requireActor(`/bench/requirement/${encodeURIComponent(id)}`);
  const answer = await readRequirement(ref, { requirementId: id });
  if (!answer.ok) return <Refused who={who} problem={answer.problem} title="What recurs" />;
  const view = answer.value;
  const open = view.work.filter(({ state }) => state === 'started' || state === 'entered');
  const around = { zone: view.zone, me: view.me, summary: { placards: [] }, recurs: view.kind };
  const back = mayUse(who.roles, 'bench.read')
    ? { href: `/bench/aircraft/${view.aircraftId}`, label: view.registration }
    : { href: `/ramp/${view.aircraftId}`, label: view.registration };
  return (
    <Shell who={who}>
      <PageTitle
        back={back}
        side={<Standing view={view} />}
        lead={`${view.registration}: ${REQUIREMENT_WORDS[view.kind].toLowerCase()}`}
      >
        {view.name}
      </PageTitle>
      <DueFacts view={view} />
      <Acting>
        <OwedDispositions view={view} mayDispose={mayUse(who.roles, 'deferral.dispose')} />
        {open.length > 0 && (
          <Section title="Work under way">
            {open.map((work) => (
              <WorkPart
                key={work.id}
                view={around}
                work={work}
                roles={who.roles}
                items={PREVENTIVE_CHOICES}
              />
            ))}
          </Section>
        )}
        {view.endedOn === null && <Answers view={view} roles={who.roles} underWay={open.length > 0} />}
        <EltUse view={view} mayRecord={mayUse(who.roles, 'elt-use.record')} />
        <History view={view} roles={who.roles} items={PREVENTIVE_CHOICES} />
      </Acting>
    </Shell>
  );
}

function Standing({ view }: { view: RequirementView }) {
  const { due } = view;
  const over =
    (due.days !== null && due.days < 0) || (due.remainingTenths !== null && due.remainingTenths < 0);
  const [tone, words]: readonly [Tone, string] = view.endedOn
    ? ['grey', 'Ended']
    : due.missing
      ? ['red', 'Not known']
      : over
        ? [view.binding ? 'red' : 'amber', view.binding ? 'Overdue' : 'Overdue, does not bind']
        : ['green', 'In date'];
  return (
    <Tag tone={tone} size="large">
      {words}
    </Tag>
  );
}

function DueFacts({ view }: { view: RequirementView }) {
  const { due } = view;
  return (
    <Card>
      <FactList
        facts={[
          { name: 'Good through', value: due.on ? <DateText date={due.on} /> : 'No date' },
          { name: 'Days left', value: due.days === null ? 'No date' : String(due.days) },
          {
            name: 'Due at',
            value: due.tenths === null ? 'No hours limit' : <HoursText tenths={due.tenths} />,
          },
          {
            name: 'Hours left',
            value: due.remainingTenths === null ? 'No hours limit' : `${formatTenths(due.remainingTenths)} h`,
          },
          { name: 'Total time in service', value: <HoursText tenths={view.ttisTenths} /> },
          { name: 'Where it comes from', value: view.reference ?? 'Not given' },
          ...(due.missing ? [{ name: 'Not known', value: due.missing }] : []),
        ]}
      />
    </Card>
  );
}
