'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useEffectEvent } from 'react';
import { knockOnServer } from './contact';

const KNOCK_EVERY_MS = 12_000;

/**
 * On a page that could not be drawn: tries again by itself as soon as the server answers, so that a screen that hangs on a
 * wall comes back without anybody. `retry` is how; drawing the page anew when left out.
 */
export function ComesBack({ retry }: { retry?: () => void }) {
  const router = useRouter();
  const look = useEffectEvent(async () => {
    if (document.visibilityState !== 'visible' || (await knockOnServer()) !== 'none') return;
    if (retry) retry();
    else router.refresh();
  });
  useEffect(() => {
    const timer = setInterval(() => void look(), KNOCK_EVERY_MS);
    return () => clearInterval(timer);
  }, []);
  return null;
}
