'use client';

import { useWords } from '#words';
import { type ReactNode } from 'react';
import { useIsLost } from '../../_ui/freshness';

/** What must not be done on an old answer is not offered on one. */
export function WhileFresh({ children }: { children: ReactNode }) {
  const t = useWords();
  if (!useIsLost()) return children;
  return (
    <p>
      {t('Without contact nobody knows whether this release still holds. Get a signal, or call the desk.')}
    </p>
  );
}
