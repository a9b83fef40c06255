import { useWords } from '#words';
import { said } from '@/lib/words/said';
import Link from '../_ui/link';
import styles from './bench-nav.module.css';

const SHEETS = [
  { key: 'queue', href: '/bench', label: said('Write-ups') },
  { key: 'due', href: '/bench/due', label: said('Falling due') },
  { key: 'insight', href: '/desk/insight', label: said('Insight') },
] as const;

/** The sheets of the bench: what is written up, what falls due, and the figures (which the desk shows as well). */
export function BenchNav({ at }: { at: (typeof SHEETS)[number]['key'] }) {
  const t = useWords();
  return (
    <nav aria-label={t('Bench')} className={styles.nav}>
      <ul>
        {SHEETS.map((sheet) => (
          <li key={sheet.key}>
            <Link href={sheet.href} aria-current={sheet.key === at ? 'page' : undefined}>
              {sheet.label}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
