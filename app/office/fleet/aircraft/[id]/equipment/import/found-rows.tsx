'use client';

import { useEnglish, useWords } from '#words';
import { Notice } from '@/app/_ui/notice';
import { Tag, type Shape, type Tone } from '@/app/_ui/tag';
import { type CheckedEquipment, type RowDoes } from '@/lib/equipment/check-file';
import { said } from '@/lib/words/said';
import look from '@/app/desk/plans/import/import.module.css';
import { LineSays } from '../../../../_parts/line-words';

const MOST_SAID = 20;

const DOES: Record<RowDoes, { tone: Tone; shape?: Shape; word: string }> = {
  add: { tone: 'blue', word: said('Add') },
  change: { tone: 'blue', shape: 'up', word: said('Change') },
  confirm: { tone: 'green', word: said('Confirm') },
  keep: { tone: 'grey', shape: 'tick', word: said('As before') },
};

/** What each row would do; what is wrong first, by row and column. */
export function FoundRows({ found }: { found: CheckedEquipment }) {
  const t = useWords();
  const english = useEnglish();
  const { errors, rows, notes, notInFile } = found;
  return (
    <>
      {errors.length > 0 && (
        <Notice
          tone="red"
          title={t('Nothing can be taken in yet: {n, plural, one {# thing} other {# things}} to put right.', {
            n: errors.length,
          })}
        >
          <ul className={look.errors} {...english}>
            {errors.slice(0, MOST_SAID).map(({ row, field, message }) => (
              <li key={`${row} ${field} ${message}`}>
                {row > 0 && (
                  <b>{field ? t('Row {row}, {field}:', { row, field }) : t('Row {row}:', { row })} </b>
                )}
                {message}
              </li>
            ))}
          </ul>
          {errors.length > MOST_SAID && <p>{t('{n} more.', { n: errors.length - MOST_SAID })}</p>}
        </Notice>
      )}
      {notes.map((note) => (
        <p key={note} {...english}>
          {note}
        </p>
      ))}
      {rows.length > 0 && (
        <table className={look.table}>
          <caption className="out-of-sight">{t('Rows and what they would do')}</caption>
          <thead>
            <tr>
              <th scope="col">{t('Row')}</th>
              <th scope="col">{t('Would')}</th>
              <th scope="col">{t('Line')}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.row}>
                <th scope="row">{row.row}</th>
                <td>
                  <Tag tone={DOES[row.does].tone} shape={DOES[row.does].shape} size="small">
                    {t(DOES[row.does].word)}
                  </Tag>
                </td>
                <td>
                  <p>
                    <b>{row.name}</b>
                  </p>
                  <p className={look.soft}>
                    <LineSays line={row.columns} />
                  </p>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {notInFile.length > 0 && errors.length === 0 && (
        <details className={look.skipped}>
          <summary>
            {t('{n, plural, one {# line is} other {# lines are}} not in the file and stay as they are', {
              n: notInFile.length,
            })}
          </summary>
          <p>{notInFile.join(', ')}</p>
        </details>
      )}
    </>
  );
}
