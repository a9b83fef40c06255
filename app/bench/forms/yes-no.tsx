'use client';

import { type ReactNode } from 'react';
import { ChoiceGroup } from '../../_ui/fields';

/** A question of yes or no, neither chosen beforehand. */
export function YesNo(props: { name: string; label: ReactNode; hint?: ReactNode }) {
  return (
    <ChoiceGroup
      {...props}
      sideBySide
      choices={[
        { value: 'yes', label: 'Yes' },
        { value: 'no', label: 'No' },
      ]}
    />
  );
}
