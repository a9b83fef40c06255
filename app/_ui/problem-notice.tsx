'use client';

import { lazy, Suspense, type ReactNode } from 'react';
import { type Problem, type ProblemCode } from '@/lib/problems';
import { citeInWords } from './cite-in-words';
import { Notice } from './notice';
import styles from './notice.module.css';

// The text of the law weighs more than the rest of a form; it comes when a refusal needs it.
const Cite = lazy(async () => ({ default: (await import('./cite')).Cite }));

const NEXT_STEP: Partial<Record<ProblemCode, string>> = {
  other_person: 'Sign out, and let whoever wrote it sign in on this phone.',
  not_allowed: 'Somebody with the right role here has to do it.',
  signature_refused: 'Nothing was signed. Somebody whose certificates cover this work has to sign it.',
  conflict:
    'Look whether it is already there before you send again; sending again makes a new record. What you typed is still here.',
  superseded:
    'Look at the facts as they are now, then decide. Loading this page again shows them, and empties this form.',
  try_again: 'What you typed is still here.',
  bug: 'What you typed is still here. Tell whoever runs the server the number below.',
};

/**
 * A refusal in words, with the paragraphs it stands on and what to do next. `onGoTo` puts the cursor into a field.
 */
export function ProblemNotice(props: {
  problem: Problem;
  onGoTo?: (path: string) => void;
  children?: ReactNode;
}) {
  const { problem, onGoTo, children } = props;
  const next = NEXT_STEP[problem.code];
  const fields = Object.entries(problem.fields ?? {});
  return (
    <Notice
      tone={problem.code === 'try_again' || problem.code === 'superseded' ? 'amber' : 'red'}
      title={problem.say}
    >
      {fields.length > 0 && (
        <ul className={styles.list}>
          {fields.flatMap(([path, messages]) =>
            messages.map((message) => (
              <li key={`${path} ${message}`}>
                {onGoTo && path ? (
                  <button type="button" className={styles.jump} onClick={() => onGoTo(path)}>
                    {message}
                  </button>
                ) : (
                  message
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
              {line.because}
              <Suspense fallback={<div>{citeInWords(line.cite)}</div>}>
                <Cite cite={line.cite} />
              </Suspense>
            </li>
          ))}
        </ul>
      )}
      {problem.code === 'not_signed_in' && (
        <p>
          <a href="/sign-in?next=/sign-in/done" target="_blank" rel="noopener">
            Sign in in a new tab
          </a>
          , come back here and send again. What you typed stays.
        </p>
      )}
      {next && <p>{next}</p>}
      {problem.eventId && (
        <p>
          Event <code>{problem.eventId}</code>
        </p>
      )}
      {children}
    </Notice>
  );
}
