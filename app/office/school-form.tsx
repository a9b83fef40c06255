'use client';

import { useWords } from '#words';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { CommandForm } from '@/app/_ui/command-form';
import { YesNo } from '@/app/bench/forms/yes-no';
import { TextField } from '@/app/_ui/fields';
import { Notice } from '@/app/_ui/notice';
import { useCommand } from '@/app/_ui/use-command';
import { saveSchool } from './actions';

/** Name and kind of the school, as they were given when it was set up; both can be put right. */
export function SchoolForm({ name, part141 }: { name: string; part141: boolean | null }) {
  const t = useWords();
  const router = useRouter();
  const [saved, setSaved] = useState(false);
  const command = useCommand<{ name: string; part141: string }, unknown>({
    action: (typed) => {
      setSaved(false);
      // Not said stays not said; what was said once can only be said differently.
      const part141Said = typed.part141 === '' ? {} : { part141: typed.part141 === 'yes' };
      return saveSchool({ requestId: typed.requestId, name: typed.name, ...part141Said });
    },
    start: { name, part141: part141 === null ? '' : part141 ? 'yes' : 'no' },
    afterDone: 'keep',
    onDone: () => {
      setSaved(true);
      router.refresh();
    },
  });
  return (
    <CommandForm command={command} submit={t('Save the school')} label={t('The school or club')}>
      <TextField name="name" label={t('Its name')} maxLength={120} autoComplete="organization" />
      <YesNo
        name="part141"
        label={t('Is it certificated under part 141?')}
        hint={t('Then a student’s solo needs the 100-hour inspection as well (141.39).')}
      />
      {saved && <Notice tone="blue" title={t('Saved.')} />}
    </CommandForm>
  );
}
