'use client';

import { useMemo, useSyncExternalStore } from 'react';

/**
 * Small things kept on this phone until the server has them. Keys carry the person, so that the next one to sign in on a
 * shared phone neither sees nor sends what somebody else typed.
 */
export const walkKey = (personId: string, aircraftId: string) => `wheelchock/walk/${personId}/${aircraftId}`;
export const draftKey = (personId: string, aircraftId: string, station: string) =>
  `wheelchock/finding/${personId}/${aircraftId}/${station}`;

const listeners = new Set<() => void>();

/** What is kept under a key, or null: nothing, or text that is not ours. */
export function readKept<T>(key: string): T | null {
  return parse<T>(rawKept(key));
}

/** Keeps a value; `null` takes it away. False when the phone has no room or forbids it: the screen has to say so. */
export function keep(key: string, value: unknown): boolean {
  try {
    if (value === null) localStorage.removeItem(key);
    else localStorage.setItem(key, JSON.stringify(value));
  } catch {
    return false;
  }
  listeners.forEach((listener) => listener());
  return true;
}

/** The kept value, also when another tab changes it. `undefined` until the page is alive. */
export function useKept<T>(key: string): T | null | undefined {
  const raw = useSyncExternalStore(
    subscribe,
    () => rawKept(key),
    () => undefined,
  );
  return useMemo(() => (raw === undefined ? undefined : parse<T>(raw)), [raw]);
}

function subscribe(listener: () => void) {
  listeners.add(listener);
  window.addEventListener('storage', listener);
  return () => {
    listeners.delete(listener);
    window.removeEventListener('storage', listener);
  };
}

function rawKept(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

function parse<T>(raw: string | null): T | null {
  if (raw === null) return null;
  try {
    const value: unknown = JSON.parse(raw);
    return typeof value === 'object' && value !== null ? (value as T) : null;
  } catch {
    return null;
  }
}
