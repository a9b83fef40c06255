'use client';

import { useWords } from '#words';
import { type Translate } from '@/lib/words/translate';
import { useEffect, useId, useRef, useState, type CSSProperties } from 'react';
import { ShapeMark } from '../../../_ui/tag';
import { findingPath } from '../finding-path';
import { Go } from '../place';
import { DRAWING, placeOf } from './places';
import {
  isDrawn,
  markedPlaces,
  placeInWords,
  worstOf,
  type Looked,
  type MarkedPlace,
  type MarkedWriteUp,
} from './marked';
import { Outline } from './outline';
import styles from './drawing.module.css';
import { KnownAtPlace } from './known-at-place';

export interface DrawnWalk {
  readonly id: string;
  /** By area. */
  readonly looked: Readonly<Record<string, Looked>>;
  /** The station one is at. */
  readonly here: string | null;
  readonly onGo: (area: string) => void;
}

/**
 * The aircraft from above with its stations in walking order and what is written up where it sits. The places are buttons
 * in walking order; the same as a list on request. `walk`: the walkaround under way, or null.
 */
export function AircraftDrawing(props: {
  aircraftId: string;
  stations: readonly { readonly area: string; readonly title: string }[];
  writeUps: readonly MarkedWriteUp[];
  walk: DrawnWalk | null;
}) {
  const t = useWords();
  const { aircraftId, stations, writeUps, walk } = props;
  const [asList, setAsList] = useState(false);
  const [chosen, setChosen] = useState<string | null>(null);
  const panel = useId();
  const box = useRef<HTMLDivElement>(null);
  // On a phone it opens under the drawing, out of sight.
  useEffect(() => {
    if (chosen !== null) box.current?.scrollIntoView({ block: 'nearest' });
  }, [chosen]);
  const places = markedPlaces(t, stations, writeUps);
  const shown = places.find(({ area }) => area === chosen) ?? null;
  const lookedAt = (area: string): Looked | null => (walk ? (walk.looked[area] ?? 'not-looked-at') : null);
  const press = (area: string) => setChosen(area === chosen ? null : area);
  const hidden = places.filter((place) => !isDrawn(place));

  return (
    <div className={styles.whole}>
      <div role="group" aria-label={t('How to show the aircraft')} className={styles.choice}>
        <button type="button" aria-pressed={!asList} onClick={() => setAsList(false)}>
          {t('Drawing')}
        </button>
        <button type="button" aria-pressed={asList} onClick={() => setAsList(true)}>
          {t('List')}
        </button>
      </div>
      {asList ? (
        <PlaceList places={places} chosen={chosen} panel={panel} here={walk?.here} {...{ lookedAt, press }} />
      ) : (
        <>
          <div role="group" aria-label={describe(t, places)} className={styles.drawing}>
            <Outline way={stations.map(({ area }) => area)} />
            {places.filter(isDrawn).map((place) => (
              <PlaceButton
                key={place.area}
                place={place}
                looked={lookedAt(place.area)}
                isHere={walk?.here === place.area}
                isChosen={chosen === place.area}
                panel={panel}
                onPress={() => press(place.area)}
              />
            ))}
          </div>
          {hidden.length > 0 && (
            <PlaceList places={hidden} chosen={chosen} panel={panel} {...{ lookedAt, press }} />
          )}
          <Legend isWalk={walk !== null} />
        </>
      )}
      <div id={panel} ref={box} role="status" className={styles.panel}>
        {shown ? (
          <>
            <h3>
              {shown.order !== null && `${shown.order}. `}
              {shown.title}
            </h3>
            <KnownAtPlace writeUps={shown.writeUps} />
            <div className={styles.presses}>
              {walk && shown.order !== null && (
                <button type="button" className={styles.press} onClick={() => walk.onGo(shown.area)}>
                  {t('Go to this station')}
                </button>
              )}
              <Go
                href={findingPath(aircraftId, { station: shown.area, walk: walk?.id })}
                className={`${styles.press} ${styles.finding}`}
              >
                {t('Write up a finding here')}
              </Go>
            </div>
          </>
        ) : (
          <p className={styles.soft}>
            {t('Press a place to see what is known there, or to write something up.')}
          </p>
        )}
      </div>
    </div>
  );
}

/** What a sighted person takes in at a glance. */
function describe(t: Translate, places: readonly MarkedPlace[]): string {
  const stations = places.filter(({ order }) => order !== null).length;
  const marked = places.filter(({ writeUps }) => writeUps.length > 0).length;
  return t(
    'The aircraft from above, nose up: {stations} stations in walking order, something written up at {which}',
    { stations, which: marked === 0 ? t('none') : marked },
  );
}

interface PlaceButtonProps {
  readonly place: MarkedPlace;
  readonly looked: Looked | null;
  readonly isHere: boolean;
  readonly isChosen: boolean;
  readonly panel: string;
  readonly onPress: () => void;
}

function PlaceButton({ place, looked, isHere, isChosen, panel, onPress }: PlaceButtonProps) {
  const t = useWords();
  const at = placeOf(place.area);
  if (!at) return null;
  const where = {
    '--x': `${(at.x / DRAWING.width) * 100}%`,
    '--y': `${(at.y / DRAWING.height) * 100}%`,
  } as CSSProperties;
  return (
    <button
      type="button"
      style={where}
      className={styles.place}
      aria-label={placeInWords(t, place, looked)}
      aria-expanded={isChosen}
      aria-controls={panel}
      aria-current={isHere ? 'step' : undefined}
      onClick={onPress}
    >
      <Disc place={place} looked={looked} />
    </button>
  );
}

/** The number in its disc, and the mark of what is written up. Shapes differ, so that no state is told by colour alone. */
function Disc({ place, looked }: { place: MarkedPlace; looked: Looked | null }) {
  const worst = worstOf(place.writeUps);
  return (
    <span className={styles.disc} data-looked={looked ?? 'none'} aria-hidden="true">
      {place.order ?? '·'}
      {worst && <Mark worst={worst} />}
      {looked === 'good' && (
        <span className={`${styles.mark} ${styles.low} ${styles.ink}`}>
          <ShapeMark shape="tick" />
        </span>
      )}
      {looked === 'finding' && (
        <span className={`${styles.mark} ${styles.low} ${styles.amber}`}>
          <ShapeMark shape="wedge" />
        </span>
      )}
    </span>
  );
}

const WORST = {
  grounds: { shape: 'block', tone: styles.red },
  open: { shape: 'question', tone: styles.amber },
  deferred: { shape: 'ring', tone: styles.blue },
} as const;

function Mark({ worst }: { worst: keyof typeof WORST }) {
  return (
    <span className={`${styles.mark} ${WORST[worst].tone}`}>
      <ShapeMark shape={WORST[worst].shape} />
    </span>
  );
}

function Legend({ isWalk }: { isWalk: boolean }) {
  const t = useWords();
  return (
    <ul className={styles.legend} aria-label={t('Marks')}>
      <li>
        <Mark worst="grounds" /> {t('open, grounds')}
      </li>
      <li>
        <Mark worst="open" /> {t('open')}
      </li>
      <li>
        <Mark worst="deferred" /> {t('deferred')}
      </li>
      {isWalk && (
        <>
          <li>
            <span className={`${styles.mark} ${styles.ink}`}>
              <ShapeMark shape="tick" />
            </span>{' '}
            {t('good')}
          </li>
          <li>
            <span className={`${styles.mark} ${styles.amber}`}>
              <ShapeMark shape="wedge" />
            </span>{' '}
            {t('found on this walk')}
          </li>
        </>
      )}
    </ul>
  );
}

function PlaceList(props: {
  places: readonly MarkedPlace[];
  chosen: string | null;
  here?: string | null;
  panel: string;
  lookedAt: (area: string) => Looked | null;
  press: (area: string) => void;
}) {
  const t = useWords();
  const { places, chosen, here, panel, lookedAt, press } = props;
  return (
    <ol className={styles.list}>
      {places.map((place) => (
        <li key={place.area}>
          <button
            type="button"
            className={styles.row}
            aria-expanded={place.area === chosen}
            aria-controls={panel}
            aria-current={place.area === here ? 'step' : undefined}
            onClick={() => press(place.area)}
          >
            <Disc place={place} looked={lookedAt(place.area)} />
            <span>{placeInWords(t, { ...place, order: null }, lookedAt(place.area))}</span>
          </button>
        </li>
      ))}
    </ol>
  );
}
