'use client';

import { useWords } from '#words';
import { type ReactNode } from 'react';
import { ChoiceGroup } from '@/app/_ui/fields';

/** What a paper says. Not answered counts as not known, and not known never counts in favour. */
export function YesNoUnknown({ name, label, hint }: { name: string; label: string; hint?: ReactNode }) {
  const t = useWords();
  return (
    <ChoiceGroup
      name={name}
      label={label}
      hint={hint}
      sideBySide
      choices={[
        { value: 'yes', label: t('Yes') },
        { value: 'no', label: t('No') },
        { value: 'not known', label: t('Not known') },
      ]}
    />
  );
}
