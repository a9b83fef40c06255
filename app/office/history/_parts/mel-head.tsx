'use client';

import { useWords } from '#words';
import { CheckList } from '@/app/_ui/check-list';
import { YesNo } from '@/app/bench/forms/yes-no';
import { TextField } from '@/app/_ui/fields';
import styles from '../history.module.css';

/** Whether the letter is aboard. A list without its letter closes both ways of 91.213. */
export function LetterAboard() {
  const t = useWords();
  return (
    <YesNo
      name="letterAboard"
      label={t('Is the letter aboard?')}
      hint={t('Without it aboard nothing can be deferred: 91.213(a)(2).')}
      third={{ value: 'not-known', label: t('Not known') }}
    />
  );
}

/** Which list it is, its letter, and what binds. */
export function MelHead() {
  const t = useWords();
  return (
    <>
      <div className={styles.pair}>
        <TextField name="reference" label={t('Reference of the list')} maxLength={120} />
        <TextField name="revision" label={t('Its revision')} optional maxLength={120} />
      </div>
      <div className={styles.pair}>
        <TextField
          name="letterReference"
          label={t('Reference of the letter of authorization')}
          maxLength={120}
        />
        <TextField name="letterIssuedOn" label={t('Day of issue')} type="date" optional />
      </div>
      <LetterAboard />
      <YesNo
        name="enforceCategories"
        label={t('Do repair intervals (categories A to D) bind your operation?')}
        hint={t('Yes is the stricter answer.')}
      />
      <CheckList
        name="extensionCategories"
        label={t('Intervals the letter lets you extend once')}
        hint={t('None, if the letter says nothing of it.')}
        choices={[
          { value: 'B', label: t('Category B') },
          { value: 'C', label: t('Category C') },
        ]}
      />
      <TextField name="extensionReference" label={t('Where the letter says so')} optional maxLength={200} />
    </>
  );
}
