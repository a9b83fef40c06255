'use client';

import { useWords } from '#words';
import { useState } from 'react';
import { CommandForm } from '@/app/_ui/command-form';
import { TextField } from '@/app/_ui/fields';
import { Notice } from '@/app/_ui/notice';
import { useCommand } from '@/app/_ui/use-command';
import { type BegunFactor } from '@/lib/access/second-factor/begin';
import { type ConfirmedFactor } from '@/lib/access/second-factor/confirm';
import { type Result } from '@/lib/problems';
import { said } from '@/lib/words/said';
import { confirm } from './actions';

interface Props {
  readonly begun: Extract<BegunFactor, { kind: 'passkey' }>;
  readonly onDone: (confirmed: ConfirmedFactor) => void;
}

/** A name, then the browser asks for finger, face, number or key. */
export function ConfirmPasskey({ begun: { options }, onDone }: Props) {
  const t = useWords();
  const [noPasskey, setNoPasskey] = useState(false);
  const command = useCommand({
    action: async ({ requestId, name }: { requestId: string; name: string }) => {
      setNoPasskey(false);
      const answer = await ask(options);
      if (!answer) {
        setNoPasskey(true);
        return NONE_MADE;
      }
      return confirm({ requestId, kind: 'passkey', name, answer });
    },
    start: { name: t('Passkey of this device') },
    onDone,
  });
  return (
    <CommandForm
      command={command}
      submit={t('Make the passkey')}
      pendingWords={t('Your browser asks you now…')}
      label={t('Make the passkey')}
    >
      {noPasskey && (
        <Notice tone="blue" title={t('It was left, took too long, or this device is set up already.')}>
          <p>{t('Try again, or take the authenticator app.')}</p>
        </Notice>
      )}
      <TextField
        name="name"
        label={t('What you call it')}
        hint={t('So that you know it again when a phone is lost.')}
        maxLength={60}
        autoComplete="off"
      />
    </CommandForm>
  );
}

const NONE_MADE: Result<never> = {
  ok: false,
  problem: { code: 'invalid', say: said('The browser made no passkey.') },
};

/** Only who adds a passkey loads what asks for it. */
async function ask(options: Props['begun']['options']): Promise<unknown> {
  const { startRegistration } = await import('@simplewebauthn/browser');
  return startRegistration({ optionsJSON: options }).catch(() => null);
}
