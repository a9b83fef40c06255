'use client';

import { useWatch } from 'react-hook-form';
import { recordVorCheckInput } from '@/lib/inspections/requirement-schema';
import { CommandForm } from '../../_ui/command-form';
import { ChoiceGroup, NumberField, TextField } from '../../_ui/fields';
import { vorChecked } from '../actions';
import { SigningPassword } from '../forms/signing-password';
import { orNull } from '../forms/typed';
import { useAct } from '../forms/use-act';

interface VorProps {
  readonly requirementId: string;
  readonly signer: string;
  /** The ways of 91.171(b) and (c), with what each allows. */
  readonly methods: readonly { readonly value: string; readonly label: string; readonly hint: string }[];
}

/** The VOR check, recorded by whoever made it: date, place, bearing error, signature (91.171(d)). */
export function VorForm({ requirementId, signer, methods }: VorProps) {
  const command = useAct({
    action: vorChecked,
    schema: recordVorCheckInput,
    start: { method: '', place: '', checkedOn: '', first: '', second: '', password: '' },
    input: (typed) => ({ ...typed, requirementId, method: orNull(typed.method) }),
    done: 'The VOR check is recorded and signed.',
  });
  const dual = useWatch({ control: command.form.control, name: 'method' }) === 'dual';
  return (
    <CommandForm command={command} submit="Sign the check" pendingWords="Signing…" label="VOR check">
      <ChoiceGroup name="method" label="How was it checked?" choices={methods} />
      <TextField name="checkedOn" label="Checked on" type="date" />
      <TextField name="place" label="Where" hint="Airport and point, or station and radial." />
      <NumberField
        name="first"
        label={dual ? 'Bearing on the first receiver' : 'Bearing error'}
        unit="°"
        hint={dual ? 'From 0 to 360, whole or half degrees.' : 'Whole or half degrees, with + or −.'}
      />
      <NumberField
        name="second"
        label={dual ? 'Bearing on the second receiver' : 'Bearing error of the second receiver'}
        unit="°"
        optional={!dual}
      />
      <SigningPassword name={signer} />
    </CommandForm>
  );
}
