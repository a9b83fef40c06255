'use client';

import { type Translate } from '@/lib/words/translate';
import { Say, useWords } from '#words';
import { type RefObject } from 'react';
import { SAMPLE_WORDS } from '@/lib/rules/walkaround/fuel-samples';
import { type PackAircraft, type RampPack } from '@/lib/walkarounds/pack';
import { SeverityMark } from '../../../_ui/marks';
import { StateMark } from '../../_parts/write-up-card';
import { type KeptWalk } from '../../_phone/shapes';
import { findingPath } from '../finding-path';
import { Go } from '../place';
import { Drain } from './drain';
import { LookAt } from './look-at';
import { Measure } from './measure';
import { PlacardCheck } from './placard-check';
import { stationFor, type PlacardToCheck, type StationSoFar } from './so-far';
import styles from './walk.module.css';

interface StationProps {
  readonly pack: RampPack;
  readonly aircraft: PackAircraft;
  readonly walk: KeptWalk;
  readonly station: StationSoFar;
  readonly placards: readonly PlacardToCheck[];
  readonly heading: RefObject<HTMLHeadingElement | null>;
}

/** One station: what is known here, its placards, then what to look at, to measure, to drain. */
export function Station({ pack, aircraft, walk, station, placards, heading }: StationProps) {
  const t = useWords();
  const { area } = station.station;
  const title = t(station.station.title);
  const total = walk.list.list.stations.length;
  const here = aircraft.writeUps.filter((one) => stationFor(walk.list.list, one.station) === area);
  const drains = station.items.filter(({ item }) => item.kind === 'sample');
  const others = station.items.filter(({ item }) => item.kind !== 'sample');
  const item = { pack, aircraft, walk, area };
  return (
    <>
      <h2 ref={heading} tabIndex={-1} className={styles.stationHead}>
        <span className={styles.number}>{station.order}</span> {title}
        <span className="out-of-sight">
          {t(', station {order} of {total}', { order: station.order, total })}
        </span>
      </h2>
      {here.length > 0 && (
        <section className={styles.here} aria-label={t('Written up here already')}>
          <ul className={styles.plain}>
            {here.map((writeUp) => (
              <li key={writeUp.id}>
                <span className={styles.hereTitle}>
                  {writeUp.number} {writeUp.title}
                  {writeUp.place && <span className={styles.soft}> {writeUp.place}</span>}
                </span>{' '}
                <span className={styles.marks}>
                  <SeverityMark severity={writeUp.severity} size="small" />
                  <StateMark writeUp={writeUp} />
                </span>
                {writeUp.placards
                  .filter(({ placed }) => !placed)
                  .map(({ id, wording, location }) => (
                    <p key={id}>
                      <Say
                        text="Placard owed, no go until it is up: <b>{wording}</b> {location}"
                        parts={{ b: <b className={styles.wording} /> }}
                        values={{ wording, location }}
                      />
                    </p>
                  ))}
              </li>
            ))}
          </ul>
          <p className={styles.soft}>{t('Good here means: nothing beyond this.')}</p>
        </section>
      )}
      {placards.map((placard) => (
        <PlacardCheck key={placard.id} {...{ aircraft, walk, placard }} />
      ))}
      <ul className={styles.items} aria-label={t('To look at here')}>
        {others.map((one) => (
          <li key={one.item.key} className={styles.item}>
            {one.item.kind === 'number' ? (
              <Measure {...item} item={one.item} soFar={one} />
            ) : (
              <LookAt {...item} soFar={one} />
            )}
          </li>
        ))}
        {drains.map((one, index) =>
          one.item.kind === 'sample' ? (
            <li key={one.item.key} className={styles.item}>
              <Drain
                {...item}
                item={one.item}
                soFar={one}
                last={lastOf(t, aircraft, one.item.drain)}
                showsLookFor={one.item.lookFor !== drains[index - 1]?.item.lookFor}
              />
            </li>
          ) : null,
        )}
      </ul>
      <Go
        href={findingPath(aircraft.id, { station: area, walk: walk.id })}
        className={`${styles.press} ${styles.amberPress}`}
      >
        {t('Something else found here')}
      </Go>
    </>
  );
}

/** What the drain showed on the last walkaround, when it was not clean at once. */
function lastOf(t: Translate, { lastSamples }: PackAircraft, drain: string): string | null {
  const results = lastSamples?.drains[drain];
  return results && results.length > 0
    ? results.map((result) => t(SAMPLE_WORDS[result])).join(t(', then '))
    : null;
}
