'use client';

import { useWords } from '#words';
import { endRequirementInput } from '@/lib/fleet/requirement-schema';
import { CommandForm } from '../../_ui/command-form';
import { SelectField, TextArea, TextField } from '../../_ui/fields';
import { endOfDue } from '../actions';
import { SigningPassword } from './signing-password';
import { useAct } from './use-act';

/** Takes something off the list because it applies no more. Its records stay. */
export function EndRequirementForm(props: {
  requirements: readonly { id: string; name: string }[];
  signer: string;
}) {
  const t = useWords();
  const command = useAct({
    action: endOfDue,
    schema: endRequirementInput,
    start: { requirementId: '', why: '', reference: '', password: '' },
    input: (typed) => typed,
    done: t('Ended. It counts nowhere from now on; its records stay.'),
  });
  return (
    <CommandForm command={command} submit={t('Sign and end it')} label={t('End what recurs')}>
      <SelectField
        name="requirementId"
        label={t('What applies no more')}
        choices={props.requirements.map(({ id, name }) => ({ value: id, label: name }))}
      />
      <TextArea
        name="why"
        label={t('Why')}
        hint={t('Superseded by which directive, which part was replaced, which equipment was taken out.')}
        rows={3}
      />
      <TextField
        name="reference"
        label={t('Document that says so')}
        hint={t('The later directive, the work entry, the maker’s letter: number and date.')}
      />
      <SigningPassword name={props.signer} />
    </CommandForm>
  );
}
