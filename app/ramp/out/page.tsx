import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { Out } from './out';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Ramp') };
}

/** The same bytes for everybody: nothing of a person may be in it, since the phone keeps it for the next one. */
export const dynamic = 'force-static';

/** The ramp as it runs on the phone. The service worker keeps it and serves it with no network; see which-view.ts. */
export default function OutPage() {
  return <Out />;
}
