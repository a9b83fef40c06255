'use client';

import { type ReactNode } from 'react';
import { useIsLost } from '../../_ui/freshness';

/** What must not be done on an old answer is not offered on one. */
export function WhileFresh({ children }: { children: ReactNode }) {
  if (!useIsLost()) return children;
  return (
    <p>Without contact nobody knows whether this release still holds. Get a signal, or call the desk.</p>
  );
}
