'use client';

import { useWords } from '#words';
import { useState } from 'react';
import { CommandForm } from '@/app/_ui/command-form';
import { TextField } from '@/app/_ui/fields';
import { Notice } from '@/app/_ui/notice';
import { useCommand } from '@/app/_ui/use-command';
import styles from './account.module.css';
import { makeCodes } from './actions';
import { CodesShown } from './codes-shown';

/** How many recovery codes are left, and new ones in their place. */
export function NewCodes({ left }: { left: number }) {
  const t = useWords();
  const [codes, setCodes] = useState<readonly string[] | 'shown-before' | null>(null);
  const command = useCommand({
    action: makeCodes,
    start: { password: '' },
    onDone: (made) => setCodes(made.codes ?? 'shown-before'),
  });
  return (
    <div className={styles.steps}>
      <p>
        {t('{left, plural, one {# recovery code is left.} other {# recovery codes are left.}}', { left })}
      </p>
      {codes === 'shown-before' && (
        <Notice tone="amber" title={t('The codes were made already and cannot be shown again.')}>
          <p>{t('If nobody has them, make new ones.')}</p>
        </Notice>
      )}
      {Array.isArray(codes) && <CodesShown codes={codes} />}
      <details className={styles.unfold}>
        <summary>{t('Make new recovery codes')}</summary>
        <CommandForm
          command={command}
          submit={t('Make new recovery codes')}
          pendingWords={t('Making…')}
          label={t('Make new recovery codes')}
        >
          <p>{t('The old ones end.')}</p>
          <TextField name="password" type="password" label={t('Your password')} autoComplete="off" />
        </CommandForm>
      </details>
    </div>
  );
}
