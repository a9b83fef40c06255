import { type PhotoView } from '@/lib/photos/view';
import Link from './link';
import { MarkedPhoto } from './marked-photo';
import styles from './photo-list.module.css';

/**
 * Photos of a write-up, small and whole, with what was drawn on them; each opens large. Nothing is cut off at the edges: a
 * mark may lie there. `from` is the place the large one leads back to; `alt` gets the photo's number, from 1.
 */
export function PhotoList(props: {
  photos: readonly PhotoView[];
  from: 'ramp' | 'bench';
  alt: (number: number) => string;
}) {
  const { photos, from, alt } = props;
  if (photos.length === 0) return null;
  return (
    <ul className={styles.photos}>
      {photos.map(({ id, width, height, marks }, index) => (
        // All of one height, whatever their shape.
        <li key={id} style={{ width: `calc(8rem * ${width} / ${height})` }}>
          <Link href={`/photos/${id}?from=${from}`}>
            <MarkedPhoto
              src={`/api/photos/${id}?size=small`}
              alt={alt(index + 1)}
              width={width}
              height={height}
              marks={marks}
              loading="lazy"
            />
          </Link>
        </li>
      ))}
    </ul>
  );
}
