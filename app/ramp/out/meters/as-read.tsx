'use client';

import { Say, useWords } from '#words';
import { formatTenths } from '@/lib/rules/hours';
import { type MeterReading, type ReadingMoment } from '@/lib/rules/meters';
import { type PackAircraft, type PackFlight } from '@/lib/walkarounds/pack';
import { Moment } from '../../../_ui/moment';
import { Card } from '../../../_ui/page';
import shell from '../out.module.css';
import { Go } from '../place';
import styles from './meters.module.css';

/** A reading that stands already: its figures, and what comes next. It is not typed a second time. */
export function AsRead(props: {
  reading: MeterReading;
  aircraft: PackAircraft;
  flight: PackFlight;
  moment: ReadingMoment;
}) {
  const t = useWords();
  const { reading, aircraft, flight, moment } = props;
  return (
    <>
      <Card>
        <div className={styles.part}>
          <p className={styles.strong}>{t('Written down before')}</p>
          <Figures reading={reading} />
          <p className={shell.soft}>
            <Say
              text="Read <moment/>. A wrong figure is for the desk to put right."
              parts={{ moment: <Moment at={reading.at} zone={aircraft.zone} /> }}
            />
          </p>
        </div>
      </Card>
      <div className={shell.buttons}>
        {moment === 'out' && (
          <Go
            href={`/ramp/${aircraft.id}/meters?release=${flight.releaseId}&moment=in`}
            className={`${shell.press} ${shell.main}`}
          >
            {t('Meters at return')}
          </Go>
        )}
        <Go href={`/ramp/${aircraft.id}`} className={shell.press}>
          {t('Back to {registration}', { registration: aircraft.registration })}
        </Go>
      </div>
    </>
  );
}

/** Both meters, large. */
export function Figures({ reading }: { reading: Pick<MeterReading, 'hobbsTenths' | 'tachTenths'> }) {
  const t = useWords();
  return (
    <dl className={styles.figures}>
      <div>
        <dt>{t('Hobbs')}</dt>
        <dd>{formatTenths(reading.hobbsTenths)}</dd>
      </div>
      <div>
        <dt>{t('Tach')}</dt>
        <dd>{formatTenths(reading.tachTenths)}</dd>
      </div>
    </dl>
  );
}
