'use client';

import { useWords } from '#words';
import { type PackAircraft } from '@/lib/walkarounds/pack';
import { changeItem } from '../../_phone/walks';
import { type KeptWalk } from '../../_phone/shapes';
import { findingPath } from '../finding-path';
import { Go } from '../place';
import { ItemMark } from './item-mark';
import { type ItemSoFar } from './so-far';
import styles from './walk.module.css';

/** Something to look at: good, or a finding. Good is taken back by a second press. */
export function LookAt(props: { aircraft: PackAircraft; walk: KeptWalk; area: string; soFar: ItemSoFar }) {
  const t = useWords();
  const { aircraft, walk, area, soFar } = props;
  const { item, answer, written } = soFar;
  const isGood = answer.looked === 'good';
  return (
    <div role="group" aria-label={t(item.title)} className={styles.look}>
      <div>
        <p className={styles.itemTitle}>
          {t(item.title)} <ItemMark soFar={soFar} />
        </p>
        <p className={styles.lookFor}>{t(item.lookFor)}</p>
      </div>
      <div className={styles.two}>
        <button
          type="button"
          className={styles.press}
          aria-pressed={isGood}
          disabled={written > 0}
          onClick={() => {
            void changeItem(aircraft.id, item.key, (before) => ({
              ...before,
              looked: before.looked === 'good' ? null : 'good',
            }));
          }}
        >
          {t('Good')}
        </button>
        <Go
          href={findingPath(aircraft.id, { station: area, item: item.key, walk: walk.id })}
          className={`${styles.press} ${styles.amberPress}`}
        >
          {written > 0 ? t('Another finding') : t('Finding')}
        </Go>
      </div>
    </div>
  );
}
