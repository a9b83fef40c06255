'use client';

import { type Translate } from '@/lib/words/translate';
import { useWords } from '#words';
import { useId, type HTMLInputTypeAttribute, type ReactNode } from 'react';
import { get, useFormContext, type FieldErrors } from 'react-hook-form';
import styles from './fields.module.css';

/**
 * Fields find their form by context: inside a CommandForm the name alone ties label, value and error together. Outside
 * one (a plain GET form for a search) they are ordinary inputs.
 */
interface Common {
  readonly name: string;
  readonly label: ReactNode;
  readonly hint?: ReactNode;
  /** Says "(optional)" beside the label. What is not marked is needed. */
  readonly optional?: boolean;
}

/** What ties an input to its form, label, hint and error by name alone. */
export function useField(name: string, hint: ReactNode) {
  const form = useFormContext();
  const id = useId();
  const error = form ? messageAt(form.formState.errors, name) : undefined;
  const describedBy = [hint ? `${id}-hint` : '', error ? `${id}-error` : ''].filter(Boolean).join(' ');
  return {
    id,
    error,
    bound: form ? form.register(name) : { name },
    described: { 'aria-describedby': describedBy || undefined, 'aria-invalid': error ? true : undefined },
  };
}

function messageAt(errors: FieldErrors, name: string): string | undefined {
  const found: unknown = get(errors, name);
  if (typeof found !== 'object' || found === null || !('message' in found)) return undefined;
  return typeof found.message === 'string' ? found.message : undefined;
}

/** What came as a constant or from the server is in English still; what is in the language already stays. */
const shown = (t: Translate, words: ReactNode): ReactNode => (typeof words === 'string' ? t(words) : words);

/** What is wrong with one field, under it. */
export function FieldError({ id, children }: { id?: string; children?: ReactNode }) {
  const t = useWords();
  if (!children) return null;
  return (
    <p id={id} className={styles.error}>
      <svg viewBox="0 0 16 16" width="14" height="14" aria-hidden="true">
        <path d="M8 0a8 8 0 1 0 0 16A8 8 0 0 0 8 0ZM7 3.5h2v5.5H7zM7 10.5h2v2H7z" fill="currentColor" />
      </svg>
      {shown(t, children)}
    </p>
  );
}

export function Label(props: { htmlFor: string; children: ReactNode; optional?: boolean }) {
  const t = useWords();
  return (
    <label htmlFor={props.htmlFor} className={styles.label}>
      {props.children}
      {props.optional && <span className={styles.optional}> {t('(optional)')}</span>}
    </label>
  );
}

export function Hint({ id, children }: { id: string; children?: ReactNode }) {
  return children ? (
    <p id={id} className={styles.hint}>
      {children}
    </p>
  ) : null;
}

/** One line of text. `type` for email, password, date, datetime-local, search. */
export function TextField(
  props: Common & {
    type?: HTMLInputTypeAttribute;
    autoComplete?: string;
    defaultValue?: string;
    maxLength?: number;
    spellCheck?: boolean;
    autoCapitalize?: string;
  },
) {
  const { name, label, hint, optional, type = 'text', ...rest } = props;
  const { id, error, bound, described } = useField(name, hint);
  return (
    <div className={styles.field}>
      <Label htmlFor={id} optional={optional}>
        {label}
      </Label>
      <Hint id={`${id}-hint`}>{hint}</Hint>
      <input {...rest} {...bound} {...described} id={id} type={type} className={styles.input} />
      <FieldError id={`${id}-error`}>{error}</FieldError>
    </div>
  );
}

/** Several lines of text. */
export function TextArea(props: Common & { rows?: number; defaultValue?: string; maxLength?: number }) {
  const { name, label, hint, optional, rows = 4, ...rest } = props;
  const { id, error, bound, described } = useField(name, hint);
  return (
    <div className={styles.field}>
      <Label htmlFor={id} optional={optional}>
        {label}
      </Label>
      <Hint id={`${id}-hint`}>{hint}</Hint>
      <textarea {...rest} {...bound} {...described} id={id} rows={rows} className={styles.input} />
      <FieldError id={`${id}-error`}>{error}</FieldError>
    </div>
  );
}

/**
 * A number as it is read off: text with a decimal keypad, so that nothing is rounded or swallowed on the way. The
 * service turns it into whole tenths and refuses what it cannot read. `unit` stands behind the box.
 */
export function NumberField(props: Common & { unit?: string; defaultValue?: string; whole?: boolean }) {
  const { name, label, hint, optional, unit, whole = false, defaultValue } = props;
  const { id, error, bound, described } = useField(name, hint);
  return (
    <div className={styles.field}>
      <Label htmlFor={id} optional={optional}>
        {label}
      </Label>
      <Hint id={`${id}-hint`}>{hint}</Hint>
      <span className={styles.measure}>
        <input
          {...bound}
          {...described}
          defaultValue={defaultValue}
          id={id}
          type="text"
          inputMode={whole ? 'numeric' : 'decimal'}
          autoComplete="off"
          className={`${styles.input} ${styles.number}`}
        />
        {unit && <span className={styles.unit}>{unit}</span>}
      </span>
      <FieldError id={`${id}-error`}>{error}</FieldError>
    </div>
  );
}

export interface Choice {
  readonly value: string;
  readonly label: ReactNode;
  readonly hint?: ReactNode;
  readonly disabled?: boolean;
}

/** One of a few, all in sight. Nothing is chosen beforehand: a choice that matters is made by somebody. */
export function ChoiceGroup(props: Common & { choices: readonly Choice[]; sideBySide?: boolean }) {
  const t = useWords();
  const { name, label, hint, optional, choices, sideBySide = false } = props;
  const { id, error, bound, described } = useField(name, hint);
  return (
    <fieldset {...described} role="radiogroup" className={styles.field}>
      <legend className={styles.label}>
        {label}
        {optional && <span className={styles.optional}> {t('(optional)')}</span>}
      </legend>
      <Hint id={`${id}-hint`}>{hint}</Hint>
      <div className={sideBySide ? styles.beside : styles.stack}>
        {choices.map((choice) => (
          <label key={choice.value} className={styles.choice}>
            <input {...bound} type="radio" value={choice.value} disabled={choice.disabled} />
            <span>
              <span className={styles.choiceLabel}>{shown(t, choice.label)}</span>
              {choice.hint && <span className={styles.choiceHint}>{shown(t, choice.hint)}</span>}
            </span>
          </label>
        ))}
      </div>
      <FieldError id={`${id}-error`}>{error}</FieldError>
    </fieldset>
  );
}

/** Yes, said by a tick. Its value is a boolean. */
export function Checkbox(props: Common & { defaultChecked?: boolean; value?: string }) {
  const t = useWords();
  const { name, label, hint, optional, defaultChecked, value } = props;
  const { id, error, bound, described } = useField(name, hint);
  return (
    <div className={styles.field}>
      <label className={styles.choice}>
        <input
          {...bound}
          {...described}
          defaultChecked={defaultChecked}
          value={value}
          id={id}
          type="checkbox"
        />
        <span>
          <span className={styles.choiceLabel}>
            {label}
            {optional && <span className={styles.optional}> {t('(optional)')}</span>}
          </span>
        </span>
      </label>
      <Hint id={`${id}-hint`}>{hint}</Hint>
      <FieldError id={`${id}-error`}>{error}</FieldError>
    </div>
  );
}

/** One of many. The first entry says "Choose" and has the empty value: nothing is chosen beforehand. */
export function SelectField(
  props: Common & {
    choices: readonly { value: string; label: string }[];
    chooseWords?: string;
    defaultValue?: string;
  },
) {
  const t = useWords();
  const { name, label, hint, optional, choices, chooseWords = t('Choose…'), defaultValue } = props;
  const { id, error, bound, described } = useField(name, hint);
  return (
    <div className={styles.field}>
      <Label htmlFor={id} optional={optional}>
        {label}
      </Label>
      <Hint id={`${id}-hint`}>{hint}</Hint>
      <select {...bound} {...described} defaultValue={defaultValue} id={id} className={styles.input}>
        <option value="">{chooseWords}</option>
        {choices.map((choice) => (
          <option key={choice.value} value={choice.value}>
            {t(choice.label)}
          </option>
        ))}
      </select>
      <FieldError id={`${id}-error`}>{error}</FieldError>
    </div>
  );
}
