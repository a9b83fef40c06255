import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { Notice } from '@/app/_ui/notice';
import { PageTitle, Section } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { mayUse } from '@/lib/access/policy';
import { PROBLEMS } from '@/lib/problems';
import { Refused } from '../../refused';
import { CsvColumns, ICalendarWords } from './docs';
import { ImportForm } from './import-form';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Flights from a file') };
}

/** Planned flights out of a CSV or iCalendar file: looked at row by row first, then taken in all or not at all. */
export default async function ImportPage() {
  const t = await words();
  const { who } = await requireActor('/desk/plans/import');
  if (!mayUse(who.roles, 'plan.import')) {
    const problem = { code: 'not_allowed', say: PROBLEMS.not_allowed.say } as const;
    return <Refused who={who} title={t('Flights from a file')} problem={problem} />;
  }
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: '/desk/plans', label: t('Planned flights') }}
        lead={t(
          'CSV or iCalendar, up to 500 flights and 1 MB. All of them go in or none; the same file again changes nothing.',
        )}
      >
        {t('Flights from a file')}
      </PageTitle>
      <Notice tone="blue" title={t('A plan releases nothing.')}>
        <p>{t('No rule is asked here. A flight goes only by its own release.')}</p>
      </Notice>
      <Section title={t('The file')}>
        <ImportForm />
      </Section>
      <Section title={t('How a CSV is read')}>
        <CsvColumns />
      </Section>
      <Section title={t('How an iCalendar file is read')}>
        <ICalendarWords />
      </Section>
    </Shell>
  );
}
