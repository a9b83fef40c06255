import { MEASURE_UNITS, measurementOf, sayBounds } from '@/lib/rules/findings/measurements';
import { type ListItem, type NumberItem, type WalkaroundList } from '@/lib/rules/walkaround/plan';
import styles from './walkarounds.module.css';

/** A list to read: current for those who do not write it, or an earlier version. */
export function ListShown({ list }: { list: WalkaroundList }) {
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
                <b>{item.title}</b> {item.lookFor} {inWords(item)}
              </li>
            ))}
          </ul>
        </li>
      ))}
    </ol>
  );
}

function inWords(item: ListItem): string {
  if (item.kind === 'look') return '';
  return item.kind === 'sample' ? `Drain ${item.drain}.` : limitInWords(item);
}

function limitInWords({ measurement, limit }: NumberItem): string {
  const unit = measurementOf(measurement)?.unit;
  if (!unit) return '';
  if (!limit) return `In ${MEASURE_UNITS[unit].label}, recorded; no limit of the type.`;
  return `Limit: ${sayBounds(limit, unit)} (${limit.source}).`;
}
