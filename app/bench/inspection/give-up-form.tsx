'use client';

import { useWords } from '#words';
import { giveUpInspectionInput } from '@/lib/inspections/schema';
import { CommandForm } from '../../_ui/command-form';
import { TextArea } from '../../_ui/fields';
import { inspectionGivenUp } from '../actions';
import { useAct } from '../forms/use-act';

/** An inspection of which nothing was signed. What is due stays due. */
export function GiveUpInspectionForm({ inspectionId }: { inspectionId: string }) {
  const t = useWords();
  const command = useAct({
    action: inspectionGivenUp,
    schema: giveUpInspectionInput,
    start: { words: '' },
    input: (typed) => ({ ...typed, inspectionId }),
    done: t('The inspection is given up. What is due stays due.'),
  });
  return (
    <CommandForm command={command} submit={t('Give up the inspection')} label={t('Give up the inspection')}>
      <TextArea name="words" label={t('Why')} rows={2} />
    </CommandForm>
  );
}
