import { type Metadata } from 'next';
import { redirect } from 'next/navigation';
import { isSignedIn } from '../_session/actor-ref';
import { sameOriginPath } from '../_session/same-origin-path';
import { Card, PageTitle } from '../_ui/page';
import { BareShell } from '../_ui/bare-shell';
import { SignInForm } from './sign-in-form';

export const metadata: Metadata = { title: 'Sign in' };

interface Props {
  searchParams: Promise<{ next?: string | string[]; callbackUrl?: string | string[] }>;
}

export default async function SignInPage({ searchParams }: Props) {
  const asked = await searchParams;
  const next = sameOriginPath(asked.next ?? asked.callbackUrl);
  if (await isSignedIn()) redirect(next);
  return (
    <BareShell>
      <PageTitle lead="Write up what you find, settle it, and see whether the flight may go.">
        Sign in
      </PageTitle>
      <Card>
        <SignInForm next={next} />
      </Card>
    </BareShell>
  );
}
