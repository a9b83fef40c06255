'use client';

import { useEffect, useState } from 'react';
import styles from './freshness.module.css';
import { ShapeMark } from './tag';

/**
 * How old what is shown is, counted on this device from the moment it came. It ticks for the eye; a screen reader finds it
 * when it looks and is not told each second.
 */
export function Age({ since }: { since: number | null }) {
  const [now, setNow] = useState<number | null>(null);
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), 1000);
    return () => clearInterval(timer);
  }, []);
  // Drawn anew between two ticks: younger than the last tick.
  const age = since === null || now === null ? null : Math.max(0, now - since);
  return <p className={styles.age}>{ageInWords(since === null ? null : (age ?? 0))}</p>;
}

/** "4 s ago", "3 min 5 s ago"; an age that nobody knows is said. */
export function ageInWords(ageMs: number | null): string {
  if (ageMs === null) return 'age not known';
  const seconds = Math.floor(ageMs / 1000);
  if (seconds < 60) return `${seconds} s ago`;
  const minutes = Math.floor(seconds / 60);
  return minutes < 60 ? `${minutes} min ${seconds % 60} s ago` : `${Math.floor(minutes / 60)} h ago`;
}

/** How soon a change would show. */
export function HowOften({ live, everySeconds }: { live: boolean; everySeconds: number }) {
  return (
    <p className={`${styles.often} ${live ? styles.live : ''}`}>
      <ShapeMark shape={live ? 'ring' : 'dashes'} />
      {live ? 'Changes show at once' : `Asking every ${everySeconds} s`}
    </p>
  );
}
