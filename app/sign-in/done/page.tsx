import { type Metadata } from 'next';
import { requireActor } from '../../_session/actor-ref';
import { LinkButton } from '../../_ui/button';
import { Card, PageTitle } from '../../_ui/page';
import { BareShell } from '../../_ui/bare-shell';

export const metadata: Metadata = { title: 'Signed in' };

/** Where somebody lands who signed in again in a second tab, with a form waiting in the first. */
export default async function SignedInPage() {
  const { who } = await requireActor('/sign-in/done');
  return (
    <BareShell>
      <PageTitle>You are signed in</PageTitle>
      <Card>
        <p>
          As {who.name}, {who.operatorName}. Close this tab, go back to the one with your form, and send
          again.
        </p>
        <div>
          <LinkButton href="/">Or go to the start page</LinkButton>
        </div>
      </Card>
    </BareShell>
  );
}
