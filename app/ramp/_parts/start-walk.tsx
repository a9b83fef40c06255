'use client';

import { Say, useWords } from '#words';
import { useState } from 'react';
import { Button } from '../../_ui/button';
import { Moment } from '../../_ui/moment';
import { Notice } from '../../_ui/notice';
import { readPack, refreshPack } from '../_phone/pack';
import { beginWalk, useWalk } from '../_phone/walks';
import { goTo } from '../out/place';
import styles from './ramp.module.css';

/**
 * Begins a walkaround, or goes on with the one this phone has begun. It begins on the phone, by the list it took along; the
 * server is told with the first thing that gets through.
 */
export function StartWalk({ aircraftId, zone }: { aircraftId: string; zone: string }) {
  const t = useWords();
  const walk = useWalk(aircraftId);
  const [busy, setBusy] = useState(false);
  const [isWithout, setWithout] = useState(false);
  const path = `/ramp/${aircraftId}/walk`;

  async function begin() {
    if (busy) return;
    setBusy(true);
    setWithout(false);
    const pack = await packOrNone();
    const aircraft = pack?.aircraft.find(({ id }) => id === aircraftId);
    const list = aircraft && pack?.lists[aircraft.typeId];
    if (!aircraft || !list) {
      setWithout(true);
      setBusy(false);
      return;
    }
    await beginWalk(aircraft, list);
    // A full load: the walk is a page the phone keeps.
    void goTo(path);
  }

  if (walk && !busy) {
    const answered = Object.keys(walk.items).length;
    return (
      <div className={styles.answer}>
        <Button weight="main" wide onClick={() => void goTo(path)}>
          {t('Go on with the walkaround')}
        </Button>
        <p className={styles.soft}>
          <Say
            text="Begun <moment/>, {answered} {which} answered."
            parts={{ moment: <Moment at={walk.startedAt} zone={zone} /> }}
            values={{ answered, which: answered === 1 ? t('item') : t('items') }}
          />
        </p>
      </div>
    );
  }
  return (
    <div className={styles.answer}>
      <Button
        weight="main"
        wide
        onClick={() => void begin()}
        aria-disabled={busy || walk === undefined || undefined}
      >
        {busy ? t('Starting…') : t('Start walkaround')}
      </Button>
      {isWithout && (
        <Notice tone="amber" title={t('This phone has not taken this aircraft along yet.')}>
          <p>{t('Load this page again with a connection, then start.')}</p>
        </Notice>
      )}
    </div>
  );
}

/** A newer pack is waited for that long before the walk begins by the one at hand. */
const PATIENCE_MS = 3_000;

/** What this phone took along, made fresh where that goes quickly; fetched now when there is nothing yet. */
async function packOrNone() {
  const refreshing = refreshPack();
  if (await readPack()) {
    await Promise.race([refreshing, new Promise((resolve) => setTimeout(resolve, PATIENCE_MS))]);
  } else await refreshing;
  return (await readPack())?.pack ?? null;
}
