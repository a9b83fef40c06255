import styles from './ramp.module.css';

/** Photos of a write-up, small; each opens whole. They never leave the operator, so no image service touches them. */
export function Pictures({ photoIds, of }: { photoIds: readonly string[]; of: string }) {
  if (photoIds.length === 0) return null;
  return (
    <ul className={styles.pictures}>
      {photoIds.map((id, index) => (
        <li key={id}>
          <a href={`/api/photos/${id}`} target="_blank" rel="noopener">
            {/* eslint-disable-next-line @next/next/no-img-element */}
            <img
              src={`/api/photos/${id}`}
              alt={`${of}, number ${index + 1} of ${photoIds.length}`}
              loading="lazy"
            />
          </a>
        </li>
      ))}
    </ul>
  );
}
