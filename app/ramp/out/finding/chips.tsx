import { English } from '#words';
import styles from './finding.module.css';

/**
 * Ready words that a tap puts into the field above: gloves and rain spoil typing. They go into the record, which the mechanic reads,
 * so they stay English.
 */
export function Chips(props: { label: string; words: readonly string[]; onPut: (words: string) => void }) {
  const { label, words, onPut } = props;
  return (
    <ul className={styles.chips}>
      {words.map((one) => (
        <li key={one}>
          <button type="button" className={styles.chip} onClick={() => onPut(one)}>
            <span className="out-of-sight">{label}: </span>
            <English>{one}</English>
          </button>
        </li>
      ))}
    </ul>
  );
}
