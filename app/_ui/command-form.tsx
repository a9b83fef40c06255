'use client';

import { useWords } from '#words';
import { said } from '@/lib/words/said';
import { useSyncExternalStore, type ReactNode } from 'react';
import { FormProvider, type FieldValues, type Path } from 'react-hook-form';
import { ButtonRow, SubmitButton } from './button';
import styles from './command-form.module.css';
import { Notice } from './notice';
import { ProblemNotice } from './problem-notice';
import { type CommandHandle } from './use-command';

/**
 * The form around a command: fields inside find it by context; refusals and lost connections are told above the
 * button, and what was typed stays. `beside` holds further buttons next to the submit button.
 */
export function CommandForm<Values extends FieldValues>(props: {
  command: CommandHandle<Values>;
  submit: ReactNode;
  children?: ReactNode;
  pendingWords?: string;
  beside?: ReactNode;
  wide?: boolean;
  label?: string;
}) {
  const t = useWords();
  const { command, submit, children, pendingWords, beside, wide, label } = props;
  const ready = useSyncExternalStore(nothingChanges, isBrowser, isServer);
  return (
    <FormProvider {...command.form}>
      <form noValidate method="post" onSubmit={command.submit} aria-label={label}>
        {/* Disabled until the page is alive: what is typed before that would be lost. */}
        <fieldset className={styles.fields} disabled={!ready}>
          {children}
          {command.problem && (
            <ProblemNotice
              problem={command.problem}
              onGoTo={(path) => command.form.setFocus(path as Path<Values>)}
            />
          )}
          {command.unsent && <Notice tone="amber" title={t(UNSENT[command.unsent])} />}
          <ButtonRow>
            <SubmitButton pending={command.pending} pendingWords={pendingWords} wide={wide}>
              {submit}
            </SubmitButton>
            {beside}
          </ButtonRow>
        </fieldset>
      </form>
    </FormProvider>
  );
}

const UNSENT = {
  'no-connection': said(
    'Not sent: no connection. What you typed is still here. Press again when you are connected; it is written only once.',
  ),
  'no-answer': said(
    'No usable answer came back. What you typed is still here. Press again: it is written only once. If that does not help, copy your words, load the page again and paste them.',
  ),
} as const;

const nothingChanges = () => () => undefined;
const isBrowser = () => true;
const isServer = () => false;
