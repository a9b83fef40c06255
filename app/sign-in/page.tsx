import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { redirect } from 'next/navigation';
import { isSignedIn } from '../_session/actor-ref';
import { sameOriginPath } from '../_session/same-origin-path';
import { Card, PageTitle } from '../_ui/page';
import { BareShell } from '../_ui/bare-shell';
import Link from '../_ui/link';
import styles from './sign-in.module.css';
import { SignInForm } from './sign-in-form';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Sign in') };
}

interface Props {
  searchParams: Promise<{ next?: string | string[]; callbackUrl?: string | string[] }>;
}

export default async function SignInPage({ searchParams }: Props) {
  const t = await words();
  const asked = await searchParams;
  const next = sameOriginPath(asked.next ?? asked.callbackUrl);
  if (await isSignedIn()) redirect(next);
  return (
    <BareShell>
      <PageTitle lead={t('Write up what you find, settle it, and see whether the flight may go.')}>
        {t('Sign in')}
      </PageTitle>
      <Card>
        <SignInForm next={next} />
      </Card>
      <p>
        <Link href="/sign-in/forgotten" className={styles.forgotten}>
          {t('Password forgotten?')}
        </Link>
      </p>
    </BareShell>
  );
}
