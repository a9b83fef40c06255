import { Moment } from '@/app/_ui/moment';
import { Notice } from '@/app/_ui/notice';
import { Tag, type Shape, type Tone } from '@/app/_ui/tag';
import { type CheckedFile, type CheckedRow, type RowDoes } from '@/lib/flights/import/check-rows';
import { errorInWords } from '@/lib/flights/import/parsed';
import { counted } from '@/lib/rules/counted';
import styles from './import.module.css';

/** What each row would do, errors first in words, then every row in its order. What is skipped is folded away. */
export function CheckedRows({ found }: { found: CheckedFile }) {
  const wrong = found.rows.filter(({ does }) => does === 'wrong');
  const skipped = found.rows.filter(({ does }) => does === 'skip');
  const shown = found.rows.filter(({ does }) => does !== 'skip');
  const errors = [
    ...found.errors,
    ...wrong.flatMap(({ where, errors: all }) => all.map((one) => errorInWords(where, one))),
  ];
  return (
    <>
      {errors.length > 0 && (
        <Notice
          tone="red"
          title={`Nothing can be taken in yet: ${counted(errors.length, 'thing')} to put right.`}
        >
          <ul className={styles.errors}>
            {errors.slice(0, MOST_SAID).map((say, index) => (
              <li key={`${index} ${say}`}>{say}</li>
            ))}
            {errors.length > MOST_SAID && <li>{errors.length - MOST_SAID} more, in the table below.</li>}
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
            .map(([does, count]) => `${count} ${DOES[does].count}`)
            .join(', ')}
          .
        </p>
      )}
      {shown.length > 0 && <Table rows={shown} caption="Rows and what they would do" />}
      {skipped.length > 0 && (
        <details className={styles.skipped}>
          <summary>{skipped.length} skipped</summary>
          <Table rows={skipped} caption="Rows that are skipped" />
        </details>
      )}
    </>
  );
}

const MOST_SAID = 20;

const ORDER: readonly RowDoes[] = ['wrong', 'add', 'replace', 'cancel', 'keep', 'released', 'skip'];

const DOES: Record<RowDoes, { tone: Tone; shape?: Shape; word: string; count: string }> = {
  wrong: { tone: 'red', word: 'Put right', count: 'to put right' },
  add: { tone: 'blue', word: 'Add', count: 'to add' },
  replace: { tone: 'blue', shape: 'up', word: 'Replace', count: 'to replace' },
  cancel: { tone: 'amber', shape: 'cross', word: 'Cancel', count: 'to cancel' },
  keep: { tone: 'grey', shape: 'tick', word: 'As before', count: 'as before' },
  released: { tone: 'amber', word: 'Left alone', count: 'left alone' },
  skip: { tone: 'grey', word: 'Skip', count: 'skipped' },
};

function Table({ rows, caption }: { rows: readonly CheckedRow[]; caption: string }) {
  return (
    <table className={styles.table}>
      <caption className="out-of-sight">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">Row</th>
          <th scope="col">Would</th>
          <th scope="col">Flight</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row, index) => (
          <tr key={`${index} ${row.uid}`}>
            <th scope="row">{row.where}</th>
            <td>
              <Tag tone={DOES[row.does].tone} shape={DOES[row.does].shape} size="small">
                {DOES[row.does].word}
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
  if (!flight || !shown) return null;
  return (
    <p>
      <b>{shown.registration}</b>, <Moment at={flight.departAt} zone={shown.zone} /> to{' '}
      <Moment at={flight.arriveAt} zone={shown.zone} clock />
      <span className={styles.soft}>
        {' '}
        · {shown.pilot ?? 'no pilot named yet'}
        {flight.words && ` · ${flight.words}`}
      </span>
    </p>
  );
}
