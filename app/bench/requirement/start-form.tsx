'use client';

import { useWords } from '#words';
import { said } from '@/lib/words/said';
import { useWatch } from 'react-hook-form';
import { startRequirementWorkInput } from '@/lib/inspections/requirement-schema';
import { CommandForm } from '../../_ui/command-form';
import { ChoiceGroup, SelectField, TextField } from '../../_ui/fields';
import { Notice } from '../../_ui/notice';
import { workOnDueStarted } from '../actions';
import { JascField } from '../forms/jasc-field';
import { orNull, wholeOrNull, yesNo } from '../forms/typed';
import { useAct } from '../forms/use-act';
import { YesNo } from '../forms/yes-no';

interface StartProps {
  readonly requirementId: string;
  /** What kind of work it is follows from the paragraph; nothing but its name is asked. */
  readonly fixed: boolean;
  readonly mayBePreventive: boolean;
  /** Why more than the rating of the chosen system is asked of who signs; null where it is not. */
  readonly whoSigns: string | null;
  readonly items: readonly { readonly value: string; readonly label: string }[];
}

const MINOR = { value: 'minor', label: said('Minor repair, or maintenance beside the list') };
const PREVENTIVE = {
  value: 'preventive',
  label: said('Preventive maintenance'),
  hint: said('One of the items of part 43 Appendix A(c), no complex assembly.'),
};

/** Work begun that answers something due. From here on the aircraft does not fly until it is signed. */
export function StartOnDueForm({ requirementId, fixed, mayBePreventive, whoSigns, items }: StartProps) {
  const t = useWords();
  const command = useAct({
    action: workOnDueStarted,
    schema: startRequirementWorkInput,
    start: { title: '', workKind: '', preventiveItem: '', jasc: '', swapOnly: '' },
    input: (typed) => ({
      ...typed,
      requirementId,
      workKind: fixed ? null : orNull(typed.workKind),
      preventiveItem: typed.workKind === 'preventive' ? wholeOrNull(typed.preventiveItem) : null,
      jasc: fixed ? null : orNull(typed.jasc),
      swapOnly: fixed ? null : (yesNo(typed.swapOnly) ?? null),
    }),
    done: t('Work is begun. Write its entry, then sign it: that is the record.'),
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
      {!fixed && (
        <>
          <ChoiceGroup
            name="workKind"
            label={t('What kind of work is it?')}
            choices={mayBePreventive ? [PREVENTIVE, MINOR] : [MINOR]}
          />
          {kind === 'preventive' && (
            <SelectField name="preventiveItem" label={t('Item of Appendix A(c)')} choices={items} />
          )}
          <JascField name="jasc" />
          {whoSigns !== null && (
            <Notice tone="blue" title={t('Who will sign it: a strict reading')}>
              <p>{whoSigns}</p>
            </Notice>
          )}
          <YesNo
            name="swapOnly"
            label={t('Is a unit only taken out and put in?')}
            hint={t('Yes when nothing inside an instrument or radio is opened or repaired.')}
          />
        </>
      )}
    </CommandForm>
  );
}
