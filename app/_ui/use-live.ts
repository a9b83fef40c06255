'use client';

import { useEffect, useEffectEvent, useRef, useState } from 'react';
import { listenToLine } from './live/line';
import { hear, HEARD_NOTHING, isLive, type Heard } from './live/words';

/**
 * live: a change is told at once. polling: it is not, so the screen asks by itself. lost: nothing was heard for two minutes.
 * The stream alone is judged here: a screen that asks by itself may well be in contact while this says `lost`.
 */
export type LiveContact = 'live' | 'polling' | 'lost';

const LOST_AFTER_MS = 120_000;
/** Changes come in bursts: one call for all of them. */
const GATHER_MS = 50;

/**
 * Calls `onChange` when something of the operator's was written, when words may have been lost, and when the stream breaks.
 * It may come more often than anything changed. `shownSeq` is how far the records were when the screen was drawn (`seq` of
 * its view): the screen is then told only of what is newer. Without it the screen is asked to look once at the start.
 */
export function useLive(
  onChange: () => void,
  shownSeq: number | null = null,
): { readonly contact: LiveContact } {
  const heard = useRef<Heard>(HEARD_NOTHING);
  const heardAt = useRef<number | null>(null);
  const [contact, setContact] = useState<LiveContact>('polling');
  const changed = useEffectEvent(onChange);

  useEffect(() => {
    if (shownSeq !== null) heard.current = { ...heard.current, numbered: true, shownSeq };
  }, [shownSeq]);

  useEffect(() => {
    heardAt.current = Date.now();
    const judge = () => {
      const now = Date.now();
      if (isLive(heard.current, now)) {
        heardAt.current = now;
        setContact('live');
        return;
      }
      const silent = now - (heardAt.current ?? now);
      setContact(silent < 0 || silent > LOST_AFTER_MS ? 'lost' : 'polling');
    };
    let gathering: ReturnType<typeof setTimeout> | undefined;
    const gather = () => {
      gathering ??= setTimeout(() => {
        gathering = undefined;
        changed();
      }, GATHER_MS);
    };
    const stop = listenToLine((word) => {
      const after = hear(heard.current, word, Date.now());
      heard.current = after.heard;
      judge();
      if (after.look) gather();
    });
    const judging = setInterval(judge, 1000);
    return () => {
      stop();
      clearInterval(judging);
      clearTimeout(gathering);
    };
  }, []);

  return { contact };
}
