'use client';

import { useWords } from '#words';
import { useState } from 'react';
import { Button, ButtonRow } from '@/app/_ui/button';
import { CommandForm } from '@/app/_ui/command-form';
import { ChoiceGroup, TextField } from '@/app/_ui/fields';
import { Notice } from '@/app/_ui/notice';
import { useCommand } from '@/app/_ui/use-command';
import { type BegunFactor } from '@/lib/access/second-factor/begin';
import { type ConfirmedFactor } from '@/lib/access/second-factor/confirm';
import styles from './account.module.css';
import { begin } from './actions';
import { CodesShown } from './codes-shown';
import { ConfirmApp } from './confirm-app';
import { ConfirmPasskey } from './confirm-passkey';

/** Sets up a factor: password and kind, then the proof, then the recovery codes when it is the first. */
export function AddFactor() {
  const t = useWords();
  const [begun, setBegun] = useState<BegunFactor | null>(null);
  const [done, setDone] = useState<ConfirmedFactor | null>(null);
  const command = useCommand({
    action: begin,
    start: { kind: '', password: '' },
    onDone: (value) => {
      setDone(null);
      setBegun(value);
    },
  });
  const finish = (confirmed: ConfirmedFactor) => {
    setBegun(null);
    setDone(confirmed);
  };
  return (
    <div className={styles.steps}>
      {done && (
        <Notice tone="blue" title={t('It counts from your next sign-in on.')}>
          {done.codes === null && <p>{t('Your recovery codes stay as they are.')}</p>}
        </Notice>
      )}
      {done?.codes && <CodesShown codes={done.codes} />}
      {begun ? (
        <>
          {begun.kind === 'totp' ? (
            <ConfirmApp begun={begun} onDone={finish} />
          ) : (
            <ConfirmPasskey begun={begun} onDone={finish} />
          )}
          <ButtonRow>
            <Button weight="quiet" onClick={() => setBegun(null)}>
              {t('Leave it')}
            </Button>
          </ButtonRow>
        </>
      ) : (
        <details className={styles.unfold}>
          <summary>{t('Set up a second factor')}</summary>
          <CommandForm command={command} submit={t('Go on')} label={t('Set up a second factor')}>
            <ChoiceGroup
              name="kind"
              label={t('What you use')}
              choices={[
                {
                  value: 'totp',
                  label: t('Authenticator app'),
                  hint: t('Any app that shows six digits, new every 30 seconds. Works without a network.'),
                },
                {
                  value: 'passkey',
                  label: t('Passkey'),
                  hint: t('Finger, face or number of this device, or a security key.'),
                },
              ]}
            />
            <TextField
              name="password"
              type="password"
              label={t('Your password')}
              hint={t('Asked again, because it decides who can sign in your name.')}
              autoComplete="off"
            />
          </CommandForm>
        </details>
      )}
    </div>
  );
}
