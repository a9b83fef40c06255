'use client';

import { useWords } from '#words';
import { said } from '@/lib/words/said';
import { lazy, Suspense, useEffect, useRef, useState } from 'react';
import { type PackAircraft, type RampPack } from '@/lib/walkarounds/pack';
import { BareShell } from '../../_ui/bare-shell';
import { Shell } from '../../_ui/shell';
import { refreshPack, usePack } from '../_phone/pack';
import { AircraftView } from './aircraft-view';
import { FleetView } from './fleet-view';
import styles from './out.module.css';
import { SHELL_MARK, usePlace } from './place';
import { NeedsConnection, NotThere, NothingKept, SignInFirst } from './plain-screens';
import { SentView } from './sent-view';
import { WalkView } from './walk/walk-view';
import { whichView, type View } from './which-view';

// Loaded when they are opened, so that the walk's first load stays small; the service worker has them all the same.
const FindingView = lazy(() =>
  import('./finding/finding-view').then((part) => ({ default: part.FindingView })),
);
const MetersView = lazy(() => import('./meters/meters-view').then((part) => ({ default: part.MetersView })));

type Refreshed = Awaited<ReturnType<typeof refreshPack>>;

/**
 * The ramp as it runs on the phone: reads the address, and draws from what the phone keeps. The same with a network and
 * without.
 */
export function Out() {
  const t = useWords();
  const place = usePlace();
  const kept = usePack();
  const path = place?.pathname ?? null;
  const [refreshed, setRefreshed] = useState<Refreshed | null>(null);

  // The layout has asked for a new pack; here it matters how that went only while there is nothing to show.
  const isEmpty = kept === null;
  useEffect(() => {
    if (isEmpty) void refreshPack().then(setRefreshed);
  }, [isEmpty]);
  useEffect(() => {
    if (path !== null) void refreshPack();
  }, [path]);

  useFocusOnNewScreen(path);

  return (
    <div id={SHELL_MARK}>
      {place === null || kept === undefined || (kept === null && (refreshed ?? 'fresh') === 'fresh') ? (
        <BareShell>
          <p className={styles.loading}>{t('One moment…')}</p>
        </BareShell>
      ) : kept === null ? (
        <BareShell>
          {refreshed === 'signed-out' ? (
            <SignInFirst next={place.pathname + place.search} />
          ) : (
            <NothingKept onTry={() => void refreshPack().then(setRefreshed)} />
          )}
        </BareShell>
      ) : (
        <Shell who={kept.pack.person}>
          <Screen pack={kept.pack} view={whichView(place.pathname)} query={place.searchParams} />
        </Shell>
      )}
    </div>
  );
}

function Screen({ pack, view, query }: { pack: RampPack; view: View; query: URLSearchParams }) {
  if (view.kind === 'fleet') return <FleetView pack={pack} />;
  if (view.kind === 'sent') return <SentView pack={pack} />;
  if (view.kind === 'elsewhere') return <NeedsConnection />;
  const aircraft = pack.aircraft.find((one) => one.id === view.aircraftId);
  if (!aircraft) return <NotThere asOf={pack.asOf} />;
  return <OfAircraft kind={view.kind} pack={pack} aircraft={aircraft} query={query} />;
}

interface OfAircraftProps {
  readonly kind: 'aircraft' | 'walk' | 'finding' | 'meters';
  readonly pack: RampPack;
  readonly aircraft: PackAircraft;
  readonly query: URLSearchParams;
}

const TITLES = {
  aircraft: said('Aircraft'),
  walk: said('Walkaround'),
  finding: said('Finding'),
  meters: said('Meters'),
} as const;

function OfAircraft({ kind, pack, aircraft, query }: OfAircraftProps) {
  const t = useWords();
  useEffect(() => {
    document.title = t('{registration} {titles} · Wheelchock', {
      registration: aircraft.registration,
      titles: t(TITLES[kind]),
    });
  }, [aircraft.registration, kind, t]);
  // The key: another aircraft is another screen, nothing typed for one may reach the other.
  if (kind === 'aircraft') return <AircraftView key={aircraft.id} pack={pack} aircraft={aircraft} />;
  if (kind === 'walk') return <WalkView key={aircraft.id} pack={pack} aircraft={aircraft} query={query} />;
  return (
    <Suspense fallback={<p className={styles.loading}>{t('One moment…')}</p>}>
      {kind === 'finding' ? (
        <FindingView key={aircraft.id} pack={pack} aircraft={aircraft} query={query} />
      ) : (
        <MetersView key={aircraft.id} pack={pack} aircraft={aircraft} query={query} />
      )}
    </Suspense>
  );
}

/** Within the shell no page is loaded, so the browser moves neither the focus nor the page to the top. */
function useFocusOnNewScreen(path: string | null) {
  const before = useRef<string | null>(null);
  useEffect(() => {
    if (path !== null && before.current !== null && before.current !== path) {
      window.scrollTo(0, 0);
      document.getElementById('content')?.focus({ preventScroll: true });
    }
    before.current = path;
  }, [path]);
}
