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

export const metadata: Metadata = { title: 'Releases' };

/** The newest releases, each opening the record of what it stood on. */
export default async function ReleasesPage(props: {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const { aircraft } = await props.searchParams;
  const { ref, who } = await requireActor('/desk/releases');
  const releases = await readReleases(ref, typeof aircraft === 'string' ? { aircraftId: aircraft } : {});
  if (!releases.ok) return <Refused who={who} title="Releases" problem={releases.problem} />;
  const rows = releases.value;
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: '/desk', label: 'Fleet board' }}
        lead="The newest thirty. Each is a record of its moment, not today’s answer."
        side={
          <LinkButton href="/desk/flight" weight="main">
            Compose a flight
          </LinkButton>
        }
      >
        {typeof aircraft === 'string' && rows[0] ? `Releases of ${rows[0].registration}` : 'Releases'}
      </PageTitle>
      <StaysFresh asOf={new Date().toISOString()} zones={[...new Set(rows.map(({ zone }) => zone))]}>
        {rows.length === 0 && <EmptyState title="Nothing has been released yet." />}
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
  const accepted = row.acceptance ?? row.acceptedBeforeWarning;
  return (
    <li className={`${styles.one} ${row.state.name === 'void' ? styles.gone : ''}`}>
      <div>
        <Link href={`/desk/release/${row.id}`}>
          {row.registration}, departs&nbsp;
          <Moment at={row.departAt} zone={row.zone} />
        </Link>
        <p className={styles.soft}>
          {row.pilot ?? 'No pilot named'}
          {accepted && (
            <>
              , accepted <Moment at={accepted.at} zone={row.zone} />
              {isAcceptedBefore(row) && ', before the newest warning'}
            </>
          )}
          . Released by {row.dispatcher}, <Moment at={row.releasedAt} zone={row.zone} />
        </p>
        <p>
          <Whereabouts row={row} />
        </p>
      </div>
      <div className={styles.side}>
        <StateMark state={row.state} size="small" />
        {row.state.name === 'void' || row.state.name === 'withdrawn' ? (
          <span className={styles.soft}>was {OUTCOME_WORDS[row.outcome as Outcome]}</span>
        ) : (
          <OutcomeMark outcome={row.outcome as Outcome} size="small" />
        )}
      </div>
    </li>
  );
}

/** Out or back, by the meters that were read. */
function Whereabouts({ row: { meters, zone } }: { row: ReleaseView }) {
  const { out, back, flown } = meters;
  if (back) {
    const hobbs = flown?.hobbsTenths ?? null;
    return (
      <>
        Back <Moment at={back.at} zone={zone} />
        {hobbs === null ? '. Hours flown not known.' : `. Flown ${formatTenths(hobbs)} h by Hobbs.`}
      </>
    );
  }
  if (!out) return <span className={styles.soft}>Meters not read.</span>;
  return (
    <>
      <b>Out</b> since <Moment at={out.at} zone={zone} />
    </>
  );
}
