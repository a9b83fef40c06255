import { said } from '@/lib/words/said';
import { English, useWords } from '#words';
import { LAW, type CiteId, type LawEntry } from '@/lib/rules/law';
import { citeInWords, DOUBTS } from '@/lib/rules/law/in-words';
import styles from './cite.module.css';

/** The entry, or undefined for an id an older record carries and this version no longer knows. */
const entryOf = (cite: string): LawEntry | undefined => (cite in LAW ? LAW[cite as CiteId] : undefined);

/**
 * A paragraph behind a line. Unfolds to what it says and which copy of it was read; a doubt about the text is shown
 * without unfolding. `plain`: the label only, for tight rows.
 */
export function Cite({ cite, plain = false }: { cite: string; plain?: boolean }) {
  const t = useWords();
  const entry = entryOf(cite);
  const label = entry?.label ?? citeInWords(cite);
  const doubt = entry ? DOUBTS[entry.status] : said('not in our list of paragraphs');
  const mark = doubt && <span className={styles.doubt}>{t(doubt)}</span>;
  if (plain || !entry) {
    return (
      <span className={styles.plain} title={entry?.gist}>
        {label} {mark}
      </span>
    );
  }
  return (
    <details className={styles.cite}>
      <summary title={entry.gist}>
        <span className={styles.label}>{label}</span> {mark}
      </summary>
      <div className={styles.text}>
        <p>
          <English>{entry.gist}</English>
        </p>
        <p className={styles.source}>{t('In our own words. {source}', { source: entry.source })}</p>
      </div>
    </details>
  );
}
