'use client';

import { useWords } from '#words';
import { recordEltUseInput } from '@/lib/inspections/requirement-schema';
import { CommandForm } from '../../_ui/command-form';
import { NumberField, TextField } from '../../_ui/fields';
import { eltUsed } from '../actions';
import { wholeOrNull } from '../forms/typed';
import { useAct } from '../forms/use-act';

/** The transmitter was on: the minutes count towards the hour of 91.207(c)(1). */
export function EltUseForm({ aircraftId }: { aircraftId: string }) {
  const t = useWords();
  const command = useAct({
    action: eltUsed,
    schema: recordEltUseInput,
    start: { usedOn: '', minutes: '', words: '' },
    input: (typed) => ({ ...typed, aircraftId, minutes: wholeOrNull(typed.minutes) ?? undefined }),
    done: t('The use is recorded.'),
  });
  return (
    <CommandForm command={command} submit={t('Record the use')} label={t('Use of the transmitter')}>
      <TextField name="usedOn" label={t('In use on')} type="date" />
      <NumberField
        name="minutes"
        label={t('Minutes')}
        unit="min"
        whole
        hint={t('Rounded up; a test counts as one.')}
      />
      <TextField name="words" label={t('Why')} hint={t('A test, a false alert, an emergency.')} />
    </CommandForm>
  );
}
