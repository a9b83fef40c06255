'use client';

import { English, useWords } from '#words';
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
  const t = useWords();
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
    done: t('The record is signed.'),
  });
  return (
    <CommandForm
      command={command}
      submit={t('Sign the record')}
      pendingWords={t('Signing…')}
      label={t('Record from papers')}
    >
      <FormGroup title={t('What the papers say')}>
        <TextField name="doneOn" label={t('Done on')} type="date" />
        <NumberField name="ttis" label={t('Total time in service then')} unit="h" />
        <TextField name="approvedBy" label={t('Approved by')} hint={t('Full name, or the repair station.')} />
        <TextField name="certificateKind" label={t('Kind of certificate')} />
        <TextField name="certificateNumber" label={t('Certificate number')} />
        <YesNo
          name="authorised"
          label={t('Did that person hold on that day what the law asks for this?')}
          hint={t(
            'An annual: an inspection authorization in effect. Altimeter and transponder: a rated repair station. No: it is recorded and does not count.',
          )}
        />
        <TextField
          name="papers"
          label={t('Which papers')}
          hint={t('Logbook and page, work order, where they are kept.')}
        />
      </FormGroup>
      <RecordFields kind={kind} at="" />
      {standing.length > 0 && (
        <FormGroup title={t('Only to correct a wrong record')}>
          <SelectField
            name="supersedesId"
            label={t('Takes the place of')}
            choices={standing}
            chooseWords={t('None: this is a new one')}
            optional
          />
          <TextArea name="why" label={t('What was wrong')} rows={2} optional />
        </FormGroup>
      )}
      <p>
        <English>{statement}</English>
      </p>
      <SigningPassword name={signer} />
    </CommandForm>
  );
}
