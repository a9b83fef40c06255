import { type ReactNode } from 'react';
import styles from './tag.module.css';

/**
 * What a colour says here. red: grounded. amber: a limit, or somebody has to decide. green: go by the engine, or signed.
 * blue: information. grey: nobody has looked yet.
 */
export type Tone = 'red' | 'amber' | 'green' | 'blue' | 'grey';
export type Shape =
  'block' | 'wedge' | 'disc' | 'ring' | 'dot' | 'question' | 'dashes' | 'tick' | 'up' | 'down' | 'cross';
export type Size = 'small' | 'medium' | 'large';

const SHAPE_OF: Record<Tone, Shape> = {
  red: 'block',
  amber: 'wedge',
  green: 'disc',
  blue: 'ring',
  grey: 'dashes',
};

/** A state as word, shape and colour together. The word is the state; shape and colour only repeat it. */
export function Tag(props: { tone: Tone; children: ReactNode; shape?: Shape; size?: Size }) {
  const { tone, children, shape = SHAPE_OF[tone], size = 'medium' } = props;
  return (
    <span className={`${styles.tag} ${styles[tone]} ${styles[size]}`}>
      <ShapeMark shape={shape} />
      <span>{children}</span>
    </span>
  );
}

/** The shape alone, in the text's size and the tone's colour. Always put a word beside it. */
export function ShapeMark({ shape }: { shape: Shape }) {
  return (
    <svg
      viewBox="0 0 20 20"
      className={`${styles.shape} ${styles[shape]}`}
      aria-hidden="true"
      focusable="false"
    >
      {DRAWN[shape]}
    </svg>
  );
}

/** Each differs from the others in outline, so that it reads without colour and at arm's length. */
const DRAWN: Record<Shape, ReactNode> = {
  block: (
    <>
      <rect x="1" y="1" width="18" height="18" rx="1.5" className={styles.body} />
      <rect x="4.5" y="8" width="11" height="4" className={styles.cut} />
    </>
  ),
  wedge: (
    <>
      <path d="M10 1 19.5 18.5H.5Z" className={styles.body} />
      <path d="M9 7h2v5.5H9zM9 14h2v2H9z" className={styles.cut} />
    </>
  ),
  disc: (
    <>
      <circle cx="10" cy="10" r="9.5" className={styles.body} />
      <path d="m5.5 10.2 3.1 3.2 6-6.6" className={styles.stroke} />
    </>
  ),
  ring: (
    <>
      <circle cx="10" cy="10" r="8" className={styles.outline} />
      <circle cx="10" cy="10" r="3" className={styles.body} />
    </>
  ),
  dot: <circle cx="10" cy="10" r="4" className={styles.body} />,
  question: (
    <>
      <path d="M10 0 20 10 10 20 0 10Z" className={styles.body} />
      <path d="M7.6 8a2.4 2.4 0 1 1 3.6 2.1c-.9.5-1.2.9-1.2 1.9" className={styles.thin} />
      <rect x="9" y="13.3" width="2" height="2" className={styles.cut} />
    </>
  ),
  dashes: <circle cx="10" cy="10" r="8" className={styles.dashed} />,
  tick: <path d="m3 10.5 4.5 4.7L17 5" className={styles.plain} />,
  up: <path d="M10 1 18 10h-5v9H7v-9H2Z" className={styles.body} />,
  down: <path d="M10 19 2 10h5V1h6v9h5Z" className={styles.body} />,
  cross: <path d="m3 3 14 14M17 3 3 17" className={styles.plain} />,
};
