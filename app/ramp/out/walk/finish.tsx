'use client';

import { English, useWords } from '#words';
import { useState, type RefObject } from 'react';
import { type PackAircraft } from '@/lib/walkarounds/pack';
import { Button, ButtonRow } from '../../../_ui/button';
import { Notice } from '../../../_ui/notice';
import { finishWalk, throwAwayWalk } from '../../_phone/walks';
import { type KeptWalk } from '../../_phone/shapes';
import { goTo } from '../place';
import { PlacardCheck } from './placard-check';
import { type WalkSoFar } from './so-far';
import { pathAt, pathDone } from './where';
import styles from './walk.module.css';

/** The press that ends the walk: everything is queued, and the screen says from then on how it fares. */
export function useFinish(aircraft: PackAircraft): { finish: () => Promise<void>; isFinishing: boolean } {
  const [isFinishing, setFinishing] = useState(false);
  async function finish() {
    if (isFinishing) return;
    setFinishing(true);
    try {
      await goTo(pathDone(aircraft.id, await finishWalk(aircraft.id)), 'replace');
      window.scrollTo(0, 0);
    } finally {
      setFinishing(false);
    }
  }
  return { finish, isFinishing };
}

/** Before the end: what nobody looked at, which placards nobody checked, what will be written up by itself. */
export function Finish(props: {
  aircraft: PackAircraft;
  walk: KeptWalk;
  soFar: WalkSoFar;
  heading: RefObject<HTMLHeadingElement | null>;
  onGo: (at: string) => void;
}) {
  const t = useWords();
  const { aircraft, walk, soFar, heading, onGo } = props;
  const open = soFar.stations.filter((station) => station.open.length > 0);
  const items = open.reduce((sum, station) => sum + station.open.length, 0);
  const unchecked = soFar.placards.filter(({ id }) => walk.placards[id] === undefined);
  return (
    <>
      <h2 ref={heading} tabIndex={-1}>
        {t('Finish')}
      </h2>
      {items === 0 && unchecked.length === 0 && <p>{t('Everything on the list was looked at.')}</p>}
      {soFar.toRaise.length > 0 && (
        <section className={styles.sheet}>
          <h3>{t('Will be written up by itself')}</h3>
          <ul className={styles.plain}>
            {soFar.toRaise.map(({ itemKey, station, line }) => (
              <li key={itemKey} className={styles.raised}>
                <span>
                  <English>{line.because}</English>
                </span>
                <button type="button" className={styles.quiet} onClick={() => onGo(station)}>
                  {t('Look at it')}
                </button>
              </li>
            ))}
          </ul>
        </section>
      )}
      {unchecked.length > 0 && (
        <section className={styles.sheet}>
          <h3>
            {t('{unchecked, plural, one {# placard} other {# placards}} not checked', {
              unchecked: unchecked.length,
            })}
          </h3>
          {unchecked.map((placard) => (
            <PlacardCheck key={placard.id} {...{ aircraft, walk, placard }} />
          ))}
        </section>
      )}
      {open.length > 0 && (
        <section className={styles.sheet}>
          <h3>
            {t(
              '{items, plural, one {# item} other {# items}} not looked at, at {open, plural, one {# station} other {# stations}}',
              { items, open: open.length },
            )}
          </h3>
          <p>{t('They are recorded as not looked at, never as good.')}</p>
          <ul className={styles.openList}>
            {open.map(({ station, order, open: left, items: all }) => (
              <li key={station.area}>
                <button type="button" className={styles.openStation} onClick={() => onGo(station.area)}>
                  <b>
                    {order}. {t(station.title)}
                  </b>
                  <span className={styles.soft}>
                    {left.length === all.length
                      ? t('nothing looked at')
                      : left
                          .map(({ item }) =>
                            item.kind === 'sample'
                              ? t('drain {drain}', { drain: item.drain })
                              : t(item.title),
                          )
                          .join('; ')}
                  </span>
                </button>
              </li>
            ))}
          </ul>
        </section>
      )}
      <ThrowAway aircraftId={aircraft.id} hasFindings={walk.findings.length > 0} />
    </>
  );
}

function ThrowAway({ aircraftId, hasFindings }: { aircraftId: string; hasFindings: boolean }) {
  const t = useWords();
  const [asks, setAsks] = useState(false);
  if (!asks) {
    return (
      <Button weight="quiet" onClick={() => setAsks(true)}>
        {t('Throw this walkaround away')}
      </Button>
    );
  }
  return (
    <Notice tone="amber" title={t('Throw this walkaround away?')}>
      <p>
        {t('Its answers are lost.')}
        {hasFindings && t(' Write-ups stay.')}
      </p>
      <ButtonRow>
        <Button
          onClick={() => {
            void throwAwayWalk(aircraftId);
            void goTo(pathAt(aircraftId, null), 'replace');
          }}
        >
          {t('Throw it away')}
        </Button>
        <Button weight="quiet" onClick={() => setAsks(false)}>
          {t('Keep it')}
        </Button>
      </ButtonRow>
    </Notice>
  );
}
