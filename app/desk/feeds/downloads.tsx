import { useWords } from '#words';
import { LinkButton } from '@/app/_ui/button';
import styles from './feeds.module.css';

/** Every set as CSV and JSON. Plain links: the browser keeps what they give as a file. */
export function Downloads({ sets }: { sets: readonly { name: string; says: string }[] }) {
  const t = useWords();
  return (
    <>
      <p>
        <LinkButton href="/api/export/everything.json">{t('Everything as JSON')}</LinkButton>
      </p>
      <details className={styles.unfold}>
        <summary>{t('Table by table')}</summary>
        <ul className={styles.files}>
          {sets.map(({ name, says }) => (
            <li key={name}>
              <span>{says}</span>
              <span className={styles.formats}>
                {(['csv', 'json'] as const).map((format) => (
                  <a
                    key={format}
                    href={`/api/export/${name}.${format}`}
                    download
                    aria-label={`${format.toUpperCase()}: ${says}`}
                  >
                    {format.toUpperCase()}
                  </a>
                ))}
              </span>
            </li>
          ))}
        </ul>
      </details>
    </>
  );
}
