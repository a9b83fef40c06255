import { useWords } from '#words';
import { Section } from '@/app/_ui/page';
import look from '@/app/desk/plans/import/import.module.css';
import styles from '../history.module.css';

interface Column {
  readonly column: string;
  readonly needed: boolean;
  readonly what: string;
}

/** The columns of a file and the templates to begin with. */
export function Columns({
  title,
  what,
  columns,
}: {
  title: string;
  what: string;
  columns: readonly Column[];
}) {
  const t = useWords();
  return (
    <Section title={title}>
      <p className={styles.acts}>
        {/* Files, not pages of ours. */}
        <a href={`/api/templates/history?what=${what}&format=csv`} download className={styles.file}>
          {t('Download a template (CSV)')}
        </a>
        <a href={`/api/templates/history?what=${what}&format=json`} download className={styles.file}>
          {t('The same as JSON')}
        </a>
      </p>
      <details>
        <summary className={styles.fold}>{t('The columns, one by one')}</summary>
        <dl className={look.columns}>
          {columns.map(({ column, needed, what: says }) => (
            <div key={column}>
              <dt>
                <code>{column}</code>{' '}
                <span className={styles.soft}>{needed ? t('needed') : t('can be empty')}</span>
              </dt>
              <dd>{t(says)}</dd>
            </div>
          ))}
        </dl>
      </details>
    </Section>
  );
}
