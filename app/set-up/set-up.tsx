'use client';

import { Say, useWords } from '#words';
import { useEffect, useState, useSyncExternalStore } from 'react';
import { Button, LinkButton } from '@/app/_ui/button';
import { Notice } from '@/app/_ui/notice';
import { type Problem } from '@/lib/problems';
import { doesTokenOpen } from './actions';
import { SetUpForm } from './set-up-form';

type Answer = 'asking' | 'open' | 'no-connection' | Problem;

/** Asks first whether the token opens, so that nobody fills in a form for nothing. */
export function SetUp() {
  const t = useWords();
  const token = useSyncExternalStore(onHashChange, tokenInAddress, () => null);
  const [answer, setAnswer] = useState<{ token: string; is: Answer } | null>(null);
  const [tries, setTries] = useState(0);

  useEffect(() => {
    if (token === null) return;
    let gone = false;
    doesTokenOpen(token).then(
      (result) => gone || setAnswer({ token, is: result.ok ? 'open' : result.problem }),
      () => gone || setAnswer({ token, is: 'no-connection' }),
    );
    return () => {
      gone = true;
    };
  }, [token, tries]);

  const is: Answer = answer !== null && answer.token === token ? answer.is : 'asking';
  if (token === null || is === 'asking') return <p role="status">{t('Looking at the address…')}</p>;
  if (is === 'open') return <SetUpForm token={token} />;
  if (is === 'no-connection' || is.code !== 'link_closed') {
    return (
      <Notice tone="amber" title={is === 'no-connection' ? t('No connection.') : t(is.say)}>
        <Button onClick={() => setTries(tries + 1)}>{t('Try again')}</Button>
      </Notice>
    );
  }
  return (
    <Notice tone="amber" title={t(is.say)}>
      <p>
        <Say
          text="Whoever runs the server gets a new one: start it again with <code>npm start</code>, or run <code>npm run set-up-token</code>. Open the whole address it prints, with everything behind the #."
          parts={{ code: <code /> }}
        />
      </p>
      <p>{t('If the school is set up already, sign in.')}</p>
      <LinkButton href="/sign-in">{t('Sign in')}</LinkButton>
    </Notice>
  );
}

const tokenInAddress = (): string => window.location.hash.slice(1);
const onHashChange = (changed: () => void) => {
  window.addEventListener('hashchange', changed);
  return () => window.removeEventListener('hashchange', changed);
};
