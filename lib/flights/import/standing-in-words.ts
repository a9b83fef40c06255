import { said } from '../../words/said';
import { type Translate } from '../../words/translate';
import type { CheckedRow } from './check-rows';

/** What a file would do to flights that stand: nobody should find out afterwards that it was an older one. Null: nothing. */
export function standingInWords(t: Translate, rows: readonly Pick<CheckedRow, 'does'>[]): string | null {
  const count = (does: CheckedRow['does']) => rows.filter((row) => row.does === does).length;
  const parts = [
    [
      count('replace'),
      said('{n, plural, one {replaces # flight that stands} other {replaces # flights that stand}}'),
    ],
    [
      count('cancel'),
      said('{n, plural, one {cancels # flight that stands} other {cancels # flights that stand}}'),
    ],
  ] as const;
  const does = parts.filter(([n]) => n > 0).map(([n, words]) => t(words, { n }));
  return does.length === 0 ? null : t('This file {does}.', { does: does.join(t(' and ')) });
}
