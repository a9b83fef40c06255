import { useWords } from '#words';
import { Section } from '@/app/_ui/page';
import { pictureOf } from '@/lib/insight/draw';
import { FIGURE_TITLES, headlineOf, type FigureId } from '@/lib/insight/figures';
import { type InsightView } from '@/lib/insight/read-insight';
import { tableOf } from '@/lib/insight/tables';
import styles from './insight.module.css';
import { Drawing } from './drawing';

/** One figure: its number in words, what it counts, its chart, its rows, its files. */
export function Figure({ view, figure, address }: { view: InsightView; figure: FigureId; address: string }) {
  const t = useWords();
  const title = t(FIGURE_TITLES[figure]);
  const { number, words, standsOn, definition } = headlineOf(t, view, figure);
  const picture = pictureOf(view, figure);
  const file = (as: string) => `/api/insight/${figure}?${[address, `as=${as}`].filter(Boolean).join('&')}`;
  return (
    <Section title={title} id={figure}>
      <div className={styles.sheet}>
        <p className={styles.headline}>
          <b className={styles.number}>{number}</b> {words}
        </p>
        <p className={styles.soft}>{standsOn}</p>
        {picture ? (
          <Drawing id={figure} picture={picture} />
        ) : (
          <p className={styles.nothing}>{t('Nothing to draw in this period.')}</p>
        )}
        <p className={styles.definition}>
          <b>{t('What it counts.')}</b> {t(definition)}
        </p>
        <Rows view={view} figure={figure} />
        <p className={`${styles.files} not-on-paper`}>
          <a href={file('csv')} download aria-label={t('CSV: {title}', { title })}>
            {t('CSV')}
          </a>
          {picture && (
            <a href={file('svg')} download aria-label={t('Chart as SVG: {title}', { title })}>
              {t('Chart as SVG')}
            </a>
          )}
        </p>
      </div>
    </Section>
  );
}

/** The rows behind the chart, for a screen reader and for whoever wants the single ones. */
function Rows({ view, figure }: { view: InsightView; figure: FigureId }) {
  const t = useWords();
  const title = t(FIGURE_TITLES[figure]);
  const { columns, rows } = tableOf(view, figure);
  if (rows.length === 0) return null;
  return (
    <details className={styles.rows}>
      <summary>
        {t('The same as a table: {figure_titles} ({rows})', {
          figure_titles: title.toLowerCase(),
          rows: rows.length,
        })}
      </summary>
      {/* A wide table scrolls in its own box; the box takes the focus, so that the keyboard can scroll it. */}
      <div
        className={styles.scroll}
        role="region"
        aria-label={t('Table: {figure_titles}', { figure_titles: title })}
        // eslint-disable-next-line jsx-a11y/no-noninteractive-tabindex
        tabIndex={0}
      >
        <table className={styles.table}>
          <thead>
            <tr>
              {columns.map(({ shown }) => (
                <th key={shown} scope="col">
                  {shown}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row, index) => (
              <tr key={index}>
                {row.map(({ said }, place) =>
                  place === 0 ? (
                    <th key={place} scope="row">
                      {said}
                    </th>
                  ) : (
                    <td key={place}>{said}</td>
                  ),
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}
