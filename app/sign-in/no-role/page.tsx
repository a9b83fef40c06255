import { type Metadata } from 'next';
import { PageTitle } from '../../_ui/page';
import { BareShell } from '../../_ui/bare-shell';
import { SignOutButton } from '../../_ui/sign-out';

export const metadata: Metadata = { title: 'No role yet' };

/** For somebody who can sign in but has no role at the operator: every service refuses them. */
export default function NoRolePage() {
  return (
    <BareShell>
      <PageTitle lead="You are signed in, but have no role here yet. A manager has to give you one: pilot, mechanic, dispatcher or manager.">
        No role yet
      </PageTitle>
      <SignOutButton />
    </BareShell>
  );
}
