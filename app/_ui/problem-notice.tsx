'use client';

import { Say, useEnglish, useWords } from '#words';
import { said } from '@/lib/words/said';
import { lazy, Suspense, type ReactNode } from 'react';
import { type Problem, type ProblemCode } from '@/lib/problems';
import { citeInWords } from './cite-in-words';
import { Notice } from './notice';
import Link from './link';
import styles from './notice.module.css';

// The text of the law weighs more than the rest of a form; it comes when a refusal needs it.
const Cite = lazy(async () => ({ default: (await import('./cite')).Cite }));

const NEXT_STEP: Partial<Record<ProblemCode, string>> = {
  other_person: said('Sign out, and let whoever wrote it sign in on this phone.'),
  not_allowed: said('Somebody with the right role here has to do it.'),
  signature_refused: said('Nothing was signed. Somebody whose certificates cover this work has to sign it.'),
  conflict: said(
    'Look whether it is already there before you send again; sending again makes a new record. What you typed is still here.',
  ),
  superseded: said(
    'Look at the facts as they are now, then decide. Loading this page again shows them, and empties this form.',
  ),
  try_again: said('What you typed is still here.'),
  bug: said('What you typed is still here. Tell whoever runs the server the number below.'),
};

/**
 * A refusal in words, with the paragraphs it stands on and what to do next. `onGoTo` puts the cursor into a field.
 */
export function ProblemNotice(props: {
  problem: Problem;
  onGoTo?: (path: string) => void;
  children?: ReactNode;
}) {
  const t = useWords();
  const english = useEnglish();
  const { problem, onGoTo, children } = props;
  const next = problem.settleAt ? undefined : NEXT_STEP[problem.code];
  const fields = Object.entries(problem.fields ?? {});
  return (
    <Notice
      tone={problem.code === 'try_again' || problem.code === 'superseded' ? 'amber' : 'red'}
      title={t(problem.say)}
    >
      {fields.length > 0 && (
        <ul className={styles.list}>
          {fields.flatMap(([path, messages]) =>
            messages.map((message) => (
              <li key={`${path} ${message}`}>
                {onGoTo && path ? (
                  <button type="button" className={styles.jump} onClick={() => onGoTo(path)}>
                    {t(message)}
                  </button>
                ) : (
                  t(message)
                )}
              </li>
            )),
          )}
        </ul>
      )}
      {problem.lines && problem.lines.length > 0 && (
        <ul className={styles.list}>
          {problem.lines.map((line, index) => (
            <li key={`${index}-${line.cite}`}>
              <span {...english}>{line.because}</span>
              <Suspense fallback={<div>{citeInWords(line.cite)}</div>}>
                <Cite cite={line.cite} />
              </Suspense>
            </li>
          ))}
        </ul>
      )}
      {problem.code === 'not_signed_in' && (
        <p>
          <Say
            text="<a>Sign in in a new tab</a>, come back here and send again. What you typed stays."
            parts={{ a: <Link href="/sign-in?next=/sign-in/done" target="_blank" rel="noopener" /> }}
          />
        </p>
      )}
      {problem.settleAt && (
        <p>
          {/* In a new tab: what was typed here stays. */}
          <a href={problem.settleAt} target="_blank" rel="noopener">
            {t('Settle it under your account')}
          </a>
        </p>
      )}
      {next && <p>{t(next)}</p>}
      {problem.eventId && (
        <p>
          <Say
            text="Event <code>{eventId}</code>"
            parts={{ code: <code /> }}
            values={{ eventId: problem.eventId }}
          />
        </p>
      )}
      {children}
    </Notice>
  );
}
