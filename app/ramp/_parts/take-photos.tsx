'use client';

import { useId, useState } from 'react';
import {
  dropPhoto,
  PHOTOS_PER_FINDING,
  takePhoto,
  usePhotos,
  type OutgoingPhoto,
} from '../_phone/photo-outbox';
import { Tag } from '../../_ui/tag';
import styles from './take-photos.module.css';

/** Takes photos with the camera, or picks some already taken, and shows them with where each stands. */
export function TakePhotos({ bundle, onTaken }: { bundle: string; onTaken?: () => void }) {
  const mine = usePhotos().filter((photo) => photo.bundle === bundle);
  const [busy, setBusy] = useState(false);
  const room = PHOTOS_PER_FINDING - mine.length;

  async function take(files: readonly File[]) {
    setBusy(true);
    for (const file of files.slice(0, Math.max(0, room))) await takePhoto(bundle, file);
    setBusy(false);
    onTaken?.();
  }

  return (
    <div className={styles.photos}>
      {room > 0 ? (
        <div className={styles.take}>
          <PhotoInput camera label={mine.length > 0 ? 'Another photo' : 'Take a photo'} onFiles={take} />
          <PhotoInput label="Choose a photo" onFiles={take} />
        </div>
      ) : (
        <p>That is {PHOTOS_PER_FINDING} photos, as many as one finding takes.</p>
      )}
      <p role="status" className="out-of-sight">
        {busy ? 'Preparing the photo' : mine.length > 0 ? `${mine.length} photos` : ''}
      </p>
      <PhotoList photos={mine} />
    </div>
  );
}

function PhotoInput(props: { label: string; camera?: boolean; onFiles: (files: File[]) => Promise<void> }) {
  const { label, camera = false, onFiles } = props;
  const id = useId();
  return (
    <span className={styles.input}>
      <input
        id={id}
        type="file"
        accept="image/*"
        multiple={!camera}
        {...(camera ? { capture: 'environment' as const } : {})}
        onChange={(event) => {
          const files = [...(event.target.files ?? [])];
          event.target.value = '';
          void onFiles(files);
        }}
      />
      <label htmlFor={id} className={camera ? styles.main : styles.quiet}>
        {label}
      </label>
    </span>
  );
}

const STATES = {
  waiting: { tone: 'grey', shape: 'dashes', word: 'Not sent yet' },
  sending: { tone: 'blue', shape: 'ring', word: 'Sending…' },
  sent: { tone: 'grey', shape: 'tick', word: 'Sent' },
  'not-sent': { tone: 'amber', shape: 'wedge', word: 'Not sent' },
} as const;

/** Each photo with its state. One that is not sent can be taken away. */
export function PhotoList({ photos }: { photos: readonly OutgoingPhoto[] }) {
  if (photos.length === 0) return null;
  return (
    <ul className={styles.list}>
      {photos.map((photo, index) => {
        const { tone, shape, word } = STATES[photo.state];
        return (
          <li key={photo.id}>
            {/* eslint-disable-next-line @next/next/no-img-element */}
            <img src={photo.url} alt={`Taken ${index + 1} of ${photos.length}`} />
            <span>
              <Tag tone={tone} shape={shape} size="small">
                {word}
              </Tag>
            </span>
            {photo.say && <span>{photo.say}</span>}
            {(photo.state === 'waiting' || photo.state === 'not-sent') && (
              <button type="button" className={styles.drop} onClick={() => dropPhoto(photo.id)}>
                Leave out<span className="out-of-sight"> photo {index + 1}</span>
              </button>
            )}
          </li>
        );
      })}
    </ul>
  );
}
