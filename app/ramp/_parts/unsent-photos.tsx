'use client';

import { useEffect } from 'react';
import { Button } from '../../_ui/button';
import { retryPhotos, unsentOf, usePhotos } from '../_phone/photo-outbox';
import { counted } from './words';
import styles from './unsent-photos.module.css';

/** Says on every page of the ramp how many photos are not sent yet, tries again when the connection is back, and asks before the site is left. */
export function UnsentPhotos() {
  const photos = usePhotos();
  const unsent = unsentOf(photos);
  const stuck = unsent.filter((photo) => photo.state === 'not-sent');
  const count = unsent.length;

  useEffect(() => {
    if (photos.length === 0) return;
    const asks = photos.some((photo) => photo.state !== 'sent');
    const ask = (event: BeforeUnloadEvent) => {
      if (asks) event.preventDefault();
    };
    window.addEventListener('beforeunload', ask);
    window.addEventListener('online', retryPhotos);
    return () => {
      window.removeEventListener('beforeunload', ask);
      window.removeEventListener('online', retryPhotos);
    };
  }, [photos]);

  return (
    <div role="status" className={styles.bar} data-empty={count === 0 || undefined}>
      {count > 0 && (
        <>
          <span>
            {stuck.length > 0
              ? `${counted(stuck.length, 'photo')} not sent yet. Keep this page open.`
              : `Sending ${counted(count, 'photo')}. Keep this page open.`}
          </span>
          {stuck.length > 0 && <Button onClick={retryPhotos}>Send again</Button>}
        </>
      )}
    </div>
  );
}
