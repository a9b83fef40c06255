import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { FactList, PageTitle, Section } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { Tag } from '@/app/_ui/tag';
import { words } from '@/app/_words/words';
import { Refused } from '@/app/desk/refused';
import { OfficeNav } from '@/app/office/_parts/office-nav';
import { readPerson } from '@/lib/people/read-person';
import { STATE_WORDS, ROLE_WORDS } from '../words';
import { Certificates } from './certificates';
import { ChangeForm } from './change-form';
import { Events } from './events';
import { LeaveForm, ReturnForm } from './leave-forms';
import { Naming } from './naming';
import { PersonalData } from './personal-data';
import { SignInPart } from './sign-in-part';
import styles from '../people.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('A person') };
}

/** One person: what they may do, how they sign in, their certificates, leaving, and their data. */
export default async function PersonPage({ params }: { params: Promise<{ id: string }> }) {
  const t = await words();
  const { id } = await params;
  const { ref, who } = await requireActor(`/office/people/${encodeURIComponent(id)}`);
  const result = await readPerson(ref, { personId: id });
  if (!result.ok) return <Refused who={who} title={t('A person')} problem={result.problem} />;
  const person = result.value;
  const { state } = person;
  const here = state === 'here' || state === 'invited';
  return (
    <Shell who={who}>
      <OfficeNav at="people" />
      <PageTitle
        back={{ href: '/office/people', label: t('People') }}
        side={
          <Tag tone={here ? 'blue' : 'grey'} shape={here ? 'ring' : 'cross'}>
            {t(STATE_WORDS[state])}
          </Tag>
        }
      >
        {state === 'erased' ? t('Erased person') : person.name}
      </PageTitle>
      {state !== 'erased' && (
        <FactList
          facts={[
            {
              name: t('Roles'),
              value: person.roles.map((role) => t(ROLE_WORDS[role])).join(', ') || t('None'),
            },
            { name: t('E-mail address'), value: person.email },
            { name: t('Home base'), value: person.base?.ident ?? t('None') },
          ]}
        />
      )}
      {here && (
        <details className={styles.unfold}>
          <summary>{t('Change name, address, roles or base')}</summary>
          <ChangeForm person={person} />
        </details>
      )}
      <Section title={t('Certificates')} id="certificates">
        <Certificates person={person} mayEnter={here} />
      </Section>
      {here && (
        <Section title={t('Preventive maintenance')} id="preventive">
          <Naming person={person} />
        </Section>
      )}
      {here && (
        <Section title={t('Signing in')} id="signing-in">
          <SignInPart person={person} />
        </Section>
      )}
      {person.events.length > 0 && (
        <Section title={t('What became of them here')} id="events">
          <Events events={person.events} />
        </Section>
      )}
      <Section title={here ? t('Leaving') : t('Returning')} id="leaving">
        {here && <LeaveForm person={person} />}
        {state === 'left' && <ReturnForm personId={person.id} name={person.name} />}
        {state === 'erased' && (
          <p className={styles.words}>{t('Whoever was erased cannot return. Invite them anew.')}</p>
        )}
      </Section>
      <Section title={t('Personal data')} id="personal-data">
        <PersonalData person={person} signerName={who.name} />
      </Section>
    </Shell>
  );
}
