import { useWords } from '#words';
import { said } from '@/lib/words/said';
import { SheetsNav } from '../../_ui/sheets-nav';

const SHEETS = [
  { key: 'set-up', href: '/office', label: said('Setting up') },
  { key: 'people', href: '/office/people', label: said('People') },
  { key: 'fleet', href: '/office/fleet', label: said('Fleet') },
  { key: 'history', href: '/office/history', label: said('History') },
  { key: 'rules', href: '/office/rules', label: said('House rules') },
  { key: 'bases', href: '/desk/bases', label: said('Bases') },
] as const;
export type OfficeSheet = (typeof SHEETS)[number]['key'];

/** The sheets of the office. Bases stay at the desk, which works with them every day, and are linked from here. */
export function OfficeNav({ at }: { at: OfficeSheet }) {
  const t = useWords();
  return <SheetsNav name={t('Office')} sheets={SHEETS} at={at} />;
}
