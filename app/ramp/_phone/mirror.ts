import { useSyncExternalStore } from 'react';
import { hear, tell, type Told } from './channel';

/**
 * A copy in memory of something kept, for drawing. It can be shown ahead of what is kept: `change` puts the new value on
 * the screen at once and writes it behind. Undefined until it was read.
 */
export interface Mirror<T> {
  now(): T | undefined;
  /** In a component. */
  use(): T | undefined;
  subscribe(listener: () => void): () => void;
  /** The value as kept, read now if it was not yet. */
  read(): Promise<T>;
  /** Shows `next` at once, then keeps it by `write`; changes are kept one after the other. */
  change(next: T, write: () => Promise<void>): Promise<void>;
}

export function mirror<T>(
  topic: Exclude<Told['topic'], 'sync'>,
  readKept: (before: T | undefined) => Promise<T>,
): Mirror<T> {
  let value: T | undefined;
  let reading: Promise<T> | null = null;
  let isToReadAgain = false;
  let unwritten = 0;
  let last: Promise<void> = Promise.resolve();
  let isHearing = false;
  const listeners = new Set<() => void>();

  function show(next: T): void {
    if (next === value) return;
    value = next;
    listeners.forEach((listener) => listener());
  }

  /** Reads again and again until nothing changed meanwhile; what is not written yet stays shown. */
  function reread(): Promise<T> {
    if (reading) {
      isToReadAgain = true;
      return reading;
    }
    reading = (async () => {
      let kept: T;
      do {
        isToReadAgain = false;
        kept = await readKept(value);
      } while (isToReadAgain);
      if (unwritten === 0) show(kept);
      return value ?? kept;
    })().finally(() => {
      reading = null;
    });
    return reading;
  }

  function start(): void {
    if (isHearing) return;
    isHearing = true;
    hear((told) => {
      if (told.topic === topic) void reread();
    });
    void reread();
  }

  function subscribe(listener: () => void): () => void {
    start();
    listeners.add(listener);
    return () => listeners.delete(listener);
  }

  const now = () => value;
  return {
    now,
    subscribe,
    use: () => useSyncExternalStore(subscribe, now, () => undefined),
    read() {
      start();
      return reading ?? (value === undefined ? reread() : Promise.resolve(value));
    },
    async change(next, write) {
      start();
      unwritten += 1;
      show(next);
      const mine = last.then(write);
      last = mine.catch(() => undefined);
      try {
        await mine;
      } finally {
        unwritten -= 1;
        if (unwritten === 0) tell({ topic });
      }
    },
  };
}
