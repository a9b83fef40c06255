'use client';

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
    done: 'The disposition is signed.',
  });
  const disposition = useWatch({ control: command.form.control, name: 'disposition' });
  return (
    <CommandForm command={command} submit="Sign the disposition" pendingWords="Signing…" label="Disposition">
      <ChoiceGroup
        name="disposition"
        label="What becomes of it?"
        choices={[
          {
            value: 'inspected',
            label: 'Inspected, stays deferred',
            hint: '14 CFR 91.213(d) is still met, and it is no hazard. Asked again at the next inspection.',
          },
          {
            value: 'removed',
            label: 'Removed for good',
            hint: mayBeRemoved
              ? 'Its removal is signed. It leaves the equipment list.'
              : 'Only once it is removed as work, with its entry signed.',
            disabled: !mayBeRemoved,
          },
        ]}
      />
      <TextArea name="statement" label="What you found" rows={3} />
      {disposition === 'inspected' && (
        <>
          <Checkbox
            name="noHazard"
            label="I determine that it is no hazard to the aircraft (14 CFR 91.213(d)(4))."
          />
          <TogetherCheck together={together} />
        </>
      )}
      {disposition === 'removed' && (
        <Checkbox
          name="listsRevised"
          label="Equipment list and weight and balance are revised."
          hint="What is aboard and what it weighs is no longer what it was."
        />
      )}
      <SigningPassword name={signer} />
    </CommandForm>
  );
}
