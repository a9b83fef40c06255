'use client';

import { useWords } from '#words';
import { said } from '@/lib/words/said';
import { useState } from 'react';
import { useForm } from 'react-hook-form';
import { knock, type KnockAnswer } from '../_session/knock';
import { CommandForm } from '../_ui/command-form';
import { TextField } from '../_ui/fields';
import { tellSessionChanged } from '../_ui/live/line';
import { Notice } from '../_ui/notice';
import { secondStep } from './actions';
import { HELD_UP_WORDS } from './held-up';
import { SecondStepForm, type Asked } from './second-step-form';

/** Address and password. The address stays whatever happens; a wrong password is emptied, a right one never is. */
export function SignInForm({ next }: { next: string }) {
  const t = useWords();
  const form = useForm({ defaultValues: { email: '', password: '' } });
  const [answer, setAnswer] = useState<Failed | null>(null);
  const [asked, setAsked] = useState<Asked | null>(null);
  const [pending, setPending] = useState(false);

  const send = form.handleSubmit(async ({ email, password }) => {
    const missing = { email: !email.trim(), password: !password };
    if (missing.password)
      form.setError('password', { message: t('Enter your password.') }, { shouldFocus: true });
    if (missing.email)
      form.setError('email', { message: t('Enter your e-mail address.') }, { shouldFocus: true });
    if (missing.email || missing.password) return;
    setPending(true);
    const given = await knock(email, password);
    if (given === 'in') {
      comeIn();
      return;
    }
    if (given === 'second-factor') await goOn(email, password);
    else fail(given);
    setPending(false);
  });

  function comeIn() {
    tellSessionChanged();
    // A full load: the server draws everything anew for the person who has just come in.
    window.location.assign(next);
  }

  function fail(why: Failed) {
    if (why === 'refused') form.resetField('password');
    setAnswer(why);
  }

  /** The password was right; somebody still is not signed in. */
  async function goOn(email: string, password: string) {
    const step = await secondStep({ email, password }).catch(() => 'no-answer' as const);
    if (step === 'no-answer') fail(navigator.onLine ? 'try-again' : 'no-connection');
    else if (step === null) fail('refused');
    else setAsked({ email, password, step });
  }

  async function submit(event?: React.FormEvent) {
    event?.preventDefault();
    if (pending) return;
    setAnswer(null);
    form.clearErrors();
    await send(event);
  }

  if (asked) {
    return (
      <SecondStepForm
        asked={asked}
        onIn={comeIn}
        onAgain={() => goOn(asked.email, asked.password)}
        onBack={() => setAsked(null)}
      />
    );
  }
  return (
    <CommandForm
      command={{ form, submit, pending, problem: null, unsent: null }}
      submit={t('Sign in')}
      pendingWords={t('Signing in…')}
      wide
    >
      {answer && (
        <Notice tone={answer === 'refused' ? 'red' : 'amber'} title={t(WORDS[answer].title)}>
          <p>{t(WORDS[answer].then)}</p>
        </Notice>
      )}
      <TextField
        name="email"
        label={t('E-mail address')}
        type="email"
        autoComplete="username"
        autoCapitalize="none"
        spellCheck={false}
      />
      <TextField name="password" label={t('Password')} type="password" autoComplete="current-password" />
    </CommandForm>
  );
}

type Failed = Exclude<KnockAnswer, 'in' | 'second-factor'>;

const WORDS: Record<Failed, { title: string; then: string }> = {
  refused: {
    title: said('That address and password do not fit together.'),
    then: said(
      'Check both and try again. After eight wrong passwords an address is locked for five minutes, even for the right one; then wait. A manager here can tell you which address you are listed with.',
    ),
  },
  'held-up': HELD_UP_WORDS,
  'try-again': {
    title: said('The server could not check this just now.'),
    then: said('It says nothing about your password. Try again in a moment.'),
  },
  'no-connection': {
    title: said('Not sent: no connection.'),
    then: said('What you typed is still here. Try again when you are connected.'),
  },
};
