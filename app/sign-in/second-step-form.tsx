'use client';

import { useWords } from '#words';
import { useEffect, useRef, useState } from 'react';
import { useForm } from 'react-hook-form';
import { type SecondStep } from '@/lib/access/sign-in';
import { said } from '@/lib/words/said';
import { knock, type KnockAnswer, type Shown } from '../_session/knock';
import { Button, ButtonRow } from '../_ui/button';
import { CommandForm } from '../_ui/command-form';
import { TextField } from '../_ui/fields';
import { Notice } from '../_ui/notice';
import { HELD_UP_WORDS } from './held-up';
import { NO_OTHER_MANAGER } from './no-other-manager';
import styles from './sign-in.module.css';

/** Address and password were right; they are sent again with what is shown here. Nobody is signed in before that. */
export interface Asked {
  readonly email: string;
  readonly password: string;
  readonly step: SecondStep;
}

interface Props {
  readonly asked: Asked;
  readonly onIn: () => void;
  /** A passkey's question can be answered once; another try needs a new one. */
  readonly onAgain: () => Promise<void>;
  readonly onBack: () => void;
}

type Failed = Exclude<KnockAnswer, 'in' | 'second-factor'> | 'no-passkey';

/** The second step: a code, or a passkey. */
export function SecondStepForm({ asked, onIn, onAgain, onBack }: Props) {
  const t = useWords();
  const form = useForm({ defaultValues: { code: '' } });
  const heading = useRef<HTMLHeadingElement>(null);
  const [failed, setFailed] = useState<Failed | null>(null);
  const [pending, setPending] = useState(false);
  const { app, recoveryCodes, passkey } = asked.step;
  const codes = app || recoveryCodes;
  useEffect(() => heading.current?.focus(), []);

  async function show(shown: Shown) {
    const answer = await knock(asked.email, asked.password, shown);
    if (answer === 'in') return onIn();
    form.resetField('code');
    setFailed(answer === 'second-factor' ? 'refused' : answer);
    if ('passkey' in shown) await onAgain();
  }

  async function busy(work: () => Promise<void>) {
    if (pending) return;
    setFailed(null);
    setPending(true);
    try {
      await work();
    } finally {
      setPending(false);
    }
  }

  const showPasskey = () =>
    busy(async () => {
      if (!passkey) return;
      const { startAuthentication } = await import('@simplewebauthn/browser');
      const answer = await startAuthentication({ optionsJSON: passkey }).catch(() => null);
      if (answer) await show({ passkey: answer });
      else setFailed('no-passkey');
    });

  const send = form.handleSubmit(({ code }) => {
    if (code.trim()) return show({ code: code.trim() });
    form.setError('code', { message: t('Enter the code.') }, { shouldFocus: true });
    return undefined;
  });

  async function submit(event?: React.FormEvent) {
    event?.preventDefault();
    form.clearErrors();
    await busy(() => send(event));
  }

  return (
    <div className={styles.step}>
      <h2 ref={heading} tabIndex={-1}>
        {t('Second step')}
      </h2>
      {failed && (
        <Notice tone={failed === 'refused' ? 'red' : 'amber'} title={t(WORDS[failed].title)}>
          <p>{t(WORDS[failed].then)}</p>
          {failed === 'refused' && <p>{t(NO_OTHER_MANAGER)}</p>}
        </Notice>
      )}
      {passkey && (
        <ButtonRow>
          <Button weight="main" wide onClick={() => void showPasskey()} aria-disabled={pending || undefined}>
            {t('Use your passkey')}
          </Button>
        </ButtonRow>
      )}
      {codes && (
        <CommandForm
          command={{ form, submit, pending, problem: null, unsent: null }}
          submit={t('Sign in with the code')}
          pendingWords={t('Signing in…')}
          label={t('Second step')}
          wide
        >
          <TextField
            name="code"
            label={app ? t('Code') : t('Recovery code')}
            hint={hintFor(app, recoveryCodes, t)}
            autoComplete="one-time-code"
            autoCapitalize="none"
            spellCheck={false}
          />
        </CommandForm>
      )}
      <ButtonRow>
        <Button weight="quiet" onClick={onBack}>
          {t('Back to address and password')}
        </Button>
      </ButtonRow>
    </div>
  );
}

function hintFor(app: boolean, recoveryCodes: boolean, t: ReturnType<typeof useWords>): string {
  if (!app) return t('One of the recovery codes you wrote down. Each works once.');
  return recoveryCodes
    ? t('The six digits your authenticator app shows now, or one of your recovery codes.')
    : t('The six digits your authenticator app shows now.');
}

const WORDS: Record<Failed, { title: string; then: string }> = {
  refused: {
    title: said('That was not taken.'),
    then: said(
      'A code of the app works once and for about a minute: type the newest one. After eight wrong tries the account is locked for five minutes, even for the right code. If the phone is lost, use a recovery code, or ask a manager to reset your second factor.',
    ),
  },
  'no-passkey': {
    title: said('The browser showed no passkey.'),
    then: said('Try again, or use a code. A passkey lives on the device it was made on.'),
  },
  'held-up': HELD_UP_WORDS,
  'try-again': {
    title: said('The server could not check this just now.'),
    then: said('It says nothing about your code. Try again in a moment.'),
  },
  'no-connection': {
    title: said('Not sent: no connection.'),
    then: said('Try again when you are connected; a newer code may be shown by then.'),
  },
};
