'use client';

import { useWords } from '#words';
import { useState } from 'react';
import { CommandForm } from '@/app/_ui/command-form';
import { TextField } from '@/app/_ui/fields';
import { Notice } from '@/app/_ui/notice';
import { useCommand } from '@/app/_ui/use-command';
import { ask } from './actions';

/** Asks for the address, and says the same whatever it is. */
export function AskForm() {
  const t = useWords();
  const [asked, setAsked] = useState(false);
  const command = useCommand<{ email: string }, null>({
    action: ask,
    start: { email: '' },
    onDone: () => setAsked(true),
  });
  if (asked) {
    return (
      <Notice tone="blue" title={t('If somebody signs in with that address, a letter is on its way.')}>
        <p>
          {t(
            'Its link works once, for a day. Nothing there after ten minutes? Look under spam, then ask a manager.',
          )}
        </p>
      </Notice>
    );
  }
  return (
    <CommandForm command={command} submit={t('Send me a link')} wide>
      <p>{t('We send a link by which you choose a new password.')}</p>
      <TextField
        name="email"
        type="email"
        label={t('E-mail address')}
        autoComplete="username"
        autoCapitalize="none"
        spellCheck={false}
      />
    </CommandForm>
  );
}
