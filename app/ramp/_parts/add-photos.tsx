'use client';

import { useRouter } from 'next/navigation';
import { useEffect } from 'react';
import { dropPhoto, releasePhotos, usePhotos } from '../_phone/photo-outbox';
import { TakePhotos } from './take-photos';

/** More photos for a finding that has arrived; they go at once. The page is drawn anew when one is in. */
export function AddPhotos({ findingId, label }: { findingId: string; label: string }) {
  const router = useRouter();
  const bundle = `more/${findingId}`;
  const arrived = usePhotos().filter((photo) => photo.bundle === bundle && photo.state === 'sent');
  const first = arrived[0]?.id;
  useEffect(() => {
    if (first === undefined) return;
    dropPhoto(first);
    router.refresh();
  }, [first, router]);
  return <TakePhotos bundle={bundle} onTaken={() => releasePhotos(bundle, findingId, label)} />;
}
