import { type Metadata } from 'next';
import { BareShell } from '@/app/_ui/bare-shell';
import { PageTitle } from '@/app/_ui/page';
import { words } from '@/app/_words/words';
import { SetUp } from './set-up';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Set up') };
}

/**
 * Opened once, with the token that the server's console printed. The token stands behind the # of the address, which a browser
 * sends to nobody, so the page itself is the same for everybody and tells nothing.
 */
export default async function SetUpPage() {
  const t = await words();
  return (
    <BareShell>
      <PageTitle
        lead={t(
          'The school, its base and its first manager. Everything else comes after that, step by step.',
        )}
      >
        {t('Set up')}
      </PageTitle>
      <SetUp />
    </BareShell>
  );
}
