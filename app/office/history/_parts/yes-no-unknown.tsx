'use client';

import { useWords } from '#words';
import { type ReactNode } from 'react';
import { YesNo } from '@/app/bench/forms/yes-no';

/** What a paper says. Not answered counts as not known, and not known never counts in favour. */
export function YesNoUnknown(props: { name: string; label: string; hint?: ReactNode }) {
  const t = useWords();
  return <YesNo {...props} third={{ value: 'not known', label: t('Not known') }} />;
}
