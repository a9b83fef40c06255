'use client';

import { useWords } from '#words';
import { useWatch } from 'react-hook-form';
import { startRepairInput } from '@/lib/work/schema';
import { CommandForm } from '../../_ui/command-form';
import { ChoiceGroup, SelectField, TextField } from '../../_ui/fields';
import { start as startAction } from '../actions';
import { orNull, wholeOrNull, yesNo } from './typed';
import { useAct } from './use-act';
import { YesNo } from './yes-no';

interface StartProps {
  readonly discrepancyId: string;
  readonly items: readonly { readonly value: string; readonly label: string }[];
}

/** Work begun. From here on the aircraft does not fly until it is signed or given up. */
export function StartForm({ discrepancyId, items }: StartProps) {
  const t = useWords();
  const command = useAct({
    action: startAction,
    schema: startRepairInput,
    start: { title: '', workKind: '', preventiveItem: '', swapOnly: '' },
    input: (typed) => ({
      ...typed,
      discrepancyId,
      workKind: orNull(typed.workKind),
      preventiveItem: typed.workKind === 'preventive' ? wholeOrNull(typed.preventiveItem) : null,
      swapOnly: yesNo(typed.swapOnly),
    }),
    done: t('Work is begun. The aircraft does not fly until it is signed.'),
  });
  const kind = useWatch({ control: command.form.control, name: 'workKind' });
  return (
    <CommandForm
      command={command}
      submit={t('Start the work')}
      pendingWords={t('Starting…')}
      label={t('Start work')}
    >
      <TextField name="title" label={t('What is to be done')} />
      <ChoiceGroup
        name="workKind"
        label={t('What kind of work is it?')}
        choices={[
          {
            value: 'preventive',
            label: t('Preventive maintenance'),
            hint: t('One of the items of part 43 Appendix A(c), no complex assembly.'),
          },
          { value: 'minor', label: t('Minor repair'), hint: t('Neither preventive nor major.') },
          {
            value: 'major',
            label: t('Major repair'),
            hint: t(
              'Appendix A(b), or could affect strength, balance, performance or handling if done wrongly.',
            ),
          },
        ]}
      />
      {kind === 'preventive' && (
        <SelectField name="preventiveItem" label={t('Item of Appendix A(c)')} choices={items} />
      )}
      <YesNo
        name="swapOnly"
        label={t('Is a unit only taken out and put in?')}
        hint={t('Yes when nothing inside an instrument or radio is opened or repaired.')}
      />
    </CommandForm>
  );
}
