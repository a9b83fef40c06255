'use client';

import { Say, useWords } from '#words';
import { type ReactNode } from 'react';
import { type PackAircraft, type PackFlight, type RampPack } from '@/lib/walkarounds/pack';
import { Moment } from '../../../_ui/moment';
import { KeptAnswerInFull } from '../kept-answer';
import { isGone } from '../meters/is-gone';
import { PhoneLines } from '../phone-lines';
import { PhoneWriteUps } from '../phone-write-ups';
import { useNow } from '../use-now';
import { SAMPLE_WORDS } from '@/lib/rules/walkaround/fuel-samples';
import styles from './walk.module.css';

/** What is known before the walk: limits, write-ups, placards that must be there, what the last samples showed. */
export function Known({ pack, aircraft }: { pack: RampPack; aircraft: PackAircraft }) {
  const t = useWords();
  const now = useNow();
  const { writeUps, closed, flights, zone, lastSamples } = aircraft;
  const open = writeUps.filter(({ state }) => state === 'open');
  const deferred = writeUps.filter(({ state }) => state === 'deferred');
  const placards = writeUps.flatMap((writeUp) => writeUp.placards);
  const mine = flights.filter(({ pilotId }) => pilotId === pack.person.id);
  const unclean = Object.entries(lastSamples?.drains ?? {});
  return (
    <div className={styles.known}>
      <section className={styles.sheet} aria-label={t('The answer')}>
        <KeptAnswerInFull aircraft={aircraft} pack={pack} now={now} />
      </section>
      {(mine.length > 0 ? mine : flights).slice(0, 2).map((flight) => (
        <FlightLimits key={flight.releaseId} flight={flight} zone={zone} pack={pack} />
      ))}
      <Part title={t('Open')} count={open.length} none={t('Nothing is open.')}>
        <PhoneWriteUps writeUps={open} zone={zone} label={t('Open write-ups')} showPlace />
      </Part>
      <Part title={t('Deferred')} count={deferred.length} none={t('Nothing is deferred.')}>
        <PhoneWriteUps writeUps={deferred} zone={zone} label={t('Deferred write-ups')} showPlace />
      </Part>
      {placards.length > 0 && (
        <Part title={t('Placards')} count={placards.length} none="">
          <ul className={styles.plain}>
            {placards.map(({ id, wording, location, placed }) => (
              <li key={id}>
                <b className={styles.wording}>{wording}</b> {location}.{' '}
                {placed ? t('Must be there; you are asked at its place.') : t('Owed: no go until it is up.')}
              </li>
            ))}
          </ul>
        </Part>
      )}
      {unclean.length > 0 && lastSamples && (
        <Part title={t('Drains not clean on the last walkaround')} count={unclean.length} none="">
          <p className={styles.soft}>
            {lastSamples.by}, <Moment at={lastSamples.at} zone={zone} />
          </p>
          <ul className={styles.plain}>
            {unclean.map(([drain, results]) => (
              <li key={drain}>
                <b>{drain}</b>: {results.map((result) => t(SAMPLE_WORDS[result])).join(t(', then '))}
              </li>
            ))}
          </ul>
        </Part>
      )}
      {closed.length > 0 && (
        <details className={styles.fold}>
          <summary>{t('Closed in the last 30 days ({closed})', { closed: closed.length })}</summary>
          <PhoneWriteUps writeUps={closed} zone={zone} label={t('Closed in the last 30 days')} showPlace />
        </details>
      )}
    </div>
  );
}

function Part(props: { title: string; count: number; none: string; children: ReactNode }) {
  const { title, count, none, children } = props;
  return (
    <section className={styles.sheet}>
      <h2>
        {title}
        {count > 0 && ` (${count})`}
      </h2>
      {count === 0 ? <p className={styles.soft}>{none}</p> : children}
    </section>
  );
}

function FlightLimits({ flight, zone, pack }: { flight: PackFlight; zone: string; pack: RampPack }) {
  const t = useWords();
  return (
    <section className={styles.sheet}>
      <h2>
        <Say text="Flight of <moment/>" parts={{ moment: <Moment at={flight.departAt} zone={zone} /> }} />
      </h2>
      {isGone(flight) ? (
        <p>
          <b>{t('Do not depart on this release: it no longer holds.')}</b>
        </p>
      ) : (
        <p className={styles.soft}>
          {flight.pilotName === null
            ? t('Released')
            : t('Released for {pilotName}', { pilotName: flight.pilotName })}
          {flight.limits.length === 0
            ? t(', without a limit, as things stood then.')
            : t(', with these limits and warnings:')}
        </p>
      )}
      {flight.limits.length > 0 && <PhoneLines lines={flight.limits} paragraphs={pack.paragraphs} />}
    </section>
  );
}
