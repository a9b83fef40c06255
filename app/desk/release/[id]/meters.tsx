'use client';

import { Say, useWords } from '#words';
import { type Translate } from '@/lib/words/translate';
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
  const t = useWords();
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
      say: moment === 'out' ? t('The departure is written down.') : t('The return is written down.'),
      notes: notes.map(({ because }) => because),
    });
  const onCorrected = ({ moment, isBackToo, notes }: ReadingCorrected) =>
    tell({
      say: isBackToo
        ? t('The departure and the return are corrected.')
        : t('The {which} is corrected.', { which: moment === 'out' ? t('departure') : t('return') }),
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
              { name: t('Departure'), value: <Read reading={out} zone={zone} /> },
              { name: t('Return'), value: <Read reading={back} zone={zone} /> },
              ...(flown
                ? [
                    {
                      name: t('Flown'),
                      value: t('Hobbs {ran}, Tach {ran2}', {
                        ran: ran(t, flown.hobbsTenths),
                        ran2: ran(t, flown.tachTenths),
                      }),
                    },
                  ]
                : []),
              { name: t('Total time in service now'), value: <HoursText tenths={ttisTenths} /> },
            ]}
          />
        )}
        {correct('out', out)}
        {correct('in', back)}
        {!mayWrite && !back && (
          <p className={styles.soft}>
            {t('The meters are written down by the pilot in command or at the desk.')}
          </p>
        )}
        {mayWrite && !out && !back && <MetersForm key="out" {...form} moment="out" />}
        {mayWrite && out && !back && <MetersForm key="in" {...form} moment="in" />}
        {mayWrite && !out && !back && (
          <details className={styles.kept}>
            <summary>{t('It is back, and nobody read the departure')}</summary>
            <MetersForm key="in" {...form} moment="in" />
          </details>
        )}
      </div>
    </Card>
  );
}

function Read({ reading, zone }: { reading: FlightReading | null; zone: string }) {
  const t = useWords();
  if (!reading) return t('Not read');
  return (
    <>
      <Say
        text="Hobbs {tenths}, Tach {tenths2}<br/><span>{by}, <moment/></span>"
        parts={{
          br: <br />,
          span: <span className={styles.who} />,
          moment: <Moment at={reading.at} zone={zone} />,
        }}
        values={{
          tenths: formatTenths(reading.hobbsTenths),
          tenths2: formatTenths(reading.tachTenths),
          by: reading.by,
        }}
      />
      {reading.superseded.map((one) => (
        <span key={one.id} className={styles.before}>
          <Say
            text="{by} wrote Hobbs {tenths}, Tach {tenths2}: superseded by {supersededBy}, <moment/>, because: {because}"
            parts={{ moment: <Moment at={one.supersededAt} zone={zone} /> }}
            values={{
              by: one.by,
              tenths: formatTenths(one.hobbsTenths),
              tenths2: formatTenths(one.tachTenths),
              supersededBy: one.supersededBy,
              because: one.because,
            }}
          />
        </span>
      ))}
    </>
  );
}

const ran = (t: Translate, tenths: number | null): string =>
  tenths === null ? t('not known') : t('{tenths} h', { tenths: formatTenths(tenths) });
