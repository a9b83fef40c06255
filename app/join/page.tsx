import { type Metadata } from 'next';
import { BareShell } from '../_ui/bare-shell';
import { words } from '../_words/words';
import { JoinByLink } from './join-by-link';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Choose a password'), robots: { index: false } };
}

/** Where links of invitations and resets lead. The token stands behind the # and never reaches a log. */
export default function JoinPage() {
  return (
    <BareShell>
      <JoinByLink />
    </BareShell>
  );
}
