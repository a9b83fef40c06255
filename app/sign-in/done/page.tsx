import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { requireActor } from '../../_session/actor-ref';
import { LinkButton } from '../../_ui/button';
import { Card, PageTitle } from '../../_ui/page';
import { BareShell } from '../../_ui/bare-shell';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Signed in') };
}

/** Where somebody lands who signed in again in a second tab, with a form waiting in the first. */
export default async function SignedInPage() {
  const t = await words();
  const { who } = await requireActor('/sign-in/done');
  return (
    <BareShell>
      <PageTitle>{t('You are signed in')}</PageTitle>
      <Card>
        <p>
          {t(
            'As {name}, {operatorName}. Close this tab, go back to the one with your form, and send again.',
            { name: who.name, operatorName: who.operatorName },
          )}
        </p>
        <div>
          <LinkButton href="/">{t('Or go to the start page')}</LinkButton>
        </div>
      </Card>
    </BareShell>
  );
}
