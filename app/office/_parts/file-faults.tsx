'use client';

import { useEnglish, useWords } from '#words';
import { Notice } from '@/app/_ui/notice';
import { type RowFault } from '@/lib/equipment/read-rows';
import look from '@/app/desk/plans/import/import.module.css';

const MOST_SAID = 20;

/** What is wrong with a file, by row and column, and what its reader noted. */
export function FileFaults({ errors, notes }: { errors: readonly RowFault[]; notes: readonly string[] }) {
  const t = useWords();
  const english = useEnglish();
  return (
    <>
      {errors.length > 0 && (
        <Notice
          tone="red"
          title={t('Nothing can be taken in yet: {n, plural, one {# thing} other {# things}} to put right.', {
            n: errors.length,
          })}
        >
          <ul className={look.errors}>
            {errors.slice(0, MOST_SAID).map(({ row, field, message }) => (
              <li key={`${row} ${field} ${message}`}>
                {row > 0 && (
                  <b>{field ? t('Row {row}, {field}:', { row, field }) : t('Row {row}:', { row })} </b>
                )}
                {t(message)}
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
    </>
  );
}
