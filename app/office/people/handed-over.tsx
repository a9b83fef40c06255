'use client';

import { useWords } from '#words';
import { ChoiceGroup } from '@/app/_ui/fields';

/** How a link gets to its person. */
export function HandedOver({ sendsLetters }: { sendsLetters: boolean }) {
  const t = useWords();
  return (
    <ChoiceGroup
      name="handedOver"
      label={t('How they get the link')}
      choices={[
        {
          value: 'mail',
          label: t('By e-mail'),
          hint: sendsLetters ? t('Sent at once.') : t('This server sends no letters.'),
          disabled: !sendsLetters,
        },
        { value: 'printed', label: t('On paper or screen'), hint: t('Shown once, with a code to scan.') },
      ]}
    />
  );
}
