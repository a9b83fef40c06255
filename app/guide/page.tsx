import { type Metadata } from 'next';
import { BareShell } from '../_ui/bare-shell';
import { PageTitle } from '../_ui/page';
import { words } from '../_words/words';
import { GuideLinks } from './guide-links';

export async function generateMetadata(): Promise<Metadata> {
  return { title: (await words())('Guides') };
}

export default async function GuidesPage() {
  const t = await words();
  return (
    <BareShell>
      <PageTitle lead={t('Five minutes each.')} back={{ href: '/', label: t('To your work') }}>
        {t('Guides')}
      </PageTitle>
      <GuideLinks />
    </BareShell>
  );
}
