import { useWords } from '#words';
import { words } from './_words/words';
import { type Metadata } from 'next';
import { BareTitle, WayOut } from './_ui/bare-page';
import { BareShell } from './_ui/bare-shell';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Not found') };
}

export default function NotFound() {
  const t = useWords();
  return (
    <BareShell>
      <BareTitle
        lead={t(
          'There is no such page or record here. A link may be old, or the record belongs to another operator.',
        )}
      >
        {t('Not found')}
      </BareTitle>
      <WayOut href="/">{t('Go to the start page')}</WayOut>
    </BareShell>
  );
}
