import { useWords } from '#words';
import Link from '../_ui/link';
import { GUIDES, READERS, type Reader } from './guides';
import styles from './guide.module.css';

/** Ways to the guides. `except` leaves out the one that is open. */
export function GuideLinks({ except }: { except?: Reader }) {
  const t = useWords();
  return (
    <nav aria-label={t('Guides')} className={`${styles.links} not-on-paper`}>
      {READERS.filter((reader) => reader !== except).map((reader) => (
        <Link key={reader} href={`/guide/${reader}`}>
          {t(GUIDES[reader].title)}
        </Link>
      ))}
    </nav>
  );
}
