'use client';

import { useWords } from '#words';
import { useRouter } from 'next/navigation';
import { CommandForm } from '../../_ui/command-form';
import { TextArea } from '../../_ui/fields';
import { useCommand } from '../../_ui/use-command';
import { sayServiced } from '../actions';

/** Says what was serviced, which closes the write-up. */
export function ServicingForm({ discrepancyId, hint }: { discrepancyId: string; hint: string | null }) {
  const t = useWords();
  const router = useRouter();
  const command = useCommand({
    action: sayServiced,
    start: { discrepancyId, words: '' },
    onDone: () => router.refresh(),
  });
  return (
    <CommandForm command={command} submit={t('It is serviced')} wide>
      <TextArea
        name="words"
        label={t('What was done')}
        hint={hint ?? t('How much of what, and that it is right now.')}
        rows={3}
        maxLength={1000}
      />
    </CommandForm>
  );
}
