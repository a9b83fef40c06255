'use client';

import { useMemo, useSyncExternalStore, type AnchorHTMLAttributes, type MouseEvent } from 'react';
import { staysInShell } from './which-view';

const listeners = new Set<() => void>();

function subscribe(listener: () => void) {
  listeners.add(listener);
  window.addEventListener('popstate', listener);
  return () => {
    listeners.delete(listener);
    window.removeEventListener('popstate', listener);
  };
}

/** The address shown now; null until the page is alive. Follows `goTo`, `Go` and the back button. */
export function usePlace(): URL | null {
  const href = useSyncExternalStore(
    subscribe,
    () => window.location.href,
    () => null,
  );
  return useMemo(() => (href === null ? null : new URL(href)), [href]);
}

/**
 * Goes to a path: within the shell with no network at all, elsewhere by a full load. `replace` leaves no step behind for
 * the back button.
 */
export function goTo(path: string, how: 'push' | 'replace' = 'push'): void {
  const to = new URL(path, window.location.href);
  const isHere = to.origin === window.location.origin && whichShell() === 'phone';
  if (!isHere || !staysInShell(to.pathname, navigator.onLine)) {
    window.location.assign(to.href);
    return;
  }
  if (how === 'replace') window.history.replaceState(null, '', to.href);
  else window.history.pushState(null, '', to.href);
  listeners.forEach((listener) => listener());
}

/** A `Go` may stand on a page of the server too (the drawing does): there is no shell to stay in. */
const whichShell = (): 'phone' | 'server' => (document.getElementById(SHELL_MARK) ? 'phone' : 'server');

/** Id of the shell's outer element. */
export const SHELL_MARK = 'ramp-on-the-phone';

/** A link that stays within the shell where it can. A press with a key held, or on another button, is the browser's. */
export function Go({
  href,
  onClick,
  children,
  ...rest
}: Omit<AnchorHTMLAttributes<HTMLAnchorElement>, 'href'> & { href: string }) {
  function press(event: MouseEvent<HTMLAnchorElement>) {
    onClick?.(event);
    const isPlain =
      event.button === 0 && !event.metaKey && !event.ctrlKey && !event.shiftKey && !event.altKey;
    if (event.defaultPrevented || !isPlain) return;
    event.preventDefault();
    goTo(href);
  }
  return (
    <a {...rest} href={href} onClick={press}>
      {children}
    </a>
  );
}
