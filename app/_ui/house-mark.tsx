import { useWords } from '#words';
import { type HouseMark as Mark } from '@/lib/rules/house/house-rule';
import styles from './house-mark.module.css';
import Link from './link';
import { dateInWords } from './moment';

/**
 * Whose rule a line stands on, where it is no law: its own words and its own shape, so that nobody takes it for a paragraph.
 * `plain`: without the reason, for tight rows.
 */
export function HouseMark({ house, plain = false }: { house: Mark; plain?: boolean }) {
  const t = useWords();
  const whose = t('Rule of the house, by {by}, {on}', { by: house.by, on: dateInWords(house.on) });
  if (plain) {
    return (
      <span className={styles.mark}>
        <HouseShape /> {whose}
      </span>
    );
  }
  return (
    <div className={styles.house}>
      <p className={styles.mark}>
        <HouseShape /> <Link href="/rules-of-the-house">{whose}</Link>
      </p>
      <p className={styles.why}>{t('Not law. Why: {why}', { why: house.why })}</p>
    </div>
  );
}

/** A house, in the text's size and colour. Always beside words. */
export function HouseShape() {
  return (
    <svg viewBox="0 0 20 20" className={styles.shape} aria-hidden="true" focusable="false">
      <path d="M10 1 19 9h-3v10h-4v-6H8v6H4V9H1Z" fill="currentColor" />
    </svg>
  );
}
