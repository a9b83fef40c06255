import { useWords } from '#words';
import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { PageTitle } from '../../_ui/page';
import { BareShell } from '../../_ui/bare-shell';
import { SignOutButton } from '../../_ui/sign-out';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('No role yet') };
}

/** For somebody who can sign in but has no role at the operator: every service refuses them. */
export default function NoRolePage() {
  const t = useWords();
  return (
    <BareShell>
      <PageTitle
        lead={t(
          'You are signed in, but have no role here yet. A manager has to give you one: pilot, mechanic, dispatcher or manager.',
        )}
      >
        {t('No role yet')}
      </PageTitle>
      <SignOutButton />
    </BareShell>
  );
}
