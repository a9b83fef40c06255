'use client';

import { useWords } from '#words';
import { useRouter } from 'next/navigation';
import { useEffect, useRef, useState } from 'react';
import { queue, useIsOutboxRead, useOutbox } from '../_phone/outbox';
import { photoMessages, usePhotos } from '../_phone/photos';
import { Button } from '../../_ui/button';
import { TakePhotos } from './take-photos';

/** More photos for a finding that has arrived. They are queued on a press, so that they can be marked before. */
export function AddPhotos({ findingId, label }: { findingId: string; label: string }) {
  const t = useWords();
  const router = useRouter();
  const bundle = `more/${findingId}`;
  const taken = usePhotos(bundle) ?? [];
  const mine = useOutbox().filter((one) => one.kind === 'photo' && one.message.findingId === findingId);
  const queued = new Set(mine.map(({ photoId }) => photoId));
  const isRead = useIsOutboxRead();
  const waiting = mine.filter(({ state }) => state === 'waiting' || state === 'sending').length;
  const sent = mine.filter(({ state }) => state === 'sent').length;
  const isToQueue = taken.some(({ id }) => !queued.has(id));
  const [busy, setBusy] = useState(false);

  // Drawn anew with each one that has arrived while it is looked at.
  const drawnWith = useRef<number | null>(null);
  useEffect(() => {
    // Those that were sent before this page opened are on it already.
    if (!isRead) return;
    if (drawnWith.current !== null && drawnWith.current !== sent) router.refresh();
    drawnWith.current = sent;
  }, [isRead, sent, router]);

  async function send() {
    if (busy) return;
    setBusy(true);
    try {
      await queue(await photoMessages(bundle, findingId, null, label));
    } finally {
      setBusy(false);
    }
  }

  return (
    <>
      <TakePhotos bundle={bundle} />
      {isToQueue && (
        <Button weight="main" onClick={() => void send()} aria-disabled={busy || undefined}>
          {t('Send {taken, plural, one {# photo} other {# photos}}', { taken: taken.length })}
        </Button>
      )}
      <p role="status">
        {waiting > 0
          ? t('{waiting, plural, one {# photo} other {# photos}} not sent yet, kept on this phone.', {
              waiting,
            })
          : ''}
      </p>
    </>
  );
}
