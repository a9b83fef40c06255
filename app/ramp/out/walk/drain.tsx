'use client';

import { English, Say, useWords } from '#words';
import { useState } from 'react';
import { type SampleResult } from '@/lib/rules/walkaround/answers';
import { SAMPLE_WORDS } from '@/lib/rules/walkaround/fuel-samples';
import { type SampleItem } from '@/lib/rules/walkaround/plan';
import { type PackAircraft, type RampPack } from '@/lib/walkarounds/pack';
import { changeItem } from '../../_phone/walks';
import { type KeptWalk } from '../../_phone/shapes';
import { ItemMark } from './item-mark';
import { Proposed } from './proposed';
import { type ItemSoFar } from './so-far';
import styles from './walk.module.css';

interface DrainProps {
  readonly pack: RampPack;
  readonly aircraft: PackAircraft;
  readonly walk: KeptWalk;
  readonly item: SampleItem;
  readonly soFar: ItemSoFar;
  /** What it showed on the last walkaround, when it was not clean at once. */
  readonly last: string | null;
  /** Drains of one station mostly say the same: it is said once. */
  readonly showsLookFor: boolean;
}

const TROUBLES = ['water', 'sediment', 'wrong-fuel'] as const satisfies readonly SampleResult[];

/** A drain to sample. Each sample is kept beside those before it; what they mean is judged by the rules. */
export function Drain({ pack, aircraft, walk, item, soFar, last, showsLookFor }: DrainProps) {
  const t = useWords();
  const { answer, verdict, written } = soFar;
  const { samples } = answer;
  const isAgain = samples.length > 0;
  const [asks, setAsks] = useState(false);
  const [isUnclean, setUnclean] = useState(false);
  const left = verdict.raised?.repeatsLeft ?? 0;
  const showsPresses = !isAgain || asks || left > 0;

  function take(result: SampleResult) {
    setAsks(false);
    setUnclean(false);
    const at = new Date().toISOString();
    void changeItem(aircraft.id, item.key, (before) => ({
      ...before,
      samples: [...before.samples, { result, at }],
    }));
  }

  return (
    <div role="group" aria-label={t('Drain {drain}', { drain: item.drain })} className={styles.look}>
      <div>
        <p className={styles.itemTitle}>
          <span className={styles.drainName}>{item.drain}</span> {t(item.title)} <ItemMark soFar={soFar} />
        </p>
        {showsLookFor && <p className={styles.lookFor}>{t(item.lookFor)}</p>}
        {last && <p className={styles.last}>{t('Last walkaround: {last}.', { last })}</p>}
      </div>
      {isAgain && (
        <ol className={styles.readings} aria-label={t('Samples so far')}>
          {samples.map(({ result, at }, index) => (
            <li key={`${at}-${index}`}>
              {index + 1}. <b>{t(SAMPLE_WORDS[result])}</b>
            </li>
          ))}
        </ol>
      )}
      <div role="status">
        {verdict.raised && left > 0 && (
          <p>
            <Say
              text="<b>Take another sample.</b> {which}; not clean then, it is no go and maintenance has to purge the tank."
              parts={{ b: <b /> }}
              values={{ which: left === 1 ? t('One more') : t('Up to {left} more', { left }) }}
            />
          </p>
        )}
        {verdict.raised && written === 0
          ? left === 0 && (
              <Proposed pack={pack} aircraftId={aircraft.id} walkId={walk.id} raised={verdict.raised} />
            )
          : isAgain &&
            verdict.line &&
            samples.length > 1 && (
              <p className={styles.soft}>
                <English>{verdict.line.because}</English>
              </p>
            )}
      </div>
      {showsPresses ? (
        <>
          <div className={styles.two}>
            <button type="button" className={styles.press} onClick={() => take('clean')}>
              {isAgain ? t('Clean now') : t('Clean')}
            </button>
            <button
              type="button"
              className={`${styles.press} ${styles.amberPress}`}
              aria-expanded={isUnclean}
              onClick={() => setUnclean(!isUnclean)}
            >
              {t('Not clean')}
            </button>
          </div>
          {isUnclean && (
            <div role="group" aria-label={t('What is in it')} className={styles.three}>
              {TROUBLES.map((result) => (
                <button
                  key={result}
                  type="button"
                  className={`${styles.press} ${styles.amberPress}`}
                  onClick={() => take(result)}
                >
                  {capital(t(SAMPLE_WORDS[result]))}
                </button>
              ))}
            </div>
          )}
          {verdict.raised && written === 0 && left > 0 && (
            <details className={styles.fold}>
              <summary>{t('Leave it like this')}</summary>
              <Proposed pack={pack} aircraftId={aircraft.id} walkId={walk.id} raised={verdict.raised} />
            </details>
          )}
        </>
      ) : (
        <button type="button" className={styles.quiet} onClick={() => setAsks(true)}>
          {t('{samples, plural, one {# sample} other {# samples}} taken. Take another', {
            samples: samples.length,
          })}
        </button>
      )}
    </div>
  );
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
