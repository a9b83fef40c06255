'use client';

import { Say, useWords } from '#words';
import { useEffect, useState, useSyncExternalStore } from 'react';
import { LinkButton } from '../_ui/button';
import { CommandForm } from '../_ui/command-form';
import { TextField } from '../_ui/fields';
import { Moment } from '../_ui/moment';
import { Notice } from '../_ui/notice';
import { Card, PageTitle } from '../_ui/page';
import { ProblemNotice } from '../_ui/problem-notice';
import { useCommand } from '../_ui/use-command';
import { type LinkView } from '@/lib/people/by-link';
import { type Problem, type Result } from '@/lib/problems';
import { choose, lookAt } from './actions';

type Looked = Result<LinkView> | 'no-connection' | null;

/** Whose link it is, and a password to be chosen with it. */
export function JoinByLink() {
  const t = useWords();
  const token = useSyncExternalStore(onHash, tokenHere, () => null);
  const [looked, setLooked] = useState<{ token: string; answer: Looked } | null>(null);
  const [tries, setTries] = useState(0);
  const [done, setDone] = useState<LinkView | null>(null);
  useEffect(() => {
    if (token === null) return;
    let shown = true;
    lookAt(token).then(
      (answer) => shown && setLooked({ token, answer }),
      () => shown && setLooked({ token, answer: 'no-connection' }),
    );
    return () => {
      shown = false;
    };
  }, [token, tries]);

  if (done) return <Done takesSecondFactor={done.takesSecondFactor} />;
  const answer = looked && looked.token === token ? looked.answer : null;
  if (token === null || answer === null) {
    return (
      <>
        <PageTitle>{t('Choose a password')}</PageTitle>
        <p role="status">{t('Looking at your link…')}</p>
      </>
    );
  }
  if (answer === 'no-connection') {
    return (
      <>
        <PageTitle>{t('Choose a password')}</PageTitle>
        <Notice tone="amber" title={t('No connection.')}>
          <p>{t('The link is not used up. Try again when you are connected.')}</p>
          <button type="button" onClick={() => setTries((before) => before + 1)}>
            {t('Try again')}
          </button>
        </Notice>
      </>
    );
  }
  if (!answer.ok) return <Closed problem={answer.problem} />;
  return <Choose token={token} link={answer.value} onDone={() => setDone(answer.value)} />;
}

function Choose({ token, link, onDone }: { token: string; link: LinkView; onDone: () => void }) {
  const t = useWords();
  const command = useCommand<{ password: string; again: string }, unknown>({
    action: ({ password, again }) =>
      password === again
        ? choose({ token, password })
        : Promise.resolve({ ok: false as const, problem: differ(t('The two are not the same.')) }),
    start: { password: '', again: '' },
    onDone: () => {
      // The link is used up; it has no business in the history.
      window.history.replaceState(null, '', '/join');
      onDone();
    },
  });
  const { name, operatorName, email, expiresAt, zone, kind, takesSecondFactor } = link;
  return (
    <>
      <PageTitle
        lead={
          kind === 'invitation'
            ? t('{name}, you are invited to {operatorName}.', { name, operatorName })
            : t('{name}, choose a new password for {operatorName}.', { name, operatorName })
        }
      >
        {t('Choose a password')}
      </PageTitle>
      <Card>
        <CommandForm command={command} submit={t('Set the password')} pendingWords={t('Setting…')} wide>
          <p>
            <Say text="You sign in with <b>{email}</b>." parts={{ b: <strong /> }} values={{ email }} />
          </p>
          {takesSecondFactor && (
            <p>
              {t(
                'This link was made on the server’s console. With the password it takes away your second factor and your recovery codes, and ends all your sessions.',
              )}
            </p>
          )}
          {/* So that a browser keeps the new password for this address. */}
          <input type="email" value={email} autoComplete="username" readOnly hidden />
          <TextField
            name="password"
            type="password"
            label={t('New password')}
            hint={t('At least 12 characters. Several words with spaces between are good.')}
            autoComplete="new-password"
          />
          <TextField name="again" type="password" label={t('The same again')} autoComplete="new-password" />
        </CommandForm>
      </Card>
      <p>
        <Say
          text="The link works once, until {until}."
          values={{ until: <Moment at={expiresAt} zone={zone} /> }}
        />
      </p>
    </>
  );
}

function Done({ takesSecondFactor }: { takesSecondFactor: boolean }) {
  const t = useWords();
  return (
    <>
      <PageTitle>{t('Your password is set')}</PageTitle>
      <Notice tone="blue" title={t('Sign in with your e-mail address and the new password.')}>
        <p>{t('Other sessions of yours have ended.')}</p>
        {takesSecondFactor && (
          <p>
            {t(
              'Your second factor and your recovery codes are gone. Set up a new one under your account before you sign anything.',
            )}
          </p>
        )}
      </Notice>
      <LinkButton href="/sign-in" weight="main">
        {t('Sign in')}
      </LinkButton>
    </>
  );
}

function Closed({ problem }: { problem: Problem }) {
  const t = useWords();
  return (
    <>
      <PageTitle>{t('Choose a password')}</PageTitle>
      <ProblemNotice problem={problem}>
        <LinkButton href="/sign-in">{t('Sign in')}</LinkButton>
      </ProblemNotice>
    </>
  );
}

const differ = (say: string): Problem => ({ code: 'invalid', say, fields: { again: [say] } });

const tokenHere = (): string => window.location.hash.slice(1);

function onHash(changed: () => void) {
  window.addEventListener('hashchange', changed);
  return () => window.removeEventListener('hashchange', changed);
}
