import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { PageTitle } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { words } from '@/app/_words/words';
import { Refused } from '@/app/desk/refused';
import { OfficeNav } from '@/app/office/_parts/office-nav';
import { readPeople } from '@/lib/people/read-people';
import { InviteForm } from './invite-form';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Invite somebody') };
}

export default async function InvitePage() {
  const t = await words();
  const { ref, who } = await requireActor('/office/people/invite');
  const result = await readPeople(ref, {});
  if (!result.ok) return <Refused who={who} title={t('Invite somebody')} problem={result.problem} />;
  const { bases, sendsLetters, people } = result.value;
  const zone = people.find(({ id }) => id === ref.personId)?.zone ?? 'UTC';
  return (
    <Shell who={who}>
      <OfficeNav at="people" />
      <PageTitle
        back={{ href: '/office/people', label: t('People') }}
        lead={t(
          'They get a link, choose their own password with it, and can sign in. Nobody else ever knows it.',
        )}
      >
        {t('Invite somebody')}
      </PageTitle>
      <InviteForm bases={bases} sendsLetters={sendsLetters} zone={zone} />
    </Shell>
  );
}
