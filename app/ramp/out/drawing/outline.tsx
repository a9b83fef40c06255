import { type ReactNode } from 'react';
import { DRAWING, placeOf } from './places';
import styles from './drawing.module.css';

/** The aircraft from above, in plain shapes of our own, and the way round it. Decoration: the places are buttons over it. */
export function Outline({ way }: { way: readonly string[] }) {
  const points = way.flatMap((area) => placeOf(area) ?? []).map(({ x, y }) => `${x},${y}`);
  return (
    <svg
      viewBox={`0 0 ${DRAWING.width} ${DRAWING.height}`}
      className={styles.outline}
      aria-hidden="true"
      focusable="false"
    >
      {AIRFRAME}
      <polyline points={points.join(' ')} className={styles.way} />
    </svg>
  );
}

const AIRFRAME: ReactNode = (
  <>
    <rect x="113" y="45" width="132" height="7" rx="3.5" className={styles.part} />
    {/* Fuselage from the cowl to the tail cone. */}
    <path
      d="M179 36C190 36 196 46 204 56C211 66 212 84 215 112L222 146V238C221 300 201 384 189 452H169C157 384 137 300 136 238V146L143 112C146 84 147 66 154 56C162 46 168 36 179 36Z"
      className={styles.part}
    />
    <path d="M149 118Q179 104 209 118L216 144H142Z" className={styles.glass} />
    {/* Tailplane, its hinge line, and the fin seen from above. */}
    <path
      d="M172 398L104 408Q94 410 94 419V436Q94 443 102 443H256Q264 443 264 436V419Q264 410 254 408L186 398Z"
      className={styles.part}
    />
    <path d="M96 427H262" className={styles.seam} />
    <path d="M179 372V462" className={styles.fin} />
    {/* The wing lies over the cabin. */}
    <path
      d="M24 142L140 134H218L334 142Q352 144 352 158V222Q352 236 336 238L218 244H140L22 238Q6 236 6 222V158Q6 144 24 142Z"
      className={styles.part}
    />
    <path
      d="M8 196L104 198M254 198L350 196M104 198V241M254 198V241M104 198H140M218 198H254"
      className={styles.seam}
    />
  </>
);
