import { useWords } from '#words';
import { said } from '@/lib/words/said';
import { SheetsNav } from '../_ui/sheets-nav';

const SHEETS = [
  { key: 'queue', href: '/bench', label: said('Write-ups') },
  { key: 'due', href: '/bench/due', label: said('Falling due') },
  { key: 'insight', href: '/desk/insight', label: said('Insight') },
  { key: 'house-rules', href: '/rules-of-the-house', label: said('House rules') },
] as const;

/** The sheets of the bench: what is written up, what falls due, the figures (which the desk shows as well), and the rules of the house. */
export function BenchNav({ at }: { at: (typeof SHEETS)[number]['key'] }) {
  const t = useWords();
  return <SheetsNav name={t('Bench')} sheets={SHEETS} at={at} />;
}
