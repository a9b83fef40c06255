'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { HoursText, Moment } from '@/app/_ui/moment';
import { Card, FactList } from '@/app/_ui/page';
import { type ReadingCorrected } from '@/lib/releases/correct-meters';
import { type FlightMeters, type FlightReading } from '@/lib/releases/readings';
import { type ReadingTaken } from '@/lib/releases/record-meters';
import { formatTenths } from '@/lib/rules/hours';
import { type LastOnRecord, type ReadingMoment } from '@/lib/rules/meters';
import styles from '../release.module.css';
import { Correct } from './correct';
import { MetersForm } from './meters-form';

/** What is said after something was written. */
interface Told {
  readonly say: string;
  readonly notes: readonly string[];
}

interface MetersProps {
  readonly releaseId: string;
  readonly meters: FlightMeters;
  readonly last: LastOnRecord;
  readonly ttisTenths: number | null;
  readonly zone: string;
  /** Dispatchers, managers, and the flight's own pilot in command. */
  readonly mayWrite: boolean;
  /** Dispatchers and managers. */
  readonly mayCorrect: boolean;
}

/** The meters of a released flight: what was read, and the form for what comes next. */
export function Meters(props: MetersProps) {
  const { releaseId, meters, last, ttisTenths, zone, mayWrite, mayCorrect } = props;
  const router = useRouter();
  const [told, setTold] = useState<Told | null>(null);
  const { out, back, flown } = meters;
  const tell = (told: Told) => {
    setTold(told);
    router.refresh();
  };
  const onDone = ({ moment, notes }: ReadingTaken) =>
    tell({
      say: moment === 'out' ? 'The departure is written down.' : 'The return is written down.',
      notes: notes.map(({ because }) => because),
    });
  const onCorrected = ({ moment, isBackToo, notes }: ReadingCorrected) =>
    tell({
      say: isBackToo
        ? 'The departure and the return are corrected.'
        : `The ${moment === 'out' ? 'departure' : 'return'} is corrected.`,
      notes,
    });
  const form = { releaseId, last, zone, onDone };
  const correct = (moment: ReadingMoment, reading: FlightReading | null) =>
    mayCorrect && reading && <Correct key={reading.id} {...{ moment, reading, back, onDone: onCorrected }} />;
  return (
    <Card>
      <div className={styles.part}>
        <p role="status">{told?.say}</p>
        {told && told.notes.length > 0 && (
          <ul className={styles.plain}>
            {told.notes.map((note) => (
              <li key={note}>{note}</li>
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
        {correct('out', out)}
        {correct('in', back)}
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
      {reading.superseded.map((one) => (
        <span key={one.id} className={styles.before}>
          {one.by} wrote Hobbs {formatTenths(one.hobbsTenths)}, Tach {formatTenths(one.tachTenths)}:
          superseded by {one.supersededBy}, <Moment at={one.supersededAt} zone={zone} />, because:{' '}
          {one.because}
        </span>
      ))}
    </>
  );
}

const ran = (tenths: number | null): string => (tenths === null ? 'not known' : `${formatTenths(tenths)} h`);
