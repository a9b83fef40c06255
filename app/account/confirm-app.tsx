'use client';

import { useWords } from '#words';
import { useEffect, useRef } from 'react';
import { CommandForm } from '@/app/_ui/command-form';
import { TextField } from '@/app/_ui/fields';
import { useCommand } from '@/app/_ui/use-command';
import { QrDrawing } from '@/app/office/people/qr-drawing';
import { type BegunFactor } from '@/lib/access/second-factor/begin';
import { type ConfirmedFactor } from '@/lib/access/second-factor/confirm';
import styles from './account.module.css';
import { confirm } from './actions';

interface Props {
  readonly begun: Extract<BegunFactor, { kind: 'totp' }>;
  readonly onDone: (confirmed: ConfirmedFactor) => void;
}

/** The secret as a picture and as text, then the first code: before that it counts for nothing. */
export function ConfirmApp({ begun: { factorId, secret, address }, onDone }: Props) {
  const t = useWords();
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const command = useCommand({
    action: (input: { requestId: string; name: string; code: string }) =>
      confirm({ ...input, kind: 'totp', factorId }),
    start: { name: t('Authenticator app'), code: '' },
    onDone,
  });
  return (
    <div className={styles.steps}>
      <h3 ref={heading} tabIndex={-1}>
        {t('Scan this with your app')}
      </h3>
      <QrDrawing text={address} label={t('The secret as a code to scan')} />
      <p>
        {t('Or type this into the app (time based, six digits, 30 seconds):')}{' '}
        <code className={styles.secret}>{secret.replace(/(.{4})(?=.)/g, '$1 ')}</code>
      </p>
      <CommandForm command={command} submit={t('Check the code')} label={t('Check the code')}>
        <TextField
          name="code"
          label={t('The code the app shows now')}
          autoComplete="one-time-code"
          maxLength={12}
        />
        <TextField
          name="name"
          label={t('What you call it')}
          hint={t('So that you know it again when a phone is lost.')}
          maxLength={60}
          autoComplete="off"
        />
      </CommandForm>
    </div>
  );
}
