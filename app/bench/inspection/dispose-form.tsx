'use client';

import { English, useWords } from '#words';
import { useWatch } from 'react-hook-form';
import { disposeDeferralInput } from '@/lib/inspections/schema';
import { type CountedTogether } from '@/lib/rules/part-91/91-213-judgements';
import { CommandForm } from '../../_ui/command-form';
import { Checkbox, ChoiceGroup, TextArea } from '../../_ui/fields';
import { deferralDisposed } from '../actions';
import { SigningPassword } from '../forms/signing-password';
import { TogetherCheck } from '../forms/together-check';
import { orNull } from '../forms/typed';
import { useAct } from '../forms/use-act';

interface DisposeProps {
  readonly deferralId: string;
  readonly at: { readonly inspectionId: string | null; readonly complianceId: string | null };
  readonly signer: string;
  /** Removed already, with its removal signed: only then can it stay off for good. */
  readonly mayBeRemoved: boolean;
  /** Everything else that is out or limited on the aircraft. */
  readonly together: readonly CountedTogether[];
}

/** What becomes of a deferred item at an inspection: 91.405(c). Repaired or replaced is work on its write-up. */
export function DisposeForm({ deferralId, at, signer, mayBeRemoved, together }: DisposeProps) {
  const t = useWords();
  const command = useAct({
    action: deferralDisposed,
    schema: disposeDeferralInput,
    start: {
      disposition: '',
      statement: '',
      noHazard: false,
      together: false,
      listsRevised: false,
      password: '',
    },
    input: (typed) => ({
      ...typed,
      deferralId,
      ...at,
      disposition: orNull(typed.disposition),
      noHazard: typed.disposition === 'inspected' ? typed.noHazard : null,
      together: typed.disposition === 'inspected' && together.length > 0 ? typed.together : undefined,
      togetherWith: together.map(({ id }) => id),
      listsRevised: typed.disposition === 'removed' ? typed.listsRevised : null,
    }),
    done: t('The disposition is signed.'),
  });
  const disposition = useWatch({ control: command.form.control, name: 'disposition' });
  return (
    <CommandForm
      command={command}
      submit={t('Sign the disposition')}
      pendingWords={t('Signing…')}
      label={t('Disposition')}
    >
      <ChoiceGroup
        name="disposition"
        label={t('What becomes of it?')}
        choices={[
          {
            value: 'inspected',
            label: t('Inspected, stays deferred'),
            hint: t(
              '14 CFR 91.213(d) is still met, and it is no hazard. Asked again at the next inspection.',
            ),
          },
          {
            value: 'removed',
            label: t('Removed for good'),
            hint: mayBeRemoved
              ? t('Its removal is signed. It leaves the equipment list.')
              : t('Only once it is removed as work, with its entry signed.'),
            disabled: !mayBeRemoved,
          },
        ]}
      />
      <TextArea name="statement" label={t('What you found')} rows={3} />
      {disposition === 'inspected' && (
        <>
          <Checkbox name="noHazard" label={<English>{NO_HAZARD}</English>} />
          <TogetherCheck together={together} />
        </>
      )}
      {disposition === 'removed' && (
        <Checkbox
          name="listsRevised"
          label={t('Equipment list and weight and balance are revised.')}
          hint={t('What is aboard and what it weighs is no longer what it was.')}
        />
      )}
      <SigningPassword name={signer} />
    </CommandForm>
  );
}

/** Part of what is signed, so it is said in the language it is kept in. */
const NO_HAZARD = 'I determine that it is no hazard to the aircraft (14 CFR 91.213(d)(4)).';
