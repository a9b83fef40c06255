'use client';

import { use, useMemo, type ReactNode } from 'react';
import { Spoken } from './context';
import { fetchedOnce } from './fetched-once';

const allOfSpanish = fetchedOnce(() => import('@/lib/words/es'));

/** Around bench, desk and office, whose words the phone on the ramp need not keep. */
export function MoreWords({ children }: { children: ReactNode }) {
  const given = use(Spoken);
  const t = (given.t.language === 'es' ? use(allOfSpanish()) : null) ?? given.t;
  const value = useMemo(() => ({ ...given, t }), [given, t]);
  return <Spoken value={value}>{children}</Spoken>;
}
