'use client';

import { useState } from 'react';
import { useForm } from 'react-hook-form';
import { knock, type KnockAnswer } from '../_session/knock';
import { CommandForm } from '../_ui/command-form';
import { TextField } from '../_ui/fields';
import { tellSessionChanged } from '../_ui/live/line';
import { Notice } from '../_ui/notice';

/** Address and password. The address stays whatever happens; a wrong password is emptied, a right one never is. */
export function SignInForm({ next }: { next: string }) {
  const form = useForm({ defaultValues: { email: '', password: '' } });
  const [answer, setAnswer] = useState<Exclude<KnockAnswer, 'in'> | null>(null);
  const [pending, setPending] = useState(false);

  const send = form.handleSubmit(async ({ email, password }) => {
    const missing = { email: !email.trim(), password: !password };
    if (missing.password)
      form.setError('password', { message: 'Enter your password.' }, { shouldFocus: true });
    if (missing.email)
      form.setError('email', { message: 'Enter your e-mail address.' }, { shouldFocus: true });
    if (missing.email || missing.password) return;
    setPending(true);
    const given = await knock(email, password);
    if (given === 'in') {
      tellSessionChanged();
      // A full load: the server draws everything anew for the person who has just come in.
      window.location.assign(next);
      return;
    }
    if (given === 'refused') form.resetField('password');
    setAnswer(given);
    setPending(false);
  });

  async function submit(event?: React.FormEvent) {
    event?.preventDefault();
    if (pending) return;
    setAnswer(null);
    form.clearErrors();
    await send(event);
  }

  return (
    <CommandForm
      command={{ form, submit, pending, problem: null, unsent: null }}
      submit="Sign in"
      pendingWords="Signing in…"
      wide
    >
      {answer && (
        <Notice tone={answer === 'refused' ? 'red' : 'amber'} title={WORDS[answer].title}>
          <p>{WORDS[answer].then}</p>
        </Notice>
      )}
      <TextField
        name="email"
        label="E-mail address"
        type="email"
        autoComplete="username"
        autoCapitalize="none"
        spellCheck={false}
      />
      <TextField name="password" label="Password" type="password" autoComplete="current-password" />
    </CommandForm>
  );
}

const WORDS: Record<Exclude<KnockAnswer, 'in'>, { title: string; then: string }> = {
  refused: {
    title: 'That address and password do not fit together.',
    then: 'Check both and try again. After eight wrong passwords an address is locked for five minutes, even for the right one; then wait. A manager here can tell you which address you are listed with.',
  },
  'try-again': {
    title: 'The server could not check this just now.',
    then: 'It says nothing about your password. Try again in a moment.',
  },
  'no-connection': {
    title: 'Not sent: no connection.',
    then: 'What you typed is still here. Try again when you are connected.',
  },
};
