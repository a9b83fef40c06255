import { useWords } from '#words';
import Link from './link';
import styles from './sheets-nav.module.css';

/** A sheet of a place: its key, where it is, and its name (marked with `said`). */
export interface Sheet<Key extends string> {
  readonly key: Key;
  readonly href: string;
  readonly label: string;
}

/** The sheets of one place of work; `at` is the one that is open. */
export function SheetsNav<Key extends string>(props: {
  name: string;
  sheets: readonly Sheet<Key>[];
  at: Key;
}) {
  const t = useWords();
  const { name, sheets, at } = props;
  return (
    <nav aria-label={name} className={styles.nav}>
      <ul>
        {sheets.map(({ key, href, label }) => (
          <li key={key}>
            <Link href={href} aria-current={key === at ? 'page' : undefined}>
              {t(label)}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
