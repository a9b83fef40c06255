'use client';

import { useWords } from '#words';
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
  const t = useWords();
  const command = useAct({
    action: vorChecked,
    schema: recordVorCheckInput,
    start: { method: '', place: '', checkedOn: '', first: '', second: '', password: '' },
    input: (typed) => ({ ...typed, requirementId, method: orNull(typed.method) }),
    done: t('The VOR check is recorded and signed.'),
  });
  const dual = useWatch({ control: command.form.control, name: 'method' }) === 'dual';
  return (
    <CommandForm
      command={command}
      submit={t('Sign the check')}
      pendingWords={t('Signing…')}
      label={t('VOR check')}
    >
      <ChoiceGroup name="method" label={t('How was it checked?')} choices={methods} />
      <TextField name="checkedOn" label={t('Checked on')} type="date" />
      <TextField name="place" label={t('Where')} hint={t('Airport and point, or station and radial.')} />
      <NumberField
        name="first"
        label={dual ? t('Bearing on the first receiver') : t('Bearing error')}
        unit="°"
        hint={dual ? t('From 0 to 360, whole or half degrees.') : t('Whole or half degrees, with + or −.')}
      />
      <NumberField
        name="second"
        label={dual ? t('Bearing on the second receiver') : t('Bearing error of the second receiver')}
        unit="°"
        optional={!dual}
      />
      <SigningPassword name={signer} />
    </CommandForm>
  );
}
