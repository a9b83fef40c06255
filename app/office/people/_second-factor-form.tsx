'use client';

import Link from '@/app/_ui/link';
import { Say, useWords } from '#words';
import { useState } from 'react';
import { CommandForm } from '@/app/_ui/command-form';
import { TextField } from '@/app/_ui/fields';
import { Notice } from '@/app/_ui/notice';
import { Tag } from '@/app/_ui/tag';
import { useCommand } from '@/app/_ui/use-command';
import { askForSecondFactor } from './_second-factor-actions';

/** Switches the setting over. Who has no second factor is told what to do first. */
export function SecondFactorForm({ asked, haveOne }: { asked: boolean; haveOne: boolean }) {
  const t = useWords();
  const [changed, setChanged] = useState(false);
  const command = useCommand<{ password: string }, unknown>({
    action: (typed) => askForSecondFactor({ ...typed, signersNeedSecondFactor: !asked }),
    start: { password: '' },
    onDone: () => setChanged(true),
  });
  return (
    <>
      <p>
        <Tag tone={asked ? 'green' : 'grey'} size="small">
          {asked ? t('Asked') : t('Not asked')}
        </Tag>
      </p>
      {changed && (
        <Notice
          tone="blue"
          title={asked ? t('From now on it is asked.') : t('From now on it is not asked.')}
        />
      )}
      <p>
        {asked
          ? t(
              'Nobody can sign from a session that was begun with the password alone: no release, no deferral, no return to service.',
            )
          : t(
              'Whoever learns a password can sign in that person’s name. With this on, signing also takes a code of an app or a passkey.',
            )}
      </p>
      {!asked && !haveOne ? (
        <p>
          <Say
            text="<a>Set up a second factor of your own</a> first; then you can ask it of the others."
            parts={{ a: <Link href="/account#second-factor" /> }}
          />
        </p>
      ) : (
        <CommandForm
          command={command}
          submit={asked ? t('Ask it no more') : t('Ask it of everybody who signs')}
          label={t('Second factor of those who sign')}
        >
          {!asked && (
            <p>
              {t(
                'Everybody is told at once on every screen. Whoever has none yet can do everything but sign until it is set up.',
              )}
            </p>
          )}
          <TextField name="password" type="password" label={t('Your password')} autoComplete="off" />
        </CommandForm>
      )}
    </>
  );
}
