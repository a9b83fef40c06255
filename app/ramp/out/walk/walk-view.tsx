'use client';

import { useWords } from '#words';
import { useState } from 'react';
import { mayUse } from '@/lib/access/policy';
import { type PackAircraft, type RampPack } from '@/lib/walkarounds/pack';
import { Notice } from '../../../_ui/notice';
import { PageTitle } from '../../../_ui/page';
import { placesFor } from '../../../_ui/places';
import { beginWalk, useWalk } from '../../_phone/walks';
import { FlightCard } from '../meters/flight-card';
import { Go, goTo } from '../place';
import { BottomBar } from './bottom-bar';
import { useFinish } from './finish';
import { Finished } from './finished';
import { Known } from './known';
import { UnderWay } from './under-way';
import { pathAt } from './where';
import styles from './walk.module.css';

export interface WalkProps {
  readonly pack: RampPack;
  readonly aircraft: PackAircraft;
  readonly query: URLSearchParams;
}

/** The walkaround: what is known, then station by station, then the finish. Losing the page loses nothing. */
export function WalkView({ pack, aircraft, query }: WalkProps) {
  const t = useWords();
  const walk = useWalk(aircraft.id);
  const done = query.get('done');
  const { finish, isFinishing } = useFinish(aircraft);
  const hasFootNav = placesFor(pack.person.roles).length > 1;
  return (
    <div className={`${styles.walk} ${walk ? styles.beside : ''} ${hasFootNav ? styles.overNav : ''}`}>
      {walk ? (
        <UnderWay key={walk.id} {...{ pack, aircraft, walk, finish, isFinishing }} at={query.get('at')} />
      ) : done !== null ? (
        <Finished aircraft={aircraft} messageId={done} />
      ) : walk === null && !isFinishing ? (
        <Start pack={pack} aircraft={aircraft} />
      ) : (
        <p className={styles.loading}>{t('One moment…')}</p>
      )}
    </div>
  );
}

function Start({ pack, aircraft }: Omit<WalkProps, 'query'>) {
  const t = useWords();
  const [busy, setBusy] = useState(false);
  const list = pack.lists[aircraft.typeId];
  const mayStart = mayUse(pack.person.roles, 'walkaround.start');

  async function begin() {
    if (busy || !list) return;
    setBusy(true);
    await beginWalk(aircraft, list);
    await goTo(pathAt(aircraft.id, null), 'replace');
    window.scrollTo(0, 0);
  }

  return (
    <>
      <div>
        <Go href={`/ramp/${aircraft.id}`} className={styles.back}>
          <span aria-hidden="true">←</span> {aircraft.registration}
        </Go>
        <PageTitle lead={t('{typeName}. Read what is known, then start.', { typeName: aircraft.typeName })}>
          {t('Walkaround {registration}', { registration: aircraft.registration })}
        </PageTitle>
        <Known pack={pack} aircraft={aircraft} />
      </div>
      <FlightCard pack={pack} aircraft={aircraft} />
      {!list ? (
        <Notice tone="amber" title={t('No walkaround list was taken along for this type.')}>
          <p>{t('Open the ramp once with a connection.')}</p>
        </Notice>
      ) : mayStart ? (
        <BottomBar
          main={{ words: busy ? t('Starting…') : t('Start walkaround'), onPress: () => void begin() }}
        />
      ) : (
        <p>{t('Your role here does not include walkarounds. You can write up a finding all the same.')}</p>
      )}
    </>
  );
}
