'use client';

import { useMemo, useSyncExternalStore, type AnchorHTMLAttributes, type MouseEvent } from 'react';
import { afterPaint } from '../_phone/after-paint';
import { staysInShell } from './which-view';

const listeners = new Set<() => void>();

/** The address that is drawn: the browser's own, but for the moment between a press and the drawing of the new place. */
let drawn = '';
const addressDrawn = (): string => (listeners.size === 0 ? window.location.href : drawn);

function subscribe(listener: () => void) {
  if (listeners.size === 0) {
    drawn = window.location.href;
    window.addEventListener('popstate', draw);
  }
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
    if (listeners.size === 0) window.removeEventListener('popstate', draw);
  };
}

function draw(): void {
  drawn = window.location.href;
  listeners.forEach((listener) => listener());
}

/** The address shown now; null until the page is alive. Follows `goTo`, `Go` and the back button. */
export function usePlace(): URL | null {
  const href = useSyncExternalStore(subscribe, addressDrawn, () => null);
  return useMemo(() => (href === null ? null : new URL(href)), [href]);
}

/**
 * Goes to a path: within the shell with no network at all, elsewhere by a full load. `replace` leaves no step behind for
 * the back button. Resolves when the place is about to be drawn, which is after the press itself was shown.
 */
export async function goTo(path: string, how: 'push' | 'replace' = 'push'): Promise<void> {
  const to = new URL(path, window.location.href);
  const isHere = to.origin === window.location.origin && whichShell() === 'phone';
  if (!isHere || !staysInShell(to.pathname, navigator.onLine)) {
    window.location.assign(to.href);
    return;
  }
  if (how === 'replace') window.history.replaceState(null, '', to.href);
  else window.history.pushState(null, '', to.href);
  await afterPaint();
  draw();
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
    void goTo(href);
  }
  return (
    <a {...rest} href={href} onClick={press}>
      {children}
    </a>
  );
}
