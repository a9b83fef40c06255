'use client';

import { useWords } from '#words';
import { type Translate } from '@/lib/words/translate';
import { useEffect, useState } from 'react';
import styles from './freshness.module.css';
import { ShapeMark } from './tag';

/**
 * How old what is shown is, counted on this device from the moment it came. It ticks for the eye; a screen reader finds it
 * when it looks and is not told each second.
 */
export function Age({ since }: { since: number | null }) {
  const t = useWords();
  const [now, setNow] = useState<number | null>(null);
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), 1000);
    return () => clearInterval(timer);
  }, []);
  // Drawn anew between two ticks: younger than the last tick.
  const age = since === null || now === null ? null : Math.max(0, now - since);
  return <p className={styles.age}>{ageInWords(t, since === null ? null : (age ?? 0))}</p>;
}

/** "4 s ago", "3 min 5 s ago"; an age that nobody knows is said. */
export function ageInWords(t: Translate, ageMs: number | null): string {
  if (ageMs === null) return t('age not known');
  const seconds = Math.floor(ageMs / 1000);
  if (seconds < 60) return t('{seconds} s ago', { seconds });
  const minutes = Math.floor(seconds / 60);
  return minutes < 60
    ? t('{minutes} min {seconds} s ago', { minutes, seconds: seconds % 60 })
    : t('{minutes} h ago', { minutes: Math.floor(minutes / 60) });
}

/** How soon a change would show. */
export function HowOften({ live, everySeconds }: { live: boolean; everySeconds: number }) {
  const t = useWords();
  return (
    <p className={`${styles.often} ${live ? styles.live : ''}`}>
      <ShapeMark shape={live ? 'ring' : 'dashes'} />
      {live ? t('Changes show at once') : t('Asking every {everySeconds} s', { everySeconds })}
    </p>
  );
}
