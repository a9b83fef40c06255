import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { words } from '@/app/_words/words';
import { PageTitle, Section } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { mayUse } from '@/lib/access/policy';
import { LAST_DONE_DOCS } from '@/lib/carry-over/last-done-columns';
import { WRITE_UP_DOCS } from '@/lib/carry-over/write-up-columns';
import { PROBLEMS } from '@/lib/problems';
import { OfficeNav } from '../../_parts/office-nav';
import { Columns } from '../_parts/columns';
import { Refused } from '../_parts/refused';
import { ImportForm } from './import-form';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('History from a file') };
}

/** Open write-ups or inspections out of a file: looked at row by row first, then taken in all or none, and signed. */
export default async function ImportHistoryPage() {
  const t = await words();
  const { who } = await requireActor('/office/history/import');
  const title = t('History from a file');
  if (!mayUse(who.roles, 'history.import')) {
    const problem = { code: 'not_allowed', say: PROBLEMS.not_allowed.say } as const;
    return <Refused who={who} title={title} problem={problem} />;
  }
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: '/office/history', label: t('History') }}
        lead={t(
          'CSV or JSON, for the whole fleet. All rows go in or none; the same file again adds nothing.',
        )}
      >
        {title}
      </PageTitle>
      <OfficeNav at="history" />
      <Section title={t('The file')}>
        <ImportForm signer={who.name} />
      </Section>
      <Columns title={t('A file of open write-ups')} what="write-ups" columns={WRITE_UP_DOCS} />
      <Columns title={t('A file of inspections last done')} what="last-done" columns={LAST_DONE_DOCS} />
    </Shell>
  );
}
