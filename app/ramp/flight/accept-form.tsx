'use client';

import { English, useWords } from '#words';
import { useRouter } from 'next/navigation';
import { CommandForm } from '../../_ui/command-form';
import { Checkbox } from '../../_ui/fields';
import { useCommand } from '../../_ui/use-command';
import { accept } from '../../_flight/actions';
import { SigningPassword } from '../../bench/forms/signing-password';
import own from './flight.module.css';

/** The pilot in command signs, word by word what stands here, for the answer that stands above. */
export function AcceptForm(props: {
  releaseId: string;
  answerHash: string;
  hasLimits: boolean;
  statement: string;
  name: string;
}) {
  const t = useWords();
  const { releaseId, answerHash, hasLimits, statement, name } = props;
  const router = useRouter();
  const command = useCommand({
    action: (typed: Typed & { requestId: string }) =>
      accept({
        requestId: typed.requestId,
        releaseId,
        answerHash,
        limitsRead: typed.limitsRead,
        statementConfirmed: typed.statementConfirmed,
        password: typed.password,
      }),
    start: START,
    onDone: () => router.refresh(),
  });
  return (
    <CommandForm
      command={command}
      submit={t('I have read it and take the aircraft')}
      pendingWords={t('Signing…')}
      label={t('Take the aircraft')}
      wide
    >
      <blockquote className={own.statement}>
        <English>{statement}</English>
      </blockquote>
      {hasLimits && <Checkbox name="limitsRead" label={t('I have read the limits above')} />}
      <Checkbox name="statementConfirmed" label={t('I say what stands here')} />
      <SigningPassword name={name} />
    </CommandForm>
  );
}

const START = { limitsRead: false, statementConfirmed: false, password: '' };
type Typed = typeof START;
