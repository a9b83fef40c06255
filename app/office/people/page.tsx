import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { LinkButton } from '@/app/_ui/button';
import { EmptyState, PageTitle, Section } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { words } from '@/app/_words/words';
import { Refused } from '@/app/desk/refused';
import { OfficeNav } from '@/app/office/_parts/office-nav';
import { readPeople, type PersonOnList } from '@/lib/people/read-people';
import { SecondFactorSetting } from './_second-factor-setting';
import { PeopleList, Warnings } from './people-list';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('People') };
}

/** Who works here, whose certificates run out, who is invited and not yet in, who has left. */
export default async function PeoplePage() {
  const t = await words();
  const { ref, who } = await requireActor('/office/people');
  const result = await readPeople(ref, {});
  if (!result.ok) return <Refused who={who} title={t('People')} problem={result.problem} />;
  const { people } = result.value;
  const of = (...states: PersonOnList['state'][]) => people.filter(({ state }) => states.includes(state));
  const warned = people.filter(({ warnings }) => warnings.length > 0);
  const invited = of('invited');
  const left = of('left', 'erased');
  const here = of('here');
  return (
    <Shell who={who}>
      <OfficeNav at="people" />
      <PageTitle
        lead={t('Roles open screens. Certificates decide whose signature counts.')}
        side={
          <LinkButton href="/office/people/invite" weight="main">
            {t('Invite somebody')}
          </LinkButton>
        }
      >
        {t('People')}
      </PageTitle>
      {warned.length > 0 && (
        <Section title={t('Certificates to look at')} id="warnings">
          <Warnings people={warned} />
        </Section>
      )}
      {invited.length > 0 && (
        <Section title={t('Invited, not yet in')} id="invited">
          <PeopleList people={invited} />
        </Section>
      )}
      <Section title={t('Who works here')} id="here">
        <PeopleList people={here} />
        {here.length === 1 && invited.length === 0 && (
          <EmptyState title={t('So far it is only you.')}>
            <p>
              {t('Invite pilots, mechanics and dispatchers: without a mechanic nothing can be signed off.')}
            </p>
          </EmptyState>
        )}
      </Section>
      {left.length > 0 && (
        <Section title={t('Those who left')} id="left">
          <PeopleList people={left} />
        </Section>
      )}
      <SecondFactorSetting />
    </Shell>
  );
}
