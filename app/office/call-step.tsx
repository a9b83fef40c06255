'use client';

import { useWords } from '#words';
import { useRouter } from 'next/navigation';
import { ButtonRow, SubmitButton } from '@/app/_ui/button';
import { Notice } from '@/app/_ui/notice';
import { ProblemNotice } from '@/app/_ui/problem-notice';
import { useCommand } from '@/app/_ui/use-command';
import { callStep } from './actions';

/**
 * One press that calls a step done, or takes that back; it can be pressed again the other way at any time. `then` is where
 * one goes on to.
 */
export function CallStep(props: {
  step: string;
  done: boolean;
  words: string;
  /** The step's name, for whoever cannot see beside what the button stands. */
  name: string;
  weight?: 'main' | 'plain' | 'quiet';
  then?: string;
}) {
  const t = useWords();
  const router = useRouter();
  const { step, done, words, name, weight = 'plain', then } = props;
  const command = useCommand<Record<string, never>, unknown>({
    action: ({ requestId }) => callStep({ requestId, step, done }),
    start: {},
    onDone: () => (then ? router.push(then) : router.refresh()),
  });
  return (
    <form noValidate method="post" onSubmit={command.submit} aria-label={`${name}: ${words}`}>
      {command.problem && <ProblemNotice problem={command.problem} />}
      {command.unsent && <Notice tone="amber" title={t('Not sent. Press again; it is written only once.')} />}
      <ButtonRow>
        <SubmitButton weight={weight} pending={command.pending}>
          {words}
        </SubmitButton>
      </ButtonRow>
    </form>
  );
}
