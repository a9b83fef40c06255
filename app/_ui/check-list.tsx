'use client';

import { FieldError, Hint, useField } from './fields';
import styles from './check-list.module.css';

interface CheckListProps {
  readonly name: string;
  readonly label: string;
  readonly hint?: string;
  readonly choices: readonly { readonly value: string; readonly label: string; readonly says?: string }[];
}

/** Several of a list. The form's value is the list of those that are ticked. */
export function CheckList({ name, label, hint, choices }: CheckListProps) {
  const { id, error, bound, described } = useField(name, hint);
  return (
    <fieldset className={styles.checkList} aria-describedby={described['aria-describedby']}>
      <legend>{label}</legend>
      <Hint id={`${id}-hint`}>{hint}</Hint>
      {choices.map((choice) => (
        <label key={choice.value} className={styles.check}>
          <input {...bound} type="checkbox" value={choice.value} />
          <span>
            <span className={styles.checkLabel}>{choice.label}</span>
            {choice.says && <span className={styles.says}>{choice.says}</span>}
          </span>
        </label>
      ))}
      <FieldError id={`${id}-error`}>{error}</FieldError>
    </fieldset>
  );
}
