'use client';

import { useMemo, useSyncExternalStore } from 'react';
import { newRequestId } from '@/app/_ui/request-id';
import { tell } from './channel';
import { inOne } from './database';
import { mirror, type Mirror } from './mirror';
import { requirePerson } from './pack';
import { readablePhoto } from './readable-photo';
import { type KeptPhoto, type NewOutgoing, type PhotoMark } from './shapes';

/** One finding takes as many; the server holds to it too. */
export const PHOTOS_PER_FINDING = 8;

const mirrors = new Map<string, Mirror<readonly KeptPhoto[]>>();

function ofBundle(bundle: string): Mirror<readonly KeptPhoto[]> {
  const known = mirrors.get(bundle);
  if (known) return known;
  const made = mirror<readonly KeptPhoto[]>('photos', async (before) => {
    const kept = await inOne(['photos'], 'readonly', (at) => at.photosOf(bundle));
    return [...kept].sort(byTime).map((photo) => sameAsBefore(photo, before) ?? photo);
  });
  mirrors.set(bundle, made);
  return made;
}

const byTime = (a: KeptPhoto, b: KeptPhoto) =>
  a.takenAt === b.takenAt ? a.id.localeCompare(b.id) : a.takenAt.localeCompare(b.takenAt);

/** The picture read again is another object with the same bytes; a screen that shows it would load it anew. */
const sameAsBefore = (photo: KeptPhoto, before: readonly KeptPhoto[] | undefined): KeptPhoto | undefined => {
  const known = before?.find((one) => one.id === photo.id);
  return known && { ...photo, picture: known.picture };
};

/** The photos of a bundle that are not sent yet, in the order taken; undefined while loading. */
export function usePhotos(bundle: string): readonly KeptPhoto[] | undefined {
  const kept = useMemo(() => ofBundle(bundle), [bundle]);
  return useSyncExternalStore(kept.subscribe, kept.now, () => undefined);
}

/** Takes a picture in, made smaller first. Gives the photo's number; null when this browser cannot read it: nothing is kept. */
export async function takePhoto(bundle: string, file: File): Promise<string | null> {
  const takenAt = new Date().toISOString();
  const [personId, small] = await Promise.all([requirePerson(), readablePhoto(file)]);
  if (!small) return null;
  const photo: KeptPhoto = { id: newRequestId(), personId, bundle, ...small, marks: [], takenAt };
  // Shown when the phone has it and not before: whoever sees it may put the phone away.
  await inOne(['photos'], 'readwrite', (at) => at.put('photos', photo));
  tell({ topic: 'photos' });
  await ofBundle(bundle).read();
  return photo.id;
}

/** Keeps what was drawn on a photo, in place of what was. */
export async function markPhoto(id: string, marks: readonly PhotoMark[]): Promise<void> {
  const photo = await inOne(['photos'], 'readonly', (at) => at.get('photos', id));
  if (!photo) return;
  const kept = ofBundle(photo.bundle);
  const shown = (await kept.read()).map((one) => (one.id === id ? { ...one, marks } : one));
  await kept.change(shown, () =>
    inOne(['photos', 'outbox'], 'readwrite', async (at) => {
      const there = await at.get('photos', id);
      if (there) await at.put('photos', { ...there, marks });
      // Queued already, and never tried: it goes with what is drawn now.
      const queued = await at.get('outbox', id);
      if (queued?.state === 'waiting' && queued.tries === 0) {
        await at.put('outbox', { ...queued, message: { ...queued.message, marks } });
      }
    }),
  );
}

/** Takes a photo away, and its message unless that is on its way. */
export async function dropPhoto(id: string): Promise<void> {
  await inOne(['photos', 'outbox'], 'readwrite', async (at) => {
    const message = await at.get('outbox', id);
    if (message?.state === 'sending') return;
    await at.drop('photos', id);
    if (message && message.state !== 'sent') await at.drop('outbox', id);
  });
  tell({ topic: 'photos' });
  tell({ topic: 'outbox' });
}

/** The messages that carry a bundle's photos to a finding, each after the finding itself. `label` is what people call it. */
export async function photoMessages(
  bundle: string,
  findingId: string,
  aircraftId: string | null,
  label: string,
): Promise<NewOutgoing[]> {
  const kept = ofBundle(bundle);
  // What is only shown so far is in here too.
  const photos = await kept.read();
  return Promise.all(
    photos.map(async ({ id, picture, marks }): Promise<NewOutgoing> => ({
      id,
      aircraftId,
      kind: 'photo',
      label: `${label}: photo`,
      path: 'photos',
      message: { findingId, marks, sha256: await sha256Of(picture) },
      photoId: id,
      after: [findingId],
    })),
  );
}

/** In hexadecimal; null where the browser has no such thing (a page without https). */
async function sha256Of(picture: Blob): Promise<string | null> {
  const subtle = crypto.subtle as SubtleCrypto | undefined;
  if (!subtle) return null;
  const sum = await subtle.digest('SHA-256', await picture.arrayBuffer());
  return Array.from(new Uint8Array(sum), (byte) => byte.toString(16).padStart(2, '0')).join('');
}
