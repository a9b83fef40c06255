'use client';

import { recordRequirementInput } from '@/lib/inspections/requirement-schema';
import { type RequirementKind } from '@/lib/rules/aircraft';
import { CommandForm } from '../../_ui/command-form';
import { NumberField, SelectField, TextArea, TextField } from '../../_ui/fields';
import { dueRecorded } from '../actions';
import { FormGroup } from '../forms/form-group';
import { RecordFields } from '../forms/record-fields';
import { SigningPassword } from '../forms/signing-password';
import { orNull, wholeOrNull, yesNo } from '../forms/typed';
import { useAct } from '../forms/use-act';
import { YesNo } from '../forms/yes-no';

interface RecordProps {
  readonly requirementId: string;
  readonly kind: RequirementKind;
  readonly signer: string;
  readonly statement: string;
  /** Records that stand, to correct one that is wrong. */
  readonly standing: readonly { readonly value: string; readonly label: string }[];
}

const START = {
  doneOn: '',
  ttis: '',
  approvedBy: '',
  certificateKind: '',
  certificateNumber: '',
  authorised: '',
  papers: '',
  testedToFt: '',
  newExpiry: '',
  method: '',
  revision: '',
  supersedesId: '',
  why: '',
  password: '',
};

/** Something due was done elsewhere: what the papers say, signed as copied truly. */
export function RecordForm({ requirementId, kind, signer, statement, standing }: RecordProps) {
  const command = useAct({
    action: dueRecorded,
    schema: recordRequirementInput,
    start: START,
    input: (typed) => ({
      ...typed,
      requirementId,
      authorised: yesNo(typed.authorised),
      testedToFt: wholeOrNull(typed.testedToFt),
      newExpiry: orNull(typed.newExpiry),
      supersedesId: orNull(typed.supersedesId),
    }),
    done: 'The record is signed.',
  });
  return (
    <CommandForm
      command={command}
      submit="Sign the record"
      pendingWords="Signing…"
      label="Record from papers"
    >
      <FormGroup title="What the papers say">
        <TextField name="doneOn" label="Done on" type="date" />
        <NumberField name="ttis" label="Total time in service then" unit="h" />
        <TextField name="approvedBy" label="Approved by" hint="Full name, or the repair station." />
        <TextField name="certificateKind" label="Kind of certificate" />
        <TextField name="certificateNumber" label="Certificate number" />
        <YesNo
          name="authorised"
          label="Did that person hold on that day what the law asks for this?"
          hint="An annual: an inspection authorization in effect. Altimeter and transponder: a rated repair station. No: it is recorded and does not count."
        />
        <TextField
          name="papers"
          label="Which papers"
          hint="Logbook and page, work order, where they are kept."
        />
      </FormGroup>
      <RecordFields kind={kind} at="" />
      {standing.length > 0 && (
        <FormGroup title="Only to correct a wrong record">
          <SelectField
            name="supersedesId"
            label="Takes the place of"
            choices={standing}
            chooseWords="None: this is a new one"
            optional
          />
          <TextArea name="why" label="What was wrong" rows={2} optional />
        </FormGroup>
      )}
      <p>{statement}</p>
      <SigningPassword name={signer} />
    </CommandForm>
  );
}
