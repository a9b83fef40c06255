'use client';

import { useWords } from '#words';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { CommandForm } from '@/app/_ui/command-form';
import { ChoiceGroup } from '@/app/_ui/fields';
import { Notice } from '@/app/_ui/notice';
import { useCommand } from '@/app/_ui/use-command';
import { type Units } from '@/lib/units/say';
import { saveUnits } from './actions';

/** What the operator's people read quantities in, unless somebody has chosen for themselves. */
export function UnitsForm({ units }: { units: Units }) {
  const t = useWords();
  const router = useRouter();
  const [saved, setSaved] = useState(false);
  const command = useCommand<{ units: string }, unknown>({
    action: (typed) => {
      setSaved(false);
      return saveUnits(typed);
    },
    start: { units },
    afterDone: 'keep',
    onDone: () => {
      setSaved(true);
      router.refresh();
    },
  });
  return (
    <CommandForm command={command} submit={t('Save the units')} label={t('Units of the operator')}>
      <ChoiceGroup
        name="units"
        label={t('Quantities are shown in')}
        hint={t(
          'For reading only. What is stored, entered and judged against a limit stays in the unit of the limit; what is converted is called “about”. Hours, nautical miles and feet of altitude stay as aviation has them.',
        )}
        choices={[
          { value: 'us-customary', label: t('US customary') },
          { value: 'metric', label: t('Metric') },
        ]}
        sideBySide
      />
      {saved && (
        <Notice tone="blue" title={t('Saved.')}>
          <p>{t('Whoever has chosen for themselves under their account keeps that.')}</p>
        </Notice>
      )}
    </CommandForm>
  );
}
