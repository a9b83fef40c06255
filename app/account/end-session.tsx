'use client';

import { useWords } from '#words';
import { AskFirst } from '@/app/desk/feeds/ask-first';
import { endSession } from './actions';

export function EndOne({ id, device }: { id: string; device: string }) {
  const t = useWords();
  return (
    <AskFirst
      label={t('End this session')}
      name={device}
      question={t(
        'End the session of {device}? It is signed out at its next step. What is unsent on a phone stays on it.',
        {
          device,
        },
      )}
      yes={t('Yes, end it')}
      no={t('Keep it')}
      action={({ requestId }) => endSession({ requestId, which: 'one', sessionId: id })}
    />
  );
}

export function EndOthers() {
  const t = useWords();
  return (
    <AskFirst
      label={t('End all others')}
      name={t('sessions')}
      question={t('End every session but this one?')}
      yes={t('Yes, end them')}
      no={t('Keep them')}
      action={({ requestId }) => endSession({ requestId, which: 'others' })}
    />
  );
}
