import { useWords } from '#words';
import { words } from '@/app/_words/words';
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

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('What recurs') };
}

/** One thing that recurs: when it is due, what answers it, and every time it was answered. */
export default async function RequirementPage(props: { params: Promise<{ id: string }> }) {
  const t = await words();
  const { id } = await props.params;
  const { ref, who } = await requireActor(`/bench/requirement/${encodeURIComponent(id)}`);
  const answer = await readRequirement(ref, { requirementId: id });
  if (!answer.ok) return <Refused who={who} problem={answer.problem} title={t('What recurs')} />;
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
          <Section title={t('Work under way')}>
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
  const t = useWords();
  const { due } = view;
  const over =
    (due.days !== null && due.days < 0) || (due.remainingTenths !== null && due.remainingTenths < 0);
  const [tone, words]: readonly [Tone, string] = view.endedOn
    ? ['grey', 'Ended']
    : due.missing
      ? ['red', t('Not known')]
      : over
        ? [view.binding ? 'red' : 'amber', view.binding ? 'Overdue' : t('Overdue, does not bind')]
        : ['green', t('In date')];
  return (
    <Tag tone={tone} size="large">
      {words}
    </Tag>
  );
}

function DueFacts({ view }: { view: RequirementView }) {
  const t = useWords();
  const { due } = view;
  return (
    <Card>
      <FactList
        facts={[
          { name: t('Good through'), value: due.on ? <DateText date={due.on} /> : t('No date') },
          { name: t('Days left'), value: due.days === null ? t('No date') : String(due.days) },
          {
            name: t('Due at'),
            value: due.tenths === null ? t('No hours limit') : <HoursText tenths={due.tenths} />,
          },
          {
            name: t('Hours left'),
            value:
              due.remainingTenths === null
                ? t('No hours limit')
                : t('{tenths} h', { tenths: formatTenths(due.remainingTenths) }),
          },
          { name: t('Total time in service'), value: <HoursText tenths={view.ttisTenths} /> },
          { name: t('Where it comes from'), value: view.reference ?? t('Not given') },
          ...(due.missing ? [{ name: t('Not known'), value: due.missing }] : []),
        ]}
      />
    </Card>
  );
}
