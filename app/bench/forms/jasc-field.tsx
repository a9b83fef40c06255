'use client';

import { useWords } from '#words';
import { type Translate } from '@/lib/words/translate';
import { useState } from 'react';
import { useFormContext, useWatch } from 'react-hook-form';
import { JASC_CODES, type JascCode } from '@/lib/rules/jasc';
import { ChoiceGroup } from '../../_ui/fields';
import styles from './jasc-field.module.css';

const SHOWN = 8;

/**
 * The system code: words or digits narrow the table, a tap chooses. What is chosen stays in sight whatever is searched
 * for next.
 */
export function JascField({ name }: { name: string }) {
  const t = useWords();
  const { control } = useFormContext();
  const chosen = useWatch({ control, name }) as string;
  const [search, setSearch] = useState('');
  const found = search.trim() === '' ? [] : JASC_CODES.filter((entry) => fits(entry, search));
  const current = JASC_CODES.filter((entry) => entry.code === chosen);
  const offered = [...current, ...found.filter((entry) => entry.code !== chosen).slice(0, SHOWN)];
  return (
    <div className={styles.field}>
      <label className={styles.search}>
        <span>{t('Find the system (JASC code)')}</span>
        <input
          type="search"
          value={search}
          autoComplete="off"
          onChange={(event) => setSearch(event.target.value)}
          onKeyDown={(event) => {
            // Enter in the search narrows; it does not send the form.
            if (event.key === 'Enter') event.preventDefault();
          }}
        />
      </label>
      <ChoiceGroup
        name={name}
        label={t('System')}
        hint={hintOf(t, search, found.length)}
        choices={offered.map((entry) => ({
          value: entry.code,
          label: `${entry.code} ${entry.title}`,
          hint: entry.chapterTitle,
        }))}
      />
    </div>
  );
}

function hintOf(t: Translate, search: string, found: number): string {
  if (search.trim() === '') return t('Type a word such as “light”, or the first digits, and choose.');
  if (found === 0) return t('No code has these words. Try fewer letters.');
  return found > SHOWN
    ? t('{shown} of {found} shown. Type more to narrow them.', { shown: SHOWN, found })
    : t('{found} found.', { found });
}

/** Every word typed is in the code, the title or the chapter. */
function fits(entry: JascCode, search: string): boolean {
  const text = `${entry.title} ${entry.chapterTitle}`.toLowerCase();
  const words = search.trim().toLowerCase().split(/\s+/);
  return words.every((word) => entry.code.startsWith(word) || text.includes(word));
}
