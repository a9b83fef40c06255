import type { CheckedRow } from './check-rows';

/** What a file would do to flights that stand: nobody should find out afterwards that it was an older one. Null: nothing. */
export function standingInWords(rows: readonly Pick<CheckedRow, 'does'>[]): string | null {
  const parts = (['replace', 'cancel'] as const).flatMap((does) => {
    const count = rows.filter((row) => row.does === does).length;
    const flights = count === 1 ? 'flight that stands' : 'flights that stand';
    return count === 0 ? [] : [`${does}s ${count} ${flights}`];
  });
  return parts.length === 0 ? null : `This file ${parts.join(' and ')}.`;
}
