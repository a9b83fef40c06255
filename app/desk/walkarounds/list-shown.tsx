import { useWords } from '#words';
import { type Translate } from '@/lib/words/translate';
import { MEASURE_UNITS, measurementOf, sayBounds } from '@/lib/rules/findings/measurements';
import { type ListItem, type NumberItem, type WalkaroundList } from '@/lib/rules/walkaround/plan';
import styles from './walkarounds.module.css';

/** A list to read: current for those who do not write it, or an earlier version. */
export function ListShown({ list }: { list: WalkaroundList }) {
  const t = useWords();
  return (
    <ol className={styles.readOnly}>
      {list.stations.map((station, index) => (
        <li key={station.area} className={styles.item}>
          <h3>
            {index + 1}. {station.title}
          </h3>
          <ul>
            {station.items.map((item) => (
              <li key={item.key}>
                <b>{t(item.title)}</b> {t(item.lookFor)} {inWords(t, item)}
              </li>
            ))}
          </ul>
        </li>
      ))}
    </ol>
  );
}

function inWords(t: Translate, item: ListItem): string {
  if (item.kind === 'look') return '';
  return item.kind === 'sample' ? t('Drain {drain}.', { drain: item.drain }) : limitInWords(t, item);
}

function limitInWords(t: Translate, { measurement, limit }: NumberItem): string {
  const unit = measurementOf(measurement)?.unit;
  if (!unit) return '';
  if (!limit) return t('In {label}, recorded; no limit of the type.', { label: MEASURE_UNITS[unit].label });
  return t('Limit: {sayBounds} ({source}).', { sayBounds: sayBounds(limit, unit), source: limit.source });
}
