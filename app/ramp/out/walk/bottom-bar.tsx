'use client';

import { useEffect, useState } from 'react';
import styles from './walk.module.css';

export interface BarPress {
  readonly words: string;
  readonly onPress: () => void;
  /** What a screen reader says, where the words alone do not do. */
  readonly label?: string;
}

/** How long the main press rests after it has changed, in milliseconds. */
const REST_MS = 350;

/**
 * The presses under the thumb: back, the one thing to do here, on. After the main press has become another one it rests for
 * a moment: a hasty second tap meant for this station must not answer for the next.
 */
export function BottomBar(props: { main: BarPress; back?: BarPress; on?: BarPress; subject?: string }) {
  const { main, back, on, subject = '' } = props;
  const rests = useRest(`${subject}/${main.words}`);
  return (
    <div className={`${styles.bar} ${back ? styles.withBack : ''} ${on ? styles.withOn : ''}`}>
      {back && <SidePress press={back} sign="←" />}
      <button
        type="button"
        className={styles.barMain}
        aria-label={main.label}
        aria-disabled={rests || undefined}
        onClick={() => {
          if (!rests) main.onPress();
        }}
      >
        {main.words}
      </button>
      {on && <SidePress press={on} sign="→" />}
    </div>
  );
}

function SidePress({ press, sign }: { press: BarPress; sign: string }) {
  return (
    <button type="button" className={styles.barSide} aria-label={press.label} onClick={press.onPress}>
      <span aria-hidden="true">{sign}</span> <span className={styles.barSideWords}>{press.words}</span>
    </button>
  );
}

/** True for a moment after `what` has changed, never at first. */
function useRest(what: string): boolean {
  const [rested, setRested] = useState(what);
  useEffect(() => {
    const wait = setTimeout(() => setRested(what), REST_MS);
    return () => clearTimeout(wait);
  }, [what]);
  return rested !== what;
}
