'use client';

import { useWords } from '#words';
import { useCallback, useEffect, useRef, useState, useSyncExternalStore } from 'react';
import { type PackAircraft, type RampPack } from '@/lib/walkarounds/pack';
import { type ItemAnswer } from '@/lib/rules/walkaround/answers';
import { afterPaint } from '../../_phone/after-paint';
import { changeItems } from '../../_phone/walks';
import { type KeptWalk } from '../../_phone/shapes';
import { AircraftDrawing } from '../drawing/aircraft-drawing';
import { goTo } from '../place';
import { BottomBar, type BarPress } from './bottom-bar';
import { Finish } from './finish';
import { Known } from './known';
import { nextOpen, walkSoFar, type StationSoFar, type WalkSoFar } from './so-far';
import { Station } from './station';
import { FINISH, KNOWN, pathAt, PLAN } from './where';
import styles from './walk.module.css';

interface UnderWayProps {
  readonly pack: RampPack;
  readonly aircraft: PackAircraft;
  readonly walk: KeptWalk;
  /** Station or screen named by the address. */
  readonly at: string | null;
  readonly finish: () => Promise<void>;
  readonly isFinishing: boolean;
}

/** A walkaround under way, one station at a time. */
export function UnderWay({ pack, aircraft, walk, at, finish, isFinishing }: UnderWayProps) {
  const t = useWords();
  const soFar = walkSoFar(walk.list.list, walk, aircraft.limits, aircraft.writeUps);
  const isWide = useIsWide();
  const { stations, done } = soFar;
  const here = whereOne(at, stations, isWide);
  const station = stations.find(({ station: { area } }) => area === here) ?? null;
  const heading = useRef<HTMLHeadingElement>(null);
  const [said, setSaid] = useState('');

  // The address names the place, so that the way back from a finding leads to it.
  useEffect(() => {
    if (at !== here) void goTo(pathAt(aircraft.id, here), 'replace');
  }, [aircraft.id, at, here]);

  const go = useCallback(
    (to: string) => {
      void goTo(pathAt(aircraft.id, to), 'replace').then(() => {
        window.scrollTo(0, 0);
        // After the drawing, when the heading is the new place's.
        requestAnimationFrame(() => heading.current?.focus({ preventScroll: true }));
      });
    },
    [aircraft.id],
  );

  const drawing = (
    <AircraftDrawing
      aircraftId={aircraft.id}
      stations={walk.list.list.stations}
      writeUps={aircraft.writeUps}
      walk={{
        id: walk.id,
        looked: Object.fromEntries(stations.map(({ station: { area }, looked }) => [area, looked])),
        here: station?.station.area ?? null,
        onGo: go,
      }}
    />
  );

  return (
    <>
      <p role="status" className="out-of-sight">
        {said}
      </p>
      <div className={styles.strip}>
        <h1>
          <span className="out-of-sight">{t('Walkaround')} </span>
          {aircraft.registration}
        </h1>
        <div className={styles.progress}>
          <label htmlFor="progress">
            {t('{done} of {stations} looked at', { done, stations: stations.length })}
          </label>
          <progress id="progress" value={done} max={stations.length} />
        </div>
        <div className={styles.screens}>
          <ScreenPress words={t('Known')} isHere={here === KNOWN} onPress={() => go(KNOWN)} />
          {!isWide && <ScreenPress words={t('Plan')} isHere={here === PLAN} onPress={() => go(PLAN)} />}
          <ScreenPress words={t('Finish')} isHere={here === FINISH} onPress={() => go(FINISH)} />
        </div>
      </div>
      <div className={styles.sides}>
        <div className={styles.place}>
          {here === KNOWN && (
            <>
              <h2 ref={heading} tabIndex={-1}>
                {t('What is known')}
              </h2>
              <Known pack={pack} aircraft={aircraft} />
            </>
          )}
          {here === PLAN && (
            <>
              <h2 ref={heading} tabIndex={-1}>
                {t('The way round')}
              </h2>
              {drawing}
            </>
          )}
          {here === FINISH && (
            <Finish aircraft={aircraft} walk={walk} soFar={soFar} heading={heading} onGo={go} />
          )}
          {station && (
            <Station
              key={station.station.area}
              {...{ pack, aircraft, walk, heading, station }}
              placards={soFar.placards.filter(({ area }) => area === station.station.area)}
            />
          )}
          <Bar {...{ aircraft, soFar, here, station, go, setSaid, finish, isFinishing }} />
        </div>
        {isWide && (
          <aside className={styles.aside} aria-label={t('The way round')}>
            {drawing}
          </aside>
        )}
      </div>
    </>
  );
}

interface BarProps {
  readonly aircraft: PackAircraft;
  readonly soFar: WalkSoFar;
  readonly here: string;
  readonly station: StationSoFar | null;
  readonly go: (to: string) => void;
  readonly setSaid: (words: string) => void;
  readonly finish: () => Promise<void>;
  readonly isFinishing: boolean;
}

/** What the thumb can do: one press for all that looks good, then for the clean drains, then on. */
function Bar({ aircraft, soFar, here, station, go, setSaid, finish, isFinishing }: BarProps) {
  const t = useWords();
  const { stations } = soFar;
  if (here === FINISH) {
    const isOpen = stations.some(({ open }) => open.length > 0);
    const words = isOpen ? t('Finish all the same') : t('Finish the walkaround');
    return (
      <BottomBar
        subject={FINISH}
        main={{ words: isFinishing ? t('Finishing…') : words, onPress: () => void finish() }}
        back={{ words: t('Back'), label: t('Back to the stations'), onPress: () => go(lastOf(stations)) }}
      />
    );
  }
  if (!station) {
    const to = nextOpen(stations, -1);
    return (
      <BottomBar
        subject={here}
        main={
          to
            ? {
                words: t('On to {order}, {title}', { order: to.order, title: t(to.station.title) }),
                onPress: () => go(to.station.area),
              }
            : { words: t('On to the finish'), onPress: () => go(FINISH) }
        }
      />
    );
  }

  const index = station.order - 1;
  const before = stations[index - 1];
  const after = stations[index + 1];
  const next = after ?? null;
  const toNext = () => go(next ? next.station.area : FINISH);
  const looks = station.open.filter(({ item }) => item.kind === 'look');
  const drains = station.open.filter(({ item }) => item.kind === 'sample');
  const rest = station.open.length - looks.length;

  // Many items drawn anew take a while on a slow phone; the press itself is shown first.
  function answerAll(items: StationSoFar['open'], change: (answer: ItemAnswer) => ItemAnswer) {
    const keys = items.map(({ item }) => item.key);
    void afterPaint().then(() => changeItems(aircraft.id, keys, change));
  }

  function allGood() {
    answerAll(looks, (answer) => ({ ...answer, looked: 'good' }));
    setSaid(
      rest > 0
        ? t('{title}: good. Numbers or drains are still open.', { title: t(station?.station.title ?? '') })
        : `${t('{title}: good.', { title: t(station?.station.title ?? '') })} `,
    );
    if (rest === 0) toNext();
  }

  function allClean() {
    const at = new Date().toISOString();
    answerAll(drains, (answer) => ({ ...answer, samples: [...answer.samples, { result: 'clean', at }] }));
    setSaid(t('{title}: drains clean.', { title: t(station?.station.title ?? '') }));
    if (station?.open.length === drains.length) toNext();
  }

  const main: BarPress =
    looks.length > 0
      ? {
          words: looks.length === station.items.length || looks.length > 1 ? t('All good') : t('Good'),
          onPress: allGood,
        }
      : drains.length > 0
        ? { words: drains.length > 1 ? t('All drains here clean') : t('Drain clean'), onPress: allClean }
        : {
            words: next
              ? t('On to {order}, {title}', { order: next.order, title: t(next.station.title) })
              : t('On to the finish'),
            onPress: toNext,
          };
  return (
    <BottomBar
      subject={station.station.area}
      main={main}
      back={
        before
          ? {
              words: t('Back'),
              label: t('Back to {title}', { title: t(before.station.title) }),
              onPress: () => go(before.station.area),
            }
          : { words: t('Known'), label: t('Back to what is known'), onPress: () => go(KNOWN) }
      }
      on={{
        words: t('On'),
        label: next ? t('On to {title}', { title: t(next.station.title) }) : t('On to the finish'),
        onPress: toNext,
      }}
    />
  );
}

const lastOf = (stations: readonly StationSoFar[]): string => stations.at(-1)?.station.area ?? KNOWN;

/** The place the address names, or where one goes on: the first station with something open. */
function whereOne(at: string | null, stations: readonly StationSoFar[], isWide: boolean): string {
  const known = at === KNOWN || at === FINISH || (at === PLAN && !isWide);
  if (at !== null && (known || stations.some(({ station }) => station.area === at))) return at;
  return nextOpen(stations, -1)?.station.area ?? FINISH;
}

function ScreenPress(props: { words: string; isHere: boolean; onPress: () => void }) {
  return (
    <button
      type="button"
      className={styles.screen}
      aria-current={props.isHere ? 'step' : undefined}
      onClick={props.onPress}
    >
      {props.words}
    </button>
  );
}

/** Wide enough for the drawing beside the station. */
const WIDE = '(min-width: 60rem)';

function subscribeToWidth(listener: () => void) {
  const query = window.matchMedia(WIDE);
  query.addEventListener('change', listener);
  return () => query.removeEventListener('change', listener);
}

const useIsWide = (): boolean =>
  useSyncExternalStore(
    subscribeToWidth,
    () => window.matchMedia(WIDE).matches,
    () => false,
  );
