'use client';

import { useSyncExternalStore } from 'react';
import { newRequestId } from '@/app/_ui/request-id';
import { sendPhoto } from './send';

/**
 * Photos on their way. They are kept in memory while one walks on from page to page, each under a number of its own, so
 * that a second try never makes a second photo. Leaving the site with photos unsent asks first (see unsent-photos.tsx).
 */
export interface OutgoingPhoto {
  readonly id: string;
  /** What it was taken for: one draft, later one finding. */
  readonly bundle: string;
  /** Null until the finding itself has arrived. */
  readonly findingId: string | null;
  /** What people call it: "W-0042". */
  readonly label: string;
  readonly file: Blob;
  /** For showing it; revoked when it is taken away. */
  readonly url: string;
  readonly state: 'waiting' | 'sending' | 'sent' | 'not-sent';
  /** Why it is not sent, in words. */
  readonly say: string | null;
}

let photos: readonly OutgoingPhoto[] = [];
const listeners = new Set<() => void>();
let busy = false;

/** One finding takes as many; the server holds to it too. */
export const PHOTOS_PER_FINDING = 8;

/** All photos, in the order taken. */
export const usePhotos = (): readonly OutgoingPhoto[] =>
  useSyncExternalStore(
    subscribe,
    () => photos,
    () => NONE,
  );
const NONE: readonly OutgoingPhoto[] = [];

/** Photos that belong to a finding that has arrived but have not arrived themselves. */
export const unsentOf = (all: readonly OutgoingPhoto[]): readonly OutgoingPhoto[] =>
  all.filter((photo) => photo.findingId !== null && photo.state !== 'sent');

/** Takes a picture in: made smaller first, since the server keeps no more and a ramp's signal is thin. */
export async function takePhoto(bundle: string, picture: File): Promise<void> {
  const file = await smaller(picture);
  const url = URL.createObjectURL(file);
  const photo = { id: newRequestId(), bundle, findingId: null, label: '', file, url } as const;
  change([...photos, { ...photo, state: 'waiting', say: null }]);
}

/** Takes a photo away before it is sent, or one the server will never take. */
export function dropPhoto(id: string): void {
  const gone = photos.find((photo) => photo.id === id);
  if (!gone) return;
  URL.revokeObjectURL(gone.url);
  change(photos.filter((photo) => photo.id !== id));
}

/** The finding has arrived: its photos may go. */
export function releasePhotos(bundle: string, findingId: string, label: string): void {
  change(
    photos.map((photo) =>
      photo.bundle === bundle && photo.findingId === null ? { ...photo, findingId, label } : photo,
    ),
  );
  void sendWaiting();
}

/** Tries again what was not sent. */
export function retryPhotos(): void {
  change(
    photos.map((photo) => (photo.state === 'not-sent' ? { ...photo, state: 'waiting', say: null } : photo)),
  );
  void sendWaiting();
}

/** One after the other, in the order taken: on a thin signal ten at once all fail. */
async function sendWaiting(): Promise<void> {
  if (busy) return;
  busy = true;
  try {
    for (;;) {
      const next = photos.find((photo) => photo.findingId !== null && photo.state === 'waiting');
      if (!next?.findingId) return;
      mark(next.id, 'sending', null);
      const sent = await sendPhoto(next.id, next.findingId, next.file);
      if (sent.ok) mark(next.id, 'sent', null);
      else mark(next.id, 'not-sent', sent.problem ? whyOf(sent.problem) : NOT_SENT[sent.unsent]);
    }
  } finally {
    busy = false;
  }
}

const whyOf = (problem: { say: string; fields?: Readonly<Record<string, readonly string[]>> }): string =>
  [problem.say, ...Object.values(problem.fields ?? {}).flat()].join(' ');

const NOT_SENT = { 'no-connection': 'No connection.', 'no-answer': 'No answer came back.' } as const;

const mark = (id: string, state: OutgoingPhoto['state'], say: string | null) =>
  change(photos.map((photo) => (photo.id === id ? { ...photo, state, say } : photo)));

function change(next: readonly OutgoingPhoto[]): void {
  photos = next;
  listeners.forEach((listener) => listener());
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** The server's own longest edge, pixels. */
const LONGEST_EDGE = 1600;

/** The picture at the size the server keeps, upright; as it was when the browser cannot read it. */
async function smaller(picture: File): Promise<Blob> {
  try {
    const bitmap = await createImageBitmap(picture);
    const scale = Math.min(1, LONGEST_EDGE / Math.max(bitmap.width, bitmap.height));
    const canvas = document.createElement('canvas');
    canvas.width = Math.max(1, Math.round(bitmap.width * scale));
    canvas.height = Math.max(1, Math.round(bitmap.height * scale));
    canvas.getContext('2d')?.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
    bitmap.close();
    const made = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', 0.85));
    return made ?? picture;
  } catch {
    return picture;
  }
}
