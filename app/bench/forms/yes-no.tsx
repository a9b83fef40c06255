'use client';

import { useWords } from '#words';
import { type ReactNode } from 'react';
import { ChoiceGroup } from '../../_ui/fields';

/**
 * A question of yes or no, neither chosen beforehand. `third` is the answer of whoever cannot say, where that is an answer; its
 * value is what the form sends.
 */
export function YesNo(props: {
  name: string;
  label: ReactNode;
  hint?: ReactNode;
  third?: { readonly value: string; readonly label: string };
}) {
  const t = useWords();
  const { third, ...question } = props;
  return (
    <ChoiceGroup
      {...question}
      sideBySide
      choices={[
        { value: 'yes', label: t('Yes') },
        { value: 'no', label: t('No') },
        ...(third ? [third] : []),
      ]}
    />
  );
}
