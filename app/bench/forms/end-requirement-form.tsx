'use client';

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
  const command = useAct({
    action: endOfDue,
    schema: endRequirementInput,
    start: { requirementId: '', why: '', reference: '', password: '' },
    input: (typed) => typed,
    done: 'Ended. It counts nowhere from now on; its records stay.',
  });
  return (
    <CommandForm command={command} submit="Sign and end it" label="End what recurs">
      <SelectField
        name="requirementId"
        label="What applies no more"
        choices={props.requirements.map(({ id, name }) => ({ value: id, label: name }))}
      />
      <TextArea
        name="why"
        label="Why"
        hint="Superseded by which directive, which part was replaced, which equipment was taken out."
        rows={3}
      />
      <TextField
        name="reference"
        label="Document that says so"
        hint="The later directive, the work entry, the maker’s letter: number and date."
      />
      <SigningPassword name={props.signer} />
    </CommandForm>
  );
}
