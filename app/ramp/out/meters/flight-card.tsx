'use client';

import { type PackAircraft, type RampPack } from '@/lib/walkarounds/pack';
import { OutcomeMark } from '../../../_ui/marks';
import { Moment } from '../../../_ui/moment';
import { Card } from '../../../_ui/page';
import { useOutbox } from '../../_phone/outbox';
import shell from '../out.module.css';
import { PhoneLines } from '../phone-lines';
import { Go } from '../place';
import styles from './meters.module.css';
import { knownMeters } from './readings-here';

/**
 * The pilot's own released flight of this aircraft: its limits, and the next thing to do about the meters. Nothing when
 * there is none. The mark says how it was released; it is a record of that moment.
 */
export function FlightCard({ pack, aircraft }: { pack: RampPack; aircraft: PackAircraft }) {
  const outbox = useOutbox();
  const own = aircraft.flights
    .filter(({ pilotId }) => pilotId === pack.person.id)
    .map((flight) => ({ ...flight, ...knownMeters(aircraft, flight, outbox) }));
  // The one that is out, else the next to go, else the one just back.
  const flight = own.find((one) => one.departure && !one.back) ?? own.find((one) => !one.back) ?? own[0];
  if (!flight) return null;
  const { releaseId, departAt, outcome, limits, departure, back } = flight;
  const path = `/ramp/${aircraft.id}/meters?release=${releaseId}`;
  return (
    <Card edge="blue">
      <section className={styles.part} aria-label="Your flight">
        <p>
          <b>Your flight</b>, departs <Moment at={departAt} zone={aircraft.zone} />
        </p>
        <p>
          Released as <OutcomeMark outcome={outcome} size="small" />
        </p>
        {limits.length > 0 && (
          <PhoneLines lines={limits} paragraphs={pack.paragraphs} label="Limits on your flight" />
        )}
        {back ? (
          <p>The return is written down.</p>
        ) : (
          <Go href={`${path}&moment=${departure ? 'in' : 'out'}`} className={shell.press}>
            {departure ? 'Meters at return' : 'Meters at departure'}
          </Go>
        )}
      </section>
    </Card>
  );
}
