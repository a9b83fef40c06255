'use client';

import { English, useWords } from '#words';
import { beginDeferralInput } from '@/lib/determinations/schema';
import {
  type CountedTogether,
  type Judgement,
  type JudgementId,
} from '@/lib/rules/part-91/91-213-judgements';
import { CommandForm } from '../../_ui/command-form';
import { Checkbox, ChoiceGroup, TextArea, TextField } from '../../_ui/fields';
import { defer } from '../actions';
import { SigningPassword } from './signing-password';
import { TogetherCheck } from './together-check';
import { orNull, yesNo } from './typed';
import { useAct } from './use-act';
import { YesNo } from './yes-no';

interface DeferProps {
  readonly discrepancyId: string;
  readonly signer: string;
  /** Under a minimum equipment list: its procedures, in its words; null without a list. */
  readonly mel: { readonly procedures: string | null } | null;
  readonly isElt: boolean;
  /** The questions the section leaves to a person, in its order. */
  readonly judgements: readonly Judgement[];
  /** Everything else that is out or limited on the aircraft. */
  readonly together: readonly CountedTogether[];
}

/** A deferral with everything 91.213 asks of a person: what was done, the placard, and the determination. */
export function DeferForm({ discrepancyId, signer, mel, isElt, judgements, together }: DeferProps) {
  const t = useWords();
  const asked = (id: JudgementId) => judgements.find((judgement) => judgement.id === id);
  const command = useAct({
    action: defer,
    schema: beginDeferralInput,
    start: {
      nature: '',
      together: false,
      method: '',
      methodWords: '',
      deactivationIsMaintenance: '',
      placardWording: '',
      placardLocation: '',
      melProceduresDone: '',
      eltFirstRemovedOn: '',
      eltRecordComplete: '',
      statement: '',
      noHazard: false,
      password: '',
    },
    input: (typed) => ({
      ...typed,
      discrepancyId,
      together: together.length > 0 ? typed.together : undefined,
      togetherWith: together.map(({ id }) => id),
      deactivationIsMaintenance: yesNo(typed.deactivationIsMaintenance),
      melProceduresDone: yesNo(typed.melProceduresDone) ?? null,
      eltFirstRemovedOn: orNull(typed.eltFirstRemovedOn),
      eltRecordComplete: yesNo(typed.eltRecordComplete) ?? null,
    }),
    done: t('Deferred and signed. The placard is owed until somebody says that it is up.'),
  });
  return (
    <CommandForm
      command={command}
      submit={t('Sign the deferral')}
      pendingWords={t('Signing…')}
      label={t('Defer')}
    >
      <ChoiceGroup
        name="nature"
        label={
          asked('equipment-or-damage')?.question ??
          t('Is it only that it does not work, with nothing damaged?')
        }
        hint={asked('equipment-or-damage')?.look}
        sideBySide
        choices={[
          { value: 'equipment', label: t('It does not work, nothing is damaged') },
          { value: 'damage', label: t('Something is damaged') },
        ]}
      />
      <ChoiceGroup
        name="method"
        label={t('What was done with it?')}
        hint={asked('removed-or-deactivated')?.look}
        sideBySide
        choices={[
          { value: 'removed', label: t('Removed'), hint: t('Taken out of the aircraft.') },
          {
            value: 'deactivated',
            label: t('Deactivated'),
            hint: t('Nobody can make it work from the cockpit.'),
          },
        ]}
      />
      <TextArea name="methodWords" label={t('How')} rows={2} />
      <YesNo
        name="deactivationIsMaintenance"
        label={t('Was that maintenance?')}
        hint={t(
          'If so its part 43 entry is owed and signed before flight. Taking a unit out always is. {which}',
          { which: mel ? t('14 CFR 43.9(a).') : t('14 CFR 91.213(d)(3)(ii).') },
        )}
      />
      {mel && (
        <YesNo
          name="melProceduresDone"
          label={t('Are the procedures of the list done?')}
          hint={mel.procedures ?? undefined}
        />
      )}
      {isElt && (
        <>
          <TextField
            name="eltFirstRemovedOn"
            label={t('Day the transmitter was first removed')}
            type="date"
            hint={t('If it was removed: the 90 days of 91.207(f)(10) count from here.')}
            optional
          />
          <YesNo
            name="eltRecordComplete"
            label={t('Does the record give date of first removal, make, model, serial number and reason?')}
          />
        </>
      )}
      <TextField
        name="placardWording"
        label={t('Wording of the placard')}
        hint={t('For example: INOPERATIVE, or REMOVED, with the item’s name.')}
      />
      <TextField
        name="placardLocation"
        label={t('Where it goes')}
        hint={t('In view of the pilot, at the control it concerns.')}
      />
      <TextArea name="statement" label={t('Why it is no hazard')} rows={3} />
      <Checkbox name="noHazard" label={<English>{NO_HAZARD}</English>} />
      <TogetherCheck together={together} />
      <SigningPassword name={signer} />
    </CommandForm>
  );
}

/** Part of what is signed, so it is said in the language it is kept in. */
const NO_HAZARD =
  'I determine that this inoperative item constitutes no hazard to the aircraft (14 CFR 91.213(d)(4)).';
