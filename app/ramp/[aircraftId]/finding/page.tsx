import { type Metadata } from 'next';
import Link from '../../../_ui/link';
import { readAircraftFile, type AircraftFile } from '@/lib/fleet/read-aircraft-file';
import { offerFindings } from '@/lib/findings/offer-findings';
import { FINDING_KINDS } from '@/lib/findings/schema';
import { KIND_TITLES } from '@/lib/rules/findings/course-of-something-else';
import { WALKAROUND_STATIONS, type WalkaroundStation } from '@/lib/rules/findings/stations';
import { requireActor } from '../../../_session/actor-ref';
import { PageTitle } from '../../../_ui/page';
import { Shell } from '../../../_ui/shell';
import { KnownHere } from '../../_parts/known-here';
import { PlainProblem } from '../../_parts/plain-problem';
import styles from '../../_parts/ramp.module.css';
import { FindingForm } from './finding-form';

export const metadata: Metadata = { title: 'Write up a finding' };
export const dynamic = 'force-dynamic';

interface Props {
  params: Promise<{ aircraftId: string }>;
  searchParams: Promise<{ station?: string | string[]; walk?: string | string[] }>;
}

/** One finding, from what it is to sent. Without a station it asks where first. */
export default async function FindingPage({ params, searchParams }: Props) {
  const { aircraftId } = await params;
  const { station: asked, walk } = await searchParams;
  const path = `/ramp/${aircraftId}/finding`;
  const { ref, who } = await requireActor(typeof asked === 'string' ? `${path}?station=${asked}` : path);
  const read = await readAircraftFile(ref, { aircraftId });
  if (!read.ok) return <PlainProblem who={who} problem={read.problem} />;
  const station = WALKAROUND_STATIONS.find((one) => one.key === asked);
  return (
    <Shell who={who}>
      <div className={styles.column}>
        {station ? (
          <AtStation
            file={read.value}
            station={station}
            personId={ref.personId}
            walkId={typeof walk === 'string' ? walk : null}
          />
        ) : (
          <>
            <PageTitle back={{ href: `/ramp/${aircraftId}`, label: read.value.row.registration }}>
              Where did you find it?
            </PageTitle>
            <ul className={styles.rows}>
              {WALKAROUND_STATIONS.map(({ key, title, lookFor }) => (
                <li key={key}>
                  <Link href={`${path}?station=${key}`} className={styles.row}>
                    <b className={styles.rowWhole}>{title}</b>
                    <span className={`${styles.rowWhole} ${styles.soft}`}>{lookFor}</span>
                  </Link>
                </li>
              ))}
            </ul>
          </>
        )}
      </div>
    </Shell>
  );
}

function AtStation(props: {
  file: AircraftFile;
  station: WalkaroundStation;
  personId: string;
  walkId: string | null;
}) {
  const { file, station, personId, walkId } = props;
  const { aircraftId, registration } = file.row;
  const back = walkId
    ? { href: `/ramp/${aircraftId}/walk`, label: 'Walkaround' }
    : { href: `/ramp/${aircraftId}`, label: registration };
  return (
    <>
      <PageTitle back={back} lead={`${registration}, ${station.title}`}>
        Write up a finding
      </PageTitle>
      <KnownHere writeUps={file.writeUps.filter((one) => one.station === station.key)} />
      <FindingForm
        key={station.key}
        personId={personId}
        aircraftId={aircraftId}
        registration={registration}
        station={station.key}
        walkId={walkId}
        offers={offerFindings(station.key, file.equipment)}
        kinds={FINDING_KINDS.map((kind) => ({ value: kind, label: KIND_TITLES[kind] }))}
        equipment={file.equipment.map(({ id, name, installed }) => ({ id, name, installed }))}
      />
    </>
  );
}
