'use client';

import { English, useWords } from '#words';
import { useWatch } from 'react-hook-form';
import { signInspectionInput } from '@/lib/inspections/schema';
import { type InspectionPart } from '@/lib/rules/part-43/43-11-inspection-entry';
import { CommandForm } from '../../_ui/command-form';
import { Checkbox, ChoiceGroup } from '../../_ui/fields';
import { partSigned } from '../actions';
import { SigningPassword } from '../forms/signing-password';
import { yesNo } from '../forms/typed';
import { useAct } from '../forms/use-act';
import styles from './inspection.module.css';

interface SignPartProps {
  readonly inspectionId: string;
  readonly part: InspectionPart;
  readonly partName: string;
  /** Of the entry shown on the page: what changed since is not signed unseen. */
  readonly entryHash: string;
  readonly signer: string;
  readonly statements: { readonly airworthy: string; readonly notAirworthy: string | null };
}

/** One logbook's entry signed: airworthy, or not with the list. The statement stands above the signature. */
export function SignPartForm({ inspectionId, part, partName, entryHash, signer, statements }: SignPartProps) {
  const t = useWords();
  const command = useAct({
    action: partSigned,
    schema: signInspectionInput,
    start: { airworthy: '', madeByMe: false, password: '' },
    input: (typed) => ({ ...typed, inspectionId, part, entryHash, airworthy: yesNo(typed.airworthy) }),
    done: t('Signed for the {partName}.', { partName: partName.toLowerCase() }),
  });
  const airworthy = useWatch({ control: command.form.control, name: 'airworthy' });
  const statement =
    airworthy === 'yes'
      ? statements.airworthy
      : airworthy === 'no'
        ? (statements.notAirworthy ??
          t('Sign the list first: this entry names it by its date (14 CFR 43.11(a)(5)).'))
        : null;
  return (
    <CommandForm
      command={command}
      submit={t('Sign for the {partName}', { partName: partName.toLowerCase() })}
      pendingWords={t('Signing…')}
      label={t('Sign for the {partName}', { partName: partName.toLowerCase() })}
    >
      <ChoiceGroup
        name="airworthy"
        label={t('What did you find?')}
        sideBySide
        choices={[
          { value: 'yes', label: t('Airworthy'), hint: t('Approved for return to service.') },
          { value: 'no', label: t('Not airworthy'), hint: t('Not approved; the list is given.') },
        ]}
      />
      {statement && (
        <blockquote className={styles.statement}>
          <English>{statement}</English>
        </blockquote>
      )}
      <Checkbox
        name="madeByMe"
        label={<English>{MADE_BY_ME}</English>}
        hint={t('A required inspection is not made by a helper under supervision (14 CFR 43.3(d)).')}
      />
      <SigningPassword name={signer} />
    </CommandForm>
  );
}

/** Part of what is signed, so it is said in the language it is kept in. */
const MADE_BY_ME = 'I made this inspection myself.';
