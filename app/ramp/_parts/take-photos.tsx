'use client';

import { Say, useWords } from '#words';
import { lazy, Suspense, useId, useRef, useState } from 'react';
import { MarkedPhoto } from '../../_ui/marked-photo';
import { Notice } from '../../_ui/notice';
import { dropPhoto, markPhoto, PHOTOS_PER_FINDING, takePhoto, usePhotos } from '../_phone/photos';
import { type KeptPhoto } from '../_phone/shapes';
import { forgetPictureUrl, pictureUrl } from './picture-url';
import styles from './take-photos.module.css';

// Most findings have no mark; the screen for it comes when it is wanted.
const MarkPhoto = lazy(() => import('./mark-photo'));

/**
 * Takes photos with the camera, or picks some already taken, shrinks and keeps them, and lets one draw on them. A photo
 * the browser cannot read is not kept, and the way to one it can is said.
 */
export function TakePhotos({ bundle, onTaken }: { bundle: string; onTaken?: () => void }) {
  const t = useWords();
  const mine = usePhotos(bundle) ?? [];
  const [busy, setBusy] = useState(0);
  const [unreadable, setUnreadable] = useState<readonly string[]>([]);
  const room = PHOTOS_PER_FINDING - mine.length;

  async function take(files: readonly File[]) {
    const wanted = files.slice(0, Math.max(0, room));
    setUnreadable([]);
    setBusy(wanted.length);
    for (const file of wanted) {
      const taken = await takePhoto(bundle, file);
      if (taken === null) setUnreadable((before) => [...before, file.name]);
      setBusy((left) => left - 1);
    }
    onTaken?.();
  }

  return (
    <div className={styles.photos}>
      {room > 0 ? (
        <div className={styles.take}>
          <PhotoInput
            camera
            label={mine.length > 0 ? t('Another photo') : t('Take a photo')}
            onFiles={take}
          />
          <PhotoInput label={t('Choose a photo')} onFiles={take} />
          <span role="status" className={styles.status}>
            {busy > 0
              ? t('Preparing {busy, plural, one {# photo} other {# photos}}…', { busy })
              : mine.length > 0 && (
                  <span className="out-of-sight">
                    {t('{mine, plural, one {# photo} other {# photos}}', { mine: mine.length })}
                  </span>
                )}
          </span>
        </div>
      ) : (
        <p>
          {t('That is {photos_per_finding} photos, as many as one finding takes.', {
            photos_per_finding: PHOTOS_PER_FINDING,
          })}
        </p>
      )}
      {unreadable.length > 0 && (
        <Notice
          tone="amber"
          title={t('This phone cannot read {unreadable} here. It was not taken.', {
            unreadable: unreadable.join(', '),
          })}
        >
          <p>
            {t(
              'Take the photo with “Take a photo” instead. If that fails too, set the camera to save JPEG (some call it “most compatible”) and take it again.',
            )}
          </p>
        </Notice>
      )}
      <TakenPhotos photos={mine} />
    </div>
  );
}

/** What was taken, each to be marked or left out. */
function TakenPhotos({ photos }: { photos: readonly KeptPhoto[] }) {
  const t = useWords();
  const [marking, setMarking] = useState<string | null>(null);
  const buttons = useRef(new Map<string, HTMLButtonElement>());
  const marked = photos.find(({ id }) => id === marking);
  if (photos.length === 0) return null;
  return (
    <>
      <ul className={styles.list} aria-label={t('Photos taken')}>
        {photos.map((photo, index) => (
          <li key={photo.id}>
            <MarkedPhoto
              src={pictureUrl(photo)}
              alt={t('Taken {index} of {photos}.', { index: index + 1, photos: photos.length })}
              width={photo.width}
              height={photo.height}
              marks={photo.marks}
              fit="cover"
              className={styles.thumbnail}
            />
            <span className={styles.beneath}>
              <button
                type="button"
                className={styles.mark}
                ref={(button) => {
                  if (button) buttons.current.set(photo.id, button);
                  else buttons.current.delete(photo.id);
                }}
                onClick={() => setMarking(photo.id)}
              >
                {photo.marks.length > 0 ? t('Marks') : t('Mark it')}
                <span className="out-of-sight"> {t('on photo {index}', { index: index + 1 })}</span>
              </button>
              <button
                type="button"
                className={styles.drop}
                onClick={() => {
                  void dropPhoto(photo.id);
                  forgetPictureUrl(photo.id);
                }}
              >
                <Say
                  text="Leave out<span> photo {index}</span>"
                  parts={{ span: <span className="out-of-sight" /> }}
                  values={{ index: index + 1 }}
                />
              </button>
            </span>
          </li>
        ))}
      </ul>
      {marked && (
        <Suspense fallback={<p role="status">{t('One moment…')}</p>}>
          <MarkPhoto
            photo={marked}
            url={pictureUrl(marked)}
            onMarks={(marks) => void markPhoto(marked.id, marks)}
            onDone={() => {
              setMarking(null);
              buttons.current.get(marked.id)?.focus();
            }}
          />
        </Suspense>
      )}
    </>
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
