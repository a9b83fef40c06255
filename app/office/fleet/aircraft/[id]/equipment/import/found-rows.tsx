'use client';

import { useWords } from '#words';
import { Tag, type Shape, type Tone } from '@/app/_ui/tag';
import { type CheckedEquipment, type RowDoes } from '@/lib/equipment/check-file';
import { said } from '@/lib/words/said';
import { FileFaults } from '@/app/office/_parts/file-faults';
import look from '@/app/desk/plans/import/import.module.css';
import { LineSays } from '../../../../_parts/line-words';

const DOES: Record<RowDoes, { tone: Tone; shape?: Shape; word: string }> = {
  add: { tone: 'blue', word: said('Add') },
  change: { tone: 'blue', shape: 'up', word: said('Change') },
  confirm: { tone: 'green', word: said('Confirm') },
  keep: { tone: 'grey', shape: 'tick', word: said('As before') },
};

/** What each row would do; what is wrong first, by row and column. */
export function FoundRows({ found }: { found: CheckedEquipment }) {
  const t = useWords();
  const { errors, rows, notes, notInFile } = found;
  return (
    <>
      <FileFaults errors={errors} notes={notes} />
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
