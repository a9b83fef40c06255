'use client';

import { useWords } from '#words';
import { again, end, endHook } from './actions';
import { AskFirst } from './ask-first';

interface OfOne {
  readonly id: string;
  readonly name: string;
}

export function EndKey({ id, name }: OfOne) {
  const t = useWords();
  return (
    <AskFirst
      label={t('End this key')}
      name={name}
      question={t(
        'End the key “{name}”? Programs that use it are refused from then on. It cannot be undone.',
        { name },
      )}
      yes={t('Yes, end it')}
      no={t('Keep it')}
      action={({ requestId }) => end({ requestId, keyId: id })}
    />
  );
}

export function EndWebhook({ id, name }: OfOne) {
  const t = useWords();
  return (
    <AskFirst
      label={t('End this webhook')}
      name={name}
      question={t('End the webhook “{name}”? Nothing more is sent there, not even what waits.', { name })}
      yes={t('Yes, end it')}
      no={t('Keep it')}
      action={({ requestId }) => endHook({ requestId, webhookId: id })}
    />
  );
}

export function SendAgain({ id, name }: OfOne) {
  const t = useWords();
  return (
    <AskFirst
      label={t('Send again')}
      name={name}
      question={t('Send it once more? It keeps its number, so that the receiver can tell a repeat.')}
      yes={t('Yes, send it')}
      no={t('Leave it')}
      action={({ requestId }) => again({ requestId, deliveryId: id })}
    />
  );
}
