'use client';

import { Say, useWords } from '#words';
import { type PackAircraft, type PackFlight, type RampPack } from '@/lib/walkarounds/pack';
import { OutcomeMark } from '../../../_ui/marks';
import { Moment } from '../../../_ui/moment';
import { Card } from '../../../_ui/page';
import { Tag } from '../../../_ui/tag';
import { useOutbox } from '../../_phone/outbox';
import shell from '../out.module.css';
import { PhoneLines } from '../phone-lines';
import { Go } from '../place';
import { isGone } from './is-gone';
import styles from './meters.module.css';
import { knownMeters, type KnownMeters } from './readings-here';

/**
 * The pilot's own released flight of this aircraft: its limits, and the next thing to do about the meters; above it those
 * whose release is gone and whose meters were read at departure. Nothing when there is none. The mark says how it was
 * released; it is a record of that moment.
 */
export function FlightCard({ pack, aircraft }: { pack: RampPack; aircraft: PackAircraft }) {
  const outbox = useOutbox();
  const own = aircraft.flights
    .filter(({ pilotId }) => pilotId === pack.person.id)
    .map((flight) => ({ ...flight, ...knownMeters(aircraft, flight, outbox) }));
  const standing = own.filter((one) => !isGone(one));
  // The one that is out, else the next to go, else the one just back.
  const next =
    standing.find((one) => one.departure && !one.back) ?? standing.find((one) => !one.back) ?? standing[0];
  return [...own.filter(isGone), ...(next ? [next] : [])].map((flight) => (
    <OneFlight key={flight.releaseId} {...{ pack, aircraft, flight }} />
  ));
}

function OneFlight(props: { pack: RampPack; aircraft: PackAircraft; flight: PackFlight & KnownMeters }) {
  const t = useWords();
  const { pack, aircraft, flight } = props;
  const { releaseId, departAt, outcome, limits, departure, back } = flight;
  const gone = isGone(flight);
  const lines = gone ? limits.filter(({ effect }) => effect === 'bars') : limits;
  const path = `/ramp/${aircraft.id}/meters?release=${releaseId}`;
  return (
    <Card edge={gone ? 'red' : 'blue'}>
      <section className={styles.part} aria-label={gone ? t('Your flight, release gone') : t('Your flight')}>
        <p>
          <b>{t('Your flight')}</b>, {gone ? t('was to depart') : t('departs')}{' '}
          <Moment at={departAt} zone={aircraft.zone} />
        </p>
        {gone ? (
          <p>
            <Tag tone="red" shape="cross" size="small">
              {flight.state === 'withdrawn' ? t('Withdrawn') : t('VOID')}
            </Tag>{' '}
            <b>{t('Do not depart on this release.')}</b>
          </p>
        ) : (
          <p>
            <Say
              text="Released as <outcomeMark/>"
              parts={{ outcomeMark: <OutcomeMark outcome={outcome} size="small" /> }}
            />
          </p>
        )}
        {lines.length > 0 && (
          <PhoneLines
            lines={lines}
            paragraphs={pack.paragraphs}
            label={gone ? t('Why not') : t('Limits on your flight')}
          />
        )}
        {back ? (
          <p>{t('The return is written down.')}</p>
        ) : (
          (!gone || departure) && (
            <Go href={`${path}&moment=${departure ? 'in' : 'out'}`} className={shell.press}>
              {departure ? t('Meters at return') : t('Meters at departure')}
            </Go>
          )
        )}
      </section>
    </Card>
  );
}
