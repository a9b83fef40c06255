import styles from './finding.module.css';

/** Ready words that a tap puts into the field above: gloves and rain spoil typing. */
export function Chips(props: { label: string; words: readonly string[]; onPut: (words: string) => void }) {
  const { label, words, onPut } = props;
  return (
    <ul className={styles.chips}>
      {words.map((one) => (
        <li key={one}>
          <button type="button" className={styles.chip} onClick={() => onPut(one)}>
            <span className="out-of-sight">{label}: </span>
            {one}
          </button>
        </li>
      ))}
    </ul>
  );
}
