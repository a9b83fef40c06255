import { Say, useWords } from '#words';
import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import Link from '../../_ui/link';
import { requireActor } from '@/app/_session/actor-ref';
import { LinkButton } from '@/app/_ui/button';
import { OutcomeMark } from '@/app/_ui/marks';
import { StaysFresh } from '@/app/_ui/freshness';
import { Moment } from '@/app/_ui/moment';
import { EmptyState, PageTitle } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { readReleases, type ReleaseView } from '@/lib/releases/read-desk';
import { formatTenths } from '@/lib/rules/hours';
import { type Outcome } from '@/lib/rules/verdict';
import { isAcceptedBefore } from '../../_flight/accepted-before';
import { StateMark } from '../../_flight/state-mark';
import { Refused } from '../refused';
import { OUTCOME_WORDS } from '../words';
import styles from '../release/release.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Releases') };
}

/** The newest releases, each opening the record of what it stood on. */
export default async function ReleasesPage(props: {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const t = await words();
  const { aircraft } = await props.searchParams;
  const { ref, who } = await requireActor('/desk/releases');
  const releases = await readReleases(ref, typeof aircraft === 'string' ? { aircraftId: aircraft } : {});
  if (!releases.ok) return <Refused who={who} title={t('Releases')} problem={releases.problem} />;
  const rows = releases.value;
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: '/desk', label: t('Fleet board') }}
        lead={t('The newest thirty. Each is a record of its moment, not today’s answer.')}
        side={
          <LinkButton href="/desk/flight" weight="main">
            {t('Compose a flight')}
          </LinkButton>
        }
      >
        {typeof aircraft === 'string' && rows[0]
          ? t('Releases of {registration}', { registration: rows[0].registration })
          : t('Releases')}
      </PageTitle>
      <StaysFresh asOf={new Date().toISOString()} zones={[...new Set(rows.map(({ zone }) => zone))]}>
        {rows.length === 0 && <EmptyState title={t('Nothing has been released yet.')} />}
        <ul className={styles.list}>
          {rows.map((row) => (
            <ReleaseRow key={row.id} row={row} />
          ))}
        </ul>
      </StaysFresh>
    </Shell>
  );
}

function ReleaseRow({ row }: { row: ReleaseView }) {
  const t = useWords();
  const accepted = row.acceptance ?? row.acceptedBeforeWarning;
  return (
    <li className={`${styles.one} ${row.state.name === 'void' ? styles.gone : ''}`}>
      <div>
        <Link href={`/desk/release/${row.id}`}>
          <Say
            text={'{registration}, departs\u00a0<moment/>'}
            parts={{ moment: <Moment at={row.departAt} zone={row.zone} /> }}
            values={{ registration: row.registration }}
          />
        </Link>
        <p className={styles.soft}>
          <Say
            text="{pilot}{accepted}. Released by {dispatcher}, <moment/>"
            parts={{ moment: <Moment at={row.releasedAt} zone={row.zone} /> }}
            values={{
              pilot: row.pilot ?? t('No pilot named'),
              accepted: accepted && (
                <>
                  <Say
                    text=", accepted <moment/>"
                    parts={{ moment: <Moment at={accepted.at} zone={row.zone} /> }}
                  />
                  {isAcceptedBefore(row) && t(', before the newest warning')}
                </>
              ),
              dispatcher: row.dispatcher,
            }}
          />
        </p>
        <p>
          <Whereabouts row={row} />
        </p>
      </div>
      <div className={styles.side}>
        <StateMark state={row.state} size="small" />
        {row.state.name === 'void' || row.state.name === 'withdrawn' ? (
          <span className={styles.soft}>
            {t('was {outcome_words}', { outcome_words: t(OUTCOME_WORDS[row.outcome as Outcome]) })}
          </span>
        ) : (
          <OutcomeMark outcome={row.outcome as Outcome} size="small" />
        )}
      </div>
    </li>
  );
}

/** Out or back, by the meters that were read. */
function Whereabouts({ row: { meters, zone } }: { row: ReleaseView }) {
  const t = useWords();
  const { out, back, flown } = meters;
  if (back) {
    const hobbs = flown?.hobbsTenths ?? null;
    return (
      <>
        <Say
          text="Back <moment/>{which}"
          parts={{ moment: <Moment at={back.at} zone={zone} /> }}
          values={{
            which:
              hobbs === null
                ? t('. Hours flown not known.')
                : t('. Flown {tenths} h by Hobbs.', { tenths: formatTenths(hobbs) }),
          }}
        />
      </>
    );
  }
  if (!out) return <span className={styles.soft}>{t('Meters not read.')}</span>;
  return (
    <>
      <Say
        text="<b>Out</b> since <moment/>"
        parts={{ b: <b />, moment: <Moment at={out.at} zone={zone} /> }}
      />
    </>
  );
}
