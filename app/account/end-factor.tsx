'use client';

import { useWords } from '#words';
import { CommandForm } from '@/app/_ui/command-form';
import { TextField } from '@/app/_ui/fields';
import { useCommand } from '@/app/_ui/use-command';
import styles from './account.module.css';
import { endFactor } from './actions';

/** Ends one factor; the password is asked, so that an open screen is not enough. */
export function EndFactor({ id, name, last }: { id: string; name: string; last: boolean }) {
  const t = useWords();
  const command = useCommand({
    action: ({ requestId, password }: { requestId: string; password: string }) =>
      endFactor({ requestId, password, factorId: id }),
    start: { password: '' },
  });
  return (
    <details className={styles.unfold}>
      <summary aria-label={t('End it: {name}', { name })}>{t('End it')}</summary>
      <CommandForm
        command={command}
        submit={t('End it')}
        pendingWords={t('Ending…')}
        label={t('End it: {name}', { name })}
      >
        <p>
          {last
            ? t(
                'It is your last one: from then on your password alone signs you in, and the recovery codes end.',
              )
            : t('It signs you in no more.')}
        </p>
        <TextField name="password" type="password" label={t('Your password')} autoComplete="off" />
      </CommandForm>
    </details>
  );
}
