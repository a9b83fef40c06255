import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { Refused } from '@/app/bench/refused';
import { PaperLink } from '@/app/bench/paper-link';
import { requireActor } from '@/app/_session/actor-ref';
import { Notice } from '@/app/_ui/notice';
import { EmptyState, PageTitle, Section } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { mayUse } from '@/lib/access/policy';
import { readRecords } from '@/lib/records/read-records';
import { PARTS_OF_RECORDS, type PartOfRecord } from '@/lib/records/record-row';
import { Filters } from './filters';
import { RecordItem } from './record-item';
import styles from './records.module.css';
import { Status } from './status';
import { PART_WORDS } from './words';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Records') };
}

/** Everything signed about one aircraft, newest first, with what 91.417 asks to be kept and whether it is unchanged. */
export default async function RecordsPage(props: {
  params: Promise<{ id: string }>;
  searchParams: Promise<{ year?: string | string[]; part?: string | string[] }>;
}) {
  const t = await words();
  const { id } = await props.params;
  const { year, part } = await props.searchParams;
  const { ref, who } = await requireActor(`/bench/aircraft/${encodeURIComponent(id)}/records`);
  const answer = await readRecords(ref, {
    aircraftId: id,
    ...(year === undefined ? {} : { year: Number(year) }),
  });
  if (!answer.ok) return <Refused who={who} problem={answer.problem} title={t('Records')} />;
  const view = answer.value;
  const chosenPart = PARTS_OF_RECORDS.find((one) => one === part) ?? null;
  const rows = view.rows.filter((row) => chosenPart === null || row.part === chosenPart);
  const changed = view.rows.filter((row) => row.changes !== null && row.changes.length > 0);
  const back = mayUse(who.roles, 'bench.read')
    ? { href: `/bench/aircraft/${view.aircraftId}`, label: view.registration }
    : { href: '/', label: t('Start') };
  return (
    <Shell who={who}>
      <PageTitle
        back={back}
        lead={t('{registration}, serial {serial}, {typeName}', {
          registration: view.registration,
          serial: view.serial,
          typeName: view.typeName,
        })}
      >
        {t('Records of {registration}', { registration: view.registration })}
      </PageTitle>
      {changed.length > 0 && (
        <Notice
          tone="red"
          title={t('{changed} of these records are not as they were signed.', { changed: changed.length })}
        >
          <p>{t('Do not rely on them. Whoever runs the server can say more with `npm run audit:verify`.')}</p>
        </Notice>
      )}
      <Status status={view.status} />
      <Section title={t('Papers to carry')} id="papers">
        <ul className={`${styles.papers} not-on-paper`}>
          <li>
            <PaperLink href={`/api/papers/deferrals?aircraft=${view.aircraftId}`}>
              {t('Deferred items')}
            </PaperLink>
          </li>
          <li>
            <PaperLink href={`/api/papers/placards?aircraft=${view.aircraftId}`}>
              {t('INOPERATIVE placards')}
            </PaperLink>
          </li>
        </ul>
      </Section>
      <Section
        title={t('Signed in {year}{titleOf}', { year: view.year, titleOf: titleOf(chosenPart) })}
        id="signed"
      >
        <Filters
          chosen={{ aircraftId: view.aircraftId, year: view.year, part: chosenPart }}
          years={view.years}
        />
        {rows.length === 0 ? (
          <EmptyState title={t('Nothing was signed here.')} />
        ) : (
          <ol className={styles.records} aria-label={t('Records, newest first')}>
            {rows.map((row) => (
              <RecordItem key={row.id} row={row} zone={view.zone} />
            ))}
          </ol>
        )}
      </Section>
    </Shell>
  );
}

const titleOf = (part: PartOfRecord | null): string => (part ? `: ${PART_WORDS[part].toLowerCase()}` : '');
