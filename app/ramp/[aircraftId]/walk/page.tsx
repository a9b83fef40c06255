import { type Metadata } from 'next';
import { readAircraftFile } from '@/lib/fleet/read-aircraft-file';
import { WALKAROUND_STATIONS } from '@/lib/rules/findings/stations';
import { requireActor } from '../../../_session/actor-ref';
import { PageTitle } from '../../../_ui/page';
import { Shell } from '../../../_ui/shell';
import { KnownHere } from '../../_parts/known-here';
import { PlainProblem } from '../../_parts/plain-problem';
import styles from '../../_parts/ramp.module.css';
import { Walkaround } from './walkaround';

export const metadata: Metadata = { title: 'Walkaround' };
export const dynamic = 'force-dynamic';

interface Props {
  params: Promise<{ aircraftId: string }>;
}

/** The walkaround, station by station, with what is known at each. */
export default async function WalkPage({ params }: Props) {
  const { aircraftId } = await params;
  const { ref, who } = await requireActor(`/ramp/${aircraftId}/walk`);
  const read = await readAircraftFile(ref, { aircraftId });
  if (!read.ok) return <PlainProblem who={who} problem={read.problem} />;
  const { row, writeUps } = read.value;
  const known = new Set<string>(WALKAROUND_STATIONS.map((station) => station.key));
  const elsewhere = writeUps.filter((one) => !known.has(one.station));
  return (
    <Shell who={who}>
      <div className={styles.column}>
        <PageTitle back={{ href: `/ramp/${aircraftId}`, label: row.registration }} lead={row.registration}>
          Walkaround
        </PageTitle>
        <KnownHere writeUps={elsewhere} />
        <Walkaround
          personId={ref.personId}
          aircraftId={aircraftId}
          zone={row.zone}
          stations={WALKAROUND_STATIONS.map(({ key, title, lookFor }) => {
            const here = writeUps.filter((one) => one.station === key);
            return {
              key,
              title,
              lookFor,
              writtenUp: here.length,
              known: <KnownHere writeUps={here} />,
            };
          })}
        />
      </div>
    </Shell>
  );
}
