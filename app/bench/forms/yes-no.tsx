'use client';

import { useWords } from '#words';
import { type ReactNode } from 'react';
import { ChoiceGroup } from '../../_ui/fields';

/** A question of yes or no, neither chosen beforehand. */
export function YesNo(props: { name: string; label: ReactNode; hint?: ReactNode }) {
  const t = useWords();
  return (
    <ChoiceGroup
      {...props}
      sideBySide
      choices={[
        { value: 'yes', label: t('Yes') },
        { value: 'no', label: t('No') },
      ]}
    />
  );
}
