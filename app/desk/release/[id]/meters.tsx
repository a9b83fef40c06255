'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { HoursText, Moment } from '@/app/_ui/moment';
import { Card, FactList } from '@/app/_ui/page';
import { type FlightMeters, type FlightReading } from '@/lib/releases/readings';
import { type ReadingTaken } from '@/lib/releases/record-meters';
import { formatTenths } from '@/lib/rules/hours';
import { type LastOnRecord } from '@/lib/rules/meters';
import styles from '../release.module.css';
import { MetersForm } from './meters-form';

interface MetersProps {
  readonly releaseId: string;
  readonly meters: FlightMeters;
  readonly last: LastOnRecord;
  readonly ttisTenths: number | null;
  readonly zone: string;
  /** Dispatchers, managers, and the flight's own pilot in command. */
  readonly mayWrite: boolean;
}

/** The meters of a released flight: what was read, and the form for what comes next. */
export function Meters({ releaseId, meters, last, ttisTenths, zone, mayWrite }: MetersProps) {
  const router = useRouter();
  const [taken, setTaken] = useState<ReadingTaken | null>(null);
  const { out, back, flown } = meters;
  const onDone = (reading: ReadingTaken) => {
    setTaken(reading);
    router.refresh();
  };
  const form = { releaseId, last, zone, onDone };
  return (
    <Card>
      <div className={styles.part}>
        <p role="status">
          {taken &&
            (taken.moment === 'out' ? 'The departure is written down.' : 'The return is written down.')}
        </p>
        {taken && taken.notes.length > 0 && (
          <ul className={styles.plain}>
            {taken.notes.map(({ because }) => (
              <li key={because}>{because}</li>
            ))}
          </ul>
        )}
        {(out ?? back) && (
          <FactList
            facts={[
              { name: 'Departure', value: <Read reading={out} zone={zone} /> },
              { name: 'Return', value: <Read reading={back} zone={zone} /> },
              ...(flown
                ? [{ name: 'Flown', value: `Hobbs ${ran(flown.hobbsTenths)}, Tach ${ran(flown.tachTenths)}` }]
                : []),
              { name: 'Total time in service now', value: <HoursText tenths={ttisTenths} /> },
            ]}
          />
        )}
        {!mayWrite && !back && (
          <p className={styles.soft}>The meters are written down by the pilot in command or at the desk.</p>
        )}
        {mayWrite && !out && !back && <MetersForm key="out" {...form} moment="out" />}
        {mayWrite && out && !back && <MetersForm key="in" {...form} moment="in" />}
        {mayWrite && !out && !back && (
          <details className={styles.kept}>
            <summary>It is back, and nobody read the departure</summary>
            <MetersForm key="in" {...form} moment="in" />
          </details>
        )}
      </div>
    </Card>
  );
}

function Read({ reading, zone }: { reading: FlightReading | null; zone: string }) {
  if (!reading) return 'Not read';
  return (
    <>
      Hobbs {formatTenths(reading.hobbsTenths)}, Tach {formatTenths(reading.tachTenths)}
      <br />
      <span className={styles.who}>
        {reading.by}, <Moment at={reading.at} zone={zone} />
      </span>
    </>
  );
}

const ran = (tenths: number | null): string => (tenths === null ? 'not known' : `${formatTenths(tenths)} h`);
