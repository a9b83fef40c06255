'use client';

import { useWords } from '#words';
import { useState } from 'react';
import { CommandForm } from '@/app/_ui/command-form';
import { TextField } from '@/app/_ui/fields';
import { Notice } from '@/app/_ui/notice';
import { useCommand } from '@/app/_ui/use-command';
import { type Problem } from '@/lib/problems';
import { said } from '@/lib/words/said';
import styles from './account.module.css';
import { changePassword } from './actions';

/** The old password, the new one twice. Whether the two agree only the browser asks: a slip of the hand locks one out. */
export function PasswordForm({ email }: { email: string }) {
  const t = useWords();
  const [changed, setChanged] = useState(false);
  const command = useCommand({
    action: async ({ again, ...input }: Typed & { requestId: string }) => {
      setChanged(false);
      if (again !== input.newPassword) {
        const problem: Problem = { code: 'invalid', say: UNCHANGED, fields: { again: [NOT_THE_SAME] } };
        return { ok: false as const, problem };
      }
      return changePassword(input);
    },
    start: { password: '', newPassword: '', again: '' },
    onDone: () => setChanged(true),
  });
  return (
    <details className={styles.unfold}>
      <summary>{t('Change the password')}</summary>
      {changed && (
        <Notice tone="blue" title={t('The password is changed.')}>
          <p>{t('Every other session has ended.')}</p>
        </Notice>
      )}
      <CommandForm
        command={command}
        submit={t('Change the password')}
        pendingWords={t('Changing…')}
        label={t('Change the password')}
      >
        {/* So that a password manager knows whose it is. */}
        <input type="text" name="username" autoComplete="username" value={email} readOnly hidden />
        <TextField
          name="password"
          type="password"
          label={t('Your password now')}
          autoComplete="current-password"
        />
        <TextField
          name="newPassword"
          type="password"
          label={t('New password')}
          hint={t('At least 12 characters. Several words that have nothing to do with each other are good.')}
          autoComplete="new-password"
        />
        <TextField
          name="again"
          type="password"
          label={t('New password, once more')}
          autoComplete="new-password"
        />
      </CommandForm>
    </details>
  );
}

const UNCHANGED = said('Nothing was changed.');
const NOT_THE_SAME = said('The two are not the same. Type the new password twice.');

interface Typed {
  password: string;
  newPassword: string;
  again: string;
}
