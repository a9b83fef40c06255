'use client';

import { useWords } from '#words';
import { useState } from 'react';
import { CommandForm } from '@/app/_ui/command-form';
import { TextField } from '@/app/_ui/fields';
import { Notice } from '@/app/_ui/notice';
import { useCommand } from '@/app/_ui/use-command';
import { type AddedWebhook } from '@/lib/feeds/add-webhook';
import { EVENTS } from '@/lib/feeds/events';
import { addHook } from './actions';
import { CheckList } from './check-list';
import styles from './feeds.module.css';
import { ShownOnce } from './shown-once';

interface Typed {
  name: string;
  url: string;
  events: string[];
}

const START: Typed = { name: '', url: '', events: [] };
const CHOICES = EVENTS.map(({ name, says }) => ({ value: name, label: name, says }));

/** Adds a webhook and shows its signing secret, this once. */
export function AddWebhook() {
  const t = useWords();
  const [added, setAdded] = useState<AddedWebhook | null>(null);
  const command = useCommand({
    action: async (input: Typed & { requestId: string }) => {
      setAdded(null);
      return addHook(input);
    },
    start: START,
    onDone: setAdded,
  });
  return (
    <>
      {added?.secret && (
        <ShownOnce title={t('The webhook is added.')} label={t('Its signing secret')} text={added.secret}>
          <p>{t('It is shown this once. The receiver checks with it that a message came from here.')}</p>
        </ShownOnce>
      )}
      {added && added.secret === null && (
        <Notice tone="amber" title={t('This webhook was added already.')}>
          <p>{t('Its secret was shown then. If nobody has it, end the webhook and add it again.')}</p>
        </Notice>
      )}
      <details className={styles.unfold}>
        <summary>{t('Add a webhook')}</summary>
        <CommandForm
          command={command}
          submit={t('Add the webhook')}
          pendingWords={t('Adding…')}
          label={t('Add a webhook')}
        >
          <TextField
            name="name"
            label={t('Who is told')}
            hint={t('Such as “Accounts”.')}
            maxLength={80}
            autoComplete="off"
          />
          <TextField
            name="url"
            type="url"
            label={t('Address')}
            hint={t('https, on the public internet, port 443 or 8443.')}
            maxLength={500}
            autoComplete="off"
            spellCheck={false}
          />
          <CheckList name="events" label={t('What is told')} choices={CHOICES} />
        </CommandForm>
      </details>
    </>
  );
}
