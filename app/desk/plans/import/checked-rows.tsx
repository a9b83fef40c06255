import { Say, useWords } from '#words';
import { said } from '@/lib/words/said';
import { Moment } from '@/app/_ui/moment';
import { Notice } from '@/app/_ui/notice';
import { Tag, type Shape, type Tone } from '@/app/_ui/tag';
import { type CheckedFile, type CheckedRow, type RowDoes } from '@/lib/flights/import/check-rows';
import { errorInWords } from '@/lib/flights/import/parsed';
import styles from './import.module.css';

/** What each row would do, errors first in words, then every row in its order. What is skipped is folded away. */
export function CheckedRows({ found }: { found: CheckedFile }) {
  const t = useWords();
  const wrong = found.rows.filter(({ does }) => does === 'wrong');
  const skipped = found.rows.filter(({ does }) => does === 'skip');
  const shown = found.rows.filter(({ does }) => does !== 'skip');
  const errors = [
    ...found.errors,
    ...wrong.flatMap(({ where, errors: all }) =>
      all.map((one) => errorInWords(where, { ...one, say: t(one.say) })),
    ),
  ];
  return (
    <>
      {errors.length > 0 && (
        <Notice
          tone="red"
          title={t(
            'Nothing can be taken in yet: {errors, plural, one {# thing} other {# things}} to put right.',
            { errors: errors.length },
          )}
        >
          <ul className={styles.errors}>
            {errors.slice(0, MOST_SAID).map((say, index) => (
              <li key={`${index} ${say}`}>{say}</li>
            ))}
            {errors.length > MOST_SAID && (
              <li>{t('{errors} more, in the table below.', { errors: errors.length - MOST_SAID })}</li>
            )}
          </ul>
        </Notice>
      )}
      {found.notes.map((note) => (
        <p key={note}>{note}</p>
      ))}
      {found.rows.length > 0 && (
        <p role="status">
          {ORDER.map((does) => [does, found.rows.filter((row) => row.does === does).length] as const)
            .filter(([, count]) => count > 0)
            .map(([does, count]) => `${count} ${t(DOES[does].count)}`)
            .join(', ')}
          .
        </p>
      )}
      {shown.length > 0 && <Table rows={shown} caption={t('Rows and what they would do')} />}
      {skipped.length > 0 && (
        <details className={styles.skipped}>
          <summary>{t('{skipped} skipped', { skipped: skipped.length })}</summary>
          <Table rows={skipped} caption={t('Rows that are skipped')} />
        </details>
      )}
    </>
  );
}

const MOST_SAID = 20;

const ORDER: readonly RowDoes[] = ['wrong', 'add', 'replace', 'cancel', 'keep', 'released', 'skip'];

const DOES: Record<RowDoes, { tone: Tone; shape?: Shape; word: string; count: string }> = {
  wrong: { tone: 'red', word: said('Put right'), count: said('to put right') },
  add: { tone: 'blue', word: said('Add'), count: said('to add') },
  replace: { tone: 'blue', shape: 'up', word: said('Replace'), count: said('to replace') },
  cancel: { tone: 'amber', shape: 'cross', word: said('Cancel'), count: said('to cancel') },
  keep: { tone: 'grey', shape: 'tick', word: said('As before'), count: said('as before') },
  released: { tone: 'amber', word: said('Left alone'), count: said('left alone') },
  skip: { tone: 'grey', word: said('Skip'), count: 'skipped' },
};

function Table({ rows, caption }: { rows: readonly CheckedRow[]; caption: string }) {
  const t = useWords();
  return (
    <table className={styles.table}>
      <caption className="out-of-sight">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">{t('Row')}</th>
          <th scope="col">{t('Would')}</th>
          <th scope="col">{t('Flight')}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row, index) => (
          <tr key={`${index} ${row.uid}`}>
            <th scope="row">{row.where}</th>
            <td>
              <Tag tone={DOES[row.does].tone} shape={DOES[row.does].shape} size="small">
                {t(DOES[row.does].word)}
              </Tag>
            </td>
            <td>
              <Flight row={row} />
              {row.errors.map(({ column, say }) => (
                <p key={`${column} ${say}`} className={styles.wrong}>
                  {column ? <b>{column}: </b> : null}
                  {say}
                </p>
              ))}
              {row.notes.map((note) => (
                <p key={note} className={styles.soft}>
                  {note}
                </p>
              ))}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Flight({ row: { flight, shown } }: { row: CheckedRow }) {
  const t = useWords();
  if (!flight || !shown) return null;
  return (
    <p>
      <Say
        text="<b>{registration}</b>, <moment/> to <moment2/><span> · {pilot}{words}</span>"
        parts={{
          b: <b />,
          moment: <Moment at={flight.departAt} zone={shown.zone} />,
          moment2: <Moment at={flight.arriveAt} zone={shown.zone} clock />,
          span: <span className={styles.soft} />,
        }}
        values={{
          registration: shown.registration,
          pilot: shown.pilot ?? t('no pilot named yet'),
          words: flight.words && ` · ${flight.words}`,
        }}
      />
    </p>
  );
}
