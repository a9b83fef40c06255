import { type Metadata } from 'next';
import { LinkButton } from '@/app/_ui/button';
import { BareShell } from '@/app/_ui/bare-shell';
import { Card, EmptyState, PageTitle } from '@/app/_ui/page';
import { words } from '@/app/_words/words';
import { sendsResets } from '@/lib/people/ask-for-reset';
import { NO_OTHER_MANAGER } from '../no-other-manager';
import { AskForm } from './ask-form';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Password forgotten') };
}

/** A way back in: by letter where the server sends letters, otherwise by a manager. */
export default async function ForgottenPage() {
  const t = await words();
  return (
    <BareShell>
      <PageTitle back={{ href: '/sign-in', label: t('Sign in') }}>{t('Password forgotten')}</PageTitle>
      {sendsResets() ? (
        <Card>
          <AskForm />
        </Card>
      ) : (
        <EmptyState title={t('This server sends no letters.')}>
          <p>{t('Ask a manager: under Office, People, they make you a link for a new password.')}</p>
          <p>{t(NO_OTHER_MANAGER)}</p>
          <LinkButton href="/sign-in">{t('Sign in')}</LinkButton>
        </EmptyState>
      )}
    </BareShell>
  );
}
