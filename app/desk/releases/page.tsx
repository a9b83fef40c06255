import { type Metadata } from 'next';
import Link from '../../_ui/link';
import { requireActor } from '@/app/_session/actor-ref';
import { LinkButton } from '@/app/_ui/button';
import { OutcomeMark } from '@/app/_ui/marks';
import { Moment } from '@/app/_ui/moment';
import { EmptyState, PageTitle } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { readReleases, type ReleaseView } from '@/lib/releases/read-desk';
import { formatTenths } from '@/lib/rules/hours';
import { type Outcome } from '@/lib/rules/verdict';
import { Refused } from '../refused';
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
      {rows.length === 0 && <EmptyState title="Nothing has been released yet." />}
      <ul className={styles.list}>
        {rows.map((row) => (
          <li key={row.id} className={styles.one}>
            <div>
              <Link href={`/desk/release/${row.id}`}>
                {row.registration}, departs&nbsp;
                <Moment at={row.departAt} zone={row.zone} />
              </Link>
              <p className={styles.soft}>
                {row.pilot ?? 'No pilot named'}. Released by {row.dispatcher},{' '}
                <Moment at={row.releasedAt} zone={row.zone} />
              </p>
              <p>
                <Whereabouts row={row} />
              </p>
            </div>
            <OutcomeMark outcome={row.outcome as Outcome} size="small" />
          </li>
        ))}
      </ul>
    </Shell>
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
