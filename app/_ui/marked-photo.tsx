import { useWords } from '#words';
import { type PhotoMark } from '@/lib/photos/marks';
import styles from './marked-photo.module.css';

/**
 * A photo with what was drawn on it. The marks lie over the picture and are never burnt into it: the picture stays what
 * the camera saw. Usable on the server and in the browser.
 *
 * `width` and `height` are the picture's own pixels; they hold its place before it has come. `fit` "whole" gives the box
 * the picture's shape; "cover" fills a box of the given shape (CSS of `className`), cut at the edges, marks and all.
 */
export function MarkedPhoto(props: {
  src: string;
  alt: string;
  width: number;
  height: number;
  marks: readonly PhotoMark[];
  fit?: 'whole' | 'cover';
  /** Class of the box around picture and marks. */
  className?: string;
  loading?: 'lazy' | 'eager';
}) {
  const t = useWords();
  const { src, alt, width, height, marks, fit = 'whole', className = '', loading } = props;
  return (
    <span className={`${styles.box} ${styles[fit]} ${className}`}>
      {/* Our own photos go to nobody else's image service. */}
      {/* eslint-disable-next-line @next/next/no-img-element */}
      <img src={src} alt={alt} width={width} height={height} loading={loading} className={styles.picture} />
      {marks.length > 0 && (
        <>
          <Marks marks={marks} width={width} height={height} slice={fit === 'cover'} />
          <span className="out-of-sight">
            {marks.length === 1
              ? t(' One place marked.')
              : t(' {marks} places marked.', { marks: marks.length })}
          </span>
        </>
      )}
    </span>
  );
}

/** The marks alone, to be laid over a picture of `width` to `height`. */
export function Marks(props: {
  marks: readonly PhotoMark[];
  width: number;
  height: number;
  slice?: boolean;
}) {
  const { marks, width, height, slice = false } = props;
  return (
    <svg
      className={styles.marks}
      viewBox={`0 0 ${width} ${height}`}
      preserveAspectRatio={slice ? 'xMidYMid slice' : 'none'}
      aria-hidden="true"
      focusable="false"
    >
      {/* Dark under light: the line is seen on snow and on a tyre. */}
      {(['under', 'over'] as const).map((layer) =>
        marks.map((mark, index) => (
          <path
            key={`${layer} ${index}`}
            className={styles[layer]}
            d={outlineOf(mark, width, height)}
            vectorEffect="non-scaling-stroke"
          />
        )),
      )}
    </svg>
  );
}

/** The path of a mark in the picture's pixels. A mark without enough points draws nothing. */
export function outlineOf(mark: PhotoMark, width: number, height: number): string {
  const points = mark.points.map(([x, y]) => [(x * width) / 1000, (y * height) / 1000] as const);
  const [first, second] = points;
  if (!first || !second) return '';
  if (mark.kind === 'line') return `M${points.map(([x, y]) => `${round(x)} ${round(y)}`).join('L')}`;
  const across = Math.abs(second[0] - first[0]) / 2;
  const down = Math.abs(second[1] - first[1]) / 2;
  const left = round(Math.min(first[0], second[0]));
  const middle = round(Math.min(first[1], second[1]) + down);
  const arc = `a${round(across)} ${round(down)} 0 1 0`;
  return `M${left} ${middle}${arc} ${round(2 * across)} 0${arc} ${round(-2 * across)} 0`;
}

/** A tenth of a pixel is fine enough. */
const round = (value: number): number => Math.round(value * 10) / 10;
