'use client';

import { useWords } from '#words';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '../_ui/button';
import { CommandForm } from '../_ui/command-form';
import { TextArea } from '../_ui/fields';
import { useCommand } from '../_ui/use-command';
import { withdraw } from './actions';
import styles from './flight.module.css';

/** Takes a release back, with words. From the phone the pilot in command declines; it is the same act. */
export function WithdrawForm({ releaseId, isPilot }: { releaseId: string; isPilot: boolean }) {
  const t = useWords();
  const router = useRouter();
  const [isOpen, setOpen] = useState(false);
  const command = useCommand({
    action: ({ words, requestId }: { words: string; requestId: string }) =>
      withdraw({ requestId, releaseId, words }),
    start: { words: '' },
    onDone: () => router.refresh(),
  });
  const words = isPilot
    ? { open: t('I do not take it'), submit: t('Decline the flight'), label: t('Why you do not take it') }
    : { open: t('Withdraw the release'), submit: t('Withdraw it'), label: t('Why it is withdrawn') };
  if (!isOpen) {
    return (
      <div className={styles.acts}>
        <div>
          <Button onClick={() => setOpen(true)}>{words.open}</Button>
        </div>
      </div>
    );
  }
  return (
    <CommandForm
      command={command}
      submit={words.submit}
      pendingWords={t('Sending…')}
      label={words.submit}
      beside={
        <Button weight="quiet" onClick={() => setOpen(false)}>
          {t('Not now')}
        </Button>
      }
    >
      <TextArea
        name="words"
        label={words.label}
        hint={isPilot ? t('The desk reads it at once.') : t('The pilot reads it at once.')}
        rows={3}
        maxLength={500}
      />
    </CommandForm>
  );
}
