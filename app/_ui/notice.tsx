'use client';

import { useEffect, useRef, type ReactNode } from 'react';
import styles from './notice.module.css';

/**
 * A message somebody must meet. `tone`: red nothing was done and something has to change, amber decide or try again,
 * blue for knowledge. Red and amber are announced and take the focus when they appear; blue waits to be read.
 */
export function Notice(props: { tone: 'red' | 'amber' | 'blue'; title: string; children?: ReactNode }) {
  const { tone, title, children } = props;
  const box = useRef<HTMLDivElement>(null);
  const urgent = tone !== 'blue';
  useEffect(() => {
    if (urgent) box.current?.focus();
  }, [urgent, title]);
  return (
    <div
      ref={box}
      role={urgent ? 'alert' : 'status'}
      tabIndex={-1}
      className={`${styles.notice} ${styles[tone]}`}
    >
      <p className={styles.title}>{title}</p>
      {children}
    </div>
  );
}
